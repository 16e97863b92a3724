"""The days of the calendar feed against those expected, for random measures over ten years.

The second party is recurring-ical-events, which had no part in writing the feed.
"""

import random
from datetime import UTC, date, datetime, timedelta
from uuid import UUID

import pytest
import recurring_ical_events
from icalendar import Calendar

from cards.commitments import Life, Measure, Pace, Period, Rhythm, Span, Term
from cards.commitments.measure import WEEKDAYS, in_week_order
from service.feeds.calendar import to_calendar
from service.feeds.calendar_days import AHEAD, days_of
from service.use_cases.calendar_records import CalendarCommitment, CalendarFacts, DailySitting

TODAY = date(2023, 12, 30)
YEARS = date(2033, 12, 31)
MADE = datetime(2023, 12, 30, 9, tzinfo=UTC)
SHARED = 60


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


@pytest.mark.parametrize("seed", range(1))
@pytest.mark.parametrize("zone", ["Europe/London", "America/New_York", "Pacific/Auckland"])
def test_shows_every_day_expected_and_no_other(zone, seed):
    """What is expected outside pauses is shown; what is listed, for two years ahead."""
    chance = random.Random(f"{zone} {seed}")
    lives = {UUID(int=number + 1): any_life(chance) for number in range(SHARED)}
    entries = tuple(
        CalendarCommitment(
            owner, "Walk", "Walden", None, life, Pace.ON_COURSE, life.term.last_day(), MADE, None
        )
        for owner, life in lives.items()
    )
    sitting = DailySitting(10, 8, 3, None)
    facts = CalendarFacts(UUID(int=10**6), zone, 4, TODAY, 19, sitting, entries, MADE)
    calendar = Calendar.from_ical(to_calendar(facts))
    # The daily sitting is held elsewhere; here it would only cost time.
    for daily in [each for each in calendar.events if each["UID"].startswith(str(facts.reader_id))]:
        calendar.subcomponents.remove(daily)
    shown: dict[str, set[date]] = {}
    for event in recurring_ical_events.of(calendar).between(TODAY, YEARS + timedelta(days=1)):
        shown.setdefault(event["UID"], set()).add(event.start)

    for owner, life in lives.items():
        days = days_of(life, life.term.last_day(), TODAY)
        begin = max(life.term.start, life.asked_from)
        listed = days is None or days.rule is None
        last = begin + timedelta(days=AHEAD) if listed else YEARS
        rhythm = Rhythm(life.term.measure, life.term.start, life.term.last_day())
        expected = {
            day for day in rhythm.expected(begin, min(last, YEARS)) if not life.paused_on(day)
        }
        assert shown.get(f"{owner}@catchword", set()) == expected, life
