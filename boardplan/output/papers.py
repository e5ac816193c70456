"""Papers: the table of all papers of a job, in the order in which a pack holds them."""

from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, replace

from boardplan.output.back.back_papers import back_papers
from boardplan.output.cables.cable_papers import cable_papers
from boardplan.output.cover.cover_papers import cover_papers
from boardplan.output.customer.customer_papers import customer_papers
from boardplan.output.cutting.cutting_papers import cutting_papers
from boardplan.output.exchange.exchange_papers import dxf_papers, picture_papers, svg_papers, workbook_file
from boardplan.output.findings.findings_papers import findings_papers
from boardplan.output.hand_over.hand_over_papers import fuse_papers, record_papers, torque_papers
from boardplan.output.holes.hole_papers import hole_papers
from boardplan.output.labels.label_papers import label_papers
from boardplan.output.load_out.load_out_papers import load_out_papers
from boardplan.output.making import Making, PackFile
from boardplan.output.materials.material_papers import material_papers
from boardplan.output.shut_off.shut_off_papers import shut_off_papers
from boardplan.output.survey.survey_papers import re_measure_papers
from boardplan.output.tables.listing import Listing
from boardplan.output.template.template_papers import template_papers


@dataclass(frozen=True, slots=True)
class JobPaper:
    """One paper: its key for commands, its name, what a crew does with it, the files it comes as.

    One that only draws has no list for the workbook, which need not make it then. A paper that
    `lists_others` is made last, beside the files of all others.
    """

    key: str
    name: str
    use: str
    files: Callable[[Making], Iterator[PackFile]]
    only_draws: bool = False
    lists_others: bool = False


def _workbook(making: Making) -> Iterator[PackFile]:
    """Yield the workbook of the lists of all papers, whichever of them are chosen."""
    yield workbook_file(making, lambda: listings_of(making))


ALL_PAPERS = (
    JobPaper(
        "cover",
        "Cover sheet",
        "the boards to scale, and what to know first",
        cover_papers,
        only_draws=True,
        lists_others=True,
    ),
    JobPaper("template", "Drilling template", "full size, to punch through", template_papers, only_draws=True),
    JobPaper("back", "Back template", "mirrored, for what is worked from the back", back_papers, only_draws=True),
    JobPaper("holes", "Hole schedule", "every hole by bit, to drill and tick", hole_papers),
    JobPaper("cables", "Cable cut list", "every cable to cut, press and fit", cable_papers),
    JobPaper("cutting", "Cutting plan", "from which reel or length each piece comes", cutting_papers),
    JobPaper("labels", "Label sheet", "both ends of every cable, components, fuses", label_papers),
    JobPaper("materials", "Bill of materials", "what to buy, for each supply counter", material_papers),
    JobPaper("load-out", "Load-out list", "what goes along, by box, to tick twice", load_out_papers),
    JobPaper("re-measure", "Re-measure list", "dimensions to measure again on arrival", re_measure_papers),
    JobPaper("fuses", "Fuse schedule", "every fuse and breaker, what it protects, what to ask", fuse_papers),
    JobPaper("torque", "Torque list", "every stud and clamp to tighten and mark", torque_papers),
    JobPaper("shut-off", "Shut-off card", "to laminate: emergency, off, on", shut_off_papers),
    JobPaper("tests", "Test record", "to fill in and sign when the job is put to work", record_papers),
    JobPaper(
        "customer",
        "Sheets for the customer",
        "battery trays and blocking to build before",
        customer_papers,
        only_draws=True,
    ),
    JobPaper("findings", "Findings", "what is open and what was accepted", findings_papers),
    JobPaper("dxf", "Board as DXF", "for machines: layers to cut and to drill, in mm", dxf_papers, only_draws=True),
    JobPaper("svg", "Board as SVG", "true to size, for browsers and drawing programs", svg_papers, only_draws=True),
    JobPaper("workbook", "Workbook", "every list as a sheet, to sort and to price", _workbook, only_draws=True),
    JobPaper("picture", "Picture", "each board as it will look, to send", picture_papers, only_draws=True),
)
"""Each with what a reader of the command's help sees."""


def files_of(making: Making, chosen: Collection[str] = ()) -> Iterator[PackFile]:
    """Yield the files of the papers chosen by key, of all where none is."""
    wanted = [paper for paper in ALL_PAPERS if not chosen or paper.key in chosen]
    for paper in wanted:
        yield from _beside(paper, making, wanted) if paper.lists_others else _files(paper, making)


def paper_files(making: Making, key: str) -> tuple[PackFile, ...]:
    """Return the files of one paper as they are in a whole pack."""
    paper = next(each for each in ALL_PAPERS if each.key == key)
    return _beside(paper, making, ALL_PAPERS) if paper.lists_others else _files(paper, making)


def _beside(paper: JobPaper, making: Making, wanted: Sequence[JobPaper]) -> tuple[PackFile, ...]:
    """Return the files of a paper that lists those of others."""
    others = (each for each in wanted if not each.lists_others)
    beside = tuple(file for each in others for file in _files(each, making))
    return tuple(paper.files(replace(making, beside=beside)))


def listings_of(making: Making) -> Iterator[Listing]:
    """Yield every list of every paper."""
    for paper in ALL_PAPERS:
        if not paper.only_draws:
            yield from (file.listing for file in _files(paper, making) if file.listing)


def _files(paper: JobPaper, making: Making) -> tuple[PackFile, ...]:
    return making.once(f"files of {paper.key}", lambda: tuple(paper.files(making)))
