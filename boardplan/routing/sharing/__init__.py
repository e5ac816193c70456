"""Channels shared: which cables leave an overfull section to others, near a bound that no answer can beat."""
