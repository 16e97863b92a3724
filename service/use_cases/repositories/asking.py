"""What asking offers the use cases: items, answers, check-ins, days, links, sheets."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from typing import Protocol
from uuid import UUID

from cards.answers import Answer
from cards.commitments import CheckIn
from cards.items import Item, KeptItem, Standing
from cards.kinds.base import KindName
from cards.parts import Care, Link
from cards.schedule import Memory
from service.use_cases.records import (
    KeptAnswer,
    ReaderId,
    Tally,
)
from service.use_cases.retaining_records import NeverAsked, StandingItems
from service.use_cases.sitting_records import DueItems, GivenOn, Sheet


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

    def many(self, reader: ReaderId, ids: Iterable[UUID]) -> dict[UUID, KeptItem]:
        """Return several by id, retired or not; those there are none of are left out."""
        ...

    def due(self, reader: ReaderId, day: date) -> DueItems:
        """Return all items not retired that are due on a day and were not asked on it yet.

        Column by column and without turning ids into UUIDs: a library of many years can
        have thousands due, of which a sitting takes a dozen.
        """
        ...

    def soon(self, reader: ReaderId, day: date, limit: int) -> DueItems:
        """Return the first `limit` items due after a day, resting ones left out, as `due` does.

        Those asked on the day are among them.
        """
        ...

    def chosen(self, reader: ReaderId, keys: Iterable[object]) -> list[KeptItem]:
        """Return the items of some of the keys that `due` gave, in the order of the keys."""
        ...

    def returning(self, reader: ReaderId, day: date, limit: int) -> list[KeptItem]:
        """Return the items whose last answer, on `day`, came back blank, the first first."""
        ...

    def commitments(self, reader: ReaderId, day: date, limit: int) -> list[KeptItem]:
        """Return the first `limit` `restate` items asked before that do not rest on a day.

        By the day due.
        """
        ...

    def ask_afresh(self, reader: ReaderId, days: Mapping[UUID, date]) -> None:
        """Have items asked afresh on a day of each; those never asked wait as they do."""
        ...

    def afresh(self, reader: ReaderId, day: date, limit: int) -> list[KeptItem]:
        """Return the first `limit` items that were to be asked afresh by a day and were not yet."""
        ...

    def remembered(self, reader: ReaderId) -> DueItems:
        """Return every item not retired that has a memory, column by column as `due` does."""
        ...

    def standing(self, reader: ReaderId, day: date) -> StandingItems:
        """Return every item with a memory that is still asked, column by column, and its book.

        What is retired, or asks for a commitment that is over on a day, is asked no longer.
        """
        ...

    def still_unasked(self, reader: ReaderId, day: date) -> list[NeverAsked]:
        """Return how many items of each book and kind were never asked, resting books too.

        In the order the books came in, without those that are asked no longer.
        """
        ...

    def unasked(self, reader: ReaderId, day: date, limit: int) -> list[KeptItem]:
        """Return, of each kind, the first `limit` unasked items that do not rest on a day.

        Nor are they retired, nor of a resting book. First are those of the digest added
        first, then by their number.
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

    def on(self, reader: ReaderId, day: date) -> list[GivenOn]:
        """Return the answers given on a day and not taken back, in the order they happened."""
        ...

    def last_day(self, reader: ReaderId, before: date) -> date | None:
        """Return the latest day before `before` on which an answer was given, or None."""
        ...

    def seconds(self, reader: ReaderId, limit: int) -> dict[KindName, tuple[int, ...]]:
        """Return, of each kind, what the latest measured answers took; newest first.

        At most `limit` of a kind, looked for among the reader's latest answers: a kind not asked
        for long has none.
        """
        ...


class CheckIns(Protocol):
    """The check-ins of one reader: append-only."""

    def add(self, reader: ReaderId, check_in: CheckIn) -> None:
        """Append a check-in; one whose id is already kept changes nothing."""
        ...

    def get(self, reader: ReaderId, check_in_id: UUID) -> CheckIn | None:
        """Return one check-in, taken back or not."""
        ...

    def of_digest(self, reader: ReaderId, digest_id: UUID) -> list[CheckIn]:
        """Return the check-ins on a digest's commitments, taken back ones left out.

        By day and id.
        """
        ...

    def of_commitment(self, reader: ReaderId, commitment_id: UUID, limit: int) -> list[CheckIn]:
        """Return the latest check-ins on a commitment, taken back ones too, the latest first."""
        ...

    def count_on(self, reader: ReaderId, commitment_id: UUID, day: date) -> int:
        """Return how many check-ins on a commitment are about a day, taken back ones too."""
        ...

    def since(self, reader: ReaderId, first_days: Mapping[UUID, date]) -> dict[UUID, list[CheckIn]]:
        """Return the check-ins on commitments about a day or later, each from its own on.

        Taken back ones too, in any order; some about earlier days may be among them. A few
        statements, however many commitments there are.
        """
        ...

    def tallies(self, reader: ReaderId, ids: Iterable[UUID]) -> dict[UUID, Tally]:
        """Return what came of each of several commitments, in two statements.

        One nobody checked in on is left out, and so is what was taken back.
        """
        ...


class SittingDays(Protocol):
    """What one reader set for single days: the minutes, and what is left out."""

    def minutes(self, reader: ReaderId, day: date) -> int | None:
        """Return the minutes set for a day, or None."""
        ...

    def set_minutes(self, reader: ReaderId, day: date, minutes: int) -> None:
        """Set the minutes for a day, in place of any set before."""
        ...

    def left_out(self, reader: ReaderId, day: date) -> dict[UUID, datetime]:
        """Return the items left out for a day, with the instant each was."""
        ...

    def leave_out(self, reader: ReaderId, item_id: UUID, day: date, now: datetime) -> None:
        """Leave an item out for a day; a second time changes nothing."""
        ...

    def take_in(self, reader: ReaderId, item_id: UUID, day: date) -> None:
        """Undo that an item is left out for a day; nothing when it is not."""
        ...


class Links(Protocol):
    """The links of one reader's points to other books. `Digests` hands them out with a digest."""

    def get(self, reader: ReaderId, link_id: UUID) -> Link | None:
        """Return one link, unless it was dropped."""
        ...

    def put(self, reader: ReaderId, link: Link, now: datetime) -> None:
        """Keep a link; the same point and book again replace what it says of the why."""
        ...

    def drop(self, reader: ReaderId, link_id: UUID) -> None:
        """Forget a link; nothing when there is none."""
        ...

    def leading_to(self, reader: ReaderId, book_id: UUID) -> list[UUID]:
        """Return the ids of the digests with a point linked to a book, each once, by id."""
        ...


class Sheets(Protocol):
    """The sittings one reader had printed."""

    def get(self, reader: ReaderId, sheet_id: UUID) -> Sheet | None:
        """Return one sheet."""
        ...

    def put(self, reader: ReaderId, sheet: Sheet) -> None:
        """Keep a sheet; one whose id is kept already replaces what became of it."""
        ...

    def open(self, reader: ReaderId, limit: int) -> list[Sheet]:
        """Return the latest sheets whose answers were not entered yet, newest first."""
        ...
