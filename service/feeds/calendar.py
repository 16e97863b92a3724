"""A reader's calendar, as RFC 5545 writes it."""

import re
from collections.abc import Iterator
from datetime import datetime, time, timedelta
from uuid import UUID
from zoneinfo import ZoneInfo

from icalendar import Alarm, Calendar, Event, Timezone, Todo, vRecur

from cards.commitments import LIVE
from service.feeds.calendar_days import Days, days_of
from service.use_cases.calendar_records import CalendarCommitment, CalendarFacts

_CONTROL = re.compile(r"[\x00-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff]+")
_DAY = timedelta(days=1)


def to_calendar(facts: CalendarFacts) -> bytes:
    """Return the daily sitting and the live commitments of a reader, `text/calendar` in UTF-8."""
    calendar = Calendar()
    calendar.add("prodid", "-//Catchword//Calendar//EN")
    calendar.add("version", "2.0")
    calendar.add_component(Timezone.from_tzid(facts.time_zone))
    for event in _sittings(facts):
        calendar.add_component(event)
    for commitment in facts.commitments:
        entry = _entry(commitment, facts) if commitment.pace in LIVE else None
        if entry is not None:
            calendar.add_component(entry)
    written: bytes = calendar.to_ical()
    return written


def _sittings(facts: CalendarFacts) -> Iterator[Event]:
    """Yield the sitting of every day, and what is known of today's in its place."""
    sitting = facts.sitting
    every = _sitting(facts, f"Catchword: {_counted(sitting.minutes, 'minute')}", sitting.minutes)
    every.add("rrule", vRecur({"FREQ": "DAILY"}))
    yield every
    summary = "Catchword: nothing more is asked today"
    if sitting.items:
        waiting = f"{_counted(sitting.due, 'minute')}, {_counted(sitting.items, 'item')}"
        summary = f"Catchword: {waiting} today"
    today = _sitting(facts, summary, sitting.due, alarmed=sitting.items > 0)
    today.add("recurrence-id", every.start)
    yield today


def _sitting(facts: CalendarFacts, summary: str, minutes: int, *, alarmed: bool = True) -> Event:
    event = Event()
    # Read from the wall, so that the hour stays the same when the clocks change.
    begins = datetime.combine(facts.today, time()) + _alarm_after(facts)
    _name(event, facts.reader_id, facts.made_at, facts)
    event.add("summary", summary)
    event.add("dtstart", begins.replace(tzinfo=ZoneInfo(facts.time_zone)))
    event.add("duration", timedelta(minutes=max(1, minutes)))
    if facts.sitting.address:
        event.add("description", facts.sitting.address)
        event.add("url", facts.sitting.address)
    if alarmed:
        event.add_component(_alarm(summary, timedelta(0)))
    return event


def _counted(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"


def _alarm_after(facts: CalendarFacts) -> timedelta:
    """Return how long after midnight a day's alarm is.

    An hour before the reader's day turns over is that of the night that ends it.
    """
    return timedelta(hours=facts.remind_at, days=facts.remind_at < facts.turns_at)


def _entry(commitment: CalendarCommitment, facts: CalendarFacts) -> Event | Todo | None:
    term = commitment.life.term
    # A day has no zone (RFC 5545, 3.3.4): hours after it are hours on the wall.
    at = _alarm_after(facts)
    entry: Event | Todo
    deadline = term.measure.deadline if term.once and term.measure else None
    if deadline is not None:
        entry = Todo()
        entry.add("due", deadline)
        entry.add("status", "NEEDS-ACTION")
    else:
        days = days_of(commitment.life, commitment.ends_on, facts.today)
        if days is None:
            return None
        entry = Event()
        _recur(entry, days)
    _name(entry, commitment.id, commitment.changed_at, facts)
    summary = _line(commitment.text)
    entry.add("summary", summary)
    said = [_line(commitment.title), _line(commitment.caution or ""), commitment.address or ""]
    entry.add("description", "\n".join(line for line in said if line))
    if commitment.address:
        entry.add("url", commitment.address)
    entry.add_component(_alarm(summary, at, of_end=deadline is not None))
    return entry


def _recur(event: Event, days: Days) -> None:
    event.add("dtstart", days.first)
    event.add("dtend", days.first + _DAY)
    event.add("transp", "TRANSPARENT")
    if days.rule is not None:
        event.add("rrule", vRecur.from_ical(_written(days.rule)))
    for name, listed in (("rdate", days.besides), ("exdate", days.without)):
        if listed:
            event.add(name, list(listed), parameters={"VALUE": "DATE"})


def _written(rule: dict[str, str | int | list[str]]) -> str:
    parts = ((k, ",".join(v) if isinstance(v, list) else v) for k, v in rule.items())
    return ";".join(f"{name}={value}" for name, value in parts)


def _name(entry: Event | Todo, owner: UUID, changed: datetime, facts: CalendarFacts) -> None:
    entry.add("uid", f"{owner}@catchword")
    entry.add("dtstamp", facts.made_at)
    entry.add("last-modified", changed)
    # Any number that grows with each change will do (RFC 5545, 3.8.7.4), within 31 bits.
    entry.add("sequence", max(0, int(changed.timestamp())) % 2**31)


def _alarm(words: str, after: timedelta, *, of_end: bool = False) -> Alarm:
    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", words)
    alarm.add("trigger", after, parameters={"RELATED": "END"} if of_end else {})
    return alarm


def _line(words: str) -> str:
    return _CONTROL.sub(" ", words).strip()
