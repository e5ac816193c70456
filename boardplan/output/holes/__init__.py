"""Holes in lists: where they are from the datum, with which bit, by which mark one knows them."""
