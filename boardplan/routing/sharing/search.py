"""Channel sharing, the search: ever better answers, each with a bound that no answer can beat."""

import math
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice
from typing import TYPE_CHECKING

from boardplan.routing.sharing.dive import dived
from boardplan.routing.sharing.exchange import Exchange
from boardplan.routing.sharing.laid import bettered, costs_alone, laid_one_by_one, thickest_first
from boardplan.routing.sharing.network import Network, Wish
from boardplan.routing.sharing.sharing import Chosen, Loads, Sharing, cost_of

if TYPE_CHECKING:
    from boardplan.routing.sharing.prices import Prices

_FIRST = 12
"""How many rounds of the linear program come before its prices guide ways; the others come in between."""
_TURNS = 5
"""How many lots of exchanges there are to a round of the linear program."""
PROVEN = 1e-3
"""An answer that costs no more than this above the bound is the best there is, in mm."""


@dataclass(frozen=True, slots=True)
class Work:
    """How much work to put in, counted in steps and never in seconds, so that answers are the same anywhere.

    `rounds` of the linear program, `tries` at laying a few cables anew in lots of 400.
    """

    rounds: int = 200
    tries: int = 40


def sharings(network: Network, wishes: Sequence[Wish], work: Work = Work()) -> Iterator[Sharing]:
    """Yield ever better answers, or the same one with a better bound; the first within a moment.

    First the cables one after the other; then the linear program over whole ways; then exchanges of a few cables.
    """
    alone = costs_alone(network, wishes)
    chosen = laid_one_by_one(network, wishes, thickest_first(wishes))
    best = Sharing(chosen, cost_of(wishes, chosen), math.fsum(alone))
    yield best
    best = _better(best, wishes, bettered(network, wishes, chosen, alone))
    yield best
    if best.saving_left > PROVEN:
        yield from _priced(network, wishes, work, alone, best)


def _priced(
    network: Network, wishes: Sequence[Wish], work: Work, alone: Sequence[float], best: Sharing
) -> Iterator[Sharing]:
    """Yield answers guided by prices; bounds get closer with every second one."""
    from boardplan.routing.sharing.prices import Prices  # noqa: PLC0415 - slow to load

    prices = Prices(network, wishes)
    for number, path in enumerate(best.chosen):
        prices.add(number, path)
    rounds = _rounds(prices, work.rounds)
    for bound in _first(prices, rounds):
        best = replace(best, bound=max(best.bound, bound))
        yield best
        if best.saving_left <= PROVEN:
            return
    for tried in _rounded(prices, alone):
        best = _better(best, wishes, tried)
        yield best
    exchange = _exchange(prices, best.chosen, alone)
    for number, tried in enumerate(exchange.answers(work.tries, _starts(prices, exchange, alone))):
        best = _better(best, wishes, tried)
        if number % _TURNS == 0:
            best = replace(best, bound=max(best.bound, next(rounds, best.bound)))
            _tell(prices, exchange)
        yield best
        if best.saving_left <= PROVEN:
            return


def _first(prices: "Prices", rounds: Iterator[float]) -> Iterator[float]:
    """Yield the bounds of the rounds that come before prices guide ways: those that are quick."""
    for bound in islice(rounds, _FIRST):
        yield bound
        if prices.slow:
            return


def _exchange(prices: "Prices", chosen: Chosen, alone: Sequence[float]) -> Exchange:
    """Return exchanges of a few cables at a time, on ways that prices or answers have shown."""
    for number, path in enumerate(chosen):
        prices.add(number, path)
    pools = [tuple(each.values()) for each in prices.pool]
    return Exchange(Loads(prices.network, prices.wishes, chosen), pools, alone)


def _starts(prices: "Prices", exchange: Exchange, alone: Sequence[float]) -> Iterator[Chosen]:
    """Yield answers to begin exchanges at: what the linear program comes to when made whole, then the best, in turn."""
    chance = random.Random(0)  # noqa: S311 - the same for everybody
    while True:
        yield bettered(prices.network, prices.wishes, dived(prices, chance), alone)
        yield exchange.best


def _tell(prices: "Prices", exchange: Exchange) -> None:
    """Let exchanges know the ways that prices have shown since."""
    for number, paths in enumerate(prices.pool):
        for path in paths.values():
            exchange.learn(number, path)


def _rounds(prices: "Prices", most: int) -> Iterator[float]:
    """Yield the bound after each round of the linear program, as long as another may change anything."""
    for _ in range(most):
        on = prices.improve()
        yield prices.bound
        if not on:
            return


def _rounded(prices: "Prices", alone: Sequence[float]) -> Iterator[Chosen]:
    """Yield answers with the cables laid first of which the linear program is surest."""
    network, wishes = prices.network, prices.wishes
    shares = [max(each.values(), default=0.0) for each in prices.shares]
    order = sorted(range(len(wishes)), key=lambda each: (-shares[each], -wishes[each].area, wishes[each].cable))
    for of_pieces in (prices.of_pieces(), None):
        yield bettered(network, wishes, laid_one_by_one(network, wishes, order, of_pieces), alone)


def _better(best: Sharing, wishes: Sequence[Wish], chosen: Chosen) -> Sharing:
    cost = cost_of(wishes, chosen)
    return Sharing(chosen, cost, best.bound) if cost < best.cost else best
