"""Commitments kept, month by month: which windows are judged, and what they came to.

Source of what a window is and comes to: design, "Stalled, precisely"; `pace_of`, held against
its truth table elsewhere, is the oracle of the last two of those that run.
"""

from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from cards.commitments import Act, Measure, Period, pace_of
from cards.commitments.windows import Kept
from cards.retention.kept_months import MonthKept, judged_windows, months_kept
from tests.reference.commitments import (
    DAILY,
    KEPT,
    MISSED,
    MONDAY,
    PARTLY,
    WEEKLY,
    commitment,
    decided,
    on,
    paused,
    said,
)

MONTHLY = Measure(1, Period.MONTH)
ONCE = Measure(1, Period.ONCE, deadline=on(20))


def judged(measure, *facts, decisions=(), day=None, since=date.min, entered=None):
    """Return the windows judged by the end of February unless said."""
    made = commitment(measure, entered=entered)
    return list(judged_windows(made, decisions, facts, day or on(28, 2), since))


def test_weeks_are_judged_as_they_close():
    """Four weeks, one of each: kept, partly, missed, silent; the fifth is still open."""
    twice = Measure(2, Period.WEEK)
    facts = [said(on(6)), said(on(7)), said(on(13)), said(on(20), MISSED)]
    assert judged(twice, *facts, day=on(4, 2)) == [
        (on(11), Kept.KEPT),
        (on(18), Kept.PARTLY),
        (on(25), Kept.MISSED),
        (on(1, 2), Kept.SILENT),
    ]
    assert len(judged(twice, *facts, day=on(3, 2))) == 3


def test_a_month_is_that_of_the_last_day_of_its_windows():
    """The week to 1 February belongs to February; months stand in order, all fates told."""
    windows = judged(WEEKLY, said(on(6)), said(on(13)), said(on(20), MISSED), day=on(11, 2))
    assert months_kept([*windows[::-1], (date(2025, 12, 31), Kept.PARTLY)]) == (
        MonthKept("2025-12", 0, 1, 0, 0),
        MonthKept("2026-01", 2, 0, 1, 0),
        MonthKept("2026-02", 0, 0, 0, 2),
    )
    assert months_kept(windows)[0].share.share == pytest.approx(2 / 3)
    assert months_kept([]) == ()


def test_only_windows_from_a_day_on_are_told():
    """The week that ends on the day is the first of them."""
    whole = judged(WEEKLY, said(on(6)))
    for since in (on(10), on(11), on(12), on(18), on(19)):
        assert judged(WEEKLY, said(on(6)), since=since) == [
            each for each in whole if each[0] >= since
        ]


def test_a_pause_is_not_judged_but_where_something_was_done():
    """Two weeks paused; in the second something was done all the same."""
    found = judged(WEEKLY, said(on(20)), decisions=[paused(on(12), on(25))], day=on(4, 2))
    assert found == [
        (on(11), Kept.SILENT),
        (on(25), Kept.KEPT),
        (on(1, 2), Kept.SILENT),
    ]


def test_begun_anew_it_has_the_windows_of_both_terms():
    """The week in which it was halved is broken off; before and after are judged."""
    half = Measure(1, Period.MONTH)
    decisions = [decided(Act.HALVE, on(21), measure=half)]
    found = judged(WEEKLY, said(on(6)), said(on(22)), decisions=decisions, day=on(4, 3))
    assert found == [
        (on(11), Kept.KEPT),
        (on(18), Kept.SILENT),
        (on(20, 2), Kept.KEPT),
    ]


@pytest.mark.parametrize(
    "over",
    [
        decided(Act.RELEASE, on(20), words="It has served"),
        decided(Act.CLOSE, on(20), outcome=KEPT),
    ],
)
def test_what_is_over_is_judged_no_longer(over):
    """After it was released or closed nothing was asked, even where it is renewed later."""
    before = [(on(11), Kept.SILENT), (on(18), Kept.SILENT)]
    assert judged(WEEKLY, decisions=[over]) == before
    renewed = [over, decided(Act.RENEW, on(9, 2))]
    assert judged(WEEKLY, decisions=renewed, day=on(18, 2)) == [*before, (on(15, 2), Kept.SILENT)]


@pytest.mark.parametrize(
    ("facts", "came_to"),
    [
        ([said(on(12))], Kept.KEPT),
        ([said(on(12), PARTLY)], Kept.PARTLY),
        ([said(on(12), MISSED)], Kept.MISSED),
        ([], Kept.SILENT),
        ([said(on(21))], Kept.SILENT),
    ],
)
def test_what_is_done_once_by_a_date_has_one_window(facts, came_to):
    """It ends on that date, and closes two days after it; what is done later is not in it."""
    assert judged(ONCE, *facts) == [(on(20), came_to)]
    assert judged(ONCE, *facts, day=on(22)) == []


def test_once_twice_over_is_partly_kept_by_half():
    """Of two deeds due by a date, one is a part."""
    assert judged(Measure(2, Period.ONCE, deadline=on(20)), said(on(9))) == [(on(20), Kept.PARTLY)]


def test_a_date_that_falls_into_a_pause_is_not_judged():
    """Unless the deed was done."""
    rest = [paused(on(15))]
    assert judged(ONCE, decisions=rest) == []
    assert judged(ONCE, said(on(8)), decisions=rest) == [(on(20), Kept.KEPT)]


def test_what_is_done_whenever_is_judged_until_it_is_done():
    """By windows of four weeks, as what has no measure is; the one it is done in is the last."""
    whenever = Measure(1, Period.ONCE)
    first, second = on(1, 2), on(1, 3)
    assert judged(whenever, day=on(1, 5)) == [
        (first, Kept.SILENT),
        (second, Kept.SILENT),
        (on(29, 3), Kept.SILENT),
        (on(26, 4), Kept.SILENT),
    ]
    assert judged(whenever, said(on(10, 2)), day=on(1, 5)) == [
        (first, Kept.SILENT),
        (second, Kept.KEPT),
    ]
    twice = Measure(2, Period.ONCE)
    assert len(judged(twice, said(on(10, 2)), said(on(12, 3)), day=on(1, 6))) == 3


def test_what_was_over_on_arrival_is_not_judged_but_where_it_is_told_of():
    """A digest typed in late brings no silence with it; a report brings its term back."""
    days = Measure(1, Period.DAY, periods=5)
    late = on(10, 2)
    assert judged(days, entered=late) == []
    assert judged(days, said(on(6), reported=late), entered=late) == [(on(9), Kept.PARTLY)]


def test_weeks_before_one_could_be_asked_are_not_silent():
    """Entered on the 20th, it is judged from then on."""
    assert judged(WEEKLY, entered=on(20), day=on(4, 2)) == [(on(1, 2), Kept.SILENT)]


def test_reports_of_a_later_day_are_not_known_yet():
    """On the 14th nothing is known of what was reported on the 15th."""
    late = said(on(6), reported=on(15))
    assert judged(WEEKLY, late, day=on(14)) == [(on(11), Kept.SILENT)]
    assert judged(WEEKLY, late, day=on(15)) == [(on(11), Kept.KEPT)]


def test_a_measure_from_the_first_day_there_is_takes_no_longer():
    """Only windows that are wanted are gone through, however long ago it began."""
    made = commitment(DAILY, made=date(1, 1, 1))
    found = list(judged_windows(made, (), [said(date(1, 1, 2))], on(31), on(1)))
    assert [last.month for last, _ in found] == [1] * len(found)
    assert 3 <= len(found) <= 5


FACTS = st.lists(
    st.tuples(st.integers(0, 120), st.sampled_from([KEPT, PARTLY, MISSED])), max_size=12
)


@given(st.sampled_from([WEEKLY, DAILY, MONTHLY, None]), FACTS, st.integers(0, 130), st.booleans())
@settings(max_examples=60)
def test_the_last_two_are_those_the_pace_is_told_by(measure, reports, after, pausing):
    """Whatever was reported, with and without a pause: the same windows, the same fates."""
    facts = [said(MONDAY + timedelta(days=gap), outcome) for gap, outcome in reports]
    decisions = [paused(on(20), on(5, 2))] if pausing else []
    day = MONDAY + timedelta(days=after)
    stand = pace_of(commitment(measure), decisions, facts, day)
    told = [(each.span.last, each.came_to) for each in stand.windows if each.counts]
    found = judged(measure, *facts, decisions=decisions, day=day)
    assert found[-2:] == told[:2][::-1]
