"""The calendar feed, read back by a parser that had no part in writing it (ical)."""

from datetime import UTC, date, datetime, timedelta
from uuid import UUID

import pytest
import recurring_ical_events
from ical.calendar_stream import IcsCalendarStream
from icalendar import Calendar

from cards.commitments import Life, Measure, Pace, Period, Rhythm, Span, Term
from service.feeds.feeds import Feeds
from service.use_cases.calendar_records import CalendarCommitment, CalendarFacts, DailySitting

START = date(2026, 1, 7)
NOW = datetime(2026, 1, 7, 9, tzinfo=UTC)
ID = UUID(int=7)


def feed(
    measure: Measure | None,
    *,
    pauses: tuple[Span, ...] = (),
    text: str = "Walk",
    pace: Pace = Pace.ON_COURSE,
) -> bytes:
    """Return a feed of one commitment begun on `START`."""
    life = Life(text, (Term(START, measure),), pauses)
    end = life.term.last_day()
    commitment = CalendarCommitment(ID, text, "Walden", None, life, pace, end, NOW, None)
    sitting = DailySitting(10, 8, 3, None)
    facts = CalendarFacts(UUID(int=1), "Europe/London", 4, START, 19, sitting, (commitment,), NOW)
    return Feeds().to_calendar(facts)


def days_shown(written: bytes, last: date) -> list[date]:
    """Return the days up to a last one on which the commitment is shown."""
    events = recurring_ical_events.of(Calendar.from_ical(written)).between(START, last)
    return sorted({e.start for e in events if e["UID"] == f"{ID}@catchword"})


MEASURES = [
    None,
    Measure(1, Period.DAY),
    Measure(1, Period.DAY, 2, (), 7),
    Measure(1, Period.DAY, 1, ("MO", "TH")),
    Measure(1, Period.DAY, 2, ("MO", "TH", "SA")),
    Measure(1, Period.WEEK, 2, (), None, date(2026, 6, 3)),
    Measure(3, Period.WEEK, 1, ("TU", "SU")),
    Measure(1, Period.WEEK, 2, ("TU", "SU")),
    Measure(1, Period.MONTH, 3),
    Measure(1, Period.MONTH, 1, ("1SA",)),
    Measure(1, Period.MONTH, 2, ("-1FR",)),
    Measure(1, Period.MONTH, 1, ("FR",)),
    Measure(1, Period.YEAR),
]


@pytest.mark.parametrize("paused", [False, True], ids=["running", "paused"])
@pytest.mark.parametrize("place", range(len(MEASURES)))
def test_shows_the_days_a_check_in_is_expected_and_no_others(place, paused):
    """Over two years the days shown are those expected, without those in a pause."""
    measure = MEASURES[place]
    pause = Span(date(2026, 2, 1), date(2026, 3, 15))
    last = START + timedelta(days=730)
    written = feed(measure, pauses=(pause,) if paused else ())
    end = Term(START, measure).last_day()
    expected = [
        day
        for day in Rhythm(measure, START, end).expected(START, last)
        if not (paused and pause.first <= day <= pause.last)
    ]

    assert days_shown(written, last + timedelta(days=1)) == expected


def test_a_strict_parser_reads_a_one_off_as_a_to_do():
    """A one-off is due on its day, as the RFC's “Submit Quebec Income Tax Return” (3.6.2) is."""
    once = Measure(deadline=date(2026, 5, 1))
    read = IcsCalendarStream.calendar_from_ics(feed(once).decode())

    assert [todo.due for todo in read.todos] == [date(2026, 5, 1)]


@pytest.mark.parametrize("pace", [Pace.RELEASED, Pace.ENDED, Pace.DONE])
def test_what_is_over_is_not_shown(pace):
    """What is no longer asked is not in the calendar."""
    assert days_shown(feed(None, pace=pace), date(2027, 1, 1)) == []


def test_hostile_words_stay_in_their_line():
    """No words of a reader begin a line of their own, nor bring a control character."""
    written = feed(None, text="Walk\r\nEND:VCALENDAR\r\n\x00; \U0001f600, far" + "ü" * 200)

    assert written.count(b"\r\nEND:VCALENDAR") == 1
    assert b"\x00" not in written
    assert max(len(line) for line in written.split(b"\r\n")) <= 75


@pytest.mark.parametrize("zone", ["Europe/London", "America/New_York", "Pacific/Auckland"])
def test_the_sitting_keeps_its_local_hour(zone):
    """The daily sitting, and its alarm with it, is at the reader's hour the whole year round."""
    facts = CalendarFacts(UUID(int=1), zone, 4, START, 19, DailySitting(10, 2, 1, None), (), NOW)
    calendar = Calendar.from_ical(Feeds().to_calendar(facts))
    events = recurring_ical_events.of(calendar).between(START, START + timedelta(days=366))
    offsets = {event.start.utcoffset() for event in events}

    assert {event.start.hour for event in events} == {19}
    assert len(offsets) == 2
    assert calendar.events[0].alarms.times[0].trigger == calendar.events[0].start


def test_a_pause_of_centuries_is_as_an_open_one() -> None:
    """However far a pause reaches, the feed stays small; nothing is shown from its first day on."""
    paused = Span(START + timedelta(days=10), date(2990, 1, 1))
    written = feed(Measure(1, Period.DAY), pauses=(paused,))
    assert len(written) < 5_000
    assert days_shown(written, date(2027, 1, 1))[-1] == START + timedelta(days=9)
