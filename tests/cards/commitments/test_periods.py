"""Periods and windows: what is due when. The definition is the design's own."""

from datetime import date, timedelta
from itertools import islice

import pytest

from cards.commitments import Measure, Period, Rhythm, Span
from tests.reference.commitments import DAILY, MONDAY, WEEKLY, on

MONTHLY = Measure(1, Period.MONTH)


def spans(measure, count, start=MONDAY, end=None):
    """Return the first periods of a rhythm, window by window."""
    rhythm = Rhythm(measure, start, end)
    windows = range(60 if end is None else rhythm.window_at(end) + 1)
    found = (each for number in windows for each in rhythm.periods_in(rhythm.window(number)))
    return [(each.first, each.last) for each in islice(found, count)]


@pytest.mark.parametrize(
    ("measure", "days"),
    [
        (DAILY, 7),
        (Measure(1, Period.DAY, every=2), 7),
        (Measure(1, Period.DAY, every=10), 10),
        (WEEKLY, 7),
        (Measure(1, Period.WEEK, every=2), 14),
        (Measure(1, Period.DAY, on=("MO", "TH")), 7),
        (Measure(1, Period.DAY, every=3, on=("MO", "TH")), 14),
        (Measure(), 28),
        (None, 28),
    ],
)
def test_a_window_is_of_a_week_or_one_period(measure, days):
    """“Windows are of max(7 days, one period), counted from s”; 28 days without a measure."""
    rhythm = Rhythm(measure, MONDAY)
    for number in range(3):
        first = MONDAY + timedelta(days=days * number)
        assert rhythm.window(number) == Span(first, first + timedelta(days=days - 1))
        assert rhythm.window_at(first) == number
        assert rhythm.window_at(first - timedelta(days=1)) == number - 1


def test_windows_of_months_are_counted_from_the_start():
    """From the 31st of a month to the day before the 31st, or the last day, of the next."""
    rhythm = Rhythm(MONTHLY, on(31))
    assert [rhythm.window(number).first for number in range(3)] == [on(31), on(28, 2), on(31, 3)]
    assert rhythm.window_at(on(27, 2)) == 0
    assert rhythm.window_at(on(28, 2)) == 1


def test_periods_of_months_are_of_the_calendar():
    """“calendar periods for months and years”, the first cut to the start."""
    assert spans(MONTHLY, 2, on(15)) == [(on(15), on(31)), (on(1, 2), on(28, 2))]
    assert spans(Measure(1, Period.MONTH, every=3), 2, on(15)) == [
        (on(15), on(31, 3)),
        (on(1, 4), on(30, 6)),
    ]
    assert spans(Measure(1, Period.YEAR), 2, on(29, 2, 2028)) == [
        (on(29, 2, 2028), on(31, 12, 2028)),
        (on(1, 1, 2029), on(31, 12, 2029)),
    ]


def test_a_period_belongs_to_the_window_it_ends_in():
    """Of every other day from a Monday, the fourth period ends in the second week."""
    rhythm = Rhythm(Measure(1, Period.DAY, every=2), MONDAY)
    assert [each.first.day for each in rhythm.periods_in(rhythm.window(0))] == [5, 7, 9]
    assert [each.first.day for each in rhythm.periods_in(rhythm.window(1))] == [11, 13, 15, 17]


def test_a_period_with_no_possible_day_left_does_not_count():
    """“A period with no possible day left when the commitment starts does not count”."""
    first_saturday = Measure(1, Period.MONTH, on=("1SA",))
    assert spans(first_saturday, 1, on(3))[0] == (on(3), on(31))
    assert spans(first_saturday, 1, on(4))[0] == (on(1, 2), on(28, 2))
    weekend = Measure(1, Period.WEEK, on=("SA", "SU"))
    assert spans(weekend, 9, MONDAY, on(16)) == [(on(5), on(11))]
    assert spans(weekend, 9, MONDAY, on(17)) == [(on(5), on(11)), (on(12), on(17))]


def test_a_month_without_a_fifth_saturday_does_not_count():
    """2026 has a fifth Saturday in January, May, August and October (the calendar)."""
    fifth = Measure(1, Period.MONTH, on=("5SA",))
    expected = list(Rhythm(fifth, on(1)).expected(on(1), on(31, 12)))
    assert expected == [on(31), on(30, 5), on(29, 8), on(31, 10)]
    assert Rhythm(fifth, on(1)).nth_period(2) == Span(on(1, 5), on(31, 5))


def test_named_days_are_periods_of_their_own():
    """With `day` and days named, only those days are periods, every so many taken together."""
    days = Measure(1, Period.DAY, on=("MO", "TH"))
    assert [first.day for first, last in spans(days, 4)] == [5, 8, 12, 15]
    assert [first.day for first, last in spans(days, 3, on(6))] == [8, 12, 15]
    pairs = Measure(1, Period.DAY, every=2, on=("MO", "TH", "SA"))
    assert spans(pairs, 3) == [(on(5), on(8)), (on(10), on(12)), (on(15), on(17))]
    rhythm = Rhythm(days, MONDAY)
    assert rhythm.period_at(on(8)) == Span(on(8), on(8))
    assert rhythm.period_at(on(9)) is None
    assert rhythm.listed


def test_the_end_cuts_the_last_window_and_period():
    """What ends on a Wednesday has a last week of three days; nothing is due after."""
    rhythm = Rhythm(WEEKLY, MONDAY, on(14))
    assert rhythm.window(1) == Span(on(12), on(14))
    assert spans(WEEKLY, 9, MONDAY, on(14))[-1] == (on(12), on(14))
    assert rhythm.period_at(on(14)) == Span(on(12), on(14))
    assert rhythm.period_at(on(15)) is None
    assert rhythm.period_at(on(4)) is None
    assert list(rhythm.expected(MONDAY, on(31))) == [on(11), on(14)]


@pytest.mark.parametrize(
    ("measure", "days"),
    [
        (WEEKLY, [11, 18]),
        (Measure(1, Period.WEEK, on=("MO", "TH")), [8, 15]),
        (Measure(2, Period.WEEK, on=("MO", "TH")), [5, 8, 12, 15, 19]),
        (Measure(1, Period.DAY, on=("TU",)), [6, 13, 20]),
        (Measure(1, Period.MONTH, on=("2TU", "-1FR")), []),
        (Measure(2, Period.MONTH, on=("2TU", "3WE")), [13, 21]),
    ],
)
def test_check_ins_are_expected_on_the_days_named_or_the_last_possible(measure, days):
    """The days named, where as many are due; else the last possible day of each period."""
    assert [day.day for day in Rhythm(measure, MONDAY).expected(MONDAY, on(21))] == days


@pytest.mark.parametrize(
    ("measure", "count", "last"),
    [
        (DAILY, 5, on(9)),
        (Measure(1, Period.DAY, every=2), 7, on(18)),
        (Measure(1, Period.DAY, on=("MO", "TU", "WE", "TH", "FR")), 10, on(16)),
        (MONTHLY, 3, on(31, 3)),
        (Measure(1, Period.MONTH, on=("1SA",)), 1, on(28, 2)),
        (Measure(1, Period.YEAR), 10_000, date.max),
    ],
)
def test_the_so_many_th_period(measure, count, last):
    """The so-many-th period that counts, which says the last day of so many periods."""
    assert Rhythm(measure, MONDAY).nth_period(count).last == last


def test_the_so_many_th_period_leaves_out_a_first_that_does_not_count():
    """From Saturday 31 January on there is no Monday left in January."""
    mondays = Measure(1, Period.MONTH, on=("MO",))
    assert Rhythm(mondays, on(31)).nth_period(2) == Span(on(1, 3), on(31, 3))
    assert Rhythm(mondays, MONDAY).nth_period(2) == Span(on(1, 2), on(28, 2))


ABSURD = [
    Measure(1_000, Period.DAY, every=10_000),
    Measure(1, Period.WEEK, every=10_000, on=("SU",)),
    Measure(1, Period.MONTH, every=10_000, periods=10_000),
    Measure(1, Period.YEAR, every=10_000),
    Measure(1, Period.YEAR, on=("60MO",), periods=10_000),
    Measure(1, Period.DAY, every=10_000, on=("MO", "1MO"), periods=10_000),
    Measure(1, Period.WEEK, on=("1SA",), periods=10_000),
    Measure(10_000, Period.MONTH, every=10_000, on=("MO",)),
    Measure(1, Period.DAY, deadline=date.max),
    Measure(1, deadline=date.max),
]


@pytest.mark.parametrize("measure", ABSURD, ids=range(len(ABSURD)))
@pytest.mark.parametrize("start", [date(1, 1, 1), MONDAY, date(9999, 12, 20), date.max])
def test_an_absurd_measure_runs_past_no_date(measure, start):
    """Whatever is asked, every question of when ends with the last day a date can name."""
    rhythm = Rhythm(measure, start, measure.deadline)
    far = min(date.max - timedelta(days=60), start) + timedelta(days=60)
    for day in (start, far, date.max):
        window = rhythm.window(rhythm.window_at(day))
        assert window.first <= day <= window.last
        assert all(each.last <= window.last for each in rhythm.periods_in(window))
        rhythm.period_at(day)
    assert all(start <= day <= far for day in rhythm.expected(start, far))
    assert rhythm.nth_period(measure.periods or 1).last <= date.max
