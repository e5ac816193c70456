"""Which way a cable goes and how long it must be cut."""
