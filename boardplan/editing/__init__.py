"""Changing a plan: pure edits, history, tools."""
