"""Boards whose exchange files are read back: the samples, and random ones with holes of all sorts in them."""

import random
from dataclasses import replace

from boards import honey_trailer, library_bus, lookout_cabin
from random_plans import random_plan

from boardplan.files.shelf_file import bundled_shelf
from boardplan.geometry.point import Point
from boardplan.model.board import BoardFixing
from boardplan.model.component_kind import MountingHole

SAMPLES = {"library bus": library_bus, "lookout cabin": lookout_cabin, "honey trailer": honey_trailer}
NAMES = (*SAMPLES, "random 3", "random 11")


def plan_named(name):
    return SAMPLES[name]() if name in SAMPLES else drilled_plan(int(name.split()[1]))


def drilled_plan(seed):
    """A random board with holes near the corners of its kinds, one kind with a fastener that nobody knows."""
    chance = random.Random(f"holes {seed}")
    plan, shelf = random_plan(seed), bundled_shelf()
    fasteners = list(shelf.fasteners)
    kinds = {}
    for index, kind in enumerate(plan.kinds.values()):
        box = kind.box
        inset = chance.uniform(6.0, 12.0)
        places = [Point(box.left + inset, box.bottom + inset), Point(box.right - inset, box.top - inset)]
        fastener = "" if index == 0 else chance.choice(fasteners)
        stage = chance.choice(("shop", "site"))
        kinds[kind.id] = replace(
            kind, holes=tuple(MountingHole(at) for at in places), fastener=fastener, stage=stage, art=()
        )
    fixings = [BoardFixing(f"BF-{n}", "A", Point(9.5 + 31.7 * n, 11.3), 6.5) for n in range(4)]
    return replace(plan, kinds=kinds, fasteners=dict(shelf.fasteners)).with_things(fixings)
