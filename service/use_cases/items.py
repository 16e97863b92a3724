"""A reader, or a program of theirs, looks at single items and their answers."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime
from uuid import UUID

from cards.errors import ItemMissing
from cards.items import KeptItem, occasion_of
from cards.kinds import KINDS
from cards.kinds.base import Cue, KindName, Occasion, Shelved
from service.use_cases.library import PAGE
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import KeptAnswer, Reader


@dataclass(frozen=True, slots=True)
class ItemView:
    """An item as it is shown: its cue, never its answer.

    Attributes:
        kept: the item with its memory.
        title, author: of its book.
        cue: what it shows first, or None for a retired item whose source is gone.
        recall: the probability that it would come back today, None while unasked.
        due_on: the reader's day on which it is due; None while unasked and not let in.
    """

    kept: KeptItem
    title: str
    author: str | None
    cue: Cue | None
    recall: float | None
    due_on: date | None

    @property
    def asks_its_book(self) -> bool:
        """Whether its book is what is asked, so that naming it would give it away."""
        return self.cue is not None and self.kept.item.kind is KindName.SOURCE


@dataclass(frozen=True, slots=True)
class ItemPage:
    """One page of items by id; `next` is where the following one begins, or None."""

    items: tuple[ItemView, ...]
    next: UUID | None


@dataclass(frozen=True, slots=True)
class History:
    """One page of the answers to an item, newest first."""

    answers: tuple[KeptAnswer, ...]
    next: tuple[datetime, UUID] | None


def view(kept: KeptItem, occasion: Occasion, day: date, reader: Reader) -> ItemView:
    """Return an item as it is shown on a day of the reader's."""
    digest = occasion.digest
    shown = not (kept.item.retired or occasion.part.retired)
    return ItemView(
        kept=kept,
        title=digest.title,
        author=digest.author,
        cue=KINDS[kept.item.kind].cue(occasion) if shown else None,
        recall=reader.schedule(kept.item.kind).recall(kept.memory, day) if kept.memory else None,
        due_on=kept.memory.due_on if kept.memory else None,
    )


def list_items(
    desk: Desk,
    after: UUID | None = None,
    limit: int = PAGE,
    digest_id: UUID | None = None,
    kind: KindName | None = None,
) -> ItemPage:
    """Return one page of the items not retired, by id, beyond `after`."""
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
        kept = work.items.page(desk.reader, after, limit + 1, digest_id, kind)
        page = kept[:limit]
        digests = work.digests.many(desk.reader, {each.item.digest_id for each in page})
        shelf = shelf_for(desk, work, page)
    day = reader.days.of(desk.now())
    asked = ((each, occasion_of(each, digests[each.item.digest_id], shelf)) for each in page)
    views = tuple(view(each, occasion, day, reader) for each, occasion in asked)
    return ItemPage(views, page[-1].item.id if len(kept) > limit else None)


def show_item(desk: Desk, item_id: UUID) -> ItemView:
    """Return one item, retired or not.

    Raises:
        ItemMissing: this reader has no such item.
    """
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
        kept, occasion = item_and_occasion(desk, work, item_id)
    return view(kept, occasion, reader.days.of(desk.now()), reader)


MOST_SHELVED = 500
"""Books among which another is chosen or named, the newest first."""
_AMONG_BOOKS = frozenset({KindName.SOURCE, KindName.ACROSS})


def shelf_for(desk: Desk, work: UnitOfWork, kept: Iterable[KeptItem]) -> tuple[Shelved, ...]:
    """Return the reader's books where an item is asked among them, else none."""
    if any(each.item.kind in _AMONG_BOOKS for each in kept):
        return work.digests.shelf(desk.reader, MOST_SHELVED)
    return ()


def item_and_occasion(desk: Desk, work: UnitOfWork, item_id: UUID) -> tuple[KeptItem, Occasion]:
    """Return an item with its next asking.

    Raises:
        ItemMissing: this reader has no such item.
    """
    kept = work.items.get(desk.reader, item_id)
    digest = None if kept is None else work.digests.get(desk.reader, kept.item.digest_id)
    if kept is None or digest is None:
        raise ItemMissing(item_id)
    return kept, occasion_of(kept, digest, shelf_for(desk, work, (kept,)))


def item_history(
    desk: Desk, item_id: UUID, after: tuple[datetime, UUID] | None = None, limit: int = PAGE
) -> History:
    """Return one page of the answers to an item, newest first, beyond `after`.

    Raises:
        ItemMissing: this reader has no such item.
    """
    with desk.store.reading() as work:
        if work.items.get(desk.reader, item_id) is None:
            raise ItemMissing(item_id)
        answers = work.answers.history(desk.reader, item_id, after, limit + 1)
    page = tuple(answers[:limit])
    more = len(answers) > limit
    return History(page, (page[-1].answer.answered_at, page[-1].answer.id) if more else None)
