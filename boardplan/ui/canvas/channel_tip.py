"""Channel tip: what lies in the section of a channel under the pointer - how full it is, which cables."""

from html import escape

from boardplan.editing.known import Known
from boardplan.geometry.bends import straight_length
from boardplan.geometry.nearest import distance_to_line, nearest_on_leg
from boardplan.geometry.point import Point
from boardplan.geometry.units import length_text, tidy_number
from boardplan.model.channel import Channel
from boardplan.model.plan import Plan
from boardplan.routing.channels.channel_fill import Section
from boardplan.ui.words import counted, tr


def channel_tip(plan: Plan, known: Known, at: Point) -> str:
    """Return the section of the channel at a place on the wall as rich text, nothing beside all channels."""
    for channel in reversed(list(plan.channels.values())):
        here = plan.off_wall(channel.board, at)
        if distance_to_line(channel.line, here) <= channel.width / 2:
            along = distance_along(channel, here)
            fill = known.fills.get(channel.id)
            sections = fill.sections if fill is not None else ()
            section = next((each for each in sections if each.start <= along <= each.end), None)
            return _as_html(section_lines(plan, channel, section))
    return ""


def distance_along(channel: Channel, at: Point) -> float:
    """Return how far along a channel's line the place nearest to a point is, in mm."""
    best, walked, found = float("inf"), 0.0, 0.0
    for a, b in zip(channel.line, channel.line[1:], strict=False):
        foot = nearest_on_leg(a, b, at)
        if foot.distance_to(at) < best:
            best, found = foot.distance_to(at), walked + a.distance_to(foot)
        walked += a.distance_to(b)
    return min(found, straight_length(channel.line))


def section_lines(plan: Plan, channel: Channel, section: Section | None) -> tuple[str, ...]:
    """Return a section in lines: the channel and how full it is there, from where to where, then its cables."""
    if section is None or not section.cables:
        return (tr("{}: nothing lies in it here").format(channel.id),)
    units = plan.job.units
    lines = [
        tr("{}: {} % full").format(channel.id, tidy_number(section.percent)),
        tr("from {} to {} along it").format(length_text(section.start, units), length_text(section.end, units)),
    ]
    if section.loaded:
        lines.append(counted("%n loaded conductor|%n loaded conductors", section.loaded))
    return (*lines, *(_cable(plan, name) for name in section.cables))


def _cable(plan: Plan, name: str) -> str:
    cable = plan.cables.get(name)
    if cable is None:
        return name
    count = f"{cable.count} x " if cable.count > 1 else ""
    return f"{name}  {count}{plan.conductors[cable.conductor].name}, {cable.colour}"


def _as_html(lines: tuple[str, ...]) -> str:
    return "<br>".join((f"<b>{escape(lines[0])}</b>", *map(escape, lines[1:])))
