"""Papers: the table of all papers of a job, in the order in which a pack holds them."""

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, replace

from boardplan.output.back.back_papers import back_papers
from boardplan.output.cables.cable_papers import cable_papers
from boardplan.output.cover.cover_papers import cover_papers
from boardplan.output.customer.customer_papers import customer_papers
from boardplan.output.cutting.cutting_papers import cutting_papers
from boardplan.output.findings.findings_papers import findings_papers
from boardplan.output.holes.hole_papers import hole_papers
from boardplan.output.labels.label_papers import label_papers
from boardplan.output.making import Making, PackFile
from boardplan.output.template.template_papers import template_papers


@dataclass(frozen=True, slots=True)
class JobPaper:
    """One paper: its key for commands, its name, what a crew does with it, the files it comes as.

    A paper that `lists_others` is made last, beside the files of all others.
    """

    key: str
    name: str
    use: str
    files: Callable[[Making], Iterator[PackFile]]
    lists_others: bool = False


ALL_PAPERS = (
    JobPaper("cover", "Cover sheet", "the boards to scale, and what to know first", cover_papers, lists_others=True),
    JobPaper("template", "Drilling template", "full size, to punch through", template_papers),
    JobPaper("back", "Back template", "mirrored, for what is worked from the back", back_papers),
    JobPaper("holes", "Hole schedule", "every hole by bit, to drill and tick", hole_papers),
    JobPaper("cables", "Cable cut list", "every cable to cut, press and fit", cable_papers),
    JobPaper("cutting", "Cutting plan", "from which reel or length each piece comes", cutting_papers),
    JobPaper("labels", "Label sheet", "both ends of every cable, components, fuses", label_papers),
    JobPaper("customer", "Sheets for the customer", "battery trays and blocking to build before", customer_papers),
    JobPaper("findings", "Findings", "what is open and what was accepted", findings_papers),
)
"""Each with what a reader of the command's help sees."""


def files_of(making: Making, chosen: Collection[str] = ()) -> Iterator[PackFile]:
    """Yield the files of the papers chosen by key, of all where none is."""
    wanted = [paper for paper in ALL_PAPERS if not chosen or paper.key in chosen]
    made = {paper.key: tuple(paper.files(making)) for paper in wanted if not paper.lists_others}
    beside = tuple(file for files in made.values() for file in files)
    for paper in wanted:
        yield from paper.files(replace(making, beside=beside)) if paper.lists_others else made[paper.key]
