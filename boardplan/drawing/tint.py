"""Tint: lighter and darker neighbours of a real colour."""


def mixed(colour: str, other: str, share: float) -> str:
    """Return a colour with a share of another in it; both as "#rrggbb".

    >>> mixed("#000000", "#ffffff", 0.5)
    '#808080'
    """
    pairs = zip(_parts(colour), _parts(other), strict=True)
    return "#" + "".join(f"{round(a + (b - a) * share):02x}" for a, b in pairs)


def lightness(colour: str) -> float:
    """Return how light a colour looks, 0 to 1: the luma of ITU-R BT.601."""
    red, green, blue = _parts(colour)
    return (0.299 * red + 0.587 * green + 0.114 * blue) / 255


def _parts(colour: str) -> tuple[int, int, int]:
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)
