"""A reader's calendar, as RFC 5545 writes it."""

import re
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
    calendar.add_component(_sitting(facts))
    for commitment in facts.commitments:
        entry = _entry(commitment, facts) if commitment.pace in LIVE else None
        if entry is not None:
            calendar.add_component(entry)
    written: bytes = calendar.to_ical()
    return written


def _sitting(facts: CalendarFacts) -> Event:
    sitting = facts.sitting
    event = Event()
    begins = datetime.combine(facts.today, time(facts.remind_at), ZoneInfo(facts.time_zone))
    items = "1 item" if sitting.items == 1 else f"{sitting.items} items"
    _name(event, facts.reader_id, facts.made_at, facts)
    summary = f"Catchword: {sitting.minutes} minutes, {items} today"
    event.add("summary", summary)
    event.add("dtstart", begins)
    event.add("duration", timedelta(minutes=max(1, sitting.minutes)))
    event.add("rrule", vRecur({"FREQ": "DAILY"}))
    if sitting.address:
        event.add("description", sitting.address)
        event.add("url", sitting.address)
    event.add_component(_alarm(summary, timedelta(0)))
    return event


def _entry(commitment: CalendarCommitment, facts: CalendarFacts) -> Event | Todo | None:
    term = commitment.life.term
    at = timedelta(hours=facts.remind_at)
    entry: Event | Todo
    deadline = term.measure.deadline if term.once and term.measure else None
    if deadline is not None:
        entry = Todo()
        entry.add("due", deadline)
        entry.add("status", "NEEDS-ACTION")
    else:
        days = days_of(commitment.life, facts.today)
        if days is None:
            return None
        entry = Event()
        _recur(entry, days)
    _name(entry, commitment.id, commitment.changed_at, facts)
    summary = _line(commitment.life.text)
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
