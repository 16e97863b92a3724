"""A reader looks through what their books asked of them, and what came of it."""

from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from cards.cautions import caution
from cards.parts import KeptDigest, Part, PartKind
from service.use_cases.library import PAGE
from service.use_cases.ports import Desk
from service.use_cases.records import Tally


@dataclass(frozen=True, slots=True)
class HeldCommitment:
    """One commitment a digest holds.

    Attributes:
        digest: the digest it is in.
        part: its words and identity.
        caution: the caution it carries, or None.
        tally: what came of it so far.
    """

    digest: KeptDigest
    part: Part
    caution: str | None
    tally: Tally


@dataclass(frozen=True, slots=True)
class CommitmentPage:
    """The commitments of one page of the library.

    Attributes:
        today: the reader's day.
        commitments: those of the digest added last first, within it in its own order.
        next: where the following page begins, or None.
    """

    today: date
    commitments: tuple[HeldCommitment, ...]
    next: tuple[datetime, UUID] | None


def list_commitments(
    desk: Desk, after: tuple[datetime, UUID] | None = None, limit: int = PAGE
) -> CommitmentPage:
    """Return the commitments of up to `limit` digests, newest first, beyond `after`.

    A page is so many digests, whether they ask for anything or not; it takes five
    statements however many there are.
    """
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
        entries = work.digests.page(desk.reader, after, limit + 1)
        page = entries[:limit]
        tallies = work.check_ins.tallies(desk.reader, (entry.kept.id for entry in page))
    return CommitmentPage(
        today=reader.days.of(desk.now()),
        commitments=tuple(
            HeldCommitment(entry.kept, part, caution(part.text), tallies.get(part.id, Tally()))
            for entry in page
            for part in entry.kept.held(PartKind.COMMITMENT)
        ),
        next=(page[-1].added_at, page[-1].kept.id) if len(entries) > limit else None,
    )
