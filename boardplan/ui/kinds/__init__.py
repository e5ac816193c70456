"""Kinds of a person's own: measured, drawn as they are typed, kept on the own shelf."""
