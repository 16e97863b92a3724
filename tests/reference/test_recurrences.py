"""Worked examples of RFC 5545 (3.8.5.3; values as listed from memory of its text).

They hold that recurring-ical-events, by which the feed is judged, reads rules as the RFC does.
"""

from datetime import date

import pytest
import recurring_ical_events
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
    """A worked example gives the days the RFC lists."""
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
    calendar = Calendar.from_ical("\r\n".join(lines))
    events = recurring_ical_events.of(calendar).between(start, date(start.year + 1, 12, 31))

    assert sorted(event.start for event in events) == days
