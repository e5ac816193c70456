"""Board picture: a whole job on its wall, everything in the order it lies."""

from collections.abc import Iterator, Mapping

from boardplan.drawing.board_sheet_picture import board_sheet_picture
from boardplan.drawing.cable_picture import cable_picture
from boardplan.drawing.channel_picture import channel_base_picture, channel_cover_picture
from boardplan.drawing.clamp_picture import clamp_picture
from boardplan.drawing.component_picture import placed_component_picture
from boardplan.drawing.opening_picture import exit_picture, fixing_picture
from boardplan.drawing.picture import Picture, placed_picture
from boardplan.drawing.retainer_picture import retainer_picture
from boardplan.drawing.wall_picture import back_part_picture, framing_picture, no_go_picture
from boardplan.geometry.placement import Placement
from boardplan.model.placed import placed
from boardplan.model.plan import Plan
from boardplan.routing.channels.channel_lanes import drawn_beside_each_other
from boardplan.routing.route import Route, Way
from boardplan.routing.supports.clamp import Clamp, own_clamps
from boardplan.routing.supports.clamps import clamps_of
from boardplan.routing.supports.retainers import retainers_of


def board_picture(plan: Plan, ways: Mapping[str, Way]) -> Picture:
    """Return all of a job in wall coordinates, from the sheets to what lies on top."""
    return tuple(mark for _, picture in pictures_in_order(plan, ways) for mark in picture)


def pictures_in_order(plan: Plan, ways: Mapping[str, Way]) -> Iterator[tuple[str, Picture]]:
    """Yield each thing's id and picture in wall coordinates, the lowest first.

    A channel comes twice: its base below the cables in it, its cover above them, and between them its retainers, if
    it has any. The clamps of a cable come under its id once more, above all cables.
    """
    yield from _sheets(plan)
    for channel in plan.channels.values():
        yield channel.id, on_wall(plan, channel.board, channel_base_picture(channel))
    for component in plan.components.values():
        yield component.id, on_wall(plan, component.board, placed_component_picture(placed(plan, component)))
    clamps, retainers = clamps_of(plan, ways), retainers_of(plan, ways)
    ways = drawn_beside_each_other(plan, ways)
    yield from _cables(plan, ways, clamps, in_channel=True)
    for name, those in retainers.items():
        yield name, tuple(mark for each in those for mark in retainer_picture(plan.channels[name], each))
    for channel in plan.channels.values():
        if channel.cover:
            yield channel.id, on_wall(plan, channel.board, channel_cover_picture(channel))
    yield from _cables(plan, ways, clamps, in_channel=False)
    for clamp in own_clamps(clamps):
        yield clamp.cables[0], clamp_picture(clamp)
    for box in plan.no_go_boxes.values():
        yield box.id, on_wall(plan, box.board, no_go_picture(box))


def on_wall(plan: Plan, board: str, picture: Picture) -> Picture:
    """Return a picture in board coordinates as it lies on the wall."""
    return placed_picture(picture, Placement(0.0, plan.boards[board].position))


def _sheets(plan: Plan) -> Iterator[tuple[str, Picture]]:
    for board in plan.boards.values():
        yield board.id, on_wall(plan, board.id, board_sheet_picture(board))
    for framing in plan.framing.values():
        yield framing.id, on_wall(plan, framing.board, framing_picture(framing, plan.boards[framing.board]))
    for part in plan.back_parts.values():
        yield part.id, on_wall(plan, part.board, back_part_picture(part))
    for way_out in plan.exits.values():
        yield way_out.id, on_wall(plan, way_out.board, exit_picture(way_out, plan.boards[way_out.board]))
    for fixing in plan.fixings.values():
        yield fixing.id, on_wall(plan, fixing.board, fixing_picture(fixing))


def _cables(
    plan: Plan, ways: Mapping[str, Way], clamps: Mapping[str, tuple[Clamp, ...]], *, in_channel: bool
) -> Iterator[tuple[str, Picture]]:
    """Yield the cables that lie in channels, or those that don't, the thick ones first."""
    thick_first = sorted(plan.cables.values(), key=lambda each: -plan.conductors[each.conductor].outside_diameter)
    for cable in thick_first:
        way = ways.get(cable.id)
        if isinstance(way, Route) and bool(way.in_channels) == in_channel:
            yield cable.id, cable_picture(plan, cable, way, clamps.get(cable.id, ()))
