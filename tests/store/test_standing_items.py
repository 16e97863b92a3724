"""What plans and figures of what is known are made from: the items as they stand."""

from dataclasses import replace
from datetime import timedelta

from cards.commitments import Commitment
from cards.kinds.base import KindName
from cards.parts import Care, PartKind
from service.store.sql_store import SqlStore
from service.use_cases.commitment_records import NewCommitment
from service.use_cases.records import ReaderId
from service.use_cases.retaining_records import NeverAsked
from tests.store.libraries import NOW, TODAY, TOMORROW, a_book, a_memory, shelve


def test_items_stand_with_their_books(store: SqlStore, reader: ReaderId) -> None:
    """Columns as long as one another, of what is asked: nothing retired, no commitment over."""
    with store.writing() as work:
        book = a_book()
        theme, restate, place, retired, *_ = made = shelve(work, reader, book)
        for each in made[:4]:
            work.items.remember(reader, each.id, a_memory(TOMORROW))
        work.items.put(reader, [replace(retired, retired=True)], NOW)
        work.items.put(reader, [theme, restate, place], NOW, Care.CLOSE)
        (commitment,) = book.held(PartKind.COMMITMENT)
        found = work.items.standing(reader, TODAY)
        assert sorted(found.kinds) == [KindName.PLACE, KindName.RESTATE, KindName.THEME]
        assert set(found.cares) == {Care.CLOSE}
        assert list(found.books) == [book.id] * 3
        assert (found.stability[0], found.difficulty[0]) == (3.25, 5.5)
        assert (found.last_days[0], found.due_on[0]) == (TODAY, TOMORROW)
        kept = Commitment(commitment.id, commitment.text, TODAY, TODAY)
        work.commitments.enter(reader, [NewCommitment(kept, book.id)])
        work.commitments.rest(reader, {commitment.id: TODAY})
        assert len(work.items.standing(reader, TODAY)) == 2
        assert len(work.items.standing(reader, TODAY - timedelta(days=1))) == 3


def test_what_was_never_asked_is_counted(store: SqlStore, reader: ReaderId) -> None:
    """By book, in the order they came in, and kind; a book at rest too, and says so."""
    with store.writing() as work:
        later, earlier = a_book(), a_book("Of Bells", quotations=1)
        rested = shelve(work, reader, later)
        first, *_ = shelve(work, reader, earlier, NOW - timedelta(days=1))
        work.items.put(reader, rested, NOW, Care.RESTING)
        work.items.remember(reader, first.id, a_memory())
        assert work.items.still_unasked(reader, TODAY) == [
            NeverAsked(earlier.id, Care.STEADY, KindName.PLACE, 1),
            NeverAsked(earlier.id, Care.STEADY, KindName.RESTATE, 1),
            NeverAsked(later.id, Care.RESTING, KindName.PLACE, 3),
            NeverAsked(later.id, Care.RESTING, KindName.RESTATE, 1),
            NeverAsked(later.id, Care.RESTING, KindName.THEME, 1),
        ]


def test_an_empty_library_has_nothing_standing(store: SqlStore, reader: ReaderId) -> None:
    """No columns, and nothing unasked."""
    with store.reading() as work:
        assert len(work.items.standing(reader, TODAY)) == 0
        assert work.items.still_unasked(reader, TODAY) == []
