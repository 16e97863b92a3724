"""The days of the calendar feed against those expected, for random measures over ten years.

The second parties are recurring-ical-events and ical, which had no part in writing the feed.
"""

import random
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from typing import Any
from uuid import UUID

import pytest
from ical.calendar_stream import IcsCalendarStream
from icalendar import Calendar
from recurring_ical_events import CalendarQuery

from cards.commitments import Life, Measure, Pace, Period, Rhythm, Span, Term
from cards.commitments.measure import WEEKDAYS, in_week_order
from service.feeds.calendar import to_calendar
from service.feeds.calendar_days import AHEAD, days_of
from service.use_cases.calendar_records import CalendarCommitment, CalendarFacts, DailySitting

TODAY = date(2023, 12, 30)
YEARS = date(2033, 12, 31)
MADE = datetime(2023, 12, 30, 9, tzinfo=UTC)
READER = UUID(int=10**6)


def any_measure(chance: random.Random, start: date) -> Measure:
    """Return a measure that recurs, of any kind."""
    period = chance.choice([Period.DAY, Period.WEEK, Period.MONTH, Period.YEAR])
    on: set[str] = set()
    if chance.random() < 0.6:
        on = set(chance.sample(WEEKDAYS, chance.randint(1, 4)))
        if period in {Period.MONTH, Period.YEAR} and chance.random() < 0.7:
            on = {f"{chance.choice([1, 2, 4, 5, -1, -2])}{day}" for day in on}
    ends = chance.random()
    return Measure(
        times=chance.randint(1, 4),
        period=period,
        every=chance.choice([1, 1, 2, 3, 5]),
        on=in_week_order(on),
        periods=chance.randint(1, 30) if ends < 0.25 else None,
        deadline=start + timedelta(days=chance.randint(0, 1500)) if ends > 0.75 else None,
    )


def any_life(chance: random.Random) -> Life:
    """Return a life of one term, with up to two pauses, the last of them perhaps open."""
    start = TODAY + timedelta(days=chance.randint(0, 800))
    pauses = []
    for _ in range(chance.randint(0, 2)):
        first = start + timedelta(days=chance.randint(0, 900))
        pauses.append(Span(first, first + timedelta(days=chance.randint(0, 90))))
    if chance.random() < 0.1:
        pauses.append(Span(start + timedelta(days=chance.randint(0, 2000)), date.max))
    asked_from = start + timedelta(days=chance.choice([0, 0, 0, 40]))
    term = Term(start, any_measure(chance, start))
    return Life("Walk", (term,), tuple(pauses), asked_from=asked_from)


def any_end(chance: random.Random, term: Term) -> date | None:
    """Return the last day of a term, put off where pauses were made up for."""
    measure = term.measure
    if measure is None or measure.periods is None or chance.random() < 0.5:
        return term.last_day()
    longer = replace(measure, periods=measure.periods + chance.randint(1, 9))
    return Term(term.start, longer).last_day()


class Starts(CalendarQuery):
    """Occurrences as the library finds them, without an event copied for each of them."""

    def _occurrences_to_components(self, occurrences: list[Any]) -> list[Any]:
        return occurrences


def shared_feed(chance: random.Random, zone: str, count: int) -> tuple[bytes, dict[str, set[date]]]:
    """Return one feed of many commitments, and the days expected of each by its UID.

    What no rule says is listed for two years ahead; the days of others are told for ten.
    """
    lives = {UUID(int=number + 1): any_life(chance) for number in range(count)}
    ends = {owner: any_end(chance, life.term) for owner, life in lives.items()}
    entries = tuple(
        CalendarCommitment(
            owner, "Walk", "Walden", None, life, Pace.ON_COURSE, ends[owner], MADE, None
        )
        for owner, life in lives.items()
    )
    sitting = DailySitting(10, 8, 3, None)
    expected = {}
    for owner, life in lives.items():
        days = days_of(life, ends[owner], TODAY)
        begin = max(life.term.start, life.asked_from)
        listed = days is None or days.rule is None
        last = min(YEARS, begin + timedelta(days=AHEAD)) if listed else YEARS
        rhythm = Rhythm(life.term.measure, life.term.start, ends[owner])
        expected[f"{owner}@catchword"] = {
            day for day in rhythm.expected(begin, last) if not life.paused_on(day)
        }
    facts = CalendarFacts(READER, zone, 4, TODAY, 19, sitting, entries, MADE)
    return to_calendar(facts), expected


@pytest.mark.parametrize(
    ("zone", "count"),
    [("Europe/London", 900), ("America/New_York", 900), ("Pacific/Auckland", 900)],
    ids=["London", "New York", "Auckland"],
)
def test_shows_every_day_expected_and_no_other(zone: str, count: int) -> None:
    """What is expected outside pauses is shown, by recurring-ical-events, and nothing else is."""
    written, expected = shared_feed(random.Random(zone), zone, count)
    calendar = Calendar.from_ical(written)
    # The daily sitting is held elsewhere; here it would only cost time.
    for daily in [each for each in calendar.events if each["UID"].startswith(str(READER))]:
        calendar.subcomponents.remove(daily)
    shown: dict[str, set[date]] = {}
    for found in Starts(calendar).between(TODAY, YEARS + timedelta(days=1)):
        shown.setdefault(found.id.uid, set()).add(found.start)

    for uid, days in expected.items():
        assert shown.get(uid, set()) == days, uid


def test_a_strict_parser_shows_the_same_days() -> None:
    """By a second parser, ical, the days shown are those expected too."""
    written, expected = shared_feed(random.Random("ical"), "Europe/London", 300)
    calendar = IcsCalendarStream.calendar_from_ics(written.decode())
    calendar.events[:] = [each for each in calendar.events if not each.uid.startswith(str(READER))]
    shown: dict[str, set[date]] = {}
    for event in calendar.timeline_tz(UTC).overlapping(
        datetime.combine(TODAY, time(), UTC),
        datetime.combine(YEARS + timedelta(days=1), time(), UTC),
    ):
        shown.setdefault(event.uid, set()).add(event.start)

    for uid, days in expected.items():
        assert shown.get(uid, set()) == days, uid
