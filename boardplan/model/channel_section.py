"""ChannelSection: a size of wire channel as it is sold by the length."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class ChannelSection:
    """Width and height of a wire channel in mm, outside and inside."""

    id: str
    name: str
    width: float
    height: float
    inner_width: float
    inner_height: float

    @property
    def words(self) -> str:
        """How people call it: width by height."""
        return f"{self.width:g} x {self.height:g}"
