"""The items of a reader's library."""

from dataclasses import replace
from datetime import timedelta
from uuid import UUID, uuid4

from cards.answers import Grade
from cards.items import HELD_FROM, KeptItem, Standing
from cards.kinds.base import KindName
from cards.parts import Care
from service.store.sql_store import SqlStore
from service.use_cases.records import ReaderId
from tests.store.libraries import NOW, TODAY, TOMORROW, a_book, a_memory, shelve
from tests.store.statements import Statements


def ids(kept: list[KeptItem]) -> list[UUID]:
    """Return the ids of some items, in their order."""
    return [one.item.id for one in kept]


def test_put_again_keeps_the_memory(store: SqlStore, reader: ReaderId) -> None:
    """A known item takes its new number and retirement, and remembers what it did."""
    with store.writing() as work:
        item = shelve(work, reader, a_book())[0]
        work.items.remember(reader, item.id, a_memory())
        moved = replace(item, number=4, retired=True)
        work.items.put(reader, [moved], NOW + timedelta(days=1))
        assert work.items.get(reader, item.id) == KeptItem(moved, a_memory())


def test_putting_nothing(store: SqlStore, reader: ReaderId) -> None:
    """No items can be put, and none are there then."""
    with store.writing() as work:
        work.items.put(reader, [], NOW)
        assert work.items.page(reader, None, 10) == []


def test_of_digest_is_by_kind_and_number(store: SqlStore, reader: ReaderId) -> None:
    """All items of a digest come, retired ones too, by kind and number; no other digest's."""
    book = a_book(quotations=11)
    with store.writing() as work:
        made = shelve(work, reader, book)
        shelve(work, reader, a_book("Of Harbours"))
        gone = replace(made[-1], retired=True)
        work.items.put(reader, [gone], NOW)
        kept = work.items.of_digest(reader, book.id)
    expected = sorted([*made[:-1], gone], key=lambda item: (item.kind.value, item.number))
    assert [one.item for one in kept] == expected


def test_lock_returns_the_item(store: SqlStore, reader: ReaderId) -> None:
    """Locking returns the item as it is, and nothing for one that is not there."""
    with store.writing() as work:
        item = shelve(work, reader, a_book())[0]
        assert work.items.lock(reader, item.id) == KeptItem(item, None)
        assert work.items.lock(reader, uuid4()) is None


def test_remembering_nothing_makes_it_unasked_again(store: SqlStore, reader: ReaderId) -> None:
    """An item whose answers were all taken back is unasked and called no more."""
    with store.writing() as work:
        item = shelve(work, reader, a_book())[0]
        work.items.remember(reader, item.id, a_memory())
        assert len(work.items.remembered(reader)) == 1
        work.items.remember(reader, item.id, None)
        assert len(work.items.remembered(reader)) == 0
        assert item.id in ids(work.items.unasked(reader, TODAY, 9))
        assert work.items.first_asked(reader, TODAY) == {}


def test_unasked_are_the_first_of_each_kind(store: SqlStore, reader: ReaderId) -> None:
    """Of each kind come as many as asked for: of the digest added first, then by number.

    An item that an edit added later still belongs to the digest that was added first.
    """
    early, late = a_book("Early", quotations=3), a_book("Late", quotations=3)
    with store.writing() as work:
        of_late = shelve(work, reader, late, NOW)
        of_early = shelve(work, reader, early, NOW - timedelta(days=1))
        first, added_by_edit = of_early[2], of_early[-1]
        work.items.remember(reader, of_early[3].id, a_memory())
        unasked = work.items.unasked(reader, TODAY, 3)
        by_kind = {
            kind: ids([one for one in unasked if one.item.kind is kind]) for kind in KindName
        }
    assert {kind: found for kind, found in by_kind.items() if found} == {
        KindName.THEME: [of_early[0].id, of_late[0].id],
        KindName.RESTATE: [of_early[1].id, of_late[1].id],
        KindName.PLACE: [first.id, added_by_edit.id, of_late[2].id],
    }


def test_an_item_added_by_an_edit_keeps_its_digests_turn(store: SqlStore, reader: ReaderId) -> None:
    """Items an edit adds are let in with their digest, before those of a digest added later."""
    early, late = a_book("Early", quotations=1), a_book("Late", quotations=1)
    with store.writing() as work:
        *_, added_by_edit = shelve(work, reader, early, NOW)
        work.items.remember(reader, added_by_edit.id, a_memory())
        *_, of_late = shelve(work, reader, late, NOW + timedelta(days=1))
        longer = replace(
            early,
            parts=(*early.parts, replace(early.parts[-1], id=uuid4(), number=2)),
        )
        *_, new = shelve(work, reader, longer, NOW + timedelta(days=2))
        places = [
            one.item.id
            for one in work.items.unasked(reader, TODAY, 5)
            if one.item.kind is KindName.PLACE
        ]
    assert places == [new.id, of_late.id]


def test_unasked_leaves_out_the_retired(store: SqlStore, reader: ReaderId) -> None:
    """A retired item is not let in."""
    with store.writing() as work:
        made = shelve(work, reader, a_book())
        work.items.put(reader, [replace(item, retired=True) for item in made], NOW)
        assert work.items.unasked(reader, TODAY, 5) == []


def test_unasked_leaves_out_the_resting(store: SqlStore, reader: ReaderId) -> None:
    """Unasked items of a resting book are not let in; with another care they are, at once."""
    with store.writing() as work:
        made = shelve(work, reader, a_book())
        work.items.remember(reader, made[0].id, a_memory())
        work.items.put(reader, made, NOW, Care.RESTING)
        assert work.items.unasked(reader, TODAY, 5) == []
        assert len(work.items.due(reader, TOMORROW)) == 1
        assert {one.care for one in work.items.page(reader, None, 9)} == {Care.RESTING}
        for care in (Care.CLOSE, Care.STEADY):
            work.items.put(reader, made, NOW, care)
            unasked = work.items.unasked(reader, TODAY, 5)
            assert {one.item.id for one in unasked} == {item.id for item in made[1:]}
            assert {one.care for one in unasked} == {care}


def test_first_asked_counts_a_day(store: SqlStore, reader: ReaderId) -> None:
    """Items are counted on the day of their first answer, and on no other."""
    with store.writing() as work:
        one, two, three, *_ = shelve(work, reader, a_book())
        work.items.remember(reader, one.id, a_memory(first=TODAY))
        work.items.remember(reader, two.id, a_memory(first=TODAY))
        work.items.remember(reader, three.id, a_memory(first=TODAY - timedelta(days=1)))
        assert sum(work.items.first_asked(reader, TODAY).values()) == 2
        assert sum(work.items.first_asked(reader, TODAY - timedelta(days=1)).values()) == 1
        assert work.items.first_asked(reader, TOMORROW) == {}


def test_next_call_is_the_first_day_after(store: SqlStore, reader: ReaderId) -> None:
    """The next call is the first later day on which an item that is not retired is called."""
    with store.writing() as work:
        one, two, three, *_ = shelve(work, reader, a_book())
        work.items.remember(reader, one.id, a_memory(TODAY))
        work.items.remember(reader, two.id, a_memory(TODAY + timedelta(days=2)))
        work.items.remember(reader, three.id, a_memory(TODAY + timedelta(days=4)))
        assert work.items.next_call(reader, TODAY) == TODAY + timedelta(days=2)
        work.items.put(reader, [replace(two, retired=True)], NOW)
        assert work.items.next_call(reader, TODAY) == TODAY + timedelta(days=4)
        assert work.items.next_call(reader, TODAY + timedelta(days=4)) is None


def test_pages_are_by_id_and_meet(store: SqlStore, reader: ReaderId) -> None:
    """Page after page gives every item not retired once, by id, within a digest or a kind."""
    book, other = a_book(quotations=7), a_book("Of Harbours", quotations=4)
    with store.writing() as work:
        made = shelve(work, reader, book)
        more = shelve(work, reader, other)
        work.items.put(reader, [replace(made[0], retired=True)], NOW)

        def all_pages(digest_id: UUID | None, kind: KindName | None) -> list[UUID]:
            seen: list[UUID] = []
            while page := work.items.page(reader, seen[-1] if seen else None, 3, digest_id, kind):
                seen += ids(page)
            return seen

        held = [*made[1:], *more]
        for digest_id in (None, book.id, other.id):
            for kind in (None, *KindName):
                assert all_pages(digest_id, kind) == sorted(
                    (
                        item.id
                        for item in held
                        if digest_id in {None, item.digest_id} and kind in {None, item.kind}
                    ),
                    key=lambda one: one.bytes,
                )


def test_standings_count_the_items_of_each_digest(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """One statement counts the items not retired of any number of digests by their standing."""
    book, other = a_book(quotations=4), a_book("Of Harbours", quotations=1)
    bare = replace(a_book("Of Tides"), parts=())
    with store.writing() as work:
        faded, settling, held, gone, *_ = shelve(work, reader, book)
        shelve(work, reader, other)
        shelve(work, reader, bare)
        work.items.remember(reader, faded.id, a_memory(grade=Grade.BLANK))
        work.items.remember(reader, settling.id, a_memory())
        work.items.remember(reader, held.id, replace(a_memory(), stability=HELD_FROM))
        work.items.put(reader, [replace(gone, retired=True)], NOW)
        statements.clear()
        assert work.items.standings(reader, (each.id for each in (book, other, bare))) == {
            book.id: {
                Standing.FADED: 1,
                Standing.SETTLING: 1,
                Standing.HELD: 1,
                Standing.UNASKED: 2,
            },
            other.id: {Standing.UNASKED: 3},
        }
        assert len(statements) == 1
        assert work.items.standings(reader, []) == {}
