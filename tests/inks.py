"""What tests ask of a picture: its words, its inks."""

from boardplan.drawing.picture import Area, Disc, Words


def words_in(picture):
    """Return the words of a picture."""
    return [mark for mark in picture if isinstance(mark, Words)]


def inks_in(picture):
    """Return every ink a picture is drawn with."""
    found = set()
    for mark in picture:
        found |= {mark.fill, mark.edge} if isinstance(mark, (Area, Disc)) else {mark.ink}
    return found - {None}
