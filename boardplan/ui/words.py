"""Words: the one place where a text of the window is looked up in the person's own language."""

from PySide6.QtCore import QCoreApplication, QObject


def tr(text: str) -> str:
    """Return a text in the person's language; texts with values in them are filled afterwards by `format`."""
    return QCoreApplication.translate("boardplan", text)


def counted(text: str, number: int) -> str:
    """Return a text with its number; before "|" for one, after it for any other number, %n is the number.

    >>> counted("%n cable|%n cables", 3)
    '3 cables'
    """
    one, _, many = tr(text).partition("|")
    return (one if number == 1 else many).replace("%n", str(number))


def accessible(thing: QObject, name: str) -> None:
    """Name a control for people who don't see it."""
    thing.setAccessibleName(name)  # type: ignore[attr-defined]
