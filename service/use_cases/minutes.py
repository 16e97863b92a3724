"""A reader has more minutes today, or fewer."""

from cards.errors import InvalidPreference
from service.use_cases.ports import Desk
from service.use_cases.records import FEWEST_MINUTES, MOST_MINUTES


def set_minutes_today(desk: Desk, minutes: int) -> None:
    """Set how many minutes today's sitting takes; other days keep theirs.

    Raises:
        InvalidPreference: it is less than 1 or more than 120.
    """
    if not FEWEST_MINUTES <= minutes <= MOST_MINUTES:
        raise InvalidPreference(
            f"A day’s sitting takes from {FEWEST_MINUTES} to {MOST_MINUTES} minutes, "
            f"not {minutes}.",
            where="minutes",
        )
    with desk.store.writing() as work:
        reader = work.readers.lock(desk.reader)
        work.days.set_minutes(desk.reader, reader.days.of(desk.now()), minutes)
        work.commit()
