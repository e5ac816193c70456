"""Trust: how far a dimension can be relied on, by how it came to be known."""

from typing import Literal, TypeAlias

Trust: TypeAlias = Literal["measured", "customer", "photo", "estimated"]
"""Measured by us, given by the customer, scaled from a photo or drawing, estimated."""
