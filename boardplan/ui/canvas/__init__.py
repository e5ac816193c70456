"""The board on screen: what is seen of it and what the pointer does to it."""
