"""Trust words: how the window says how a dimension came to be known, the same wherever it is asked."""

from boardplan.model.trust import Trust

TRUST_WORDS: tuple[tuple[Trust, str], ...] = (
    ("measured", "measured by us"),
    ("customer", "given by customer"),
    ("photo", "from a photo"),
    ("estimated", "estimated"),
)
NOBODY_SAID: tuple[None, str] = (None, "nobody said")
