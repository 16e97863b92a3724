"""What the use cases need of the store: a repository for each thing kept in it.

The store satisfies these protocols without importing them being necessary.
"""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from typing import Protocol
from uuid import UUID

from cards.answers import Answer
from cards.commitments import CheckIn
from cards.intake.heading_words import Part
from cards.items import Item, KeptItem, Standing
from cards.kinds.base import KindName
from cards.parts import Care, KeptDigest
from cards.schedule import Memory
from service.use_cases.records import (
    BookFile,
    BookKey,
    DigestEntry,
    Draft,
    KeptAnswer,
    Original,
    PartAnchor,
    Reader,
    ReaderId,
    Tally,
    Version,
    VersionEntry,
)


class Readers(Protocol):
    """The readers of this house."""

    def get(self, reader: ReaderId) -> Reader:
        """Return a reader; one never seen before has the settings given to `Store`."""
        ...

    def lock(self, reader: ReaderId) -> Reader:
        """Return a reader, and let no other transaction write their digests until the end."""
        ...

    def put(self, reader: Reader) -> None:
        """Keep a reader's settings, the revision as given."""
        ...


class Digests(Protocol):
    """The digests of one reader's library. Removed ones are returned too, and marked."""

    def get(self, reader: ReaderId, digest_id: UUID) -> KeptDigest | None:
        """Return one digest with every part it holds or held."""
        ...

    def many(self, reader: ReaderId, ids: Iterable[UUID]) -> dict[UUID, KeptDigest]:
        """Return several by id, in a fixed number of statements."""
        ...

    def alike(self, reader: ReaderId, key: BookKey) -> list[KeptDigest]:
        """Return those with the same folded title and author, or the same ISBN; oldest first."""
        ...

    def from_file(self, reader: ReaderId, name: str) -> list[KeptDigest]:
        """Return those whose latest original bears a file name; oldest first."""
        ...

    def put(self, reader: ReaderId, kept: KeptDigest, key: BookKey, now: datetime) -> None:
        """Keep a digest: insert it, or replace its facts and parts, the revision as given."""
        ...

    def page(
        self, reader: ReaderId, after: tuple[datetime, UUID] | None, limit: int
    ) -> list[DigestEntry]:
        """Return those not removed, newest first by (added_at, id), beyond `after`."""
        ...

    def keep_original(self, reader: ReaderId, digest_id: UUID, original: Original) -> None:
        """Keep a file a digest was read from; the same bytes for the same digest only once.

        Keeping the same bytes again makes them the latest original.
        """
        ...

    def original(self, reader: ReaderId, digest_id: UUID) -> Original | None:
        """Return the latest file a digest was read from, if it came from one."""
        ...

    def original_name(self, reader: ReaderId, digest_id: UUID) -> str | None:
        """Return the name of that file without loading it."""
        ...

    def original_hash(self, reader: ReaderId, digest_id: UUID) -> str | None:
        """Return the sha256 of that file without loading it."""
        ...


class Versions(Protocol):
    """The versions of the digests of one reader: append-only."""

    def add(self, reader: ReaderId, version: Version) -> None:
        """Append the version of a digest at its revision; one already kept changes nothing."""
        ...

    def get(self, reader: ReaderId, digest_id: UUID, revision: int) -> Version | None:
        """Return one version of a digest."""
        ...

    def page(
        self, reader: ReaderId, digest_id: UUID, before: int | None, limit: int
    ) -> list[VersionEntry]:
        """Return the versions of a digest, newest first, of revisions below `before`."""
        ...

    def wordings(
        self, reader: ReaderId, digest_id: UUID, limit: int
    ) -> dict[UUID, tuple[str, ...]]:
        """Return the wordings each part had in the latest `limit` versions, newest first.

        Each wording once; parts that were in none of them are left out.
        """
        ...


class Drafts(Protocol):
    """The drafts of one reader."""

    def get(self, reader: ReaderId, draft_id: UUID) -> Draft | None:
        """Return one draft."""
        ...

    def page(
        self, reader: ReaderId, after: tuple[datetime, UUID] | None, limit: int
    ) -> list[Draft]:
        """Return the drafts, the last changed first by (changed_at, id), beyond `after`."""
        ...

    def count(self, reader: ReaderId) -> int:
        """Return how many drafts there are."""
        ...

    def put(self, reader: ReaderId, draft: Draft) -> None:
        """Keep a draft: insert it, or replace what is typed in it, the revision as given."""
        ...

    def keep_original(self, reader: ReaderId, draft_id: UUID, original: Original) -> None:
        """Keep the file a draft was read from."""
        ...

    def original(self, reader: ReaderId, draft_id: UUID) -> Original | None:
        """Return the file a draft was read from, or None."""
        ...

    def drop(self, reader: ReaderId, draft_id: UUID) -> None:
        """Forget a draft and its file; nothing when there is none."""
        ...


class Headings(Protocol):
    """The heading words of one reader's own."""

    def all(self, reader: ReaderId) -> dict[str, Part]:
        """Return the words as the reader wrote them, with the part each announces, by word."""
        ...

    def put(self, reader: ReaderId, words: Mapping[str, Part]) -> None:
        """Keep these words in place of all there were."""
        ...


class Books(Protocol):
    """The texts of one reader's books, and where quotations were found in them."""

    def get(self, reader: ReaderId, digest_id: UUID) -> BookFile | None:
        """Return the text of a digest's book."""
        ...

    def name(self, reader: ReaderId, digest_id: UUID) -> str | None:
        """Return the name of its file without loading it."""
        ...

    def put(self, reader: ReaderId, digest_id: UUID, book: BookFile) -> None:
        """Keep the text of a digest's book in place of the one there was."""
        ...

    def drop(self, reader: ReaderId, digest_id: UUID) -> None:
        """Forget the text of a digest's book; the anchors stay."""
        ...

    def anchors(self, reader: ReaderId, digest_id: UUID) -> list[PartAnchor]:
        """Return where the quotations of a digest were found, retired ones too, by part."""
        ...

    def put_anchors(self, reader: ReaderId, digest_id: UUID, anchors: Sequence[PartAnchor]) -> None:
        """Keep anchors, each in place of the one its quotation had."""
        ...


class Items(Protocol):
    """The items of one reader's library."""

    def get(self, reader: ReaderId, item_id: UUID) -> KeptItem | None:
        """Return one item, retired or not."""
        ...

    def lock(self, reader: ReaderId, item_id: UUID) -> KeptItem | None:
        """Return one item, and let no other transaction change it until the end of this one."""
        ...

    def of_digest(self, reader: ReaderId, digest_id: UUID) -> list[KeptItem]:
        """Return all items of a digest, retired ones too, by kind and number."""
        ...

    def standings(
        self, reader: ReaderId, digest_ids: Iterable[UUID]
    ) -> dict[UUID, dict[Standing, int]]:
        """Return how many items of each digest, not retired, stand how, in one statement.

        A standing no item has is left out, and so is a digest without items.
        """
        ...

    def put(
        self,
        reader: ReaderId,
        items: Sequence[Item],
        added_at: datetime,
        care: Care = Care.STEADY,
    ) -> None:
        """Keep items: new ones as unasked, known ones with their number, retirement and care.

        The unasked ones of a resting book wait and are not let in (`unasked`).
        """
        ...

    def remember(self, reader: ReaderId, item_id: UUID, memory: Memory | None) -> None:
        """Keep what the answers to an item come to, None when none is left."""
        ...

    def called(self, reader: ReaderId, day: date, limit: int) -> list[KeptItem]:
        """Return items not retired that a sitting on `day` asks, by call day and id."""
        ...

    def unasked(self, reader: ReaderId, limit: int) -> list[KeptItem]:
        """Return, of each kind, the first `limit` unasked items not retired nor resting.

        First are those of the digest added first, then by their number.
        """
        ...

    def first_asked(self, reader: ReaderId, day: date) -> dict[KindName, int]:
        """Return how many items of each kind were asked for the first time on a day."""
        ...

    def next_call(self, reader: ReaderId, day: date) -> date | None:
        """Return the first day after `day` on which something is asked, or None."""
        ...

    def page(
        self,
        reader: ReaderId,
        after: UUID | None,
        limit: int,
        digest_id: UUID | None = None,
        kind: KindName | None = None,
    ) -> list[KeptItem]:
        """Return items not retired by id, beyond `after`."""
        ...


class Answers(Protocol):
    """The answers of one reader: append-only."""

    def get(self, reader: ReaderId, answer_id: UUID) -> KeptAnswer | None:
        """Return one answer, taken back or not."""
        ...

    def of_item(self, reader: ReaderId, item_id: UUID) -> list[Answer]:
        """Return the answers to an item that were not taken back, in the order they happened."""
        ...

    def history(
        self, reader: ReaderId, item_id: UUID, after: tuple[datetime, UUID] | None, limit: int
    ) -> list[KeptAnswer]:
        """Return all answers to an item, newest first by (answered_at, id), beyond `after`."""
        ...

    def add(self, reader: ReaderId, answer: Answer, received_at: datetime) -> bool:
        """Append an answer; False, and nothing is kept, when its id is taken already."""
        ...

    def take_back(self, reader: ReaderId, fact_id: UUID, answer_id: UUID, now: datetime) -> None:
        """Append the fact that an answer was taken back."""
        ...


class CheckIns(Protocol):
    """The check-ins of one reader: append-only."""

    def add(self, reader: ReaderId, check_in: CheckIn) -> None:
        """Append a check-in; one whose id is already kept changes nothing."""
        ...

    def of_digest(self, reader: ReaderId, digest_id: UUID) -> list[CheckIn]:
        """Return the check-ins on a digest's commitments, by day and id."""
        ...

    def tallies(self, reader: ReaderId, digest_ids: Iterable[UUID]) -> dict[UUID, Tally]:
        """Return what came of each commitment of several digests, in two statements.

        One nobody checked in on is left out.
        """
        ...
