"""End work: what has to be done to each end of a cable, from the terminal it lands on.

EndWork fields: place (words), sort (terminal sort, "exit" or "off-board"), stage ("shop" or "site"),
raw (left uncut), lug (words, "" where none), stud (thread of the lug's hole), clocking (degrees), clock (the same as
on a clock's face, "" where nothing is said), deduction (mm from the stud's centre to the wire stop), strip (mm or
None), tube (mm of heat-shrink to cut, or None), ferrule, blade (a blade terminal goes on).
"""

import math
from dataclasses import dataclass
from typing import Literal, TypeAlias

from boardplan.model.cable import Cable, CableEnd, ExitEnd, Lug, OffBoardEnd, TerminalEnd
from boardplan.model.component_kind import Stage, Terminal, TerminalSort
from boardplan.model.conductor import AngledLug, Conductor, LugMeasures
from boardplan.model.plan import Plan
from boardplan.model.rule_set import RuleSet

EndSort: TypeAlias = TerminalSort | Literal["exit", "off-board"]


@dataclass(frozen=True, slots=True)
class EndWork:
    """An end of a cable: where it lands, what goes on it, and how much shorter the lug makes the wire, in mm.

    `deduction` is 0 where there is no lug, and where nobody measured the lug: `lug_unknown` then says so. What is known
    of a conductor's straight lug is not true of an angled one.
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
    clock: str = ""
    tube: float | None = None
    blade: bool = False

    @property
    def lugged(self) -> bool:
        """Whether a lug is crimped on."""
        return bool(self.lug)

    @property
    def tightened(self) -> bool:
        """Whether it lands under a nut or in a clamp, so that it has a torque and a line in the torque list."""
        return self.sort in ("stud", "clamp")

    @property
    def stage_words(self) -> str:
        """Where its end is made: in the shop, or on site."""
        if self.raw:
            return "raw, finish on site"
        place = "in shop" if self.stage == "shop" else "on site"
        return f"crimp {place}" if self.lug or self.ferrule or self.blade else self.stage


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
    measures = lug_measures(plan.rules, conductor, lug) if lugged else None
    return EndWork(
        place=f"{end.component}.{end.terminal}",
        sort=terminal.sort,
        stage=end.stage or component.stage or kind.stage,
        lug=lug_words(conductor, lug) if lugged else "",
        stud=lug.stud if lugged else "",
        clocking=lug.clocking if lugged else 0.0,
        deduction=measures.stop if measures else 0.0,
        strip=_strip(plan.rules, terminal, conductor, measures),
        ferrule=terminal.sort == "clamp" and not conductor.stock_lengths,
        lug_unknown=lugged and measures is None,
        tube=tube_length(plan.rules, measures.barrel) if measures else None,
        blade=terminal.sort == "blade" and not conductor.stock_lengths,
    )


def lug_measures(rules: RuleSet, conductor: Conductor, lug: Lug) -> LugMeasures | AngledLug | None:
    """Return what is known of a lug, none where nobody measured it; an edition with flat lengths knows no angles."""
    if lug.form == "straight" or conductor.lug is None:
        return conductor.lug
    return conductor.lug.angled_lug(lug.form) if rules.knows("slope-counts-from") else None


def _strip(
    rules: RuleSet, terminal: Terminal, conductor: Conductor, measures: LugMeasures | AngledLug | None
) -> float | None:
    """Return how far the insulation comes off, in mm: the lug's where there is one, the conductor's else.

    An angled lug takes the depth of its barrel and a little more, so that copper just shows.
    """
    if conductor.stock_lengths:
        return None
    if isinstance(measures, AngledLug):
        return measures.barrel + rules.value("strip-past-barrel")
    if terminal.sort == "stud" and conductor.lug:
        return None if measures is None and rules.knows("strip-past-barrel") else conductor.lug.strip
    return conductor.strip


def tube_length(rules: RuleSet, barrel: float) -> float | None:
    """Return how long to cut a heat-shrink tube over a barrel, in whole mm; none under an edition that doesn't say.

    It covers the barrel and some jacket once it has shrunk lengthwise: barrel + 25 mm, and a tenth more.
    """
    if not rules.knows("tube-over-jacket"):
        return None
    covered = barrel + rules.value("tube-over-jacket")
    return float(math.ceil(covered * (1 + rules.value("tube-shrinks") / 100) - 1e-9))


def lug_words(conductor: Conductor, lug: Lug) -> str:
    """Return a lug as it is ordered: conductor size x stud, form.

    >>> lug_words(Conductor("70", "70 mm²", 70, 16), Lug("M10"))
    '70 mm² x M10 straight'
    """
    form = lug.form if lug.form == "straight" else f"{lug.form}°"
    return f"{size_words(conductor)} x {lug.stud or '?'} {form}"


def core_words(conductor: Conductor) -> str:
    """Return the size of one core in words, as ferrules are sold: 1.5 mm², or the name where there is none."""
    return conductor.name if conductor.area is None else f"{conductor.area:g} mm²"


def size_words(conductor: Conductor) -> str:
    """Return a conductor's size in words: 70 mm², 3 x 6 mm², or its name where it has no cross-section."""
    if conductor.area is None:
        return conductor.name
    cores = f"{conductor.cores} x " if conductor.cores > 1 else ""
    return f"{cores}{conductor.area:g} mm²"
