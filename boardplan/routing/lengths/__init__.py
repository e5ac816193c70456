"""How long cables must be cut: heights and rises, loops, work on the ends, matched groups, sums to read."""
