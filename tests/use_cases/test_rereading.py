"""The re-reading list over a library: what is listed, recorded, asked afresh and taken back."""

from dataclasses import replace
from datetime import date, timedelta
from uuid import UUID, uuid4

import pytest

from cards.answers import Grade
from cards.commitments import Outcome
from cards.errors import Conflict, DigestMissing, Invalid, RereadingMissing
from cards.kinds.base import KindName
from cards.parts import Care, PartKind
from cards.rereading import Reason
from service.use_cases import rereading as rereadings
from service.use_cases.care import set_care
from service.use_cases.check_in import Report, check_in
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import remove_digest
from service.use_cases.rereading import (
    ReadAgain,
    earlier_rereadings,
    list_rereading,
    record_rereading,
    show_rereading,
    withdraw_rereading,
)
from tests.use_cases.house import House


def theme_of(house: House) -> UUID:
    """Return the id of the item that asks the theme."""
    return next(each for each, kept in house.items().items() if kept.item.kind is KindName.THEME)


@pytest.fixture
def forgotten(house: House, added) -> UUID:
    """A book whose theme came back blank twice running, by its digest's id."""
    digest_id = added()
    for _ in range(2):
        house.answer(theme_of(house), Grade.BLANK)
        house.now += timedelta(days=1)
    return digest_id


def reasons(house: House) -> list[list[Reason]]:
    """Return the reasons of each book on the list."""
    return [
        [because.reason for because in book.reasons] for book in list_rereading(house.desk).books
    ]


def test_an_empty_library_has_an_empty_list(house: House) -> None:
    """Nothing to open, nothing read again."""
    found = list_rereading(house.desk)
    assert (found.books, found.more, earlier_rereadings(house.desk)) == ((), 0, [])


def test_a_book_is_listed_once_its_theme_is_gone(house: House, forgotten) -> None:
    """With its pages, what stands there, and the minutes."""
    (book,) = list_rereading(house.desk).books
    assert [each.reason for each in book.reasons] == [Reason.THEME]
    assert [each.place for each in book.stretches] == [
        "pp. 11-13",
        "pp. 41-43",
        "pp. 109-111",
        "pp. 130-132",
    ]
    assert (book.digest_id, book.minutes, book.items) == (forgotten, 24, (theme_of(house),))


def test_a_stalled_commitment_lists_its_book_until_something_is_done(house: House, added) -> None:
    """Two windows of silence bring it on, a check-in takes it off."""
    digest_id = added()
    house.now += timedelta(days=70)
    assert reasons(house) == [[Reason.STALLED]]
    for part in open_digest(house.desk, digest_id).kept.held(PartKind.COMMITMENT):
        check_in(house.desk, Report(uuid4(), part.id, Outcome.KEPT))
    assert reasons(house) == []


def test_a_book_kept_close_comes_round(house: House, added, digest) -> None:
    """By the care and the day it was finished, without any answer."""
    house.shelf.documents.clear()
    digest_id = added()
    set_care(house.desk, digest_id, Care.CLOSE)
    record_rereading(house.desk, ReadAgain(uuid4(), digest_id, day=date(2025, 1, 1)))
    assert reasons(house) == [[Reason.YEAR]]


def test_reading_again_takes_the_book_off_and_asks_afresh(house: House, forgotten) -> None:
    """The fact is kept with the items concerned, asked within three days; later it helped."""
    theme = theme_of(house)
    told = record_rereading(
        house.desk, ReadAgain(uuid4(), forgotten, pages="11-13", minutes=9, note="At the fire.")
    )
    assert told.rereading.items == (theme,)
    assert told.helped.waiting == 1
    assert reasons(house) == []
    with house.desk.store.reading() as work:
        today = work.readers.get(house.reader).days.of(house.now)
        soon = work.items.afresh(house.reader, today + timedelta(days=3), 5)
        assert [each.item.id for each in soon] == [theme]
        assert not work.items.afresh(house.reader, today, 5)
    house.now += timedelta(days=2)
    house.answer(theme, Grade.CLEAR)
    (later,) = earlier_rereadings(house.desk)
    assert later.helped.sentence == (
        "Of the one item asked again, none came back before and one since."
    )
    assert later == show_rereading(house.desk, told.rereading.id)


def test_the_readers_own_pace_is_used(house: House, forgotten) -> None:
    """Three minutes a page by their own word: 12 pages take 36."""
    record_rereading(house.desk, ReadAgain(uuid4(), forgotten, pages="11-13", minutes=9))
    house.now += timedelta(days=3)
    for _ in range(2):
        house.answer(theme_of(house), Grade.BLANK)
        house.now += timedelta(days=1)
    assert list_rereading(house.desk).books[0].minutes == 36


def test_the_very_same_again_changes_nothing_and_another_is_refused(house, forgotten) -> None:
    """Sent twice it is kept once, on its first day; under the same id nothing else is."""
    read = ReadAgain(uuid4(), forgotten, pages="11-13")
    first = record_rereading(house.desk, read)
    house.now += timedelta(days=2)
    assert record_rereading(house.desk, read).rereading == first.rereading
    assert len(earlier_rereadings(house.desk)) == 1
    with pytest.raises(Conflict):
        record_rereading(house.desk, replace(read, pages="12"))


def test_taken_back_it_counts_no_longer(house: House, forgotten) -> None:
    """The book is back on the list, the fact stays on record; twice changes nothing."""
    told = record_rereading(house.desk, ReadAgain(uuid4(), forgotten))
    gone = withdraw_rereading(house.desk, told.rereading.id)
    house.now += timedelta(days=1)
    assert withdraw_rereading(house.desk, told.rereading.id) == gone
    assert reasons(house) == [[Reason.THEME]]
    assert earlier_rereadings(house.desk) == []
    assert show_rereading(house.desk, told.rereading.id).rereading.withdrawn_on is not None


def test_a_book_not_on_the_list_may_be_read_again(house: House, added) -> None:
    """What last came back blank is asked afresh; where nothing did, nothing is."""
    digest_id = added()
    assert record_rereading(house.desk, ReadAgain(uuid4(), digest_id)).rereading.items == ()
    house.now += timedelta(days=1)
    house.answer(theme_of(house), Grade.BLANK)
    told = record_rereading(house.desk, ReadAgain(uuid4(), digest_id))
    assert told.rereading.items == (theme_of(house),)


def test_what_cannot_be_is_refused(house: House, forgotten, monkeypatch) -> None:
    """No such book, a day to come, too much; nothing is kept of it."""
    monkeypatch.setattr(rereadings, "MOST_REREADINGS", 1)
    tomorrow = house.now.date() + timedelta(days=1)
    with pytest.raises(DigestMissing):
        record_rereading(house.desk, ReadAgain(uuid4(), uuid4()))
    for bad, where in (({"day": tomorrow}, "day"), ({"pages": "1" * 201}, "pages")):
        with pytest.raises(Invalid) as refused:
            record_rereading(house.desk, ReadAgain(uuid4(), forgotten, **bad))
        assert refused.value.where == where
    assert earlier_rereadings(house.desk) == []
    record_rereading(house.desk, ReadAgain(uuid4(), forgotten))
    with pytest.raises(Invalid):
        record_rereading(house.desk, ReadAgain(uuid4(), forgotten))


def test_no_reader_reaches_anothers(house: House, forgotten) -> None:
    """Neither the list, nor the fact, nor taking it back."""
    told = record_rereading(house.desk, ReadAgain(uuid4(), forgotten))
    other = house.another_reader()
    assert list_rereading(other.desk).books == ()
    for attempt in (show_rereading, withdraw_rereading):
        with pytest.raises(RereadingMissing):
            attempt(other.desk, told.rereading.id)
    with pytest.raises(DigestMissing):
        record_rereading(other.desk, ReadAgain(uuid4(), forgotten))


def test_a_removed_book_is_on_no_list(house: House, forgotten) -> None:
    """Taken out of the library, it is not to be opened."""
    remove_digest(house.desk, forgotten)
    assert reasons(house) == []
