"""Millimetres and shapes; no word of electricity."""
