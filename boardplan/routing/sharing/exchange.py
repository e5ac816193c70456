"""Channel sharing by exchange: a few cables taken out and laid again in another order, over and over.

Ruin and recreate (Schrimpf and others 2000), accepted as in annealing (Kirkpatrick and others 1983). Each try takes
out a cable that loses by the others, with some that lie in a way it would like, and lays them again one by one.
"""

import math
import random
from bisect import bisect_left, insort
from collections.abc import Iterable, Iterator, Sequence

from boardplan.routing.sharing.network import Path
from boardplan.routing.sharing.sharing import COST_NOISE, ROOM_NOISE, Chosen, Loads

_TRIES = 400
"""How many tries lie between two answers yielded, at most."""
_TRIES_EACH = 25
"""How many for each cable there is."""
_MOST_OUT = 14
_COOLING, _COOLING_MOST, _COOLED_EACH = 10, 40, 6
"""After how many answers the search takes risks again: one for every so many cables, no less and no more than these."""
_RISKS = (0.4, 0.01)
"""How great a loss is taken lightly, first and last, as shares of what a cable costs alone on the average."""
_SEARCHED = 0.15
"""How often a cable looks for a new way instead of one it knows."""


class Exchange:
    """Cables taken out and laid again; the best answer so far is kept."""

    def __init__(
        self, loads: Loads, pools: Sequence[Sequence[Path]], alone: Sequence[float], searched: float = _SEARCHED
    ) -> None:
        """Begin with an answer, the ways known for each cable, and what each would cost alone.

        `searched` is how often a cable looks for a way that is not known yet.
        """
        self._searched, self._tries = searched, min(_TRIES, _TRIES_EACH * len(pools))
        self._loads, self._alone = loads, alone
        self._chance = random.Random(0)  # noqa: S311 - the same for everybody
        self._pools = [sorted((path.cost, path.pieces, path) for path in pool) for pool in pools]
        self._wishes = loads.wishes
        self._cost = sum(map(loads.cost, range(len(self._wishes))))
        self._unit = sum(alone) / max(1, len(alone))
        self._losing: list[int] = []
        self._note_losing(range(len(self._wishes)))
        self.best, self._best_cost = tuple(loads.chosen), self._cost

    def learn(self, number: int, path: Path) -> None:
        """Note another way of a cable, if it is not known."""
        if all(path.pieces != pieces for _, pieces, _ in self._pools[number]):
            insort(self._pools[number], (path.cost, path.pieces, path))

    def answers(self, rounds: int, starts: Iterator[Chosen] | None = None) -> Iterator[Chosen]:
        """Yield the best answer after each round of tries; `starts` are where to take risks again, else at the best."""
        cooling = min(rounds, max(_COOLING, min(_COOLING_MOST, len(self._wishes) // _COOLED_EACH)))
        for number in range(rounds):
            cooled = (number % cooling) / (cooling - 1) if cooling > 1 else 1.0
            risk = self._unit * _RISKS[0] ** (1 - cooled) * _RISKS[1] ** cooled
            for _ in range(self._tries):
                self._try(risk)
            yield self.best
            if number % cooling == cooling - 1 and number + 1 < rounds:
                self._begin_at(next(starts) if starts else self.best)

    def _begin_at(self, chosen: Chosen) -> None:
        for number in range(len(chosen)):
            self._loads.lay(number, None)
        for number, path in enumerate(chosen):
            self._loads.lay(number, path)
            if path:
                self.learn(number, path)
        self._cost = sum(map(self._loads.cost, range(len(chosen))))
        self._note_losing(range(len(chosen)))
        self._note_best()

    def _note_best(self) -> None:
        if self._cost < self._best_cost - COST_NOISE:
            self.best, self._best_cost = tuple(self._loads.chosen), self._cost

    def _note_losing(self, cables: Iterable[int]) -> None:
        """Note which of some cables lose by the others now; all that do are kept in order."""
        losing = self._losing
        for each in cables:
            at = bisect_left(losing, each)
            known = at < len(losing) and losing[at] == each
            loses = self._loads.cost(each) > self._alone[each] + COST_NOISE
            if loses and not known:
                losing.insert(at, each)
            elif known and not loses:
                del losing[at]

    def _try(self, risk: float) -> None:
        loads, chance = self._loads, self._chance
        if not self._losing:
            return
        out = self._taken_out(chance.choice(self._losing))
        held = [(each, loads.chosen[each]) for each in out]
        before = sum(map(loads.cost, out))
        for each in out:
            loads.lay(each, None)
        for each in self._order(out):
            loads.lay(each, self._laid(each))
        more = sum(map(loads.cost, out)) - before
        if more > -risk * math.log(1 - chance.random()):
            for each in out:
                loads.lay(each, None)
            for each, path in held:
                loads.lay(each, path)
            return
        self._note_losing(out)
        self._cost += more
        self._note_best()

    def _taken_out(self, first: int) -> list[int]:
        """Return a cable and some that lie in a way it would like."""
        chance, pool = self._chance, self._pools[first]
        pieces = pool[min(int(chance.expovariate(0.7)), len(pool) - 1)][1] if pool else ()
        others = sorted({each for piece in pieces for each in self._loads.inside[piece]} - {first})
        count = min(len(others), chance.randint(1, _MOST_OUT))
        return [first, *chance.sample(others, count)]

    def _order(self, out: list[int]) -> list[int]:
        """Return in which order to lay cables again: as they are, by chance, by area, by what is at stake."""
        chance, wishes = self._chance, self._wishes
        sort = chance.random()
        if sort < 0.35:  # noqa: PLR2004 - shares of the orders tried
            return out
        chance.shuffle(out)
        if sort < 0.6:  # noqa: PLR2004
            out.sort(key=lambda each: -wishes[each].area)
        elif sort < 0.85:  # noqa: PLR2004
            out.sort(key=lambda each: (self._alone[each] - wishes[each].outside) / wishes[each].area)
        return out

    def _laid(self, number: int) -> Path | None:
        """Return the least way that fits: one of those known, at times one looked for."""
        loads, wish = self._loads, self._wishes[number]
        if self._chance.random() < self._searched:
            path = loads.least(number)
            if path:
                self.learn(number, path)
            return path
        area, left = wish.area - ROOM_NOISE, loads.left
        for _, pieces, path in self._pools[number]:
            for piece in pieces:
                if left[piece] < area:
                    break
            else:
                if self._chance.random() > 0.02:  # noqa: PLR2004 - blinks
                    return path
        return None
