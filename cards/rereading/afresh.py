"""When what a re-reading was for is asked afresh."""

from collections.abc import Iterable
from datetime import date, timedelta
from hashlib import blake2b
from uuid import UUID

WITHIN = 3
"""Days after a re-reading over which its items are spread: soon, and not all in one sitting."""


def days_afresh(items: Iterable[UUID], day: date) -> dict[UUID, date]:
    """Return the day each item is asked afresh on, one of the next three after a day.

    By a hash of the item's id, so that it depends on nothing else.
    """
    return {item: day + timedelta(days=1 + _place(item)) for item in items}


def _place(item: UUID) -> int:
    seed = blake2b(item.bytes, digest_size=8, person=b"asked afresh").digest()
    return int.from_bytes(seed, "big") % WITHIN
