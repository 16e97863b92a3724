"""Many writers at once lose nothing."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from threading import Barrier
from typing import TypeVar
from uuid import UUID, uuid4

from sqlalchemy import text

from cards.answers import Answer, Grade
from cards.intake.heading_words import Part
from cards.schedule import Memory
from service.store.sql_store import SqlStore
from service.use_cases.records import Reader, ReaderId
from tests.store.libraries import NOW, TODAY, a_book, a_draft, a_file, an_answer, key_of, shelve

WRITERS = 16
Result = TypeVar("Result")


def all_at_once(work: Callable[[int], Result]) -> list[Result]:
    """Do something in as many threads as there are writers, all starting together."""
    start = Barrier(WRITERS)

    def started(number: int) -> Result:
        start.wait()
        return work(number)

    with ThreadPoolExecutor(WRITERS) as threads:
        return list(threads.map(started, range(WRITERS)))


def test_no_update_is_lost(store: SqlStore, reader: ReaderId) -> None:
    """Sixteen writers who each append answers and fold them see every answer before theirs."""
    with store.writing() as work:
        item = shelve(work, reader, a_book())[0]
        work.commit()

    def answer_five_times(writer: int) -> list[int]:
        counts = []
        for minute in range(5):
            with store.writing() as work:
                assert work.items.lock(reader, item.id)
                given = an_answer(item, 5 * writer + minute)
                known = work.answers.of_item(reader, item.id)
                work.answers.add(reader, given, NOW)
                count = len(known) + 1
                memory = Memory(1.0, 5.0, TODAY, TODAY, Grade.CLEAR, count, TODAY)
                work.items.remember(reader, item.id, memory)
                work.commit()
            counts.append(count)
        return counts

    counts = all_at_once(answer_five_times)
    assert sorted(count for some in counts for count in some) == list(range(1, 5 * WRITERS + 1))
    with store.reading() as work:
        kept = work.items.get(reader, item.id)
        assert kept is not None
        assert kept.memory is not None
        assert kept.memory.answers == len(work.answers.of_item(reader, item.id)) == 5 * WRITERS


def test_settings_folded_by_many_count_all(store: SqlStore, reader: ReaderId) -> None:
    """Sixteen writers who each lock a reader never seen before count one revision each."""

    def count_one(_: int) -> None:
        with store.writing() as work:
            known = work.readers.lock(reader)
            work.readers.put(Reader(reader, revision=known.revision + 1))
            work.commit()

    all_at_once(count_one)
    with store.reading() as work:
        assert work.readers.get(reader).revision == 1 + WRITERS


def test_the_same_answer_sent_by_many_is_kept_once(store: SqlStore, reader: ReaderId) -> None:
    """One answer sent sixteen times at once is kept once, and nobody is refused."""
    with store.writing() as work:
        item = shelve(work, reader, a_book())[0]
        work.commit()
    answer = an_answer(item)

    def send(_: int) -> None:
        with store.writing() as work:
            work.answers.add(reader, answer, NOW)
            work.commit()

    all_at_once(send)
    with store.reading() as work:
        assert work.answers.of_item(reader, item.id) == [answer]


def test_one_of_many_answers_under_one_id_is_kept(store: SqlStore, reader: ReaderId) -> None:
    """Of sixteen different answers sent at once under one id, one is kept, the rest refused."""
    with store.writing() as work:
        item = shelve(work, reader, a_book())[0]
        work.commit()
    answer_id = uuid4()

    def send(number: int) -> bool:
        when = NOW + timedelta(minutes=number)
        answer = Answer(answer_id, item.id, Grade.CLEAR, when, TODAY)
        with store.writing() as work:
            added = work.answers.add(reader, answer, when)
            work.commit()
        return added

    assert sorted(all_at_once(send)) == [False] * (WRITERS - 1) + [True]


def test_taking_back_at_once_is_one_fact(store: SqlStore, reader: ReaderId) -> None:
    """An answer taken back sixteen times at once is taken back once."""
    with store.writing() as work:
        item = shelve(work, reader, a_book())[0]
        answer = an_answer(item)
        work.answers.add(reader, answer, NOW)
        work.commit()

    def take_back(_: int) -> UUID:
        fact = uuid4()
        with store.writing() as work:
            work.answers.take_back(reader, fact, answer.id, NOW)
            work.commit()
        return fact

    all_at_once(take_back)
    with store.reading() as work:
        history = work.answers.history(reader, item.id, None, 9)
    assert [kept.taken_back_at for kept in history] == [NOW]


def test_books_added_by_many_under_the_readers_lock(store: SqlStore, reader: ReaderId) -> None:
    """The same book added by sixteen at once, each under the reader's lock, is kept once."""

    def add(number: int) -> None:
        with store.writing() as work:
            work.readers.lock(reader)
            book = a_book()
            if not work.digests.alike(reader, key_of(book)):
                shelve(work, reader, book)
                work.digests.keep_original(reader, book.id, a_file(bytes([number])))
            work.commit()

    all_at_once(add)
    with store.reading() as work:
        assert len(work.digests.page(reader, None, 50)) == 1


def test_drafts_of_one_file_dropped_at_once_leave_no_bytes(
    store: SqlStore, reader: ReaderId
) -> None:
    """Sixteen drafts of one file, each put away by another at once, leave nothing of the file."""
    drafts = [a_draft() for _ in range(WRITERS)]

    def begin(number: int) -> None:
        with store.writing() as work:
            work.readers.lock(reader)
            work.drafts.put(reader, drafts[number])
            work.drafts.keep_original(reader, drafts[number].id, a_file())
            work.commit()

    def drop(number: int) -> None:
        with store.writing() as work:
            work.drafts.drop(reader, drafts[number].id)
            work.commit()

    all_at_once(begin)
    with store.reading() as work:
        assert work.drafts.count(reader) == WRITERS
    all_at_once(drop)
    with store.engines.reading.connect() as connection:
        for table in ("drafts", "draft_originals", "draft_contents"):
            assert connection.execute(text(f"SELECT count(*) FROM {table}")).scalar_one() == 0


def test_heading_words_put_by_many_are_those_of_one(store: SqlStore, reader: ReaderId) -> None:
    """Of sixteen who put their words at once one is last, and theirs alone are kept, whole."""
    given = [{f"{writer} {n}": Part.THEME for n in range(5)} for writer in range(WRITERS)]

    def put(number: int) -> None:
        with store.writing() as work:
            work.headings.put(reader, given[number])
            work.commit()

    all_at_once(put)
    with store.reading() as work:
        assert work.headings.all(reader) in given
