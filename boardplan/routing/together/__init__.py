"""Cables beside each other outside of channels: who is laid first, what each place costs, where they cross."""
