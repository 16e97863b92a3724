"""The drafts of a reader."""

from dataclasses import replace
from datetime import timedelta
from uuid import uuid4

import pytest
from sqlalchemy import text

from cards.errors import Invalid
from service.store.errors import StoreContradiction
from service.store.sql_store import SqlStore
from service.use_cases.records import Draft, ReaderId
from tests.store.libraries import NOW, a_draft, a_file
from tests.store.statements import Statements


def test_put_again_replaces_what_is_typed(store: SqlStore, reader: ReaderId) -> None:
    """A draft changed comes back as changed, begun when it was begun."""
    draft = a_draft()
    later = NOW + timedelta(minutes=1)
    changed = replace(draft, typed={"title": "On Lighthouses"}, changed_at=later, revision=2)
    with store.writing() as work:
        assert work.drafts.get(reader, draft.id) is None
        work.drafts.put(reader, draft)
        work.drafts.put(reader, replace(changed, begun_at=later))
        assert work.drafts.get(reader, draft.id) == changed
        assert work.drafts.count(reader) == 1


def test_fields_keep_their_order(store: SqlStore, reader: ReaderId) -> None:
    """The fields of a form come back in the order they were given."""
    typed = {"points 2": "b", "title": "", "points 1": "a"}
    draft = a_draft(typed)
    with store.writing() as work:
        work.drafts.put(reader, draft)
        kept = work.drafts.get(reader, draft.id)
    assert kept is not None
    assert list(kept.typed.items()) == list(typed.items())


def test_pages_are_the_last_changed_first_and_meet(
    store: SqlStore, reader: ReaderId, statements: Statements
) -> None:
    """Page after page gives every draft once, the last changed first, one statement each.

    No page comes near the bytes of files.
    """
    drafts = [replace(a_draft(), changed_at=NOW + timedelta(days=n // 3)) for n in range(7)]
    with store.writing() as work:
        for draft in drafts:
            work.drafts.put(reader, draft)
            work.drafts.keep_original(reader, draft.id, a_file())
        work.commit()
    statements.clear()
    with store.reading() as work:
        seen: list[Draft] = []
        while page := work.drafts.page(
            reader, (seen[-1].changed_at, seen[-1].id) if seen else None, 3
        ):
            seen += page
        assert work.drafts.count(reader) == 7
    assert seen == sorted(drafts, key=lambda one: (one.changed_at, one.id.bytes), reverse=True)
    assert len(statements) == 5
    assert not any("content" in statement for statement in statements)


def test_a_draft_dropped_is_gone_with_its_file(store: SqlStore, reader: ReaderId) -> None:
    """Nothing is left of a draft that was put away; putting away none changes nothing."""
    draft = a_draft()
    with store.writing() as work:
        work.drafts.drop(reader, draft.id)
        work.drafts.put(reader, draft)
        work.drafts.keep_original(reader, draft.id, a_file())
        work.drafts.drop(reader, draft.id)
        work.drafts.drop(reader, draft.id)
        assert work.drafts.get(reader, draft.id) is None
        assert work.drafts.original(reader, draft.id) is None
        assert work.drafts.count(reader) == 0
        work.commit()
    assert rows(store, "draft_originals") == rows(store, "draft_contents") == 0


def test_a_file_of_several_drafts_is_kept_once(store: SqlStore, reader: ReaderId) -> None:
    """The bytes of a file are kept once for all its drafts, until the last of them is gone."""
    first, second = a_draft(), a_draft()
    file = a_file()
    with store.writing() as work:
        for draft in (first, second):
            work.drafts.put(reader, draft)
            work.drafts.keep_original(reader, draft.id, file)
        work.commit()
    assert rows(store, "draft_contents") == 1
    with store.writing() as work:
        work.drafts.drop(reader, first.id)
        assert work.drafts.original(reader, first.id) is None
        assert work.drafts.original(reader, second.id) == file
        work.drafts.drop(reader, second.id)
        work.commit()
    assert rows(store, "draft_contents") == 0


def test_a_later_file_takes_the_place_of_the_first(store: SqlStore, reader: ReaderId) -> None:
    """A draft has one file, the last it was read from; nothing is left of the others."""
    draft = a_draft()
    with store.writing() as work:
        work.drafts.put(reader, draft)
        assert work.drafts.original(reader, draft.id) is None
        for file in (a_file(b"1", "one.md"), a_file(b"2", "two.md"), a_file(b"2", "again.md")):
            work.drafts.keep_original(reader, draft.id, file)
            assert work.drafts.original(reader, draft.id) == file
        work.drafts.put(reader, replace(draft, revision=2))
        assert work.drafts.original(reader, draft.id) == a_file(b"2", "again.md")
        work.commit()
    assert rows(store, "draft_contents") == 1


def test_a_file_of_no_draft_is_refused(store: SqlStore, reader: ReaderId) -> None:
    """A file belongs to a draft that is kept."""
    with store.writing() as work, pytest.raises(StoreContradiction):
        work.drafts.keep_original(reader, uuid4(), a_file())


@pytest.mark.parametrize(
    "broken",
    [{"revision": 0}, {"number": 0}, {"revision": 10**30}],
    ids=["revision", "number", "too large"],
)
def test_what_breaks_a_rule_of_the_tables(
    store: SqlStore, reader: ReaderId, broken: dict[str, int]
) -> None:
    """A draft that breaks a rule of the tables is refused, and nothing of it is kept."""
    draft = a_draft()
    with store.writing() as work, pytest.raises(StoreContradiction):
        work.drafts.put(reader, replace(draft, **broken))
    with store.reading() as work:
        assert work.drafts.get(reader, draft.id) is None


def test_half_a_character_is_refused(store: SqlStore, reader: ReaderId) -> None:
    """Half of a surrogate pair in a field is refused alike by both databases."""
    with store.writing() as work, pytest.raises(Invalid):
        work.drafts.put(reader, a_draft({"title": "half \ud800 of a pair"}))


def rows(store: SqlStore, table: str) -> int:
    """Return how many rows a table has."""
    with store.engines.reading.begin() as connection:
        found: int = connection.execute(text(f"SELECT count(*) FROM {table}")).scalar_one()
    return found
