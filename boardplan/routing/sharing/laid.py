"""Channel sharing, laid by hand: cables one after the other, then those in a bad place moved, others making room."""

from collections.abc import Sequence

from boardplan.routing.sharing.network import NO_WAY, Cost, Network, Path, Wish, least_path
from boardplan.routing.sharing.sharing import COST_NOISE, ROOM_NOISE, Chosen, Loads

_PASSES = 6
"""How often to go over all cables for the better."""
_DEAR = 3.0
"""How much dearer than long a full piece is to a cable that may have others make room."""


def laid_one_by_one(
    network: Network, wishes: Sequence[Wish], order: Sequence[int], prices: Sequence[float] | None = None
) -> Chosen:
    """Return the answer of laying cables in an order, each the least way in the room the ones before left."""
    loads = Loads(network, wishes, [None] * len(wishes))
    for number in order:
        loads.lay(number, loads.least(number, prices))
    return tuple(loads.chosen)


def thickest_first(wishes: Sequence[Wish]) -> list[int]:
    """Return cables by their number, the thickest first, then by name."""
    return sorted(range(len(wishes)), key=lambda each: (-wishes[each].area, wishes[each].cable))


def costs_alone(network: Network, wishes: Sequence[Wish]) -> list[float]:
    """Return what each cable would cost with all channels to itself."""
    found = []
    for wish in wishes:
        path = least_path(network, wish, _free(network, wish))
        found.append(min(wish.outside, path.cost if path else NO_WAY))
    return found


def _free(network: Network, wish: Wish) -> Cost:
    pieces, closed, area = network.pieces, wish.closed, wish.area - ROOM_NOISE
    return lambda each: NO_WAY if each in closed or pieces[each].room < area else pieces[each].length


def bettered(network: Network, wishes: Sequence[Wish], chosen: Sequence[Path | None], alone: Sequence[float]) -> Chosen:
    """Return an answer that costs no more, cables moved one at a time, or one into the place of others.

    `alone` is what each would cost with all channels to itself: those that lose most by the others come first.
    """
    loads = Loads(network, wishes, chosen)
    for _ in range(_PASSES):
        order = sorted(range(len(wishes)), key=lambda each: (alone[each] - loads.cost(each), wishes[each].cable))
        moved = False
        for number in order:
            if loads.cost(number) > alone[number] + COST_NOISE:
                moved |= _moved(loads, number) or _made_room_for(loads, number)
        if not moved:
            break
    return tuple(loads.chosen)


def _moved(loads: Loads, number: int) -> bool:
    """Give a cable the least way in the room left, if that is better than its own."""
    before, held = loads.cost(number), loads.chosen[number]
    loads.lay(number, None)
    loads.lay(number, loads.least(number))
    if loads.cost(number) < before - COST_NOISE:
        return True
    loads.lay(number, held)
    return False


def _made_room_for(loads: Loads, number: int) -> bool:
    """Lay a cable where others lie in its way, and lay those again, if all together that is better."""
    wish, held = loads.wishes[number], loads.chosen[number]
    loads.lay(number, None)
    path = least_path(loads.network, wish, _crowding(loads, wish))
    if path is None or path.cost >= wish.outside:
        loads.lay(number, held)
        return False
    before = {number: held, **_pushed_out(loads, number, path)}
    for other in sorted(before, key=lambda each: (-loads.wishes[each].area, each)):
        if other != number:
            loads.lay(other, loads.least(other))
    cost = sum(_cost(loads.wishes[each], path) for each, path in before.items())
    if sum(map(loads.cost, before)) < cost - COST_NOISE:
        return True
    for other in before:
        loads.lay(other, None)
    for other, path in before.items():
        loads.lay(other, path)
    return False


def _pushed_out(loads: Loads, number: int, path: Path) -> dict[int, Path | None]:
    """Lay a cable and take those out that must leave for it; return how they lay."""
    loads.lay(number, path)
    before = {}
    for piece in path.pieces:
        for other in _leaving(loads, number, piece):
            before[other] = loads.chosen[other]
            loads.lay(other, None)
    return before


def _cost(wish: Wish, path: Path | None) -> float:
    return wish.outside if path is None else path.cost


def _crowding(loads: Loads, wish: Wish) -> Cost:
    """Return what pieces cost a cable if others make room for it."""
    pieces, left, closed, area = loads.network.pieces, loads.left, wish.closed, wish.area - ROOM_NOISE

    def cost(piece: int) -> float:
        if piece in closed or pieces[piece].room < area:
            return NO_WAY
        return pieces[piece].length * (1.0 if left[piece] >= area else _DEAR)

    return cost


def _leaving(loads: Loads, number: int, piece: int) -> list[int]:
    """Return the cables that leave an overfull piece: the thinnest one that is enough, else the thickest first."""
    over = -loads.left[piece] - ROOM_NOISE
    others = sorted((loads.wishes[each].area, each) for each in loads.inside[piece] if each != number)
    found = []
    while over > 0 and others:
        enough = [each for each in others if each[0] >= over]
        gone = enough[0] if enough else others[-1]
        others.remove(gone)
        found.append(gone[1])
        over -= gone[0]
    return found
