"""From what the words say to the measure, or none."""

import re
from datetime import date

from cards.commitments.cadences import Cadence, take_cadence
from cards.commitments.cues import Cue, Tie
from cards.commitments.deeds import count_of, take_meetings, take_times
from cards.commitments.durations import take_clock, take_minutes
from cards.commitments.line import Line, words
from cards.commitments.measure import WEEKDAYS, WORKING_DAYS, Measure, Period, in_week_order
from cards.commitments.terms import (
    Bound,
    Term,
    days_in,
    end_of,
    take_days,
    take_length,
    take_next_times,
    weeks_in,
)

_VAGUE = words(
    r"(?:every|once in a|each|1 in a) (?:so often|now and (?:then|again)|while|blue moon|chance(?: (?:i|we) get)?|opportunity|way|bit|possible \w+|time|aspect|inch|moment|word|step|reason|thing|1 of (?:us|them|you))"
    r"|from time to time|now and (?:then|again)|1 day(?= ?[.]|$)|some ?day|as (?:often|much|soon|many|well) as (?:possible|i can|we can)|at the end of the day|in the long run|once more|every (?:person|guest|child|student|patient|page|book|chapter|customer|meeting|lesson|letter|conversation|pupil|visitor|member|call|email|message|decision|argument|purchase|shift|class|1|room|stranger|neighbour|beggar)"
    r"|day to day|day in day out|the other day|these days|all day|any day|1 step at|day 's work|(?:good|rainy|bad|new|busy|working) day"
    r"|1 by 1|in 1 (?:go|sitting)|for (?:a|1) (?:moment|while|bit|second|change)|the 1 |1 who|1 's|more than once|at least"
)
_SITUATED = re.compile(
    r"(?<!\S)(?:when|whenever|if|as soon as|each time|every time|while) [^,;:~]*"
)
_NEGATIVE = words(
    r"not|never|no longer|stop|no|without|quit|refrain|abstain|give up|nothing|avoid|leave off|cease|skip|go without"
)
_WILL_NOT = words(
    r"(?:will|shall|do|going to) (?:not|never|no longer)|never|not|no longer|no|stop|quit|refrain|abstain|give up|avoid|cease|go without|keep off|stay off|nothing"
)
_HEAD_NEGATIVE = re.compile(
    r"^(?:[~.,;:\s]|(?:for|until|on|in|at|by|every|each|from|this|i|we|will|shall|do|am|going|to|please|~)\s)*(?:not|never|no longer|no|stop|quit|refrain|abstain|give up|avoid|cease|go without|keep off|stay off|nothing)(?!\S)"
)


def measure_of(text: str, on: date, cue: Cue | None, *, act: bool = True) -> Measure | None:
    """Return the measure a commitment's words give, or None when they give none.

    Args:
        text: the commitment.
        on: the day it is made.
        cue: the situation it is tied to, as `find_cue` found it.
        act: whether it is an act at all; leaving a state of mind is not done daily.
    """
    line = Line(text)
    negative = act and _negative(line)
    event = cue is not None and cue.tie is Tie.EVENT
    clause = cue.words if cue is not None and cue.tie is not Tie.TIME else None
    next_times = take_next_times(line)
    if clause is not None and event:
        _mask(line, clause)
    line.left = _VAGUE.sub("~", line.left)
    clock = take_clock(line)
    meetings = take_meetings_if_any(line)
    minutes = take_minutes(line)
    term = take_length(line, on)
    if event:
        _forget_what_follows(term, on)
    cadence = take_cadence(line)
    times = cadence.times if cadence is not None else take_times(line)
    days = take_days(line, on)
    count = count_of(line)
    if cadence is None:
        cadence = _implied(term, days, negative=negative, times=times)
    if cadence is None and not days and term.deadline is None and term.count is None:
        habit = cue is not None and cue.tie is Tie.HABIT
        if next_times or meetings:
            return Measure(times=next_times or (meetings or 1) * (count or 1), minutes=minutes)
        if times is not None and not event:
            return Measure(times=times, minutes=minutes)
        if (habit or clock or (negative and not event) or _daypart(line)) and not term.unknown:
            cadence = Cadence(Period.DAY)
        elif term.unknown:
            return Measure(times=times or count or 1, minutes=minutes)
        elif count is not None and not event:
            return Measure(times=count, minutes=minutes)
        else:
            return None
    if cadence is None and cue is not None and cue.tie is Tie.HABIT and not days:
        if term.count is not None or term.bound is not Bound.BY:
            cadence = Cadence(Period.DAY)
    if cadence is None:
        each = times or meetings or next_times or 1
        if len(days) > 1 and each == 1 and all(weekday for _, _, weekday in days):
            each = len(days)
        deadline = (
            term.deadline or end_of(term, on) or max((last for _, last, _ in days), default=None)
        )
        return Measure(times=each * (count or 1), deadline=deadline, minutes=minutes)
    return _recurring(cadence, term, days, _deeds(cadence, times, count), minutes)


def _forget_what_follows(term: Term, on: date) -> None:
    """Drop an end counted from an event that may never come: "within two days", "that day"."""
    if term.loose:
        term.count, term.unit, term.loose = None, "", False
    if term.deadline == on:
        term.deadline, term.bound = None, None


def take_meetings_if_any(line: Line) -> int | None:
    """Take "at the next two meetings", unless the two are days, evenings or weeks."""
    found = re.search(
        r"next \d+ (?:\S+ ){0,1}?(?:days?|nights?|evenings?|mornings?|afternoons?|weeks?|weekends?|weekdays?|months?|quarters?|years?|times|minutes|hours?|school days|lunchtimes|\S+days)(?!\S)",
        line.left,
    )
    return None if found else take_meetings(line)


def _mask(line: Line, clause: str) -> None:
    from cards.commitments.line import line_of  # noqa: PLC0415

    said = line_of(clause)
    if said and said in line.left:
        line.left = line.left.replace(said, "~", 1)


def _negative(line: Line) -> bool:
    """Tell whether the deed is something left undone."""
    left = _SITUATED.sub("~", line.whole)
    if _HEAD_NEGATIVE.search(left):
        return True
    return (
        re.search(
            r"(?<!\S)(?:i|we) (?:will|shall|am going to) (?:not|never|no longer|stop|quit|refrain|abstain|give up|avoid|go without|keep off|stay off)(?!\S)"
            r"|[,~:] (?:do not|never|no|stop|avoid) ",
            left,
        )
        is not None
    )


def _daypart(line: Line) -> bool:
    return (
        re.search(
            r"(?<!\S)(?:in the (?:morning|evening|afternoon)|at night|first thing|last thing|of an evening|before bed)(?!\S)",
            line.left,
        )
        is not None
    )


def _implied(
    term: Term, days: list[tuple[date, date, bool]], *, negative: bool, times: int | None
) -> Cadence | None:
    """Return the cadence a term implies: what goes on for two weeks goes on daily."""
    if term.count is not None and not term.loose and times is None:
        if term.unit == "on":
            return Cadence(Period.WEEK, on=term.on)
        if term.unit == "weekday":
            return Cadence(Period.DAY, on=frozenset(WORKING_DAYS))
        named = [first for first, last, weekday in days if weekday and first == last]
        if named and term.unit in {"week", "month", "year"}:
            return Cadence(Period.WEEK, on=frozenset(WEEKDAYS[day.weekday()] for day in named))
        return Cadence(Period.DAY)
    if term.bound in {Bound.UNTIL, Bound.DURING} and times is None:
        if term.bound is Bound.UNTIL or negative:
            return Cadence(Period.DAY)
    if negative and times is None:
        if term.deadline is not None or term.count is not None:
            return Cadence(Period.DAY)
        if days and any(first != last for first, last, _ in days):
            return Cadence(Period.DAY)
    return None


def _deeds(cadence: Cadence, times: int | None, count: int | None) -> int:
    """Return how many deeds a period asks."""
    if times is not None:
        return times * (count or 1) if times == 1 else times
    days = len(cadence.on) if cadence.period is not Period.DAY else 1
    if cadence.every > 1 and cadence.period is Period.WEEK:
        days = len(cadence.on)
    return max(1, days) * (count or 1)


def _recurring(
    cadence: Cadence,
    term: Term,
    days: list[tuple[date, date, bool]],
    times: int,
    minutes: int | None,
) -> Measure:
    deadline = term.deadline
    if term.bound is Bound.BY and term.weekday and cadence.period is not Period.DAY:
        deadline = None  # "every week, by Friday" says when in the week, not when it ends
    if deadline is None and cadence.period is not Period.YEAR:
        spans = [last for first, last, _ in days if first != last]
        deadline = max(spans, default=None)
    on = cadence.on
    if cadence.period is Period.DAY and term.unit == "weekday" and term.count is not None:
        on = on or frozenset(WORKING_DAYS)
    if term.unit == "on" and cadence.period is Period.WEEK:
        on = on or term.on
    return Measure(
        times=times,
        period=cadence.period,
        every=cadence.every,
        on=in_week_order(set(on)),
        periods=None if deadline is not None else _periods(cadence, term),
        deadline=deadline,
        minutes=minutes,
    )


def _periods(cadence: Cadence, term: Term) -> int | None:
    """Return how many periods of a cadence fill a term told by its length."""
    if term.count is None:
        return None
    count, unit = term.count, term.unit
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
