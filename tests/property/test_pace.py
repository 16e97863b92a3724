"""Properties of the pace of a commitment. Each docstring quotes the rule it checks."""

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from cards.commitments import (
    Act,
    Commitment,
    Measure,
    Outcome,
    Pace,
    Period,
    Rhythm,
    needed_from,
    pace_of,
)
from cards.commitments.measure import WEEKDAYS
from cards.commitments.periods import WITHOUT_MEASURE
from tests.reference.commitments import PART, decided, paused, said

FIRST_DAY = date(2024, 1, 1)
DAY = timedelta(days=1)
WORSE = {Pace.PAUSED: 0, Pace.ON_COURSE: 0, Pace.SLIPPING: 1, Pace.STALLED: 2}

starts = st.integers(0, 800).map(lambda days: FIRST_DAY + timedelta(days=days))
weekdays = st.sets(st.sampled_from(WEEKDAYS), min_size=1, max_size=4).map(
    lambda days: tuple(day for day in WEEKDAYS if day in days)
)
numbered = st.sampled_from([("1SA",), ("-1FR",), ("5SA",), ("2TU", "4TU"), ("-5MO",)])


@st.composite
def rhythms(draw):
    """A measure that recurs without an end: of days, named days, weeks, months or years."""
    period = draw(st.sampled_from([Period.DAY, Period.WEEK, Period.MONTH, Period.YEAR]))
    days = {
        Period.DAY: st.one_of(st.just(()), weekdays),
        Period.WEEK: st.one_of(st.just(()), weekdays),
        Period.MONTH: st.one_of(st.just(()), weekdays, numbered),
        Period.YEAR: st.one_of(st.just(()), weekdays, numbered),
    }[period]
    most = {Period.DAY: 10, Period.WEEK: 5, Period.MONTH: 6, Period.YEAR: 2}[period]
    return Measure(draw(st.integers(1, 3)), period, draw(st.integers(1, most)), draw(days))


@st.composite
def measures(draw, start):
    """Any measure of what begins on a day: open, for so many periods, or until a day; or none."""
    measure = draw(st.one_of(rhythms(), rhythms(), st.none()))
    if measure is None:
        return None
    end = draw(st.sampled_from(["open", "open", "periods", "deadline"]))
    if end == "periods":
        return replace(measure, periods=draw(st.integers(1, 12)))
    if end == "deadline":
        return replace(measure, deadline=start + timedelta(days=draw(st.integers(0, 300))))
    return measure


@st.composite
def commitments(draw, *, entered_late=False):
    """A commitment with any measure, entered the day it was made or up to 200 days after."""
    start = draw(starts)
    late = draw(st.integers(0, 200)) if entered_late else 0
    entered = start + timedelta(days=late)
    return Commitment(PART, "Walk to the mill", start, entered, draw(measures(start)))


@st.composite
def check_ins(draw, start, most=12):
    """Check-ins about any days of half a year, some reported long after."""
    found = []
    for _ in range(draw(st.integers(0, most))):
        day = start + timedelta(days=draw(st.integers(0, 180)))
        outcome = draw(st.sampled_from(Outcome))
        found.append(said(day, outcome, day + timedelta(days=draw(st.sampled_from([0, 0, 1, 30])))))
    return found


@st.composite
def pauses(draw, start):
    """One decision to pause within half a year, recorded when it begins or a little after."""
    first = start + timedelta(days=draw(st.integers(0, 150)))
    last = first + timedelta(days=draw(st.integers(0, 60)))
    late = timedelta(days=draw(st.integers(0, 10)))
    return paused(first, draw(st.sampled_from([last, last, None])), recorded=first + late)


def last_day(commitment):
    """Return the last day a commitment asks for anything, or None."""
    measure = commitment.measure
    if measure is None or measure.periods is None:
        return None if measure is None else measure.deadline
    return Rhythm(measure, commitment.made_on).nth_period(measure.periods).last


def perfect(commitment, last):
    """Return check-ins that keep a commitment, from the day it came in to a last day."""
    measure = commitment.measure
    rhythm = Rhythm(measure, commitment.made_on, last_day(commitment))
    return [said(day, count=rhythm.times) for day in rhythm.expected(commitment.entered_on, last)]


def days_of(commitment, number, step=1):
    """Return days from the one a commitment was made on."""
    return [commitment.made_on + timedelta(days=each) for each in range(0, number, step)]


def told(stand):
    """Return what a stand tells, but for the life it was told of."""
    return replace(stand, life=None)


@settings(max_examples=120)
@given(commitments(entered_late=True), st.integers(1, 900))
def test_what_is_kept_perfectly_is_on_course_on_every_day(commitment, far):
    """“Whatever is kept perfectly is on course on every day, for every measure”, then done.

    Entered long after it was made and kept from that day on, it is no worse; what was past by
    then is unjudged.
    """
    later = commitment.entered_on + far * DAY
    days = [*days_of(commitment, 60), *(later + each * DAY for each in range(30))]
    facts = perfect(commitment, max(days))
    end = last_day(commitment)
    for day in days:
        pace = pace_of(commitment, (), facts, day).pace
        if end is not None and end < commitment.entered_on:
            assert pace is Pace.UNJUDGED
        elif day < commitment.entered_on:
            assert pace is Pace.PAUSED
        elif end is None or (day - end).days <= 2:
            assert pace is Pace.ON_COURSE
        else:
            assert pace is Pace.DONE or not any(each.day >= commitment.entered_on for each in facts)


@settings(max_examples=90)
@given(st.data(), commitments())
def test_pausing_never_makes_things_worse(data, commitment):
    """“Pausing never makes things worse”: not while it lasts, nor after."""
    facts = data.draw(check_ins(commitment.made_on))
    pause = data.draw(pauses(commitment.made_on))
    for day in days_of(commitment, 260, 3):
        without = pace_of(commitment, (), facts, day).pace
        paced = pace_of(commitment, (pause,), facts, day).pace
        if without in WORSE and paced in WORSE:
            assert WORSE[paced] <= WORSE[without]
        if without is Pace.DONE:
            assert paced is Pace.DONE


@settings(max_examples=100)
@given(st.data(), commitments(entered_late=True))
def test_a_deed_counts_by_its_own_date(data, commitment):
    """“A deed counts by its own date whenever it is reported”."""
    facts = [
        replace(each, reported_on=max(each.reported_on, commitment.entered_on))
        for each in data.draw(check_ins(commitment.made_on))
    ]
    late = timedelta(days=data.draw(st.integers(1, 60)))
    place = data.draw(st.integers(0, max(0, len(facts) - 1)))
    assume(facts)
    told_late = list(facts)
    told_late[place] = replace(facts[place], reported_on=facts[place].reported_on + late)
    from_then = told_late[place].reported_on
    for day in days_of(commitment, 260, 5):
        if day >= from_then:
            prompt = pace_of(commitment, (), facts, day)
            assert pace_of(commitment, (), told_late, day) == prompt


@settings(max_examples=80)
@given(st.data(), commitments(entered_late=True))
def test_without_new_facts_pace_changes_only_at_closings_and_ends(data, commitment):
    """“Without new facts pace changes only at window closings and ends”, and a pause’s edges."""
    start = commitment.made_on
    facts = data.draw(check_ins(start))
    decisions = data.draw(st.lists(pauses(start), max_size=1))
    known = max([each.reported_on for each in facts], default=start)
    known = max([known, commitment.entered_on, *(each.decided_on for each in decisions)])
    edges = {each.day for each in decisions} | {
        each.until + DAY for each in decisions if each.until is not None
    }
    stands = [pace_of(commitment, decisions, facts, known + d * DAY) for d in range(110)]
    for before, after in pairwise(stands):
        if before.pace is after.pace:
            continue
        closed = after.day - 3 * DAY
        rhythm = Rhythm(commitment.measure, start)
        closing = rhythm.window_at(closed) != rhythm.window_at(closed + DAY)
        ends = closed in {before.ends_on, after.ends_on}
        assert closing or ends or after.day in edges


@settings(max_examples=60)
@given(st.data(), starts, st.integers(1, 400))
def test_the_pace_of_a_one_off_changes_only_by_its_overdue_days(data, start, span):
    """A one-off is overdue the day after its date, and stalled max(7, a tenth) days later."""
    deadline = start + span * DAY
    made = Commitment(PART, "Mend the gate", start, start, Measure(deadline=deadline))
    patience = max(7, -(-span // 10))
    expected = [Pace.ON_COURSE] * 2 + [Pace.SLIPPING] * patience + [Pace.STALLED] * 5
    days = [deadline + each * DAY for each in range(-1, patience + 6)]
    assert [pace_of(made, (), (), day).pace for day in days] == expected
    pause = data.draw(pauses(start))
    for day, without in zip(days, expected, strict=True):
        assert WORSE[pace_of(made, (pause,), (), day).pace] <= WORSE[without]


@settings(max_examples=60)
@given(st.data(), commitments(entered_late=True))
def test_facts_in_any_order_of_arrival_give_the_same(data, commitment):
    """“Facts in any order of arrival give the same”."""
    start = commitment.made_on
    facts = data.draw(check_ins(start))
    decisions = [
        *data.draw(st.lists(pauses(start), max_size=2)),
        decided(Act.RESUME, start + 70 * DAY),
        decided(Act.RENEW, start + 90 * DAY),
    ]
    mixed, others = data.draw(st.permutations(facts)), data.draw(st.permutations(decisions))
    for day in days_of(commitment, 200, 9):
        assert pace_of(commitment, others, mixed, day) == pace_of(commitment, decisions, facts, day)


@settings(max_examples=120)
@given(st.data(), commitments(entered_late=True))
def test_the_check_ins_from_needed_from_are_enough(data, commitment):
    """The pace with the check-ins about `needed_from` and later is the pace with them all."""
    start = commitment.made_on
    facts = data.draw(check_ins(start))
    decisions = data.draw(st.lists(pauses(start), max_size=2))
    for day in days_of(commitment, 400, 11):
        since = needed_from(commitment, decisions, day)
        enough = [each for each in facts if each.day >= since]
        one, other = (pace_of(commitment, decisions, each, day) for each in (facts, enough))
        assert told(one) == told(other)


@settings(max_examples=100)
@given(starts, st.data())
def test_expected_days_lie_in_periods_that_count(start, data):
    """A check-in is expected once or more in every period that counts, and nowhere else."""
    measure = data.draw(st.one_of(rhythms(), st.none()))
    end = data.draw(st.one_of(st.none(), st.integers(0, 800).map(lambda days: start + days * DAY)))
    rhythm = Rhythm(measure, start, end)
    far = start + 1_000 * DAY
    expected = list(rhythm.expected(start, far))
    assert expected == sorted(set(expected))
    assert all(rhythm.period_at(day) is not None for day in expected)
    windows = range(rhythm.window_at(min(far, end or far)) + 1)
    periods = [each for number in windows for each in rhythm.periods_in(rhythm.window(number))]
    assert all(one.last < other.first for one, other in pairwise(periods))
    for span in periods:
        days = [day for day in expected if span.first <= day <= span.last]
        assert days or span.last > far
    for count, span in enumerate(periods[:5], 1):
        assert rhythm.nth_period(count) == span or span.last == end


@settings(max_examples=100)
@given(commitments(entered_late=True))
def test_nothing_stalls_by_days_nobody_could_be_asked(commitment):
    """What is entered late is not stalled before two windows have passed since it came in."""
    measure = commitment.measure
    days = 2 * (7 if measure is not None else WITHOUT_MEASURE)
    for day in days_of(commitment, 200 + days):
        if (day - commitment.entered_on).days < days:
            stand = pace_of(commitment, (), (), day)
            assert stand.pace is not Pace.STALLED or stand.ends_on is not None
