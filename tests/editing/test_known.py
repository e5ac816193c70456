import pickle
from dataclasses import replace

from boardplan.checks.review import refreshed, review_of
from boardplan.editing.component_edits import move_components
from boardplan.editing.known import known_of, news_of, with_news
from boardplan.editing.thing_edits import remove_things
from boardplan.geometry.point import Point


def carried(news):
    """The news as they come out of the other process: equal, but other objects."""
    return pickle.loads(pickle.dumps(news))  # noqa: S301 - made a moment ago


def alike(known, review):
    for name in ("ways", "lengths", "fills", "clamps"):
        assert dict(getattr(known, name)) == dict(getattr(review, name)), name
    assert known.findings == review.findings
    assert known.plan is review.plan


def test_news_make_of_what_was_known_what_a_review_says(bus_plan):
    before = review_of(bus_plan)
    for plan in (
        move_components(bus_plan, ["LP1"], Point(6, 4)),
        remove_things(bus_plan, ["W08", "HB1"]),
        replace(bus_plan, components={}, cables={}, channels={}),
    ):
        after = refreshed(before, plan)
        news = carried(news_of(before, after))
        known = with_news(known_of(before), plan, news)
        alike(known, after)


def test_what_did_not_change_stays_the_same_object(bus_plan):
    before = review_of(bus_plan)
    plan = move_components(bus_plan, ["LP1"], Point(6, 4))
    after = refreshed(before, plan)
    known = with_news(known_of(before), plan, carried(news_of(before, after)))
    still = [name for name, way in after.ways.items() if way is before.ways[name]]
    assert still, "nothing stayed, so nothing is proved"
    assert all(known.ways[name] is before.ways[name] for name in still)


def test_news_of_everything_leave_the_objects_that_are_there(bus_plan):
    review = review_of(bus_plan)
    known = known_of(review)
    again = with_news(known, bus_plan, carried(news_of(None, review)))
    assert all(again.ways[name] is way for name, way in known.ways.items())
    assert again.findings is known.findings
