"""The reader's day against the clock changes that the tz database publishes.

Source: the IANA time zone database (files europe, northamerica, australasia):
Europe/London goes forward on the last Sunday of March at 01:00 UTC and back on the last of
October at 01:00 UTC; America/New_York on 8 March 2026 at 07:00 UTC and 1 November 2026 at
06:00 UTC; Australia/Lord_Howe by half an hour, from +11 to +10:30 on 5 April 2026 at 02:00;
Pacific/Apia had no 30 December 2011, going from -10 to +14 at the end of the 29th.
"""

from datetime import UTC, date, datetime, timedelta

import pytest

from cards.days import Days

LONDON, NEW_YORK = "Europe/London", "America/New_York"
LORD_HOWE, APIA = "Australia/Lord_Howe", "Pacific/Apia"


@pytest.mark.parametrize(
    ("zone", "changes_at", "before", "after"),
    [
        (LONDON, datetime(2026, 3, 29, 1, tzinfo=UTC), 0, 1),
        (LONDON, datetime(2026, 10, 25, 1, tzinfo=UTC), 1, 0),
        (NEW_YORK, datetime(2026, 3, 8, 7, tzinfo=UTC), -5, -4),
        (NEW_YORK, datetime(2026, 11, 1, 6, tzinfo=UTC), -4, -5),
        (LORD_HOWE, datetime(2026, 4, 4, 15, tzinfo=UTC), 11, 10.5),
        (APIA, datetime(2011, 12, 30, 10, tzinfo=UTC), -10, 14),
    ],
)
def test_the_clocks_change_when_the_database_says(zone, changes_at, before, after):
    """A second before and at the published instant the day turns by the old and the new clock."""
    for at, hours in ((changes_at - timedelta(seconds=1), before), (changes_at, after)):
        wall = at + timedelta(hours=hours)
        assert Days(zone, 4).of(at) == (wall - timedelta(hours=4)).date()


@pytest.mark.parametrize(
    ("zone", "turn"),
    [
        (LONDON, datetime(2026, 3, 28, 4, tzinfo=UTC)),  # GMT, the day before
        (LONDON, datetime(2026, 3, 29, 3, tzinfo=UTC)),  # BST: 04:00 came three hours after 00:00
        (LONDON, datetime(2026, 10, 25, 4, tzinfo=UTC)),  # GMT again: five hours after
        (NEW_YORK, datetime(2026, 3, 8, 8, tzinfo=UTC)),  # EDT
        (NEW_YORK, datetime(2026, 11, 1, 9, tzinfo=UTC)),  # EST
        (LORD_HOWE, datetime(2026, 4, 4, 17, 30, tzinfo=UTC)),  # +10:30
    ],
)
def test_a_day_turns_at_four_on_the_wall_when_the_clocks_change(zone, turn):
    """The day turns at 04:00 on the wall on the very morning of the change."""
    days = Days(zone)
    assert days.of(turn) == days.of(turn - timedelta(seconds=1)) + timedelta(days=1)


@pytest.mark.parametrize(
    ("zone", "first", "length"),
    [
        (LONDON, datetime(2026, 3, 28, 4, tzinfo=UTC), 23),
        (LONDON, datetime(2026, 10, 24, 3, tzinfo=UTC), 25),
        (NEW_YORK, datetime(2026, 3, 7, 9, tzinfo=UTC), 23),
        (NEW_YORK, datetime(2026, 10, 31, 8, tzinfo=UTC), 25),
        (LORD_HOWE, datetime(2026, 4, 3, 17, tzinfo=UTC), 24.5),
    ],
)
def test_a_day_is_as_long_as_the_change_makes_it(zone, first, length):
    """The reader's day before a change has 23, 25 or 24.5 hours, from turn to turn."""
    days = Days(zone)
    turned = first + timedelta(hours=length)
    assert days.of(first) - timedelta(days=1) == days.of(first - timedelta(seconds=1))
    assert days.of(turned - timedelta(seconds=1)) == days.of(first)
    assert days.of(turned) == days.of(first) + timedelta(days=1)


def test_the_day_apia_skipped_is_nobodys():
    """No instant around the change falls on 30 December 2011 but the night up to the turn.

    The hours from 00:00 to 04:00 on the 31st belong to the reader's day before: to the 30th,
    which the clock on the wall never showed by day.
    """
    days = Days(APIA)
    change = datetime(2011, 12, 30, 10, tzinfo=UTC)
    assert days.of(change - timedelta(seconds=1)) == date(2011, 12, 29)
    assert days.of(change) == date(2011, 12, 30)
    assert days.of(change + timedelta(hours=4)) == date(2011, 12, 31)
    assert Days(APIA, 0).of(change) == date(2011, 12, 31)
