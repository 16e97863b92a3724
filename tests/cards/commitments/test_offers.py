"""What a commitment is met with that does not go by itself; and from when one rests."""

from dataclasses import replace

import pytest

from cards.commitments import (
    Act,
    Measure,
    Offer,
    Period,
    Question,
    halved,
    offer_for,
    pace_of,
)
from cards.commitments.resting import rests_from
from tests.reference.commitments import (
    MISSED,
    WEEKLY,
    commitment,
    decided,
    on,
    paused,
    said,
)

FIVE = Measure(1, Period.DAY, periods=5)
TWICE = Measure(2, Period.WEEK)
BY_MARCH = Measure(deadline=on(2, 3))
HEALTH = "Take half an hour's exercise after lunch"


def offered(measure, facts, day, decisions=(), **made):
    """Return the offer for what began on a Monday."""
    return offer_for(pace_of(commitment(measure, **made), decisions, facts, day))


def test_what_goes_by_itself_is_met_with_nothing():
    """On course, paused, released, settled: nothing is asked, nothing offered."""
    assert offered(WEEKLY, (), on(8)) is None
    assert offered(WEEKLY, (), on(8), [paused(on(6))]) is None
    assert offered(WEEKLY, (), on(8), [decided(Act.RELEASE, on(6), words="Done with it.")]) is None
    assert offered(FIVE, (), on(14), [decided(Act.CLOSE, on(13), outcome=MISSED)]) is None


@pytest.mark.parametrize(
    ("facts", "question"),
    [((), Question.DID_YOU), ((said(on(13), MISSED),), Question.WHAT_STOPPED_YOU)],
)
def test_the_first_question_fits_what_was_said(facts, question):
    """“after `silent`, did you do it?; after `missed`, what stopped you?” (design)."""
    stalled = offered(TWICE, facts, on(21))
    assert stalled.question is question
    assert stalled.acts == (Act.REWORD, Act.HALVE, Act.PAUSE, Act.RELEASE)
    assert stalled.halved == WEEKLY


def test_one_miss_is_met_with_a_question_alone():
    """“One miss is harmless”: nothing is to be done about it."""
    assert offered(TWICE, (), on(14)) == Offer(Question.DID_YOU, ())


def test_what_touches_health_is_never_offered_halving():
    """“what touches health or medicine is never offered halving” (design), reworded or not."""
    stalled = offered(TWICE, (), on(21), text=HEALTH)
    assert Act.HALVE not in stalled.acts
    assert stalled.halved is None
    reworded = decided(Act.REWORD, on(6), words=HEALTH)
    assert Act.HALVE not in offered(TWICE, (), on(28), [reworded]).acts


def test_a_one_off_is_offered_another_day():
    """What is done once cannot be asked half as often."""
    stalled = offered(BY_MARCH, (), on(20, 3))
    assert stalled.acts == (Act.REWORD, Act.MOVE, Act.PAUSE, Act.RELEASE)


@pytest.mark.parametrize("facts", [(), (said(on(5)),), tuple(said(on(d)) for d in range(5, 10))])
def test_what_is_over_is_asked_once_what_next(facts):
    """“the question asked once, what next: renew, reword, release” (design)."""
    over = offered(FIVE, facts, on(12))
    assert over.question is Question.WHAT_NEXT
    assert over.acts[:3] == (Act.RENEW, Act.REWORD, Act.RELEASE)


def test_what_was_past_on_arrival_is_asked_what_came_of_it():
    """Unjudged, until the reader says."""
    over = offered(FIVE, (), on(5, 3), entered=on(4, 3))
    assert over.question is Question.WHAT_CAME_OF_IT
    assert Act.CLOSE in over.acts


@pytest.mark.parametrize(
    ("measure", "less"),
    [
        (None, None),
        (Measure(), None),
        (Measure(2), Measure(1)),
        (Measure(1, Period.DAY, minutes=30), Measure(1, Period.DAY, minutes=15)),
        (Measure(5, Period.WEEK, minutes=1), Measure(3, Period.WEEK, minutes=1)),
        (WEEKLY, Measure(1, Period.WEEK, every=2)),
        (replace(WEEKLY, periods=1), None),
        (replace(WEEKLY, periods=5), Measure(1, Period.WEEK, every=2, periods=3)),
    ],
)
def test_half_of_a_measure(measure, less):
    """Half as long, else half as many, else half as often, over the same time."""
    assert halved(measure) == less


def test_what_is_over_rests():
    """What has an end rests once that is closed; what is open, or due by a day, does not."""
    assert rests_from(pace_of(commitment(FIVE), (), (), on(6))) == on(12)
    assert rests_from(pace_of(commitment(FIVE), (), (), on(15))) == on(15)
    assert rests_from(pace_of(commitment(WEEKLY), (), (), on(21))) is None
    assert rests_from(pace_of(commitment(BY_MARCH), (), (), on(20, 3))) is None
    assert rests_from(pace_of(commitment(BY_MARCH), (), [said(on(6))], on(6))) == on(6)
