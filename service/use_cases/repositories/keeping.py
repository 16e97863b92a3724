"""What keeping what books ask offers the use cases: commitments, decisions, re-readings, talks."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from typing import Protocol
from uuid import UUID

from cards.commitments import Decision
from cards.rereading import Rereading
from cards.talk import Talk
from service.use_cases.commitment_records import KeptCommitment, NewCommitment
from service.use_cases.records import ReaderId
from service.use_cases.reminding_records import FeedAddress, Reminders


class Commitments(Protocol):
    """The commitments of one reader's library."""

    def get(self, reader: ReaderId, commitment_id: UUID) -> KeptCommitment | None:
        """Return one commitment, retired or not."""
        ...

    def of_digests(self, reader: ReaderId, digest_ids: Iterable[UUID]) -> list[KeptCommitment]:
        """Return those of some digests, retired ones too, by digest and number."""
        ...

    def all(self, reader: ReaderId) -> list[KeptCommitment]:
        """Return every one not retired, those of the digest added last first, by number."""
        ...

    def enter(self, reader: ReaderId, new: Sequence[NewCommitment]) -> None:
        """Enter commitments; of one entered before, replace words, day and measure."""
        ...

    def unentered(self, reader: ReaderId) -> list[UUID]:
        """Return the ids of the digests that hold a commitment not entered yet."""
        ...

    def rest(self, reader: ReaderId, days: Mapping[UUID, date | None]) -> None:
        """Keep from which day the items made of some commitments rest, None for not at all."""
        ...


class Decisions(Protocol):
    """The decisions of one reader about their commitments: append-only."""

    def get(self, reader: ReaderId, decision_id: UUID) -> Decision | None:
        """Return one decision, taken back or not."""
        ...

    def of(self, reader: ReaderId, ids: Iterable[UUID]) -> dict[UUID, list[Decision]]:
        """Return the decisions about some commitments, taken back ones too, by day and id."""
        ...

    def all(self, reader: ReaderId) -> dict[UUID, list[Decision]]:
        """Return all decisions by commitment, in one statement."""
        ...

    def add(self, reader: ReaderId, decision: Decision) -> None:
        """Append a decision; one whose id is kept already changes nothing."""
        ...


class Rereadings(Protocol):
    """The re-readings of one reader: append-only."""

    def get(self, reader: ReaderId, rereading_id: UUID) -> Rereading | None:
        """Return one re-reading, taken back or not."""
        ...

    def of_digest(self, reader: ReaderId, digest_id: UUID) -> list[Rereading]:
        """Return those of a book that were not taken back, the latest day first."""
        ...

    def all(self, reader: ReaderId) -> list[Rereading]:
        """Return all that were not taken back, the latest day first."""
        ...

    def add(self, reader: ReaderId, rereading: Rereading) -> None:
        """Append a re-reading; one whose id is kept already changes nothing."""
        ...


class Talks(Protocol):
    """The talks of one reader about their books: append-only."""

    def get(self, reader: ReaderId, talk_id: UUID) -> Talk | None:
        """Return one talk, taken back or not."""
        ...

    def of_digest(self, reader: ReaderId, digest_id: UUID) -> list[Talk]:
        """Return those about a book that were not taken back, the latest day first."""
        ...

    def add(self, reader: ReaderId, talk: Talk) -> None:
        """Append a talk; one whose id is kept already changes nothing."""
        ...


class Withdrawals(Protocol):
    """That facts were taken back: check-ins, decisions, re-readings, talks."""

    def add(
        self, reader: ReaderId, withdrawal_id: UUID, fact_id: UUID, now: datetime, day: date
    ) -> None:
        """Append that a fact was taken back; a second time changes nothing."""
        ...


class Reminding(Protocol):
    """How one reader is reminded."""

    def get(self, reader: ReaderId) -> Reminders:
        """Return what the reader set, the defaults where they set nothing."""
        ...

    def put(self, reader: ReaderId, reminders: Reminders) -> None:
        """Keep what the reader set, the revision as given."""
        ...

    def begin_mail(self, reader: ReaderId, day: date, now: datetime, sha256: str) -> bool:
        """Note that the mail of a day is being sent; False when that was noted before.

        `sha256` is of the secret in its address that ends the mail.
        """
        ...

    def ends_mail(self, reader: ReaderId, sha256: str) -> bool:
        """Tell whether a hash is that of an address in a mail that ends the mail."""
        ...

    def end_mail(self, reader: ReaderId, day: date, sent_at: datetime | None) -> None:
        """Note that the mail of a day was sent; None: it was not, and may be tried again."""
        ...

    def mailed(self, reader: ReaderId, limit: int) -> list[tuple[date, datetime | None]]:
        """Return the latest days a mail was begun for, and when each was sent; newest first."""
        ...

    def addresses(self, reader: ReaderId) -> list[FeedAddress]:
        """Return the addresses of the calendar, revoked ones too, the latest first."""
        ...

    def add_address(self, reader: ReaderId, address: FeedAddress, sha256: str) -> None:
        """Keep a new address with the hash of what opens it."""
        ...

    def revoke(self, reader: ReaderId, address_id: UUID, now: datetime) -> bool:
        """Revoke an address; False when there is none, or it is revoked."""
        ...

    def opens(self, reader: ReaderId, sha256: str) -> bool:
        """Tell whether a hash is that of an address not revoked."""
        ...
