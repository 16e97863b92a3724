"""The kind `order`: which points are shown, in which order, and what is said of an attempt.

The limits of its grades are checked in `tests/reference/test_inversions.py`.
"""

from dataclasses import replace

import pytest

from cards.answers import Grade
from cards.digest import Digest, Point
from cards.identity import keep
from cards.items import item_id
from cards.kinds.base import Asked, Attempt, KindName, Occasion, order_of
from cards.kinds.order import ORDER
from cards.parts import PartKind
from tests.cards.digests import WHOLE, kept, new_ids

EVENTS = tuple(Point(f"Event {name}") for name in "abcdefghijklmnopqrstuvwxyz")


def occasion(points: int, asked: int = 0, theme: str | None = None) -> Occasion:
    """Return one asking of the order of so many points."""
    digest = kept(Digest("A Book", theme=theme, points=EVENTS[:points]))
    return Occasion(digest, next(iter(ORDER.sources(digest))), asked)


@pytest.mark.parametrize(("points", "items"), [(1, 0), (2, 0), (3, 1), (4, 1), (26, 1)])
def test_three_points_or_more_make_one_item(points, items):
    """Two are right by luck every other time."""
    assert len(list(ORDER.sources(kept(Digest("A Book", points=EVENTS[:points]))))) == items


def test_the_item_outlives_edits_of_the_points():
    """It hangs on the theme; points moved, reworded, added and removed keep its history."""
    digest = kept()
    edits = [
        replace(WHOLE, points=WHOLE.points[::-1], quotations=()),
        replace(WHOLE, points=WHOLE.points[1:], quotations=()),
        replace(WHOLE, points=(*WHOLE.points, Point("A wholly new ending"))),
    ]
    before = [item_id(part.id, KindName.ORDER) for part in ORDER.sources(digest)]
    for edit in edits:
        after = keep(edit, digest, new_ids(1_000))
        assert [item_id(part.id, KindName.ORDER) for part in ORDER.sources(after)] == before


def test_without_a_theme_the_item_outlives_points_moved_and_others_removed():
    """It hangs on the point of the least id, wherever that stands."""
    digest = kept(Digest("A Book", points=EVENTS[:6]))
    before = list(ORDER.sources(digest))
    moved = keep(Digest("A Book", points=EVENTS[:5][::-1]), digest, new_ids(1_000))
    assert [part.id for part in ORDER.sources(moved)] == [part.id for part in before]


def test_of_many_points_ten_are_shown_spread_over_the_book():
    """One of each tenth, and others the next time."""
    first, second = occasion(26), occasion(26, 1)
    for each in (first, second):
        shown = sorted(mark.text for mark in ORDER.cue(each).landmarks)
        places = [next(n for n, p in enumerate(EVENTS) if p.text == text) for text in shown]
        assert len(shown) == 10
        assert all(n * 26 // 10 <= place < (n + 1) * 26 // 10 for n, place in enumerate(places))
    assert {m.text for m in ORDER.cue(first).landmarks} != {
        m.text for m in ORDER.cue(second).landmarks
    }


def test_each_asking_shuffles_anew():
    """So that what is learnt is the book’s order and not the page’s."""
    orders = {tuple(m.text for m in ORDER.cue(occasion(6, n)).landmarks) for n in range(8)}
    assert len(orders) > 5


def test_the_right_order_is_told_in_numbers_and_in_words():
    """A line each, in the book’s order."""
    asked = occasion(4)
    cue, answer = ORDER.cue(asked), ORDER.answer(asked)
    assert cue.asked == (Asked.ORDER,)
    assert answer.words == "1. Event a\n2. Event b\n3. Event c\n4. Event d"
    assert [cue.landmarks[number - 1].text for number in answer.order] == [
        "Event a",
        "Event b",
        "Event c",
        "Event d",
    ]


def swapped(order: tuple[int, ...]) -> tuple[int, ...]:
    """Return an order with its first two the wrong way round."""
    return (order[1], order[0], *order[2:])


def test_the_reason_counts_the_pairs_that_stand_the_wrong_way_round():
    """Against how often chance does as well."""
    asked = occasion(5)
    right = ORDER.answer(asked).order
    assert ORDER.mark(asked, Attempt(order=right)).reason == (
        "All 5 in order; chance alone does as well in less than 1% of tries."
    )
    marked = ORDER.mark(asked, Attempt(order=swapped(right)))
    assert marked.grade is Grade.CLEAR
    assert marked.reason == (
        "1 pair stands the wrong way round, of 10, with all 5 given; chance alone does as well "
        "in 4% of tries."
    )
    assert [span.hit for span in marked.answer_spans].count(False) == 1


@pytest.mark.parametrize(
    ("given", "grade"),
    [(5, Grade.CLEAR), (4, Grade.CLEAR), (3, Grade.HAZY), (2, Grade.BLANK), (1, Grade.BLANK)],
)
def test_what_is_left_out_is_not_remembered(given, grade):
    """Of six, by the share given and by luck: never vivid unless all are given."""
    asked = occasion(6)
    marked = ORDER.mark(asked, Attempt(order=ORDER.answer(asked).order[:given]))
    assert marked.grade is grade


def test_three_in_order_are_no_better_than_hazy():
    """Reference, part 4: perfect by luck one time in six."""
    asked = occasion(3)
    assert ORDER.mark(asked, Attempt(order=ORDER.answer(asked).order)).grade is Grade.HAZY


@pytest.mark.parametrize("extra", [(0,), (-3, 99), (10**30,)])
def test_numbers_that_are_not_shown_or_come_twice_count_for_nothing(extra):
    """Doors refuse them; marking does not break on them."""
    asked = occasion(5)
    right = ORDER.answer(asked).order
    assert ORDER.mark(asked, Attempt(order=(*right, *extra, *right))).grade is Grade.VIVID


def test_it_asks_the_order_and_shows_the_points():
    """So it comes after what asks the points, and before nothing that shows their order."""
    asked = occasion(12)
    shown = ORDER.shows(asked)
    points = {part.id for part in asked.digest.held(PartKind.POINT)}
    assert ORDER.asks(asked) == {order_of(asked.digest)}
    assert order_of(asked.digest) in shown
    assert len(shown & points) == 10
    assert not ORDER.secret(asked)
