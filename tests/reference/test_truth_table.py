"""The truth table of “stalled, precisely”, row by row.

Source: the project's own definition (its design, “Stalled, precisely”, and the truth table
written with it before any code). No published source defines these states; that a single miss is
harmless is Lally et al. 2010, Eur. J. Soc. Psych. 40, 998-1009; that silence is a failure of its
own, Harkin et al. 2016, Psych. Bulletin 142, 198-229. Rows are quoted in the docstrings.
"""

from datetime import timedelta

import pytest

from cards.commitments import Act, Measure, Pace, Period, Rhythm, Rule, pace_of
from cards.commitments.windows import Kept
from tests.reference.commitments import (
    DAILY,
    KEPT,
    MISSED,
    MONDAY,
    PARTLY,
    WEEKLY,
    commitment,
    days_from,
    decided,
    on,
    paused,
    said,
)

ON_COURSE, SLIPPING, STALLED = Pace.ON_COURSE, Pace.SLIPPING, Pace.STALLED
FIRST, SECOND, THIRD = on(7), on(14), on(21)


def pace(day, *facts, measure=WEEKLY, made=MONDAY, decisions=()):
    """Return the pace on a day of what began on the table's Monday, unless said."""
    return pace_of(commitment(measure, made), decisions, facts, day).pace


def test_13_january_nothing_on_course():
    """“13 Jan, nothing → on course (window 1 still open)”."""
    assert pace(on(13)) is ON_COURSE


def test_14_january_slipping():
    """“14 Jan → slipping (`silent`)”."""
    stand = pace_of(commitment(), (), (), on(14))
    assert stand.pace is SLIPPING
    assert [each.came_to for each in stand.windows if each.counts] == [Kept.SILENT]
    assert stand.nothing_said


def test_21_january_stalled():
    """“21 Jan → stalled”, and not a day before."""
    assert pace(on(20)) is SLIPPING
    assert pace(on(21)) is STALLED


def test_a_deed_of_17_january_reported_on_the_20th():
    """“a deed of 17 Jan reported on 20 Jan → slipping on the 20th, on course on the 21st”."""
    deed = said(on(17), reported=on(20))
    assert pace(on(20), deed) is SLIPPING
    assert pace(on(21), deed) is ON_COURSE


def test_the_same_deed_reported_on_the_25th():
    """“the same deed reported on 25 Jan → on course from then”, until the next window closes."""
    deed = said(on(17), reported=on(25))
    assert [pace(day, deed) for day in days_from(on(21), on(24))] == [STALLED] * 4
    assert [pace(day, deed) for day in days_from(on(25), on(27))] == [ON_COURSE] * 3
    assert pace(on(28), deed) is SLIPPING


def test_kept_then_missed():
    """“`kept`, `missed` → slipping”."""
    assert pace(on(21), said(FIRST), said(SECOND, MISSED)) is SLIPPING


def test_missed_paused_missed():
    """“`missed`, paused, `missed` → stalled on 28 Jan”."""
    facts = said(FIRST, MISSED), said(THIRD, MISSED)
    pause = [paused(on(12), on(18))]
    assert pace(on(28), *facts, decisions=pause) is STALLED
    assert pace(on(27), *facts, decisions=pause) is SLIPPING


def test_missed_then_partly():
    """“`missed`, `partly` → slipping”."""
    assert pace(on(21), said(FIRST, MISSED), said(SECOND, PARTLY)) is SLIPPING


def test_stalled_then_done():
    """“stalled, then done on 22 Jan → slipping at once, on course when that window closes `kept`”.

    The window of the 19th to the 25th closes two days after, so the pace turns on the 28th.
    """
    deed = said(on(22))
    assert pace(on(21), deed) is STALLED
    assert [pace(day, deed) for day in days_from(on(22), on(27))] == [SLIPPING] * 6
    assert pace(on(28), deed) is ON_COURSE


def test_daily_with_three_of_seven():
    """“daily with 3 of 7 → `partly` → slipping”."""
    stand = pace_of(commitment(DAILY), (), [said(on(day)) for day in (5, 7, 10)], on(14))
    assert stand.windows[1].came_to is Kept.PARTLY
    assert stand.windows[1].kept_periods == 3
    assert stand.pace is SLIPPING


@pytest.mark.parametrize(
    "measure",
    [
        Measure(1, Period.DAY, every=2),
        Measure(1, Period.MONTH, every=3),
        Measure(1, Period.YEAR),
        Measure(1, Period.MONTH, on=("1SA",)),
    ],
    ids=["every other day", "quarterly", "yearly", "first Saturday of the month"],
)
def test_kept_perfectly_for_three_years(measure):
    """“Every other day, quarterly, yearly and "first Saturday of the month", each kept perfectly
    for three years → on course on every day”.
    """
    last = MONDAY.replace(year=2029)
    facts = [said(day) for day in Rhythm(measure, MONDAY).expected(MONDAY, last)]
    assert len(facts) >= 3
    for day in days_from(MONDAY, last):
        assert pace(day, *facts, measure=measure) is ON_COURSE


def test_pausing_a_window_in_which_something_was_done():
    """“Pausing a window in which something was done changes nothing”."""
    facts = said(on(6)), said(on(13), PARTLY), said(on(20), MISSED)
    for first in (5, 12):
        pause = [paused(on(first), on(first + 6))]
        for day in days_from(on(19), on(31)):
            assert pace(day, *facts, decisions=pause) is pace(day, *facts)


FIVE_DAYS = Measure(1, Period.DAY, periods=5)


def test_daily_for_five_days_all_done():
    """“Daily for five days from Mon 5 Jan, all done → done on 12 Jan”."""
    facts = [said(on(day)) for day in range(5, 10)]
    assert pace(on(11), *facts, measure=FIVE_DAYS) is ON_COURSE
    stand = pace_of(commitment(FIVE_DAYS), (), facts, on(12))
    assert (stand.pace, stand.rule, stand.done, stand.due) == (Pace.DONE, Rule.ALL_KEPT, 5, 5)


def test_daily_for_five_days_three_done():
    """“three done → ended, 3 of 5, on 12 Jan”."""
    facts = [said(on(day)) for day in (5, 6, 9)]
    assert pace(on(11), *facts, measure=FIVE_DAYS) is ON_COURSE
    stand = pace_of(commitment(FIVE_DAYS), (), facts, on(12))
    assert (stand.pace, stand.done, stand.due) == (Pace.ENDED, 3, 5)


def test_daily_for_five_days_none_done():
    """“none → stalled from 12 Jan until answered”."""
    assert pace(on(11), measure=FIVE_DAYS) is ON_COURSE
    answer = decided(Act.CLOSE, on(2, 3), outcome=MISSED)
    for day in days_from(on(12), on(1, 3)):
        assert pace(day, measure=FIVE_DAYS, decisions=[answer]) is STALLED
    assert pace(on(2, 3), measure=FIVE_DAYS, decisions=[answer]) is Pace.ENDED


BY_2_MARCH = Measure(1, Period.ONCE, deadline=on(2, 3))


def test_a_one_off():
    """“One-off s = 1 Jan, by 2 Mar → overdue 3 Mar, stalled 10 Mar”."""
    made = commitment(BY_2_MARCH, on(1))
    stands = {day: pace_of(made, (), (), day) for day in days_from(on(1), on(20, 3))}
    assert {stands[day].pace for day in days_from(on(1), on(2, 3))} == {ON_COURSE}
    assert {stands[day].rule for day in days_from(on(3, 3), on(9, 3))} == {Rule.OVERDUE}
    assert {stands[day].pace for day in days_from(on(10, 3), on(20, 3))} == {STALLED}


def test_a_one_off_of_a_long_span():
    """Overdue for a tenth of its span where that is more than a week: 200 days allow 20 more."""
    deadline = on(1) + timedelta(days=200)
    measure = Measure(1, Period.ONCE, deadline=deadline)
    assert pace(deadline + timedelta(days=20), measure=measure, made=on(1)) is SLIPPING
    assert pace(deadline + timedelta(days=21), measure=measure, made=on(1)) is STALLED


def test_a_one_off_moved_a_third_time():
    """“or when its date is moved a third time” (design): twice is harmless."""
    moves = [decided(Act.MOVE, on(day), until=on(day, 4)) for day in (10, 20, 30)]
    for day, expected in ((29, ON_COURSE), (30, STALLED)):
        assert pace(on(day), measure=BY_2_MARCH, made=on(1), decisions=moves) is expected
    done = said(on(31), KEPT)
    assert pace(on(31), done, measure=BY_2_MARCH, made=on(1), decisions=moves) is Pace.DONE


def test_without_a_measure():
    """“Without a measure: windows of 28 days, one check-in due in each” (design)."""
    assert pace(on(3, 2), measure=None) is ON_COURSE
    assert pace(on(4, 2), measure=None) is SLIPPING
    assert pace(on(3, 3), measure=None) is SLIPPING
    assert pace(on(4, 3), measure=None) is STALLED
    assert pace(on(4, 3), said(on(20, 2)), measure=None) is ON_COURSE
