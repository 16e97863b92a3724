"""From what the words say to the measure, or none."""

import re
from dataclasses import dataclass
from datetime import date

from cards.commitments.cadence import Cadence
from cards.commitments.cadences import take_cadence
from cards.commitments.cues import Cue, Tie
from cards.commitments.deeds import count_of, take_meetings, take_times
from cards.commitments.durations import take_clock, take_minutes
from cards.commitments.lengths import Bound, Term, days_in, end_of, weeks_in
from cards.commitments.line import GAP, Line, line_of, words
from cards.commitments.measure import WEEKDAYS, WORKING_DAYS, Measure, Period, in_week_order
from cards.commitments.terms import take_days, take_length, take_next_times

_VAGUE = words(
    r"(?:every|once in a|each|1 in a) (?:so often|now and (?:then|again)|while"
    r"|blue moon|chance(?: (?:i|we) get)?|opportunity|way|bit|possible \w+|time"
    r"|aspect|inch|moment|word|step|reason|thing|1 of (?:us|them|you))"
    r"|from time to time|now and (?:then|again)|1 day(?= ?[.]|$)|some ?day|as "
    r"(?:often|much|soon|many|well) as (?:possible|i can|we can)|at the end of "
    r"the day|in the long run|once more|every (?:person|guest|child|student"
    r"|patient|page|book|chapter|customer|meeting|lesson|letter|conversation"
    r"|pupil|visitor|member|call|email|message|decision|argument|purchase|shift"
    r"|class|1|room|stranger|neighbour|beggar)"
    r"|day to day|day in day out|the other day|these days|all day|any day|1 step "
    r"at|day 's work|(?:good|rainy|bad|new|busy|working) day"
    r"|1 by 1|in 1 (?:go|sitting)|for (?:a|1) (?:moment|while|bit|second|change)"
    r"|the 1 |1 who|1 's|more than once|at least"
)
_SITUATED = re.compile(
    r"(?<!\S)(?:when|whenever|if|as soon as|each time|every time|while) [^,;:~]*"
)
_LEFT_UNDONE = (
    r"(?:not|never|no longer|stop|quit|refrain|abstain|give up|avoid|cease|go "
    r"without|do without|forgo|forego|keep off"
    r"|stay off)"
)
_NEGATIVE_HEAD = re.compile(
    r"^(?:[~.,;:]\s|(?:for|until|on|in|at|by|every|each|from|this|i|we|will|shall|do|am|going|to"
    rf"|please|~)\s)*(?:{_LEFT_UNDONE}|no|nothing)(?!\S)"
)
_ENDING = re.compile(r"(?<!\S)(?:stop|quit|give up|cease)(?!\S)")
_NEGATIVE_CLAUSE = re.compile(
    rf"(?<!\S)(?:i|we) (?:will|shall|am going to) {_LEFT_UNDONE}(?!\S)"
    r"|[,~:] (?:do not|never|no|stop|avoid) "
)
_NEXT_SPANS = re.compile(
    r"next \d+ (?:\S+ )?(?:day|night|evening|morning|afternoon|week|weekend|weekday|month"
    r"|quarter|year|time|minute|hour|lunchtime|\S+day)s?(?!\S)"
)
_LONGEST_DEED = {Period.DAY: 1, Period.WEEK: 7, Period.MONTH: 28, Period.YEAR: 365}
"""Days in the shortest of each period: no term is shorter than one."""
_PART_OF_DAY = re.compile(
    r"(?<!\S)(?:in the (?:morning|evening|afternoon)|at night|1th thing|last thing|of an evening"
    r"|before bed)(?!\S)"
)


def measure_of(text: str, on: date, cue: Cue | None, *, act: bool = True) -> Measure | None:
    """Return the measure a commitment's words give, or None when they give none.

    Args:
        text: the commitment.
        on: the day it is made.
        cue: the situation it is tied to, as `find_cue` found it.
        act: whether it is an act at all; leaving a state of mind is not done daily.
    """
    said = _read(text, on, cue, act=act)
    cadence = said.cadence or _implied(said)
    if cadence is None and said.open_ended:
        return _open_ended(said)
    if cadence is None and said.habit and not said.days and not said.term.by_a_day:
        cadence = Cadence(Period.DAY)
    return _once(said, on) if cadence is None else _recurring(cadence, said)


@dataclass(frozen=True, slots=True)
class _Said:
    """What was read of a commitment, each by the reader of its subject.

    Attributes:
        negative: whether something is to be left undone.
        ending: whether it is an end put to something, which by a day is done once.
        event: whether it is tied to what may or may not happen.
        habit: whether it is tied to what happens every day.
        clock: whether it names a time of the clock or a part of the day.
        occasions: "the next three times", "at the next two meetings"; or None.
        minutes: how long a deed lasts, or None.
        term: its length and end.
        cadence: how often, or None.
        times: "twice", "three times"; or None.
        days: its bare dates: first and last day, and whether it is a weekday.
        count: how many things the deed is done to, or None.
    """

    negative: bool
    ending: bool
    event: bool
    habit: bool
    clock: bool
    occasions: int | None
    minutes: int | None
    term: Term
    cadence: Cadence | None
    times: int | None
    days: list[tuple[date, date, bool]]
    count: int | None

    @property
    def open_ended(self) -> bool:
        """Whether neither a day nor a length is named."""
        return not self.days and self.term.deadline is None and self.term.count is None


def _read(text: str, on: date, cue: Cue | None, *, act: bool) -> _Said:
    """Let each reader take its own from the line; the order keeps one from another's words."""
    line = Line(text)
    negative = act and _negative(line)
    ending = _ENDING.search(line.whole) is not None
    event = cue is not None and cue.tie is Tie.EVENT
    next_times = take_next_times(line)
    if cue is not None and event:
        line.forget(line_of(cue.words))
    line.left = _VAGUE.sub(GAP, line.left)
    clock = take_clock(line)
    occasions = next_times or _meetings(line)
    minutes = take_minutes(line)
    term = take_length(line, on)
    if event:
        _forget_what_follows(term, on)
    cadence = take_cadence(line)
    return _Said(
        negative=negative,
        ending=ending,
        event=event,
        habit=cue is not None and cue.tie is Tie.HABIT,
        clock=clock or _PART_OF_DAY.search(line.left) is not None,
        occasions=occasions,
        minutes=minutes,
        term=term,
        cadence=cadence,
        times=cadence.times if cadence is not None else take_times(line),
        days=take_days(line, on),
        count=count_of(line),
    )


def _open_ended(said: _Said) -> Measure | None:
    """Return the measure of what names no cadence, no day and no length, or None."""
    count = said.count or 1
    if said.occasions:
        return Measure(times=said.occasions * count, minutes=said.minutes)
    if said.term.unknown:
        return Measure(times=said.times or count, minutes=said.minutes)
    if said.times is not None and not said.event:
        return Measure(times=said.times, minutes=said.minutes)
    if said.habit or said.clock or (said.negative and not said.event):
        daily = Cadence(Period.DAY)
        return _recurring(daily, said)
    if said.count is not None and not said.event:
        return Measure(times=said.count, minutes=said.minutes)
    return None


def _once(said: _Said, on: date) -> Measure:
    """Return the measure of what is done and over, by a day where one is named."""
    each = said.times or said.occasions or 1
    if len(said.days) > 1 and each == 1 and all(weekday for _, _, weekday in said.days):
        each = len(said.days)
    last_named = max((last for _, last, _ in said.days), default=None)
    deadline = said.term.deadline or end_of(said.term, on) or last_named
    return Measure(times=each * (said.count or 1), deadline=deadline, minutes=said.minutes)


def _forget_what_follows(term: Term, on: date) -> None:
    """Drop an end counted from an event that may never come: "within two days", "that day"."""
    if term.loose:
        term.count, term.unit, term.loose = None, "", False
    if term.deadline == on:
        term.deadline, term.bound = None, None


def _meetings(line: Line) -> int | None:
    """Take "at the next two meetings", unless the two are days, evenings or weeks."""
    return None if _NEXT_SPANS.search(line.left) else take_meetings(line)


def _negative(line: Line) -> bool:
    """Tell whether the deed is something left undone."""
    left = _SITUATED.sub(GAP, line.whole)
    return _NEGATIVE_HEAD.search(left) is not None or _NEGATIVE_CLAUSE.search(left) is not None


def _implied(said: _Said) -> Cadence | None:
    """Return the cadence a term implies: what goes on for two weeks goes on daily."""
    if said.times is not None:
        return None
    term = said.term
    if term.count is not None and not term.loose:
        return _implied_by_length(term, said.days)
    if term.bound is Bound.UNTIL or (term.bound is Bound.DURING and said.negative):
        return Cadence(Period.DAY)
    if said.ending and term.by_a_day:
        return None
    spanned = any(first != last for first, last, _ in said.days)
    if said.negative and (term.deadline is not None or term.count is not None or spanned):
        return Cadence(Period.DAY)
    return None


def _implied_by_length(term: Term, days: list[tuple[date, date, bool]]) -> Cadence:
    if term.unit == "on":
        return Cadence(Period.WEEK, on=term.on)
    if term.unit == "weekday":
        return Cadence(Period.DAY, on=frozenset(WORKING_DAYS))
    named = {
        WEEKDAYS[first.weekday()] for first, last, weekday in days if weekday and first == last
    }
    if named and term.unit in {"week", "month", "year"}:
        return Cadence(Period.WEEK, on=frozenset(named))
    return Cadence(Period.DAY)


def _deeds(cadence: Cadence, times: int | None, count: int | None) -> int:
    """Return how many deeds a period asks: on each of its days, to each of so many."""
    if times is None:
        times = cadence.times
    if times is not None:
        return times * (count or 1) if times == 1 else times
    days = len(cadence.on) if cadence.period is not Period.DAY else 1
    return max(1, days) * (count or 1)


def _recurring(cadence: Cadence, said: _Said) -> Measure:
    term = said.term
    deadline = term.deadline
    if term.bound is Bound.BY and term.weekday and cadence.period is not Period.DAY:
        deadline = None  # "every week, by Friday" says when in the week, not when it ends
    if deadline is None and cadence.period is not Period.YEAR:
        deadline = max((last for first, last, _ in said.days if first != last), default=None)
    on = cadence.on
    if cadence.period is Period.DAY and term.unit == "weekday" and term.count is not None:
        on = on or frozenset(WORKING_DAYS)
    if term.unit == "on" and cadence.period is Period.WEEK:
        on = on or term.on
    return Measure(
        times=_deeds(cadence, said.times, said.count),
        period=cadence.period,
        every=cadence.every,
        on=in_week_order(set(on)),
        periods=None if deadline is not None else _periods(cadence, term),
        deadline=deadline,
        minutes=said.minutes,
    )


def _periods(cadence: Cadence, term: Term) -> int | None:
    """Return how many periods of a cadence fill a term told by its length."""
    if term.count is None:
        return None
    count, unit = term.count, term.unit
    if days_in(count, unit) < _LONGEST_DEED[cadence.period] * cadence.every:
        return None  # "once a quarter, fast for a day": the length of a deed, not of the term
    if cadence.period is Period.DAY:
        spans = _daily_periods(cadence, count, unit)
    elif cadence.period is Period.WEEK:
        spans = weeks_in(count, unit)
    else:
        months = {"month": 1, "quarter": 3, "year": 12}.get(unit)
        spans = count * months if months else max(1, days_in(count, unit) // 30)
        if cadence.period is Period.YEAR:
            spans = max(1, spans // 12)
    return max(1, -(-spans // cadence.every))


def _daily_periods(cadence: Cadence, count: int, unit: str) -> int:
    named = len(cadence.on)
    if not named or unit in {"weekday", "day"}:
        return days_in(count, unit)
    return weeks_in(count, unit) * named
