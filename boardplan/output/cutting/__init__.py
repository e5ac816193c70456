"""Cutting: which pieces come out of which bar, by linear programs over patterns, with a bound that is proven."""
