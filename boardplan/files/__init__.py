"""To and from disk."""
