"""What the library's shelves offer the use cases: readers, digests, drafts, texts of books."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from typing import Protocol
from uuid import UUID

from cards.intake.heading_words import Part
from cards.kinds.base import Shelved
from cards.parts import KeptDigest
from cards.weighting import Weighting
from service.use_cases.records import (
    BookFile,
    BookKey,
    DigestEntry,
    Draft,
    Original,
    PartAnchor,
    Reader,
    ReaderId,
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
        """Keep a reader's settings, the revision as given. What was learned of them stays."""
        ...

    def weigh(self, reader: ReaderId, weighting: Weighting) -> None:
        """Have a reader's recall foreseen by these weights from now on."""
        ...


class Digests(Protocol):
    """The digests of one reader's library. Removed ones are returned too, and marked."""

    def get(self, reader: ReaderId, digest_id: UUID) -> KeptDigest | None:
        """Return one digest with every part it holds or held."""
        ...

    def many(self, reader: ReaderId, ids: Iterable[UUID]) -> dict[UUID, KeptDigest]:
        """Return several by id, their links with them, in a fixed number of statements."""
        ...

    def shelf(self, reader: ReaderId, limit: int) -> tuple[Shelved, ...]:
        """Return the books not removed without what is in them, newest first."""
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
        """Return the text of a digest's book, or None where it is not at hand."""
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
