"""The mirrored template of what is worked from the back of a board."""
