"""PDF number: a number as a PDF holds it, at most six digits after the point and no more than tell it apart."""

_NOUGHT = 1e-7
_MOST_DIGITS = 6


def pdf_number(value: float) -> str:
    """Return a number as text, without noughts at its ends; letter for letter what the PDF library writes.

    >>> pdf_number(0.25), pdf_number(1234.56789), pdf_number(-70.0)
    ('.25', '1234.568', '-70')
    """
    size = abs(value)
    if size <= _NOUGHT:
        return "0"
    digits, limit = _MOST_DIGITS, 10.0
    while digits and size >= limit:
        digits, limit = digits - 1, limit * 10
    text = f"{value:.{digits}f}"
    if digits:
        text = text.rstrip("0").rstrip(".")
    return text[1:] if text[0] == "0" and len(text) > 1 else text
