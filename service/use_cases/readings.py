"""A reader who read a book again looks at both digests side by side."""

from dataclasses import dataclass
from uuid import UUID

from cards.parts import KeptDigest
from service.use_cases.keeping import finished, opened, readings_beside
from service.use_cases.ports import Desk


@dataclass(frozen=True, slots=True)
class SideBySide:
    """Two readings of one book.

    Attributes:
        earlier, later: by the day they were finished; one without a day stands first.
    """

    earlier: KeptDigest
    later: KeptDigest


def other_readings(desk: Desk, digest_id: UUID) -> tuple[KeptDigest, ...]:
    """Return the other digests of the same book, by the day they were finished.

    The same book is one of the same title and author, whatever the edition.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.reading() as work:
        kept = opened(desk, work, digest_id, None)
        return readings_beside(desk, work, kept)


def beside(desk: Desk, digest_id: UUID, other_id: UUID) -> SideBySide:
    """Return two digests side by side, the earlier reading first.

    Raises:
        DigestMissing: this reader has not both of them.
    """
    with desk.store.reading() as work:
        one = opened(desk, work, digest_id, None)
        other = opened(desk, work, other_id, None)
    earlier, later = sorted((one, other), key=finished)
    return SideBySide(earlier, later)
