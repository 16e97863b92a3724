"""The list: what comes first, how much is shown, what is asked afresh, and whether it helped."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from uuid import UUID

import pytest

from cards.answers import Grade
from cards.digest import Digest, Quotation
from cards.errors import Invalid
from cards.kinds.base import KindName
from cards.parts import Care
from cards.rereading import (
    BookRecord,
    Rereading,
    book_to_reread,
    days_afresh,
    helped,
    list_of,
)
from cards.rereading.listing import MOST_BOOKS
from tests.cards.digests import WHOLE, kept
from tests.cards.rereading.records import DAY, item_of, record, reread, weekly

BLANK, HAZY = (Grade.BLANK, ""), (Grade.HAZY, "")


def close(title: str, start: int, quotations: int = 3) -> BookRecord:
    """Return a book kept close and finished long ago, with quotations ten pages apart."""
    placed = tuple(Quotation(f"Words {n}", f"p. {10 * n}") for n in range(1, quotations + 1))
    digest = kept(Digest(title, quotations=placed), start)
    return record(replace(digest, care=Care.CLOSE, finished_on=DAY - timedelta(days=400)))


def test_a_book_is_listed_with_why_where_and_how_long() -> None:
    """Reasons, pages, the quotations that stand there, minutes at the reader's pace, the items."""
    digest = kept()
    book = book_to_reread(record(digest, stands=weekly(digest)), DAY, 0.9, 2.0)
    assert book is not None
    assert (book.title, book.author) == ("Pride and Prejudice", "Jane Austen")
    assert [each.place for each in book.stretches] == ["pp. 1-2", "pp. 207-209", "ch. 34"]
    assert book.stretches[1].quotations[0].text == "Till this moment I never knew myself"
    assert book.minutes == 10
    assert book.items == (item_of(record(digest), KindName.RESTATE),)


def test_without_a_known_page_no_minutes_are_said() -> None:
    """Where only chapters are known, nothing says how long it takes."""
    digest = kept(replace(WHOLE, quotations=WHOLE.quotations[2:]))
    book = book_to_reread(record(digest, stands=weekly(digest)), DAY, 0.9, 2.0)
    assert book is not None
    assert book.minutes is None
    assert book.worth > 0


def test_what_is_worth_most_an_hour_comes_first() -> None:
    """Of two books for the same reason, the one of fewer pages."""
    found = list_of([close("Long", 1, 9), close("Short", 100, 1)], DAY, 0.9, 2.0)
    assert [each.title for each in found.books] == ["Short", "Long"]
    assert found.books[0].worth == pytest.approx(60 * 2 / 6)


def test_of_equals_a_stalled_commitment_comes_first_then_the_title() -> None:
    """5 for a commitment over 15 pages is as much an hour as 2 for a year over 6 (computed)."""
    placed = tuple(Quotation(f"Words {n}", f"p. {10 * n}") for n in range(1, 6))
    promised = kept(Digest("Zeal", quotations=placed, commitments=WHOLE.commitments[:1]), 500)
    stalled = record(promised, stands=weekly(promised))
    found = list_of([close("Bread", 1, 2), close("Apples", 100, 2), stalled], DAY, 0.9, 2.0)
    assert [round(each.worth) for each in found.books] == [10, 10, 10]
    assert [each.title for each in found.books] == ["Zeal", "Apples", "Bread"]


def test_the_list_is_short_and_says_how_many_more_there_are() -> None:
    """Twelve books at the most, the rest counted."""
    known = [close(f"Book {n}", 100 * n) for n in range(MOST_BOOKS + 3)]
    found = list_of(known, DAY, 0.9, 2.0)
    assert (len(found.books), found.more) == (12, 3)
    assert (list_of(known[:2], DAY, 0.9, 2.0).more, list_of([], DAY, 0.9, 2.0).books) == (0, ())


def test_what_is_asked_afresh_is_spread_over_three_days_the_same_on_every_device() -> None:
    """Each item on one of the next three days, by its id alone."""
    items = [UUID(int=number) for number in range(60)]
    days = days_afresh(items, DAY)
    assert set(days.values()) == {DAY + timedelta(days=each) for each in (1, 2, 3)}
    assert days_afresh(reversed(items), DAY) == days
    assert days_afresh([items[5]], DAY) == {items[5]: days[items[5]]}


def test_helped_compares_the_last_answer_before_with_the_first_after() -> None:
    """Only items asked on both sides are counted; the rest wait; later answers do not count."""
    theme, first, second = (KindName.THEME, 1), (KindName.NEXT, 1), (KindName.NEXT, 2)
    known = record(
        kept(),
        {theme: [HAZY, BLANK, HAZY, BLANK], first: [HAZY, BLANK, BLANK], second: [BLANK]},
        last=DAY,
    )
    ids = [item_of(known, *each) for each in (theme, first, second)]
    read = reread(known.digest, DAY - timedelta(days=2), items=(*ids, ids[0], UUID(int=999)))
    found = helped(read, known.answers | {ids[2]: known.answers[ids[2]][:0]})
    assert (found.before.recalled, found.before.asked) == (1, 2)
    assert (found.after.recalled, found.after.asked) == (1, 2)
    assert found.sentence == "Of the two items asked again, one came back before and one since."


def test_before_anything_is_asked_again_it_says_so() -> None:
    """Too soon, or nothing to compare."""
    known = record(kept(), {(KindName.THEME, 1): [BLANK]})
    item = item_of(known, KindName.THEME)
    soon = helped(reread(known.digest, DAY, items=(item,)), known.answers)
    assert soon.sentence == "Too soon to say: one item is still to be asked."
    assert helped(reread(known.digest, DAY), known.answers).after.asked == 0


@pytest.mark.parametrize(
    ("more", "where"),
    [
        ({"pages": "9" * 201}, "pages"),
        ({"note": "a" * 2_001}, "note"),
        ({"minutes": 0}, "minutes"),
        ({"minutes": 10_001}, "minutes"),
    ],
)
def test_a_rereading_has_bounds(more, where) -> None:
    """What is too long or no time at all is refused, and it is said where."""
    now = datetime(2026, 3, 2, tzinfo=UTC)
    with pytest.raises(Invalid) as refused:
        Rereading(UUID(int=1), UUID(int=2), DAY, now, DAY, **more)
    assert refused.value.where == where
