"""Worked examples of RFC 5545 (3.8.5.3; values as listed from memory of its text).

They hold that the parsers by which the feed is judged, recurring-ical-events and ical, read as the
RFC does.
"""

from datetime import UTC, date, datetime, timedelta

import pytest
import recurring_ical_events
from ical.calendar_stream import IcsCalendarStream
from icalendar import Calendar

EXAMPLES = {
    "week from Monday": (
        date(1997, 8, 5),
        "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO",
        [date(1997, 8, day) for day in (5, 10, 19, 24)],
    ),
    "week from Sunday": (
        date(1997, 8, 5),
        "FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU",
        [date(1997, 8, day) for day in (5, 17, 19, 31)],
    ),
    "second-to-last Monday": (
        date(1997, 9, 22),
        "FREQ=MONTHLY;COUNT=6;BYDAY=-2MO",
        [
            date(1997, 9, 22),
            date(1997, 10, 20),
            date(1997, 11, 17),
            date(1997, 12, 22),
            date(1998, 1, 19),
            date(1998, 2, 16),
        ],
    ),
    "no 30 February": (
        date(2007, 1, 15),
        "FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5",
        [
            date(2007, 1, 15),
            date(2007, 1, 30),
            date(2007, 2, 15),
            date(2007, 3, 15),
            date(2007, 3, 30),
        ],
    ),
}


@pytest.mark.parametrize("name", sorted(EXAMPLES))
def test_reads_a_rule_as_the_rfc_does(name):
    """A worked example gives the days the RFC lists, by either parser."""
    start, rule, days = EXAMPLES[name]
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//Example//EN",
        "BEGIN:VEVENT",
        "UID:example",
        "DTSTAMP:19970101T000000Z",
        f"DTSTART;VALUE=DATE:{start:%Y%m%d}",
        f"RRULE:{rule}",
        "END:VEVENT",
        "END:VCALENDAR",
        "",
    ]
    written = "\r\n".join(lines)
    until = date(start.year + 1, 12, 31)
    events = recurring_ical_events.of(Calendar.from_ical(written)).between(start, until)
    assert sorted(event.start for event in events) == days
    timeline = IcsCalendarStream.calendar_from_ics(written).timeline_tz(UTC)
    first = datetime(start.year, start.month, start.day, tzinfo=UTC)
    shown = timeline.overlapping(first, datetime(until.year, until.month, until.day, tzinfo=UTC))
    assert sorted(event.start for event in shown) == days


TAX = """\
BEGIN:VCALENDAR
VERSION:2.0
PRODID:-//Example//EN
BEGIN:VTODO
UID:20070313T123432Z-456553@example.com
DTSTAMP:20070313T123432Z
DUE;VALUE=DATE:20070501
SUMMARY:Submit Quebec Income Tax Return for 2006
CLASS:CONFIDENTIAL
CATEGORIES:FAMILY,FINANCE
STATUS:NEEDS-ACTION
BEGIN:VALARM
TRIGGER:-PT30M
ACTION:DISPLAY
DESCRIPTION:Reminder
REPEAT:2
DURATION:PT15M
END:VALARM
END:VTODO
END:VCALENDAR
"""
"""The to-do of RFC 5545, 3.6.2, with an alarm like those of 3.6.6; from memory of its text."""


def test_reads_a_todo_as_the_rfc_does():
    """Its due day, what it is called and its alarm, half an hour before, by either parser."""
    written = TAX.replace("\n", "\r\n")
    (todo,) = Calendar.from_ical(written).todos
    (other,) = IcsCalendarStream.calendar_from_ics(written).todos
    assert todo["DUE"].dt == other.due == date(2007, 5, 1)
    assert todo["SUMMARY"] == other.summary == "Submit Quebec Income Tax Return for 2006"
    assert other.categories == ["FAMILY", "FINANCE"]
    (alarm,) = todo.walk("VALARM")
    assert alarm["TRIGGER"].dt == timedelta(minutes=-30)
