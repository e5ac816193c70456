"""Lists on paper: a title block and a number on each sheet, all words on it and clear of each other."""

import pytest

LISTS = [
    (sample, paper, file)
    for sample in ("library bus", "lookout cabin")
    for paper in ("a4", "letter")
    for file in ("hole-schedule.pdf", "cable-cut-list.pdf")
]


@pytest.mark.parametrize(("sample", "paper", "file"), LISTS)
def test_each_sheet_has_its_title_block_and_number(sample, paper, file, packs):
    pack = packs(sample, paper)
    pages = pack.pages[file]
    job = pack.plan.job
    for number, page in enumerate(pages, start=1):
        for words in (job.title, job.number, f"revision {job.revision}", job.date, f"sheet {number} of {len(pages)}"):
            assert words in page.words, (number, words)


@pytest.mark.parametrize(("sample", "paper", "file"), LISTS)
def test_words_lie_within_the_margins_and_clear_of_each_other(sample, paper, file, packs):
    for number, page in enumerate(packs(sample, paper).pages[file], start=1):
        for text in page.texts:
            assert text.left >= 13.9
            assert text.right <= page.width - 13.9
            assert text.bottom >= 4.5
            assert text.top <= page.height - 10
        for index, a in enumerate(page.texts):
            for b in page.texts[index + 1 :]:
                across = min(a.right, b.right) - max(a.left, b.left)
                up = min(a.top, b.top) - max(a.bottom, b.bottom)
                assert min(across, up) < 0.1, (number, a, b)


@pytest.mark.parametrize(("sample", "paper", "file"), LISTS)
def test_heads_are_repeated_on_each_sheet(sample, paper, file, packs):
    heads = ("done",) if file.startswith("hole") else ("cable", "lands on", "comes from", "stud")
    for page in packs(sample, paper).pages[file]:
        assert any(each in page.words.split("\n") for each in (*heads, "have"))


@pytest.mark.parametrize(("sample", "paper", "file"), LISTS)
def test_lists_are_on_the_office_size(sample, paper, file, packs):
    size = {"a4": (210, 297), "letter": (215.9, 279.4)}[paper]
    for page in packs(sample, paper).pages[file]:
        assert sorted((page.width, page.height)) == pytest.approx(size, abs=0.001)
