"""The card beside the board: how to shut it off, and how to start it."""
