"""Packs that the tests of this folder read, each written once."""

from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any

import pytest
from boards import honey_trailer, library_bus, lookout_cabin
from output.read_back import Page, read_pages

from boardplan.bundled import data_dir
from boardplan.checks.review import review_of
from boardplan.model.plan import Plan
from boardplan.output.making import Making
from boardplan.output.pack import write_pack
from boardplan.output.papers import files_of
from boardplan.output.printing.pages import PAPERS
from boardplan.output.printing.pdf import Fonts, pdf_of
from boardplan.output.printing.printer_correction import Printing

SAMPLES = {"library bus": library_bus, "lookout cabin": lookout_cabin, "honey trailer": honey_trailer}


@dataclass
class Pack:
    plan: Plan
    folder: Path
    contents: dict[str, Any]

    @cached_property
    def pages(self) -> dict[str, list[Page]]:
        return {path.name: read_pages(path) for path in sorted(self.folder.glob("*.pdf"))}

    def template_pages(self) -> list[tuple[dict[str, Any], Page]]:
        return [(each, self.pages[each["file"]][each["page"] - 1]) for each in self.contents["template_pages"]]


@pytest.fixture(scope="session")
def packs(tmp_path_factory):
    """A function (sample, paper) -> Pack."""
    done: dict[tuple[str, str], Pack] = {}
    reviews = {}

    def pack(sample: str, paper: str) -> Pack:
        if (sample, paper) not in done:
            plan = SAMPLES[sample]()
            if sample not in reviews:
                reviews[sample] = review_of(plan)
            folder = tmp_path_factory.mktemp("packs") / f"{sample} {paper}"
            contents = write_pack(Making(reviews[sample], Printing(PAPERS[paper])), folder)
            done[sample, paper] = Pack(plan, folder, contents)
        return done[sample, paper]

    return pack


@pytest.fixture(scope="session")
def fonts():
    return Fonts(data_dir("assets") / "fonts")


@pytest.fixture(scope="session")
def drawn():
    """A function (sample, paper) -> the pages of the cover and of the sheets for the customer, by file."""
    done: dict[tuple[str, str], dict[str, list[Page]]] = {}
    reviews = {}
    chosen = ("cover", "holes", "cables", "customer", "findings")

    def pages(sample: str, paper: str) -> dict[str, list[Page]]:
        if (sample, paper) not in done:
            if sample not in reviews:
                reviews[sample] = review_of(SAMPLES[sample]())
            making = Making(reviews[sample], Printing(PAPERS[paper]))
            wanted = [each for each in files_of(making, chosen) if each.name in ("cover.pdf", "customer-sheets.pdf")]
            done[sample, paper] = {each.name: read_pages(pdf_of(each.sheets, making.fonts, "t")) for each in wanted}
        return done[sample, paper]

    return pages
