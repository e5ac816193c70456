"""End work: what has to be done to each end of a cable, from the terminal it lands on.

EndWork fields: place (words), sort (terminal sort, "exit" or "off-board"), stage ("shop" or "site"),
raw (left uncut), lug (words, "" where none), stud (thread of the lug's hole), clocking (degrees),
deduction (mm from the stud's centre to the wire stop), strip (mm or None), ferrule.
"""

from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.model.cable import Cable, CableEnd, ExitEnd, Lug, OffBoardEnd, TerminalEnd
from boardplan.model.component_kind import Stage, Terminal, TerminalSort
from boardplan.model.conductor import Conductor
from boardplan.model.plan import Plan

EndSort: TypeAlias = TerminalSort | Literal["exit", "off-board"]


@dataclass(frozen=True, slots=True)
class EndWork:
    """An end of a cable: where it lands, what goes on it, and how much shorter the lug makes the wire, in mm.

    `deduction` is 0 where there is no lug, and where nobody measured the lug: `lug_unknown` then says so. An
    angled lug is never measured: what is known of a conductor's lug is true of the straight one.
    """

    place: str
    sort: EndSort
    stage: Stage
    raw: bool = False
    lug: str = ""
    stud: str = ""
    clocking: float = 0.0
    deduction: float = 0.0
    strip: float | None = None
    ferrule: bool = False
    lug_unknown: bool = False

    @property
    def lugged(self) -> bool:
        """Whether a lug is crimped on."""
        return bool(self.lug)


def work_at_ends(plan: Plan, cable: Cable) -> tuple[EndWork, EndWork]:
    """Return the work at both ends of a cable, first to second."""
    conductor = plan.conductors[cable.conductor]
    return _work(plan, cable.start, conductor), _work(plan, cable.end, conductor)


def _work(plan: Plan, end: CableEnd, conductor: Conductor) -> EndWork:
    if isinstance(end, OffBoardEnd):
        return EndWork(end.name, "off-board", "site", raw=True)
    if isinstance(end, ExitEnd):
        return EndWork(plan.exits[end.exit].name or end.exit, "exit", "site", raw=True)
    return _work_at_terminal(plan, end, conductor)


def _work_at_terminal(plan: Plan, end: TerminalEnd, conductor: Conductor) -> EndWork:
    component = plan.components[end.component]
    kind = plan.kind_of(component)
    terminal = kind.terminal(end.terminal)
    if terminal is None:
        raise KeyError(f"{end.component} has no terminal {end.terminal}")
    lugged = terminal.sort == "stud" and not conductor.stock_lengths
    lug = end.lug or Lug(terminal.size)
    measures = conductor.lug if lug.form == "straight" else None
    return EndWork(
        place=f"{end.component}.{end.terminal}",
        sort=terminal.sort,
        stage=end.stage or component.stage or kind.stage,
        lug=lug_words(conductor, lug) if lugged else "",
        stud=lug.stud if lugged else "",
        clocking=lug.clocking if lugged else 0.0,
        deduction=measures.stop if lugged and measures else 0.0,
        strip=_strip(terminal, conductor),
        ferrule=terminal.sort == "clamp" and not conductor.stock_lengths,
        lug_unknown=lugged and measures is None,
    )


def _strip(terminal: Terminal, conductor: Conductor) -> float | None:
    """Return how far the insulation comes off, in mm: the lug's where there is one, the conductor's else."""
    if conductor.stock_lengths:
        return None
    if terminal.sort == "stud" and conductor.lug:
        return conductor.lug.strip
    return conductor.strip


def lug_words(conductor: Conductor, lug: Lug) -> str:
    """Return a lug as it is ordered: conductor size x stud, form.

    >>> lug_words(Conductor("70", "70 mm²", 70, 16), Lug("M10"))
    '70 mm² x M10 straight'
    """
    form = lug.form if lug.form == "straight" else f"{lug.form}°"
    return f"{size_words(conductor)} x {lug.stud or '?'} {form}"


def size_words(conductor: Conductor) -> str:
    """Return a conductor's size in words: 70 mm², 3 x 6 mm², or its name where it has no cross-section."""
    if conductor.area is None:
        return conductor.name
    cores = f"{conductor.cores} x " if conductor.cores > 1 else ""
    return f"{cores}{conductor.area:g} mm²"
