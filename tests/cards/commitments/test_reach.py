"""How far back the check-ins must be known to tell a pace."""

import pytest

from cards.commitments import Act, Measure, Period, needed_from
from tests.reference.commitments import DAILY, MONDAY, WEEKLY, commitment, decided, on, paused

LONG = on(5, 1, 2036)


@pytest.mark.parametrize(
    ("measure", "day", "since"),
    [
        (WEEKLY, on(20), MONDAY),
        (WEEKLY, on(21), MONDAY),
        (WEEKLY, on(28), on(12)),
        (WEEKLY, on(31), on(12)),
        (DAILY, on(28), on(12)),
        (Measure(1, Period.MONTH), on(8, 5), on(1, 3)),
        (None, on(5, 5), on(2, 3)),
    ],
)
def test_of_what_is_open_the_last_two_windows_that_count(measure, day, since):
    """Until two have closed, all; then from the first day of the last two that closed."""
    assert needed_from(commitment(measure), (), day) == since


def test_ten_years_of_check_ins_are_not_needed():
    """After ten years of a weekly commitment, at most four weeks."""
    assert (LONG - needed_from(commitment(), (), LONG)).days < 28


def test_a_pause_is_reached_across():
    """The windows before a long pause count with those after it."""
    pause = [paused(on(19), on(5, 12)), decided(Act.RESUME, on(7, 12))]
    assert needed_from(commitment(), pause, on(12, 12)) == MONDAY
    assert needed_from(commitment(), pause, on(29, 12)) == on(7, 12)


def test_of_what_is_over_all_of_its_term():
    """What came of it is counted over the whole; while it runs, the last two windows are enough."""
    until = Measure(1, Period.WEEK, deadline=on(1, 3))
    assert needed_from(commitment(until), (), on(3, 3)) == on(9, 2)
    assert needed_from(commitment(until), (), on(4, 3)) == MONDAY
    assert needed_from(commitment(Measure(deadline=on(1, 3))), (), on(9)) == MONDAY
    renewed = [decided(Act.RENEW, on(9, 3))]
    assert needed_from(commitment(until), renewed, on(9, 3)) == on(9, 3)


def test_of_so_many_periods_with_a_pause_all_of_the_term():
    """Whether the pause moved the end depends on what was done in it, however long ago."""
    twelve = commitment(Measure(1, Period.WEEK, periods=12))
    assert needed_from(twelve, (), on(28, 2)) == on(9, 2)
    assert needed_from(twelve, [paused(on(6), on(8))], on(28, 2)) == MONDAY
    until = commitment(Measure(1, Period.WEEK, deadline=on(29, 3)))
    assert needed_from(until, [paused(on(6), on(8))], on(28, 2)) == on(9, 2)
