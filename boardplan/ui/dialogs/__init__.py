"""Windows that ask for something, each for one thing."""
