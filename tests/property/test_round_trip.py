"""Whatever a reader lives through comes out and back again as it was, to the byte."""

import io
from collections.abc import Callable, Iterator, Sequence
from contextlib import closing, suppress
from dataclasses import dataclass, replace
from datetime import timedelta
from functools import partial
from itertools import count
from pathlib import Path
from typing import TypeAlias
from uuid import UUID, uuid5

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from cards.answers import GRADES
from cards.commitments import Act, Outcome
from cards.digest import Digest
from cards.errors import Refusal
from cards.parts import Care, PartKind
from service.store.sql_store import SqlStore
from service.use_cases.add_digest import add_digest
from service.use_cases.answer import record_answer, take_back
from service.use_cases.archiving import archive_everything
from service.use_cases.archiving_back import restore_everything
from service.use_cases.care import set_care
from service.use_cases.check_in import Report, check_in, withdraw_check_in
from service.use_cases.decide import Ruling, decide
from service.use_cases.drafts import begin_draft
from service.use_cases.items import list_items
from service.use_cases.leave_out import leave_out
from service.use_cases.library import list_digests
from service.use_cases.links import GivenLink, link
from service.use_cases.mend_digest import mend_digest, remove_digest
from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.recording import GivenAnswer
from service.use_cases.records import ReaderId
from service.use_cases.rereading import ReadAgain, record_rereading
from service.use_cases.sheets import compose_sheet, keep_sheet
from service.use_cases.sit import todays_sitting
from service.use_cases.talking import HeldTalk, record_talk
from service.use_cases.versions import restore_version
from tests.property.strategies import digests, sentences
from tests.property.written_digests import any_digests
from tests.standing import application_on, lay_empty_library
from tests.use_cases.house import START, House

IDS = UUID("00000000-0000-4000-8000-0000000000cc")
READERS = count()
"""Each example is another reader of the same two stores, which are costly to open."""
PAGES = ("/", "/books", "/commitments", "/re-reading")


@dataclass
class Life:
    """A reader who does one thing after another, with ids that are the same in every run."""

    house: House
    numbers: Iterator[int]

    @property
    def desk(self) -> Desk:
        """The reader’s desk, its ids counted."""
        return replace(self.house.desk, new_id=self.new_id)

    def new_id(self) -> UUID:
        """Return the next id."""
        return uuid5(IDS, f"{self.house.reader} {next(self.numbers)}")

    def books(self) -> list[UUID]:
        """Return the digests there are, the newest first."""
        return [entry.kept.id for entry in list_digests(self.desk).entries]


Step: TypeAlias = Callable[[Life], object]


def _one(found: Sequence[UUID], number: int) -> UUID:
    return found[number % len(found)] if found else IDS


def _add(digest: Digest, life: Life) -> None:
    add_digest(life.desk, f"{digest.title}.docx", life.house.shelf.put(digest))


def _mend(digest: Digest, number: int, life: Life) -> None:
    mend_digest(life.desk, _one(life.books(), number), digest)


def _answer(numbers: tuple[int, int, int], words: str, life: Life) -> None:
    which, grade, before = numbers
    items = [view.kept.item.id for view in list_items(life.desk, limit=200).items]
    at = life.house.now - timedelta(hours=before)
    for place in range(4):
        item, how_well = _one(items, which + place), GRADES[(grade + place) % 4]
        given = GivenAnswer(life.new_id(), item, how_well, at, seconds=7)
        recorded = record_answer(life.desk, given)
    if len(words) % 5 == 0:
        take_back(life.desk, recorded.answer.answer.id, life.new_id())


def _promise(numbers: tuple[int, int, int], words: str, life: Life) -> None:
    which, outcome, before = numbers
    with life.house.store.reading() as work:
        held = [each.commitment.id for each in work.commitments.all(life.house.reader)]
    day = life.house.now.date() - timedelta(days=before % 5)
    said = Report(
        life.new_id(), _one(held, which), list(Outcome)[outcome % 3], day, words, witness=words
    )
    reported = check_in(life.desk, said)
    if len(words) % 3 == 0:
        withdraw_check_in(life.desk, reported.id)
    act = (Act.PAUSE, Act.RESUME, Act.RELEASE, Act.HALVE)[which % 4]
    decide(life.desk, Ruling(life.new_id(), reported.commitment_id, act, words=words))


def _link(numbers: tuple[int, int, int], words: str, life: Life) -> None:
    books = life.books()
    of, to = _one(books, numbers[0]), _one(books, numbers[0] + 1)
    with life.house.store.reading() as work:
        kept = work.digests.get(life.house.reader, of)
    points = [part.id for part in kept.held(PartKind.POINT)] if kept else []
    link(life.desk, GivenLink(life.new_id(), of, _one(points, numbers[2]), to, words))


def _read(number: int, words: str, life: Life) -> None:
    book = _one(life.books(), number)
    record_rereading(life.desk, ReadAgain(life.new_id(), book, pages=words[:40], minutes=9))
    record_talk(life.desk, HeldTalk(life.new_id(), book, listener=words[:40], resolved=(words,)))


def _sheet(number: int, life: Life) -> None:
    keep_sheet(life.desk, compose_sheet(life.desk))
    leave_out(life.desk, todays_sitting(life.desk).items[0].kept.item.id)
    begin_draft(life.desk, {"title": f"{number}"})


def _wait(days: int, life: Life) -> None:
    life.house.now += timedelta(days=days)


def _care(number: int, life: Life) -> None:
    book = _one(life.books(), number)
    set_care(life.desk, book, list(Care)[number % 3])
    if number % 7 == 0:
        remove_digest(life.desk, book)
    elif number % 5 == 0:
        restore_version(life.desk, book, 1)


small = st.integers(0, 200)
three = st.tuples(small, small, small)
steps = st.one_of(
    st.builds(partial, st.just(_add), digests()),
    st.builds(partial, st.just(_mend), digests() | any_digests(), small),
    st.builds(partial, st.just(_answer), three, sentences),
    st.builds(partial, st.just(_answer), three, sentences),
    st.builds(partial, st.just(_promise), three, sentences),
    st.builds(partial, st.just(_link), three, sentences),
    st.builds(partial, st.just(_read), small, sentences),
    st.builds(partial, st.just(_sheet), small),
    st.builds(partial, st.just(_wait), st.integers(1, 40)),
    st.builds(partial, st.just(_care), small),
)


def out_of(desk: Desk) -> bytes:
    """Take everything out."""
    target = io.BytesIO()
    archive_everything(desk, target)
    return target.getvalue()


def pages_of(life: Life) -> dict[str, str]:
    """Return what the reader is shown, page by page."""
    addresses = [*PAGES, *(f"/books/{book}" for book in life.books()[:1])]
    with application_on(replace(life.desk, new_id=lambda: IDS)) as app:
        client = app.test_client()
        return {address: client.get(address).get_data(as_text=True) for address in addresses}


@pytest.fixture
def origin(tmp_path: Path) -> Iterator[SqlStore]:
    """A store on SQLite in which the readers live."""
    lay_empty_library(tmp_path / "origin.db")
    with closing(SqlStore(f"sqlite:///{tmp_path / 'origin.db'}")) as store:
        yield store


@settings(max_examples=4, suppress_health_check=list(HealthCheck))
@given(
    first=digests(),
    second=digests(),
    usual=st.tuples(
        st.builds(partial, st.just(_answer), three, sentences),
        st.builds(partial, st.just(_promise), three, sentences),
        st.builds(partial, st.just(_link), three, sentences),
        st.builds(partial, st.just(_sheet), small),
    ),
    lived=st.lists(steps, max_size=16),
)
def test_a_life_comes_back_as_it_was(
    origin: SqlStore,
    store: SqlStore,
    first: Digest,
    second: Digest,
    usual: tuple[Step, ...],
    lived: list[Step],
) -> None:
    """Out, in and out again are the same bytes; memories, due days, sitting and pages are equal."""
    reader = ReaderId(uuid5(IDS, f"reader {next(READERS)}"))
    life = Life(House(origin, START, reader=reader), count())
    set_preferences(life.desk, Preferences(unasked_a_day=20, time_zone="Europe/Vienna"))
    for step in (
        partial(_add, first),
        partial(_add, replace(second, title="Another")),
        *usual,
        *lived,
    ):
        with suppress(Refusal):
            step(life)
        life.house.now += timedelta(minutes=3)
    archive = out_of(life.desk)
    back = Life(House(store, life.house.now, reader=reader), count())
    restore_everything(back.desk, io.BytesIO(archive))
    assert out_of(back.desk) == archive
    assert list_items(back.desk, limit=500) == list_items(life.desk, limit=500)
    assert todays_sitting(back.desk) == todays_sitting(life.desk)
    assert pages_of(back) == pages_of(life)
