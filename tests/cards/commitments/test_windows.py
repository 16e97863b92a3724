"""Windows: what each comes to, which count, and when they close."""

import pytest

from cards.commitments import Measure, Period, Rhythm, life_of, pace_of
from cards.commitments.deeds import Deeds
from cards.commitments.windows import Kept, end_of, window
from tests.reference.commitments import (
    DAILY,
    MISSED,
    MONDAY,
    PARTLY,
    WEEKLY,
    commitment,
    on,
    paused,
    said,
)

TWICE = Measure(2, Period.WEEK)
NAMED = Measure(1, Period.DAY, on=("MO", "TH"))


def first_window(measure, *facts, decisions=(), day=None):
    """Return the first window as it stands on a day, by the end of the month unless said."""
    day = day or on(31)
    life = life_of(commitment(measure), decisions, day)
    return window(Rhythm(measure, MONDAY), 0, life, Deeds(facts, day), day)


@pytest.mark.parametrize(
    ("measure", "facts", "came_to"),
    [
        (TWICE, [said(on(5)), said(on(11))], Kept.KEPT),
        (TWICE, [said(on(5), count=2)], Kept.KEPT),
        (TWICE, [said(on(5)), said(on(5))], Kept.KEPT),
        (TWICE, [said(on(5)), said(on(7), MISSED)], Kept.PARTLY),
        (TWICE, [said(on(5), PARTLY)], Kept.PARTLY),
        (TWICE, [said(on(5), PARTLY, count=2)], Kept.KEPT),
        (TWICE, [said(on(11), MISSED)], Kept.MISSED),
        (TWICE, [said(on(4)), said(on(12))], Kept.SILENT),
        (DAILY, [said(on(day)) for day in range(5, 12)], Kept.KEPT),
        (DAILY, [said(on(5), count=7)], Kept.PARTLY),
        (NAMED, [said(on(5)), said(on(8))], Kept.KEPT),
        (NAMED, [said(on(6)), said(on(8))], Kept.PARTLY),
        (NAMED, [said(on(6))], Kept.PARTLY),
        (NAMED, [said(on(10), MISSED)], Kept.MISSED),
        (None, [said(on(30))], Kept.KEPT),
    ],
)
def test_what_a_window_comes_to(measure, facts, came_to):
    """“kept (every period in it has its n), partly (some), missed (nothing done, and the reader
    said so) or silent (nothing said)”; a deed belongs to the day it is about.
    """
    assert first_window(measure, *facts).came_to is came_to


def test_a_window_closes_two_days_after_its_last_day():
    """The week that ends on the 11th is open on the 13th, and closed on the 14th."""
    assert not first_window(WEEKLY, day=on(13)).closed
    assert not first_window(WEEKLY, day=on(13)).counts
    assert first_window(WEEKLY, day=on(14)).counts


def test_a_paused_window_does_not_count_unless_something_was_done():
    """One day of a pause is enough; a missed day reported changes nothing, a deed does."""
    pause = [paused(on(11), on(20))]
    assert first_window(WEEKLY, decisions=pause).paused
    assert first_window(WEEKLY, said(on(6), MISSED), decisions=pause).paused
    assert first_window(WEEKLY, said(on(6), PARTLY), decisions=pause).counts
    assert first_window(WEEKLY, decisions=[paused(on(12))]).counts


def test_a_window_without_a_period_does_not_count():
    """Begun after the first Monday of a month, it is asked nothing until the next."""
    second_monday = Measure(1, Period.MONTH, on=("1MO",))
    life = life_of(commitment(second_monday, on(6)), (), on(1, 4))
    rhythm = Rhythm(second_monday, on(6))
    first, second = (window(rhythm, each, life, Deeds((), on(1, 4)), on(1, 4)) for each in (0, 1))
    assert (first.periods, first.counts) == ((), False)
    assert second.counts


def test_what_was_taken_back_counts_until_then():
    """A report withdrawn on the 20th was known on the 19th."""
    deed = said(on(6), withdrawn_on=on(20))
    assert first_window(WEEKLY, deed, day=on(19)).came_to is Kept.KEPT
    assert first_window(WEEKLY, deed, day=on(20)).came_to is Kept.SILENT


def end(measure, *decisions, facts=(), day=None):
    """Return the last day of what began on a Monday, as known on a day."""
    day = day or on(28, 2)
    life = life_of(commitment(measure), decisions, day)
    return end_of(life, Deeds(facts, day), day)


def test_paused_windows_do_not_count_towards_so_many_periods():
    """Three weeks with one of them paused end a week later; not where something was done in it."""
    three = Measure(1, Period.WEEK, periods=3)
    pause = paused(on(12), on(18))
    assert end(three) == on(25)
    assert end(three, pause) == on(1, 2)
    assert end(three, pause, facts=[said(on(14))]) == on(25)
    assert end(three, paused(on(26), on(31))) == on(25)
    assert end(three, paused(on(12)), day=on(30)) == on(15, 2)
    assert end(Measure(1, Period.WEEK, periods=3, deadline=on(28)), pause) == on(28)


def test_a_pause_moves_no_deadline():
    """Until a day is until that day."""
    until = Measure(1, Period.WEEK, deadline=on(25))
    assert end(until, paused(on(12), on(18))) == on(25)
    assert end(WEEKLY, paused(on(12), on(18))) is None


def test_ten_thousand_check_ins_in_a_day_are_counted():
    """All of them are deeds of that day; the week is kept, and the next is not."""
    many = [said(on(6), reported=on(6)) for _ in range(10_000)]
    stand = pace_of(commitment(TWICE), (), many, on(14))
    assert stand.windows[1].periods[0].done == 10_000
    assert stand.windows[0].came_to is Kept.SILENT
