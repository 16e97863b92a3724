"""Digests entered long after they were finished: nobody is blamed for days nobody asked about."""

from datetime import date, timedelta

import pytest

from cards.commitments import Act, Measure, Pace, Period, Rule, needed_from, pace_of
from cards.commitments.resting import rests_from
from tests.cards.commitments.test_periods import ABSURD
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
    said,
)

FIVE = Measure(1, Period.DAY, periods=5)
MARCH = on(4, 3)


@pytest.mark.parametrize(
    "measure",
    [FIVE, Measure(deadline=on(9)), Measure(1, Period.WEEK, deadline=on(1, 2))],
)
def test_what_is_past_its_end_enters_unjudged(measure):
    """Until the reader says what came of it, it is neither done nor stalled."""
    made = commitment(measure, entered=MARCH)
    for day in days_from(MARCH, on(1, 6)):
        stand = pace_of(made, (), (), day)
        assert (stand.pace, stand.rule) == (Pace.UNJUDGED, Rule.PAST_ON_ARRIVAL)
    for outcome, pace in ((KEPT, Pace.DONE), (PARTLY, Pace.ENDED)):
        close = decided(Act.CLOSE, on(5, 3), outcome=outcome)
        assert pace_of(made, [close], (), on(6, 3)).pace is pace
    renewed = pace_of(made, [decided(Act.RENEW, on(5, 3))], (), on(5, 3))
    assert renewed.pace is Pace.ON_COURSE


def test_what_is_reported_of_it_is_reckoned_over_all_of_it():
    """Three of five reported is 3 of 5, though none of the five could be asked about."""
    facts = [said(on(day), reported=MARCH) for day in (6, 7, 9)]
    stand = pace_of(commitment(FIVE, entered=MARCH), (), facts, MARCH)
    assert (stand.pace, stand.done, stand.due) == (Pace.ENDED, 3, 5)


def test_what_runs_is_judged_from_the_day_it_came_in():
    """Entered on a Wednesday, weekly: the first week judged is the next whole one."""
    made = commitment(WEEKLY, entered=MARCH)
    paces = {day: pace_of(made, (), (), day).pace for day in days_from(MARCH, on(25, 3))}
    assert {paces[day] for day in days_from(MARCH, on(17, 3))} == {Pace.ON_COURSE}
    assert {paces[day] for day in days_from(on(18, 3), on(24, 3))} == {Pace.SLIPPING}
    assert paces[on(25, 3)] is Pace.STALLED
    assert pace_of(made, (), (), on(3, 3)).pace is Pace.PAUSED


def test_done_every_day_since_it_came_in_is_kept():
    """Daily, entered on a Wednesday and done from then on: that week is kept, 5 of 5."""
    facts = [said(day) for day in days_from(MARCH, on(8, 3))]
    stand = pace_of(commitment(DAILY, entered=MARCH), (), facts, on(11, 3))
    assert (stand.pace, stand.rule) == (Pace.ON_COURSE, Rule.LAST_KEPT)
    assert len(stand.windows[1].periods) == 5


def test_ten_days_are_ten_days_from_the_day_the_book_was_finished():
    """Relative dates count from then: coming in late lengthens nothing."""
    ten = Measure(1, Period.DAY, periods=10)
    made = commitment(ten, entered=on(12))
    facts = [said(on(day)) for day in (12, 13, 14)]
    stand = pace_of(made, (), facts, on(17))
    assert (stand.pace, stand.done, stand.due, stand.ends_on) == (Pace.DONE, 3, 3, on(14))


def test_a_one_off_overdue_on_arrival_of_which_a_part_was_done():
    """Its days of patience run from the day one could be asked; its date stands."""
    made = commitment(Measure(2, deadline=on(9)), entered=MARCH)
    deed = said(on(8), reported=MARCH, count=1)
    assert pace_of(made, (), [deed], MARCH).rule is Rule.OVERDUE
    missed = said(on(9), MISSED, reported=MARCH)
    assert pace_of(made, (), [missed], on(1, 6)).pace is Pace.STALLED


def test_a_one_off_entered_before_its_date_keeps_its_date():
    """Days before it came in, or paused, move no promised date."""
    made = commitment(Measure(deadline=on(8, 3)), entered=MARCH)
    assert pace_of(made, (), (), on(8, 3)).rule is Rule.BY_DATE
    assert pace_of(made, (), (), on(9, 3)).rule is Rule.OVERDUE


@pytest.mark.parametrize("measure", ABSURD, ids=range(len(ABSURD)))
@pytest.mark.parametrize("start", [date(1, 1, 1), MONDAY, date(9999, 12, 20)])
def test_no_measure_is_too_absurd_for_a_pace(measure, start):
    """However long ago it began and however far it reaches, a pace is told, and when it rests."""
    entered = max(start, MONDAY)
    made = commitment(measure, start, entered)
    for day in (entered, min(entered, date(9998, 1, 1)) + timedelta(days=400), date.max):
        for facts in ((), (said(start, reported=entered),), (said(entered, PARTLY),)):
            stand = pace_of(made, (), facts, day)
            assert stand.pace in Pace
            assert stand.day == day
            rests_from(stand)
        assert needed_from(made, (), day) >= start
