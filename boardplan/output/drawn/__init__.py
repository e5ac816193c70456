"""What drawn sheets share: scales, dimensions, blocks of words in columns."""
