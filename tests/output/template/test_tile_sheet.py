"""What every sheet of a template carries, so that a wrong print is seen before a hole is drilled."""

import pytest

from boardplan.model.holes import holes_of

ALL = [("library bus", "a4"), ("lookout cabin", "letter"), ("library bus", "a3"), ("lookout cabin", "roll-914")]


def apart(strokes, length):
    """Pairs (level, upright) that say whether a line of a length lies level and upright."""
    level = [
        each for each in strokes if abs(abs(each.x1 - each.x0) - length) < 0.001 and abs(each.y1 - each.y0) < 0.001
    ]
    upright = [
        each for each in strokes if abs(abs(each.y1 - each.y0) - length) < 0.001 and abs(each.x1 - each.x0) < 0.001
    ]
    return level, upright


@pytest.mark.parametrize(("sample", "paper"), ALL)
def test_both_bars_are_on_every_sheet_and_true(sample, paper, packs):
    for entry, page in packs(sample, paper).template_pages():
        for length in (100.0, 4 * 25.4):
            level, upright = apart(page.strokes, length)
            assert level, (entry["tile"], length)
            assert upright, (entry["tile"], length)
        bar = apart(page.strokes, 100.0)[0][0]
        ends = sorted({round(each.x0, 3) for each in page.strokes if touches(each, bar)})
        assert ends[-1] - ends[0] == pytest.approx(100.0, abs=0.001)
        assert len(ends) == 11


def touches(stroke, bar):
    upright = abs(stroke.x1 - stroke.x0) < 0.001
    return (
        upright
        and min(abs(stroke.y0 - bar.y0), abs(stroke.y1 - bar.y0)) < 0.001
        and bar.x0 - 1 < stroke.x0 < bar.x1 + 1
    )


def test_a_roll_that_is_long_enough_has_a_bar_of_a_metre(packs):
    ((_, page),) = packs("library bus", "roll-914").template_pages()
    assert apart(page.strokes, 1000.0)[0]


def test_a_roll_for_a_crew_with_inch_tapes_has_bars_of_30_in(packs):
    for _, page in packs("lookout cabin", "roll-914").template_pages():
        level, upright = apart(page.strokes, 30 * 25.4)
        assert level
        assert upright
        assert page.words.count("30 in") == 2
        assert not apart(page.strokes, 1000.0)[0]


def test_heavy_units_have_a_ledger_line_along_their_lower_edge(packs):
    """Of the worked example: INV1 with its lower edge at Y 290, AT1 at Y 384; 15 mm past both sides."""
    ((entry, page),) = packs("library bus", "roll-914").template_pages()
    assert "ledger line of INV1: Y 290 mm, 19.8 kg" in page.words
    assert "ledger line of AT1: Y 384 mm, 13.6 kg" in page.words
    assert page.words.count("ledger line") == 2
    for y, width in ((290, 268), (384, 222)):
        at = y - entry["rect"][1] + entry["at"][1]
        assert any(abs(each.y0 - at) < 0.01 for each in apart(page.strokes, width + 30)[0])


@pytest.mark.parametrize(("sample", "paper"), ALL)
def test_every_sheet_says_what_it_is_and_to_measure_first(sample, paper, packs):
    pack = packs(sample, paper)
    pages = pack.template_pages()
    for entry, page in pages:
        job = pack.plan.job
        count = sum(each["file"] == entry["file"] for each, _ in pages)
        for words in (
            job.title,
            job.number,
            f"board {entry['board']}",
            f"revision {job.revision}",
            job.date,
            f"tile {entry['tile']} sheet {entry['page']} of {count}",
            "Print at 100 % / actual size. Measure both bars before use. Not 100.0 mm within 0.3 mm? Stop.",
            "what is behind?",
            "FRONT",
            "UP",
            "from the bare edges A and B",
            "X 100.0 mm",
            "Y 100.0 mm",
        ):
            assert words in page.words, (entry["tile"], words)


@pytest.mark.parametrize(("sample", "paper"), ALL)
def test_counts_of_holes_on_the_sheets(sample, paper, packs):
    pack = packs(sample, paper)
    for entry, page in pack.template_pages():
        left, bottom, right, top = entry["rect"]
        own = [row for row in holes_of(pack.plan) if row.board == entry["board"]]
        here = [hole for hole in own if left <= hole.position.x <= right and bottom <= hole.position.y <= top]
        assert f"holes on this sheet {len(here)} of {len(own)}" in page.words


@pytest.mark.parametrize(("sample", "paper"), ALL)
def test_all_words_are_where_printers_reach(sample, paper, packs):
    for _, page in packs(sample, paper).template_pages():
        for text in page.texts:
            assert text.left >= 9.9
            assert text.right <= page.width - 9.9
            assert text.bottom >= 4.5
            assert text.top <= page.height - 4.5


@pytest.mark.parametrize(("sample", "paper"), ALL)
def test_pages_have_the_size_the_list_of_contents_says(sample, paper, packs):
    for entry, page in packs(sample, paper).template_pages():
        assert (page.width, page.height) == pytest.approx(entry["page_size"], abs=0.001)
