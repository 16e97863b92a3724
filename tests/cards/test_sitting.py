"""The order of a sitting, by examples."""

from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID

from cards.answers import Grade
from cards.digest import Digest, Point
from cards.items import KeptItem, items_of
from cards.kinds.base import KindName
from cards.schedule import Memory, Schedule
from cards.sitting import Candidate, compose, let_in
from tests.cards.digests import WHOLE, commitment, kept

DAY = date(2026, 3, 10)
SCHEDULE = Schedule()
DIGEST = kept()
OTHER = kept(Digest("Other", theme="Whales swim north", points=(Point("One"),)), start=500)


def memory(stability=10.0, *, days_ago=10, grade=Grade.CLEAR):
    """Return a memory last answered some days ago."""
    last = DAY - timedelta(days=days_ago)
    return Memory(stability, 5.0, last, last, grade, 1, DAY)


def candidate(kind, number=1, remembered=None, digest=DIGEST):
    """Return the item of a kind and number, with its memory."""
    item = next(i for i in items_of(digest) if i.kind is kind and i.number == number)
    return Candidate(KeptItem(item, remembered), digest)


def names(candidates):
    """Return kinds and numbers, for comparison."""
    return [(each.kept.item.kind.value, each.kept.item.number) for each in candidates]


def composed(called, unasked=()):
    """Compose a day's sitting and return kinds and numbers."""
    return names(compose(called, unasked, DAY, SCHEDULE))


def test_the_most_at_risk_comes_first():
    """By the recall predicted for the day, the lowest first."""
    called = [
        candidate(KindName.RESTATE, 1, memory(30.0)),
        candidate(KindName.RESTATE, 2, memory(3.0)),
        candidate(KindName.RESTATE, 3, memory(10.0)),
    ]
    assert composed(called) == [("restate", 2), ("restate", 3), ("restate", 1)]


def test_unasked_items_come_after_what_is_due():
    """What could be forgotten goes before what was never known, whatever the order given."""
    due = [candidate(KindName.RESTATE, 3, memory())]
    fresh = [candidate(KindName.RESTATE, 2), candidate(KindName.RESTATE, 1)]
    assert composed(due, fresh) == [("restate", 3), ("restate", 2), ("restate", 1)]


def test_placing_comes_after_the_theme_whose_points_it_shows():
    """However urgent the placing is, the theme is asked first; other items keep their order."""
    called = [
        candidate(KindName.PLACE, 1, memory(1.0)),
        candidate(KindName.RESTATE, 1, memory(5.0)),
        candidate(KindName.THEME, 1, memory(50.0)),
    ]
    assert composed(called) == [("theme", 1), ("place", 1), ("restate", 1)]


def test_an_unasked_theme_too_comes_before_the_placing():
    """What is let in unasked is still to be asked."""
    called = [candidate(KindName.PLACE, 1, memory(1.0))]
    assert composed(called, [candidate(KindName.THEME)]) == [("theme", 1), ("place", 1)]


def test_what_came_back_blank_comes_round_at_the_end():
    """Blank earlier today: after everything that gives nothing away of it."""
    blank = memory(0.2, days_ago=0, grade=Grade.BLANK)
    called = [
        candidate(KindName.RESTATE, 1, blank),
        candidate(KindName.RESTATE, 2, memory(30.0)),
    ]
    assert composed(called, [candidate(KindName.RESTATE, 3)]) == [
        ("restate", 2),
        ("restate", 3),
        ("restate", 1),
    ]


def test_a_placing_waits_for_the_theme_that_comes_round_again():
    """A theme that came back blank is still to be asked, so its points are not shown till then."""
    blank = memory(0.2, days_ago=0, grade=Grade.BLANK)
    called = [
        candidate(KindName.THEME, 1, blank),
        candidate(KindName.PLACE, 1, memory(1.0)),
        candidate(KindName.RESTATE, 1, memory(5.0)),
    ]
    fresh = [candidate(KindName.PLACE, 2)]
    assert composed(called, fresh) == [("restate", 1), ("theme", 1)]
    assert composed(called[1:], fresh) == [("place", 1), ("restate", 1), ("place", 2)]


def test_among_what_comes_round_again_nothing_is_given_away_either():
    """A blank placing comes after the blank theme, however much more at risk."""
    called = [
        candidate(KindName.PLACE, 1, memory(0.1, days_ago=0, grade=Grade.BLANK)),
        candidate(KindName.THEME, 1, memory(90.0, days_ago=0, grade=Grade.BLANK)),
    ]
    assert composed(called) == [("theme", 1), ("place", 1)]


def test_a_commitment_cued_by_a_point_comes_after_the_theme():
    """Its cue shows a stage of the theme."""
    points = (Point("Vanity hears itself alone"),)
    digest, _ = commitment("Praise a rival (point 1)", points=points, theme="Pride falls at last")
    called = [
        candidate(KindName.RESTATE, 1, memory(1.0), digest),
        candidate(KindName.THEME, 1, memory(9.0), digest),
    ]
    assert composed(called) == [("theme", 1), ("restate", 1)]


def test_books_do_not_wait_for_each_other():
    """Only what shows the same book's parts is held back."""
    called = [
        candidate(KindName.PLACE, 1, memory(1.0)),
        candidate(KindName.THEME, 1, memory(9.0), OTHER),
    ]
    assert composed(called) == [("place", 1), ("theme", 1)]


def test_a_day_without_items_is_empty():
    """Nothing called, nothing let in, nothing asked."""
    assert composed([]) == []


def test_all_kinds_are_let_in_in_turn():
    """One of each kind, then again, while there are places."""
    unasked = [KeptItem(item, None) for item in items_of(DIGEST)]
    chosen = let_in(unasked, 5, {})
    assert [each.item.kind.value for each in chosen] == [
        "theme",
        "restate",
        "place",
        "restate",
        "place",
    ]
    assert len(let_in(unasked, 100, {})) == len(unasked)


def test_a_days_items_are_the_same_however_far_the_sitting_has_come():
    """Answering the first of them leaves the others as they were, of every kind."""
    unasked = [KeptItem(item, None) for item in items_of(DIGEST)]
    more_themes = [
        KeptItem(replace(unasked[0].item, id=UUID(int=number)), None) for number in range(1, 9)
    ]
    waiting = [*unasked[:1], *more_themes, *unasked[1:]]
    first, *others = let_in(waiting, 6, {})
    rest = [each for each in waiting if each != first]
    assert let_in(rest, 6, {first.item.kind: 1}) == others


def test_without_places_nothing_is_let_in():
    """No places, or fewer than none."""
    unasked = [KeptItem(item, None) for item in items_of(kept(WHOLE))]
    assert let_in(unasked, 0, {}) == []
    assert let_in(unasked, -3, {}) == []
