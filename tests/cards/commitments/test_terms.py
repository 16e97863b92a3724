"""The life of a commitment: what the decisions about it make of it, in any order they came."""

from datetime import date, timedelta
from itertools import permutations

import pytest

from cards.commitments import Act, Measure, Pace, Period, Rule, Span, Term, life_of, pace_of
from cards.errors import Invalid
from tests.reference.commitments import (
    DAILY,
    KEPT,
    MISSED,
    MONDAY,
    WEEKLY,
    commitment,
    decided,
    on,
    paused,
    said,
)

FIVE = Measure(1, Period.DAY, periods=5)


def life(*decisions, day=date(2027, 1, 1), measure=WEEKLY):
    """Return the life of what began on a Monday, by the first of the next year unless said."""
    return life_of(commitment(measure), decisions, day)


def test_without_decisions_it_asks_what_it_was_read_to_ask():
    """One term from the day it was made, nothing paused, nothing ended."""
    plain = life()
    assert plain.terms == (Term(MONDAY, WEEKLY),)
    assert plain.text == "Write to Hanne from the ward"
    assert (plain.pauses, plain.released, plain.closed, plain.former) == ((), None, None, ())


def test_start_measure_and_move_correct_the_term_that_runs():
    """Each changes the term and begins no other."""
    until = Measure(1, Period.WEEK, deadline=on(1, 3))
    corrected = life(
        decided(Act.START, on(7)),
        decided(Act.MEASURE, on(8), measure=until),
        decided(Act.MOVE, on(9), until=on(1, 4)),
    )
    moved = Measure(1, Period.WEEK, deadline=on(1, 4))
    assert corrected.terms == (Term(on(7), moved, moves=1),)


def test_a_measure_corrected_forgets_that_its_day_was_moved():
    """What was misread was never promised for that day."""
    moves = [decided(Act.MOVE, on(day), until=on(day, 4)) for day in (6, 7, 8)]
    by_may = Measure(deadline=on(1, 5))
    corrected = decided(Act.MEASURE, on(9), measure=by_may)
    assert life(*moves, measure=Measure(deadline=on(2, 3))).term.moves == 3
    assert life(*moves, corrected, measure=Measure(deadline=on(2, 3))).term == Term(MONDAY, by_may)


def test_moving_what_has_no_measure_changes_nothing():
    """There is no day to move."""
    assert life(decided(Act.MOVE, on(9), until=on(1, 4)), measure=None).term == Term(MONDAY, None)


def test_a_start_still_to_come_is_known_at_once():
    """What is to begin in March is not slipping in January."""
    later = decided(Act.START, on(2, 3), recorded=on(7))
    for day in (on(14), on(21), on(1, 3), on(10, 3)):
        assert pace_of(commitment(), [later], (), day).pace is Pace.ON_COURSE
    assert pace_of(commitment(), [later], (), on(11, 3)).pace is Pace.SLIPPING


def test_a_start_corrects_the_term_that_runs_when_it_is_recorded():
    """A start laid before the day of a renewal, but told after it, is the renewed term's."""
    renewed = decided(Act.RENEW, on(19))
    begun = decided(Act.START, on(12), recorded=on(20))
    assert [term.start for term in life(begun, renewed).terms] == [MONDAY, on(12)]


def test_renewing_begins_another_term():
    """With the same measure, its last day moved along; what was done before is not its."""
    until = Measure(1, Period.WEEK, deadline=on(18))
    renewed = life(
        decided(Act.CLOSE, on(21), outcome=KEPT), decided(Act.RENEW, on(26)), measure=until
    )
    assert renewed.terms == (
        Term(MONDAY, until),
        Term(on(26), Measure(1, Period.WEEK, deadline=on(8, 2))),
    )
    assert renewed.closed is None
    stand = pace_of(commitment(FIVE), [decided(Act.RENEW, on(12))], [said(on(9))], on(19))
    assert (stand.pace, stand.rule) == (Pace.STALLED, Rule.NOTHING_AT_ALL)


def test_halving_and_rewording_begin_another_term():
    """The former wording is kept, and the new measure runs from the day of it."""
    less = Measure(1, Period.WEEK, every=2)
    changed = life(
        decided(Act.HALVE, on(19), measure=less),
        decided(Act.REWORD, on(26), words="When the bell rings, I will write to Hanne."),
    )
    assert changed.text == "When the bell rings, I will write to Hanne."
    assert changed.former == ("Write to Hanne from the ward",)
    assert changed.terms == (Term(MONDAY, WEEKLY), Term(on(19), less), Term(on(26), less))


def test_a_pause_ends_when_it_is_resumed_or_renewed():
    """Resuming cuts every pause that reaches that day; so does another term."""
    open_one, laid = paused(on(12)), paused(on(14), on(1, 3))
    assert life(open_one).pauses == (Span(on(12), date.max),)
    resumed = life(open_one, laid, decided(Act.RESUME, on(20)))
    assert resumed.pauses == (Span(on(12), on(19)), Span(on(14), on(19)))
    assert not resumed.paused_on(on(20))
    assert resumed.paused_on(on(19))
    renewed = life(open_one, decided(Act.RENEW, on(20)))
    assert renewed.pauses == (Span(on(12), on(19)),)
    assert life(open_one, decided(Act.RESUME, on(12))).pauses == ()


def test_released_stays_released_until_it_is_renewed():
    """Whatever is checked in on it later; the reason stays on record."""
    released = decided(Act.RELEASE, on(12), words="The ward is closed.")
    stand = pace_of(commitment(), [released], [said(on(13))], on(1, 3))
    assert (stand.pace, stand.settled, stand.life.released) == (Pace.RELEASED, True, released)
    again = pace_of(commitment(), [released, decided(Act.RENEW, on(2, 3))], (), on(3, 3))
    assert again.pace is Pace.ON_COURSE


def test_closing_says_what_came_of_it():
    """Kept is done, anything else ended; a later correction of its measure opens it again."""
    for outcome, pace in ((KEPT, Pace.DONE), (MISSED, Pace.ENDED)):
        close = decided(Act.CLOSE, on(20), outcome=outcome)
        stand = pace_of(commitment(), [close], (), on(21))
        assert (stand.pace, stand.rule, stand.settled) == (pace, Rule.CLOSED, True)
        opened = decided(Act.MEASURE, on(22), measure=DAILY)
        assert pace_of(commitment(), [close, opened], (), on(22)).pace is not pace


def test_decisions_in_any_order_of_arrival_make_the_same_life():
    """By the day they hold from, then by when they were taken."""
    decisions = [
        paused(on(8)),
        decided(Act.RESUME, on(10)),
        decided(Act.REWORD, on(12), words="I will write on Sundays.", measure=DAILY),
        decided(Act.RELEASE, on(14), words="She came home."),
    ]
    assert len({life(*order) for order in permutations(decisions)}) == 1


def test_what_was_taken_back_or_is_not_yet_known_changes_nothing():
    """A decision counts from the day it was recorded until the day it was taken back."""
    back = decided(Act.RELEASE, on(12), recorded=on(14), words="No.", withdrawn_on=on(20))
    known = [life(back, day=on(day)).released is not None for day in (13, 14, 19, 20)]
    assert known == [False, True, True, False]


@pytest.mark.parametrize(
    ("act", "where"),
    [
        (Act.MEASURE, "measure"),
        (Act.HALVE, "measure"),
        (Act.MOVE, "until"),
        (Act.RELEASE, "words"),
        (Act.REWORD, "words"),
        (Act.CLOSE, "outcome"),
    ],
)
def test_a_decision_without_what_it_needs_is_refused(act, where):
    """The refusal names the field."""
    with pytest.raises(Invalid) as refused:
        decided(act, on(5))
    assert refused.value.where == where


def test_a_decision_too_long_or_turned_round_is_refused():
    """At most 2,000 characters; a pause ends on its first day or later."""
    with pytest.raises(Invalid, match="2001 characters"):
        decided(Act.RENEW, on(5), words="x" * 2_001)
    with pytest.raises(Invalid, match="before it begins"):
        paused(on(5), on(4))


def test_a_renewed_deadline_passes_no_date():
    """What was to last until the end of all dates lasts no longer."""
    forever = Measure(1, Period.WEEK, deadline=date.max)
    renewed = life(decided(Act.RENEW, on(20)), measure=forever)
    assert renewed.term.last_day() == date.max


def test_a_term_never_ends_before_it_starts():
    """A deadline before the start, as read from an old book, is its first day."""
    assert Term(MONDAY, Measure(deadline=MONDAY - timedelta(days=9))).last_day() == MONDAY


def test_what_was_done_before_the_start_is_not_of_the_term():
    """A deed of the day before a corrected start says nothing about what was over on arrival."""
    made = commitment(FIVE, entered=on(4, 3))
    deed = said(MONDAY, reported=on(4, 3))
    begun = decided(Act.START, on(6), recorded=on(5, 3))
    assert pace_of(made, (), [deed], on(5, 3)).pace is Pace.ENDED
    assert pace_of(made, [begun], [deed], on(5, 3)).pace is Pace.UNJUDGED


def test_days_paused_are_no_days_of_patience():
    """Overdue from 3 March, paused from the 5th to the 20th: two days and six more make eight."""
    made = commitment(Measure(deadline=on(2, 3)))
    pause = [paused(on(5, 3), on(20, 3)), paused(on(10, 3), on(12, 3))]
    assert pace_of(made, pause, (), on(20, 3)).pace is Pace.PAUSED
    assert pace_of(made, pause, (), on(25, 3)).rule is Rule.OVERDUE
    assert pace_of(made, pause, (), on(26, 3)).rule is Rule.LONG_OVERDUE


def test_a_deed_of_tomorrow_is_not_done_today():
    """What is dated ahead, as after a change of zone, counts from its own day."""
    ahead = said(on(7), reported=on(6))
    done = [pace_of(commitment(), (), [ahead], on(day)).now.done for day in (6, 7)]
    assert done == [0, 1]
