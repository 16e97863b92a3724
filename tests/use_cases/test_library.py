"""Looking through books and what they ask: each page in a fixed number of statements."""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from uuid import UUID, uuid4

import pytest

from cards.answers import Grade
from cards.commitments import Outcome
from cards.items import Standing
from cards.parts import PartKind
from service.use_cases.add_digest import add_digest
from service.use_cases.check_in import Report, check_in
from service.use_cases.commitments import list_commitments
from service.use_cases.library import list_digests, open_digest
from service.use_cases.mend_digest import mend_digest, remove_digest
from tests.store.statements import Statements
from tests.use_cases.house import DIGEST, House


def shelve(house: House, number: int) -> UUID:
    """Add a book of its own, a minute after the one before."""
    digest = replace(DIGEST, title=f"Volume {number}")
    kept = add_digest(house.desk, f"{number}.docx", house.shelf.put(digest)).kept
    house.now += timedelta(minutes=1)
    return kept.id


def say(house: House, digest_id: UUID, outcome: Outcome, days_ago: int = 0) -> None:
    """Check in on the first commitment of a digest."""
    part = open_digest(house.desk, digest_id).kept.held(PartKind.COMMITMENT)[0]
    day = house.now.date() - timedelta(days=days_ago)
    check_in(house.desk, Report(uuid4(), part.id, outcome, day))


def test_a_shelf_counts_items_by_standing(house: House) -> None:
    """Each digest on a page comes with how many of its items held stand how."""
    one, other = shelve(house, 1), shelve(house, 2)
    theme = next(item for item in house.items().values() if item.item.digest_id == one).item
    house.answer(theme.id, Grade.BLANK)
    mend_digest(house.desk, other, replace(DIGEST, title="Volume 2", commitments=()))
    entries = {each.kept.id: each for each in list_digests(house.desk).entries}
    for digest_id, entry in entries.items():
        stands = [item.standing for item in open_digest(house.desk, digest_id).items]
        assert entry.standings == {each: stands.count(each) for each in set(stands)}
    assert entries[one].standings[Standing.FADED] == 1
    assert sum(entries[other].standings.values()) == sum(entries[one].standings.values()) - 2


def test_commitments_come_with_what_came_of_them(house: House) -> None:
    """Each comes with its book, its caution, its check-ins counted, and the latest of them."""
    first, second = shelve(house, 1), shelve(house, 2)
    house.now += timedelta(days=3)
    say(house, first, Outcome.MISSED)
    say(house, first, Outcome.KEPT, days_ago=3)
    house.now += timedelta(minutes=1)
    say(house, first, Outcome.KEPT, days_ago=1)
    page = list_commitments(house.desk)
    assert page.day == house.now.date()
    assert [each.kept.digest_id for each in page.commitments] == [second, second, first, first]
    assert [each.kept.number for each in page.commitments] == [1, 2, 1, 2]
    told = page.commitments[2]
    assert told.tally.counts == {Outcome.MISSED: 1, Outcome.KEPT: 2}
    assert told.tally.last is not None
    assert (told.tally.last.outcome, told.tally.last.day) == (Outcome.MISSED, page.day)
    assert page.commitments[3].tally.counts == {}
    assert page.commitments[3].tally.last is None
    assert {each.kept.text: each.caution for each in page.commitments} == {
        each.text: None for each in DIGEST.commitments
    }


def test_only_what_a_digest_holds_is_listed(house: House) -> None:
    """A commitment left out of its digest, or whose digest was taken out, is asked no more."""
    kept, gone = shelve(house, 1), shelve(house, 2)
    say(house, kept, Outcome.KEPT)
    mended = replace(DIGEST, title="Volume 1", commitments=DIGEST.commitments[1:])
    mend_digest(house.desk, kept, mended)
    remove_digest(house.desk, gone)
    (only,) = list_commitments(house.desk).commitments
    assert (only.kept.digest_id, only.kept.text) == (kept, DIGEST.commitments[1].text)


def test_pages_of_commitments_meet(house: House) -> None:
    """Page after page gives every book's commitments once, those without any passed over."""
    books = [shelve(house, number) for number in range(5)]
    mend_digest(house.desk, books[2], replace(DIGEST, title="Volume 2", commitments=()))
    seen: list[UUID] = []
    after = None
    while True:
        page = list_commitments(house.desk, after, 2)
        seen += [each.kept.digest_id for each in page.commitments]
        after = page.next
        if after is None:
            break
    assert seen == [book for book in reversed(books) if book != books[2] for _ in range(2)]


@pytest.mark.parametrize(("look", "most"), [(list_digests, 4), (list_commitments, 9)])
def test_a_page_takes_a_fixed_number_of_statements(
    house: House, look: Callable[..., object], most: int
) -> None:
    """However many books there are, a page of them takes the same few statements."""
    say(house, shelve(house, 0), Outcome.KEPT)
    statements = Statements(house.store.engines)
    look(house.desk)
    for_one = len(statements)
    for number in range(1, 12):
        say(house, shelve(house, number), Outcome.PARTLY)
    statements.clear()
    look(house.desk)
    assert len(statements) == for_one == most
