"""Words of length: how a cut length adds up, as a small table of aligned figures for a tip, and as plain lines."""

from html import escape

from boardplan.routing.lengths.length_sum import CutLength, explain
from boardplan.ui.words import tr

_FIGURE = " mm"


def length_tip(length: CutLength | None) -> str:
    """Return the sum of a cut length as rich text: words on the left, figures right-aligned under each other."""
    if length is None:
        return ""
    rows, notes = _rows(length)
    body = "".join(
        f'<tr><td style="padding-right:16px">{escape(words)}</td>'
        f'<td align="right" style="white-space:nowrap">{escape(figure)}</td></tr>'
        for words, figure in rows
    )
    below = "".join(f"<div>{escape(each)}</div>" for each in notes)
    heading = escape(tr("{}: how its length adds up").format(length.cable))
    return f'<b>{heading}</b><table cellspacing="0" cellpadding="1">{body}</table>{below}'


def length_lines(length: CutLength | None) -> str:
    """Return the sum of a cut length as plain lines, for people who hear them."""
    return "" if length is None else "\n".join(explain(length))


def _rows(length: CutLength) -> tuple[list[tuple[str, str]], list[str]]:
    """Return the lines of the sum that end in a figure, and the others."""
    rows: list[tuple[str, str]] = []
    notes: list[str] = []
    for line in explain(length):
        words, colon, figure = line.rpartition(": ")
        if colon and figure.endswith(_FIGURE) and figure[:1] in "+-":
            rows.append((words, figure))
        else:
            notes.append(line)
    return rows, notes
