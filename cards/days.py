"""The reader's day: a date in the reader's time zone, turning over at the reader's hour."""

from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from cards.errors import Invalid, InvalidPreference

TURNS_AT = 4
"""Hour at which a day turns over unless the reader says otherwise (design: 04:00)."""


def zone(name: str) -> ZoneInfo:
    """Return the time zone of an IANA name.

    Raises:
        InvalidPreference: there is no such time zone.
    """
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError) as error:
        raise InvalidPreference(
            f"“{name[:60]}” is not a time zone. Give one as Europe/London or America/New_York.",
            where="time_zone",
        ) from error


@dataclass(frozen=True, slots=True)
class Days:
    """Which day of the reader's an instant belongs to.

    Attributes:
        time_zone: IANA name, such as `Europe/London`.
        turns_at: hour of the clock on the wall, 0 to 23, at which a day begins.
    """

    time_zone: str = "UTC"
    turns_at: int = TURNS_AT

    def __post_init__(self) -> None:
        zone(self.time_zone)
        if not 0 <= self.turns_at <= 23:
            raise InvalidPreference(
                f"A day turns over at an hour from 0 to 23, not {self.turns_at}.", where="turns_at"
            )

    def of(self, instant: datetime) -> date:
        """Return the reader's day an aware instant falls in.

        The hours are taken off the clock on the wall, not off the instant, so the
        day turns at the same hour on the days when the clocks change. Where the clocks
        go back over that very hour (at 3 on the Chatham Islands), the hour that is
        lived twice belongs to the day before again. At 4 that happens nowhere.

        Raises:
            Invalid: the reader's clock would leave the calendar, years 1 to 9999.
        """
        try:
            wall = instant.astimezone(zone(self.time_zone)).replace(tzinfo=None)
            return (wall - timedelta(hours=self.turns_at)).date()
        except OverflowError as error:
            raise Invalid(
                f"{instant.isoformat(timespec='minutes')} is beyond the calendar in "
                f"{self.time_zone}."
            ) from error
