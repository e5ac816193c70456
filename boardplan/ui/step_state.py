"""Step state: how far each step of the job is, in a few words, and whether anything stands in its way."""

from collections.abc import Mapping
from dataclasses import dataclass

from boardplan.checks.finding import Finding
from boardplan.editing.known import Known
from boardplan.model.plan import Plan
from boardplan.routing.route import NoWay
from boardplan.ui.desk import Step
from boardplan.ui.words import counted, tr


@dataclass(frozen=True, slots=True)
class StepState:
    """The words below a step's name, and the gravest thing that is open in it."""

    words: str
    sign: str = ""


def step_of(plan: Plan, finding: Finding) -> Step:
    """Return the step in which a finding is cleared: the last one that any of its things belongs to."""
    if any(each in plan.cables or each in plan.channels for each in finding.things):
        return "wire"
    if any(each in plan.components for each in finding.things):
        return "place"
    return "survey"


def step_states(plan: Plan, review: Known) -> Mapping[Step, StepState]:
    """Return the state of all four steps."""
    open_findings: dict[Step, list[Finding]] = {"survey": [], "place": [], "wire": []}
    for finding in review.findings:
        if finding.open and finding.severity != "note":
            open_findings[step_of(plan, finding)].append(finding)
    return {
        "survey": _state(_survey_words(plan), open_findings["survey"]),
        "place": _state(_place_words(plan), open_findings["place"]),
        "wire": _state(_wire_words(plan, review), open_findings["wire"]),
        "pack": _pack_state(review),
    }


def _state(words: str, findings: list[Finding]) -> StepState:
    if not findings:
        return StepState(words)
    sign = "stop" if any(each.severity == "stop" for each in findings) else "warn"
    return StepState(tr("{}, {} to clear").format(words, len(findings)), sign)


def _survey_words(plan: Plan) -> str:
    boards = counted("%n board|%n boards", len(plan.boards))
    if not plan.framing:
        return tr("{}, no framing yet").format(boards)
    return tr("{}, {} behind").format(boards, counted("%n member|%n members", len(plan.framing)))


def _place_words(plan: Plan) -> str:
    return counted("%n component|%n components", len(plan.components)) if plan.components else tr("nothing placed yet")


def _wire_words(plan: Plan, review: Known) -> str:
    if not plan.cables:
        return tr("no cable yet")
    cables = counted("%n cable|%n cables", len(plan.cables))
    stuck = sum(isinstance(way, NoWay) for way in review.ways.values())
    return tr("{}, {} without a way").format(cables, stuck) if stuck else cables


def _pack_state(review: Known) -> StepState:
    stops = len(review.stops)
    if stops:
        return StepState(counted("%n thing stops the papers|%n things stop the papers", stops), "stop")
    return StepState(tr("nothing stops the papers"))
