"""What the coming weeks ask, and what is known of each book in a year."""

from datetime import timedelta
from random import Random
from statistics import fmean

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cards.kinds.base import KindName
from cards.parts import Care
from cards.planning import coming, known_in_a_year
from cards.planning.coming import A_YEAR, WEEKS
from cards.schedule import DEFAULT_WEIGHTS
from cards.weighting import Weighting
from tests.cards.planning.libraries import (
    BOOK,
    DAY,
    OTHER,
    Library,
    fresh,
    habits,
    held,
    histories,
    lived,
    varied,
)

DAYS = 7 * WEEKS


def test_the_weeks_ask_what_they_ask_when_lived_through():
    """Fourteen items and two let in a day, week by week, for a reader who has time.

    Outside source: `lived`, the package itself by chance, 80 times over; the mean of a week
    strays by some 3 in a hundred.
    """
    ones = histories(14, 9)
    told = coming(held(ones), [fresh(20)], DAY, habits(a_day=2))
    library, chance, runs = held(ones), Random(2), 80
    weeks = [0.0] * WEEKS
    for _ in range(runs):
        for one, due in zip(ones, library.due_on, strict=True):
            for day in lived(one, (due - DAY).days, DAYS, 0.9, chance)[0]:
                weeks[day // 7] += 1 / runs
        for begun in range(20):
            for day in lived((), None, DAYS - begun // 2, 0.9, chance)[0]:
                weeks[(day + begun // 2) // 7] += 1 / runs
    found = [sum(day.minutes for day in told[7 * week : 7 * week + 7]) for week in range(WEEKS)]
    assert found == pytest.approx(weeks, rel=0.12, abs=0.5)
    assert sum(found) == pytest.approx(sum(weeks), rel=0.03)
    assert sum(day.unasked for day in told) == pytest.approx(20)
    assert all(day.left_over == 0 for day in told)


def test_a_year_keeps_what_it_keeps_when_lived_through():
    """Sixteen items a year from now, with a sitting every day.

    Outside source: as above, 40 times over; what is known strays by some 1 in a hundred.
    """
    ones = histories(16, 5)
    library, chance = held(ones), Random(6)
    (told,) = known_in_a_year(library, [], DAY, habits())
    known = fmean(
        lived(one, (due - DAY).days, A_YEAR, 0.9, chance)[1]
        for _ in range(40)
        for one, due in zip(ones, library.due_on, strict=True)
    )
    assert told.kept_up / 16 == pytest.approx(known, abs=0.02)


def test_the_days_are_the_coming_eight_weeks():
    """From the day on, one after the other, also where nothing is there to ask."""
    for library in (Library(), varied(9)):
        told = coming(library, [], DAY, habits())
        assert [each.day for each in told] == [DAY + timedelta(number) for number in range(56)]
    assert {each.minutes for each in coming(Library(), [], DAY, habits())} == {0}


def test_what_is_overdue_is_worked_off_at_the_minutes_the_reader_has():
    """Forty items of a minute, hardly ever forgotten, at ten a day: four days, and what is left."""
    told = coming(Library().hold(40), [], DAY, habits(minutes=10))
    assert [round(each.due) for each in told[:6]] == [10, 10, 10, 10, 0, 0]
    assert [round(each.left_over) for each in told[:6]] == [30, 20, 10, 0, 0, 0]


@pytest.mark.parametrize("minutes", [1.5, 10, 40])
def test_no_day_asks_more_than_the_reader_has(minutes):
    """With hundreds of items overdue and more let in, every day is filled and none runs over."""
    told = coming(varied(400), [fresh(99)], DAY, habits(minutes=minutes, a_day=1))
    assert all(each.minutes <= minutes + 1e-9 for each in told)
    assert all(each.minutes > 0.9 * minutes for each in told[:20] if each.left_over > 2)


def test_something_unasked_comes_in_every_day_however_much_is_due():
    """A sitting lets one item in first, as it does when it is composed."""
    told = coming(varied(400), [fresh(99)], DAY, habits(minutes=5, a_day=3))
    assert all(each.unasked >= 1 - 1e-9 for each in told)
    alone = coming(Library(), [fresh(99)], DAY, habits(minutes=5, a_day=3))
    assert [each.unasked for each in alone[:2]] == pytest.approx([3, 3])


def test_one_item_is_asked_however_long_it_takes():
    """Who has half a minute is asked one item of a minute all the same."""
    told = coming(Library().hold(3), [], DAY, habits(minutes=0.5))
    assert [round(each.due, 1) for each in told[:4]] == [1, 1, 1, 0]


def test_what_was_asked_today_waits_until_it_is_due():
    """Nothing is asked before its day, or twice on one."""
    told = coming(Library().hold(5, 20.0, last=0, due=7), [], DAY, habits())
    assert {each.minutes for each in told[:7]} == {0}
    assert told[7].due > 5


@pytest.mark.parametrize("minutes", [4.0, 1_000.0])
def test_the_order_the_items_come_in_does_not_matter(minutes):
    """The same library the other way round asks and keeps the same, to the last figure."""
    library = varied(70)
    how = habits(minutes=minutes, a_day=1)
    for foretold in (coming, known_in_a_year):
        once = foretold(library, [fresh(9)], DAY, how)
        assert foretold(library.turned_round(), [fresh(9)], DAY, how) == once


ITEMS = st.tuples(
    st.floats(0.001, 40_000),  # stability, days
    st.floats(1, 10),  # difficulty
    st.integers(-4_000, 1),  # last answer; tomorrow's, of a reader who has come back from the east
    st.integers(-60, 400),  # due
    st.sampled_from(list(KindName)),
    st.sampled_from(list(Care)),
)


@settings(max_examples=30)
@given(
    items=st.lists(ITEMS, max_size=12),
    minutes=st.floats(0.1, 90),
    target=st.sampled_from([0.7, 0.9, 0.97]),
    a_day=st.integers(0, 4),
)
def test_whatever_the_library_days_are_finite_and_hold_what_fits(items, minutes, target, a_day):
    """No day is over the minutes but for one item, asked twice; nothing is asked below nothing."""
    library = Library()
    for stability, difficulty, last, due, kind, care in items:
        library.hold(1, stability, last, due, kind=kind, difficulty=difficulty, care=care)
    told = coming(library, [fresh(3)], DAY, habits(minutes, target, a_day))
    for day in told:
        assert 0 <= day.minutes <= max(minutes, 2) + 1e-9
        assert min(day.due, day.unasked, day.left_over) >= 0
        assert day.left_over < 2 * len(items) + 6
    assert sum(day.unasked for day in told) <= 3 + 1e-9
    assert bool(a_day) == bool(sum(day.unasked for day in told))


def test_a_book_is_known_by_its_items():
    """Sums over its items, of books asked and unasked, by their ids."""
    library = Library().hold(2, 100.0, last=-100, book=OTHER).hold(1, 50.0, last=-1)
    told = known_in_a_year(library, [fresh(4)], DAY, habits())
    assert [(each.book, each.items, each.asked) for each in told] == [(BOOK, 5, 1), (OTHER, 2, 2)]
    # After as many days as its stability recall is 0.9, by its definition.
    assert told[1].now == pytest.approx(1.8)
    # Recall at 465 days and a stability of 100, by the published formula in 50-digit decimals.
    assert told[1].left_alone == pytest.approx(2 * 0.76758450, abs=1e-7)
    for each in told:
        assert each.left_alone < each.kept_up <= each.items
        assert each.left_alone < each.now
    # Four items are never let in, at none a day.
    assert told[0].kept_up < 1


def test_what_is_let_in_is_known_in_a_year():
    """Of a book never asked nothing is known now, and most with sittings."""
    (told,) = known_in_a_year(Library(), [fresh(30)], DAY, habits(a_day=1))
    assert (told.now, told.left_alone, told.asked) == (0, 0, 0)
    assert 27 < told.kept_up < 30


def test_books_at_rest_let_nothing_in_and_are_asked_seldom():
    """At rest less is known in a year than kept steadily, and more than left alone."""
    steady = varied(40)
    rest = varied(40)
    rest.cares = [Care.RESTING] * 40
    kept, resting = (
        known_in_a_year(each, [fresh(9, Care.RESTING)], DAY, habits(a_day=9))
        for each in (steady, rest)
    )
    for one, other in zip(kept, resting, strict=True):
        assert other.left_alone < other.kept_up < one.kept_up
        assert one.items == other.items


def test_too_few_minutes_keep_less():
    """At two minutes a day less of the library is known in a year than at twenty."""
    few, many = (
        known_in_a_year(varied(200), [], DAY, habits(minutes=minutes)) for minutes in (2, 20)
    )
    assert sum(each.kept_up for each in few) < 0.97 * sum(each.kept_up for each in many)


def test_each_kind_is_foreseen_by_its_own_weights():
    """Items whose stability grows less are asked more often, beside others that are not."""
    slow = (*DEFAULT_WEIGHTS[:8], 1.2, *DEFAULT_WEIGHTS[9:])
    library = Library().hold(9, 5.0, last=-5, kind=KindName.THEME).hold(9, 5.0, last=-5)
    one, own, other = (
        sum(each.minutes for each in coming(library, [], DAY, habits(weighting=weighting)))
        for weighting in (
            Weighting(),
            Weighting(by_kind=((KindName.THEME, slow),)),
            Weighting(slow),
        )
    )
    assert one < own < other
    assert own == pytest.approx((one + other) / 2, rel=0.05)
