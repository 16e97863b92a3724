"""The reader's day, by examples."""

from datetime import UTC, date, datetime, timedelta, timezone

import pytest

from cards.days import TURNS_AT, Days, zone
from cards.errors import Invalid, InvalidPreference


@pytest.mark.parametrize(
    ("hour", "minute", "expected"),
    [
        (0, 0, date(2026, 3, 9)),
        (3, 59, date(2026, 3, 9)),
        (4, 0, date(2026, 3, 10)),
        (23, 59, date(2026, 3, 10)),
    ],
)
def test_a_day_begins_at_four(hour, minute, expected):
    """Small hours belong to the day before, four o'clock to the new one."""
    assert TURNS_AT == 4
    assert Days().of(datetime(2026, 3, 10, hour, minute, tzinfo=UTC)) == expected


def test_a_reader_may_turn_the_day_at_midnight():
    """With the turn at 0 the reader's day is the calendar's."""
    assert Days("UTC", 0).of(datetime(2026, 3, 10, tzinfo=UTC)) == date(2026, 3, 10)


def test_an_instant_is_read_on_the_readers_wall():
    """One instant is another day in another zone, however it was written down."""
    at = datetime(2026, 3, 10, 20, tzinfo=UTC)
    assert Days("Asia/Tokyo").of(at) == date(2026, 3, 11)
    assert Days("America/New_York").of(at) == date(2026, 3, 10)
    assert Days("Asia/Tokyo").of(at.astimezone(timezone(timedelta(hours=-9)))) == date(2026, 3, 11)


@pytest.mark.parametrize("name", ["", "Nowhere", "Europe", "../etc/passwd", "a" * 500, "UTC\x00"])
def test_an_unknown_zone_is_refused_in_words(name):
    """What is no time zone is refused, and the setting is named."""
    with pytest.raises(InvalidPreference) as refusal:
        zone(name)
    assert refusal.value.where == "time_zone"
    assert "is not a time zone" in refusal.value.message


@pytest.mark.parametrize("hour", [-1, 24])
def test_an_hour_no_clock_shows_is_refused(hour):
    """A day turns at an hour from 0 to 23."""
    with pytest.raises(InvalidPreference) as refusal:
        Days("UTC", hour)
    assert refusal.value.where == "turns_at"


@pytest.mark.parametrize(
    ("name", "instant"),
    [
        ("America/New_York", datetime(1, 1, 1, tzinfo=UTC)),
        ("UTC", datetime(1, 1, 1, 2, tzinfo=UTC)),
        ("Asia/Tokyo", datetime(9999, 12, 31, 23, tzinfo=UTC)),
    ],
)
def test_an_instant_at_the_end_of_the_calendar_is_refused(name, instant):
    """Where the reader's clock would leave the calendar, the refusal says so."""
    with pytest.raises(Invalid, match="calendar"):
        Days(name).of(instant)
