"""The bill of materials for supply counters."""
