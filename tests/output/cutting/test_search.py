"""The bound holds whatever is found, and the search proves small tasks whole."""

from hypothesis import given
from hypothesis import strategies as st

from boardplan.output.cutting.columns import relaxed
from boardplan.output.cutting.filling import filled
from boardplan.output.cutting.knapsack import best_patterns, patterns_worth
from boardplan.output.cutting.search import cheapest, simple_bound
from boardplan.output.cutting.task import Task


@st.composite
def tasks(draw):
    sizes = tuple(sorted(draw(st.sets(st.integers(2, 30), min_size=1, max_size=4)), reverse=True))
    rooms = tuple(sorted(draw(st.sets(st.integers(10, 60), min_size=1, max_size=2)), reverse=True))
    wanted = tuple(draw(st.integers(1, 3)) for _ in sizes)
    counts = tuple(draw(st.integers(1, 3)) for _ in rooms)
    if draw(st.booleans()):
        return Task(sizes, wanted, rooms, counts, 0, sizes)
    return Task(sizes, wanted, rooms, counts, 1, (sum(wanted) + 1,) * len(sizes))


def all_patterns(task, room):
    patterns = [()]
    for size, wanted in zip(task.sizes, task.wanted, strict=True):
        patterns = [(*each, count) for each in patterns for count in range(wanted + 1)]
        patterns = [each for each in patterns if sum(a * b for a, b in zip(task.sizes, each, strict=False)) <= room]
        assert size > 0
    return patterns


def worth_of(pattern, worths):
    return sum(a * b for a, b in zip(pattern, worths, strict=True))


@given(tasks(), st.data())
def test_the_best_pattern_is_the_best_of_all(task, data):
    worths = [data.draw(st.integers(0, 50)) for _ in task.sizes]
    for room, (worth, pattern) in zip(task.rooms, best_patterns(task, worths), strict=True):
        every = all_patterns(task, room)
        assert pattern in every
        assert worth == worth_of(pattern, worths) == max(worth_of(each, worths) for each in every)


@given(tasks(), st.data())
def test_all_full_patterns_worth_enough_are_found(task, data):
    worths = [data.draw(st.integers(0, 50)) for _ in task.sizes]
    least = [data.draw(st.integers(0, 100)) for _ in task.rooms]
    found = patterns_worth(task, worths, least, 10_000)
    expected = set()
    for sort, room in enumerate(task.rooms):
        every = set(all_patterns(task, room))
        more = [tuple(int(i == j) for j in range(len(task.sizes))) for i in range(len(task.sizes))]
        full = {p for p in every if not any(tuple(map(sum, zip(p, one, strict=True))) in every for one in more)}
        expected |= {(sort, each) for each in full if worth_of(each, worths) >= least[sort]}
    assert len(found) == len(set(found))
    assert set(found) == expected


@given(tasks())
def test_bounds_hold_and_small_tasks_are_proven(task):
    found = cheapest(task)
    assert found.least == found.cost == task.cost(found.bars)
    assert simple_bound(task) <= found.cost <= task.cost(filled(task)) <= task.cost(())
    prices = relaxed(task, (), found.cost + task.step).prices
    assert prices.proven <= prices.least(task) <= found.cost
    for bar in found.bars:
        assert task.size_of(bar.pattern) <= task.rooms[bar.sort]
    for sort, count in enumerate(task.counts):
        assert sum(bar.sort == sort for bar in found.bars) <= count
