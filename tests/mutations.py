"""Mutations: a sound job file broken in one of the ways that hands and programs break files."""

import copy
import json

from hypothesis import strategies as st

WRONG = ("abc", None, [], {}, True, -1e9, float("nan"), float("inf"), 1e300, 10**400, [1, "x"], {"x": 1})


def _places(value, path=()):
    """Yield the path of every value below the top."""
    inner = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, each in inner:
        yield (*path, key)
        yield from _places(each, (*path, key))


def _at(data, path):
    for step in path:
        data = data[step]
    return data


def _unknown_field(data, path, draw):
    target = _at(data, path)
    group = target if isinstance(target, dict) else _at(data, path[:-1])
    if not isinstance(group, dict):
        return False
    group["surprise"] = draw(st.sampled_from([1, "x", None]))
    return True


def _missing_field(data, path, _draw):
    group = _at(data, path[:-1])
    required = {"id", "board", "kind", "from", "to", "conductor", "at", "line", "title", "rule_set", "format", "boards"}
    if not isinstance(group, dict) or path[-1] not in required:
        return False
    del group[path[-1]]
    return True


def _wrong_value(data, path, draw):
    holder, key = _at(data, path[:-1]), path[-1]
    old = holder[key]
    # a list may be empty and a whole group is not a number: replace only single values
    if isinstance(old, (dict, list)):
        holder[key] = draw(st.sampled_from(["abc", 7, True]))
        return True
    wrong = draw(st.sampled_from(WRONG))
    if isinstance(old, str) and isinstance(wrong, str):
        return False
    if wrong is None and key not in {"id", "board", "kind", "at"}:
        return False
    if isinstance(old, bool) and isinstance(wrong, bool):
        return False
    holder[key] = wrong
    return True


def _dangling(data, path, _draw):
    if path[-1] not in {"component", "terminal", "exit", "conductor", "kind", "board"}:
        return False
    holder = _at(data, path[:-1])
    if not isinstance(holder, dict) or not isinstance(holder[path[-1]], str):
        return False
    if path[-1] == "exit" and path[0] == "kinds":
        return False
    holder[path[-1]] = "no such thing"
    return True


def _doubled(data, path, _draw):
    holder = _at(data, path[:-1])
    if not isinstance(holder, list) or len(path) != 2 or "id" not in (holder[path[-1]] or {}):
        return False
    holder.append(copy.deepcopy(holder[path[-1]]))
    return True


MUTATIONS = (_unknown_field, _missing_field, _wrong_value, _dangling, _doubled)


@st.composite
def mutated_job(draw, sound):
    """Return the text of a job file that can't be used any more."""
    if draw(st.integers(0, 9)) == 0:
        return sound[: draw(st.integers(0, len(sound) - 3))]
    mutate = draw(st.sampled_from(MUTATIONS))
    data = json.loads(sound)
    places = list(_places(data))
    start = draw(st.integers(0, len(places) - 1))
    for offset in range(len(places)):
        if mutate(data, places[(start + offset) % len(places)], draw):
            return json.dumps(data)
    raise AssertionError(f"{mutate.__name__} found no place")
