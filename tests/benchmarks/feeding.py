"""The feed of a reader with 300 books against the same entries made with icalendar alone.

The other way is handed what each entry says, days and rules included, and makes, fills and
serialises it by the library's own calls; ours works all of that out first.
"""

from datetime import UTC, date, datetime, timedelta
from functools import partial
from itertools import cycle
from typing import Any
from uuid import UUID

from icalendar import Alarm, Calendar, Component, Timezone

from cards.commitments import Life, Measure, Pace, Period, Span, Term
from service.feeds.feeds import Feeds
from service.use_cases.calendar_records import CalendarCommitment, CalendarFacts, DailySitting
from tests.benchmarks.paired import Ratio, paired

LIMIT = 2.0
BOOKS, EACH = 300, 3
ZONE = "Europe/London"
TODAY = date(2026, 3, 2)
NOW = datetime(2026, 3, 2, 20, tzinfo=UTC)
MEASURES = (
    None,
    Measure(1, Period.DAY),
    Measure(5, Period.WEEK),
    Measure(1, Period.MONTH, on=("1SA",)),
    Measure(1, Period.WEEK, on=("MO", "TH")),
    Measure(1, Period.DAY, on=("MO", "TH")),
    Measure(1, Period.DAY, every=2, periods=90),
    Measure(deadline=date(2026, 12, 24)),
    Measure(1, Period.DAY, every=2, on=("MO", "TH", "SA")),
)
"""Of all sorts: those a rule says, those it cannot, and one that is done once."""


def facts() -> CalendarFacts:
    """Return what 900 commitments of 300 books come to, every seventh of them once paused."""
    made = []
    for number, measure in zip(range(BOOKS * EACH), cycle(MEASURES), strict=False):
        start = TODAY - timedelta(days=number % 300)
        pauses = (Span(TODAY - timedelta(days=20), TODAY),) if number % 7 == 0 else ()
        text = f"When the tea is poured, I will ask Hanne question {number} about her day."
        life = Life(text, (Term(start, measure),), pauses)
        made.append(
            CalendarCommitment(
                id=UUID(int=number + 1),
                text=text,
                title=f"Letters of a quiet winter, volume {number // EACH}",
                caution=None,
                life=life,
                pace=Pace.ON_COURSE,
                ends_on=life.term.last_day(),
                changed_at=NOW,
                address=f"https://books.example/commitments/{UUID(int=number + 1)}/check-in",
            )
        )
    sitting = DailySitting(10, 8, 12, "https://books.example/")
    return CalendarFacts(UUID(int=0), ZONE, 4, TODAY, 19, sitting, tuple(made), NOW)


Said = tuple[type[Component], list[tuple[str, Any]], list[list[tuple[str, Any]]]]
"""A kind of entry, what it says, and what each of its alarms says."""


def said(written: bytes) -> list[Said]:
    """Return what the entries of a calendar say, as the library's own calls take it."""
    calendar = Calendar.from_ical(written)
    return [
        (type(each), _values(each), [_values(alarm) for alarm in each.walk("VALARM")])
        for each in (*calendar.events, *calendar.todos)
    ]


def _values(component: Component) -> list[tuple[str, Any]]:
    values = []
    for name, value in component.items():
        if name in {"RDATE", "EXDATE"}:
            values.append((name, [each.dt for each in value.dts]))
        else:
            values.append((name, getattr(value, "dt", value)))
    return values


def alone(entries: list[Said]) -> bytes:
    """Make and serialise the entries with icalendar alone."""
    calendar = Calendar()
    calendar.add("prodid", "-//Catchword//Calendar//EN")
    calendar.add("version", "2.0")
    calendar.add_component(Timezone.from_tzid(ZONE))
    for kind, values, alarms in entries:
        entry = kind()
        for name, value in values:
            entry.add(name, value)
        for alarm in alarms:
            bell = Alarm()
            for name, value in alarm:
                bell.add(name, value)
            entry.add_component(bell)
        calendar.add_component(entry)
    return calendar.to_ical()


def measure(rounds: int = 6) -> Ratio:
    """Measure the whole feed, either way."""
    ours = facts()
    written = Feeds().to_calendar(ours)
    entries = said(written)
    if len(entries) != BOOKS * EACH + 2 or len(alone(entries)) < len(written) * 0.95:
        raise RuntimeError("The two calendars are not the same.")
    return paired(partial(Feeds().to_calendar, ours), partial(alone, entries), rounds, warm=1)
