"""Everything out at once and back again: the same bytes, the same memory, or nothing at all."""

import io
import json
import tempfile
import zipfile
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from dataclasses import dataclass, replace
from pathlib import Path
from uuid import UUID

import pytest
from alembic import command

from cards.answers import Grade
from cards.digest import Digest
from cards.errors import InvalidArchive, LibraryNotEmpty
from cards.intake.heading_words import Part
from service.documents.press.press import Press
from service.feeds.archive.writing import write_archive
from service.store.archive.earlier import _tables
from service.store.archive.facts import SqlFacts
from service.store.archive.tables import archived
from service.store.migrations import HEAD, _alone, alembic_config
from service.store.sql_store import SqlStore
from service.use_cases.add_digest import add_digest
from service.use_cases.archiving import archive_everything
from service.use_cases.archiving_back import is_empty, restore_everything
from service.use_cases.archiving_records import Contents
from service.use_cases.drafts import begin_draft
from service.use_cases.headings import set_headings, show_headings
from service.use_cases.library import list_digests
from service.use_cases.mend_digest import remove_digest
from service.use_cases.minutes import set_minutes_today
from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences, show_reader
from service.use_cases.records import Form
from service.use_cases.reminding import set_reminders
from service.use_cases.tallying import bring_on, tallied
from tests.feeds.archive.forging import files_in, forged, with_fact, with_line, with_manifest
from tests.standing import lay_empty_library
from tests.use_cases.house import DIGEST, House
from tests.use_cases.whole import live


@dataclass(frozen=True)
class Lived:
    """A library with everything in it: its archive, and the time it was taken."""

    archive: bytes
    house: House


@pytest.fixture(scope="module")
def lived() -> Iterator[Lived]:
    """A library on SQLite that was lived in, once for all tests."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "library.db"
        lay_empty_library(file)
        with closing(SqlStore(f"sqlite:///{file}")) as store:
            house = House(store)
            live(house)
            yield Lived(out_of(house.desk), house)


@pytest.fixture
def sqlite_house(tmp_path: Path) -> Iterator[House]:
    """An empty library on SQLite."""
    lay_empty_library(tmp_path / "library.db")
    with closing(SqlStore(f"sqlite:///{tmp_path / 'library.db'}")) as store:
        yield House(store)


@pytest.fixture(scope="module")
def untouched() -> Iterator[House]:
    """An empty library on SQLite for everything that is to leave it empty."""
    with tempfile.TemporaryDirectory() as folder:
        lay_empty_library(Path(folder) / "library.db")
        with closing(SqlStore(f"sqlite:///{Path(folder) / 'library.db'}")) as store:
            yield House(store)


def out_of(desk: Desk) -> bytes:
    """Take everything out."""
    target = io.BytesIO()
    archive_everything(desk, target)
    return target.getvalue()


def counts(archive: bytes) -> dict[str, int]:
    """Return how many facts of each sort an archive has, by its lines."""
    return {
        path.removeprefix("facts/").removesuffix(".jsonl"): content.count(b"\n")
        for path, content in files_in(archive).items()
        if path.endswith(".jsonl")
    }


def facts(archive: bytes, table: str) -> list[dict[str, object]]:
    """Return the facts of one sort in an archive."""
    return [json.loads(line) for line in files_in(archive)[f"facts/{table}.jsonl"].splitlines()]


def test_everything_comes_back_to_the_byte(lived: Lived, house: House) -> None:
    """Out of SQLite, into either database, out again: not one byte is another."""
    assert set(counts(lived.archive)) == {table.name for table in archived()}
    assert all(counts(lived.archive).values()), "a sort of facts is not tried"
    neighbour = house.another_reader()
    begin_draft(neighbour.desk, {"title": "Emma"})
    before = out_of(neighbour.desk)
    back = restore_everything(house.desk, io.BytesIO(lived.archive))
    told = counts(lived.archive)
    assert (back.digests, back.items) == (told["digests"], told["items"])
    assert (back.answers, back.originals) == (told["answers"], told["originals"])
    assert out_of(house.desk) == lived.archive
    assert out_of(neighbour.desk) == before


def test_no_text_of_a_book_and_no_secret_is_in_it(lived: Lived) -> None:
    """The book’s words beyond the quotations stay, and so do the hashes of addresses."""
    with zipfile.ZipFile(io.BytesIO(lived.archive)) as archive:
        everything = b"".join(archive.read(name) for name in archive.namelist())
    assert b"In those days. There were angels" in everything  # the anchor’s own surroundings
    (text,) = facts(lived.archive, "book_texts")
    assert set(text) == {"digest_id", "name", "sha256", "added_at"}
    with lived.house.store.reading() as work:
        (address,) = work.reminding.addresses(lived.house.reader)
    assert str(address.id).encode() not in everything
    assert str(lived.house.reader).encode() not in everything


def test_the_archive_explains_itself(lived: Lived) -> None:
    """The README names what is left out and why; every file of facts is told of field by field."""
    files = files_in(lived.archive)
    readme, fields = files["README.md"].decode(), files["facts/README.md"].decode()
    for left in ("feed_addresses", "mails", "tallies", "tallied", "book_texts.content"):
        assert f"- `{left}`: " in readme
    for table in archived():
        assert f"\n## {table.name}.jsonl\n" in fields
        for line in facts(lived.archive, table.name):
            assert all(f"| `{name}` |" in fields for name in line)
    manifest = json.loads(files["manifest.json"])
    assert (manifest["version"], manifest["revision"]) == (1, HEAD)
    assert manifest["facts"] == counts(lived.archive)
    assert [each["path"] for each in manifest["files"]] == list(files)[:-1]
    assert files["digests/0002-walden.md"].decode().count("二年") == 1


def kept(house: House) -> UUID:
    """Keep a digest."""
    return add_digest(house.desk, "silas.docx", house.shelf.put(DIGEST)).kept.id


@pytest.mark.parametrize(
    "fill",
    [
        kept,
        lambda house: remove_digest(house.desk, kept(house)),
        lambda house: begin_draft(house.desk, {"title": "Walden"}),
    ],
    ids=["a digest", "a digest removed", "a draft"],
)
def test_into_a_library_with_something_in_it_nothing_is_restored(
    lived: Lived, sqlite_house: House, fill: Callable[[House], object]
) -> None:
    """A digest, one that was removed or a draft: refused in a sentence, and left as it is."""
    fill(sqlite_house)
    before = out_of(sqlite_house.desk)
    assert not is_empty(sqlite_house.desk)
    with pytest.raises(LibraryNotEmpty, match="not empty"):
        restore_everything(sqlite_house.desk, io.BytesIO(lived.archive))
    assert out_of(sqlite_house.desk) == before


def test_settings_give_way_and_sums_are_made_anew(lived: Lived, house: House) -> None:
    """What was set in the empty library is the archive’s afterwards, and what it summed is gone."""
    set_preferences(house.desk, Preferences(minutes=77))
    set_headings(house.desk, {"Zusammenfassung": Part.THEME})
    set_minutes_today(house.desk, 5)
    set_reminders(house.desk, mail=True, to="another@example.org", at=9)
    house.now = lived.house.now
    bring_on(house.desk)
    assert is_empty(house.desk)
    restore_everything(house.desk, io.BytesIO(lived.archive))
    assert out_of(house.desk) == lived.archive
    assert show_reader(house.desk).minutes == 20
    assert "zusammenfassung" not in show_headings(house.desk)
    with house.store.reading() as work, lived.house.store.reading() as theirs:
        assert tallied(work, house.reader) == tallied(theirs, lived.house.reader)


def test_what_is_written_meanwhile_is_in_it_wholly_or_not_at_all(house: House) -> None:
    """Answers that arrive while the archive is written are in the next one, and not in this."""
    kept(house)
    set_preferences(house.desk, Preferences(unasked_a_day=30))
    item, *others = house.items()
    house.answer(item, Grade.CLEAR)
    writer = ThreadPoolExecutor(1)

    class BusyPress(Press):
        """A press while which a sitting goes on elsewhere."""

        def write(self, digest: Digest, form: Form) -> bytes:
            for each in others:
                writer.submit(house.answer, each, Grade.HAZY).result(timeout=20)
            return super().write(digest, form)

    with writer:
        archive = out_of(replace(house.desk, press=BusyPress()))
    assert counts(archive)["answers"] == 1
    remembered = [line for line in facts(archive, "items") if line["answers"]]
    assert [line["id"] for line in remembered] == [str(item)]
    assert counts(out_of(house.desk))["answers"] == 1 + len(others)
    again = house.another_reader()
    restore_everything(again.desk, io.BytesIO(archive))
    assert out_of(again.desk) == archive


@dataclass(frozen=True)
class Earlier:
    """What 0005 would have written of the library, and what becomes of that library today."""

    archive: bytes
    migrated: bytes


@pytest.fixture(scope="module")
def earlier(lived: Lived) -> Iterator[Earlier]:
    """The library as it is after going back to 0005, and forth again."""
    with tempfile.TemporaryDirectory() as folder:
        lay_empty_library(Path(folder) / "earlier.db")
        with closing(SqlStore(f"sqlite:///{Path(folder) / 'earlier.db'}")) as store:
            house = House(store)
            restore_everything(house.desk, io.BytesIO(lived.archive))
            with store.engines.writing.connect() as connection, _alone(connection):
                command.downgrade(alembic_config(connection), "0005")
                was = SqlFacts(connection, _tables(connection))
                target = io.BytesIO()
                contents = Contents(
                    "0005",
                    was.tables,
                    {},
                    lambda table: was.rows(house.reader, table),
                    lambda table: was.files(house.reader, table),
                    (),
                )
                write_archive(target, contents)
            store.migrate()
            yield Earlier(target.getvalue(), out_of(house.desk))


def test_an_archive_of_an_earlier_catchword_is_brought_up_to_date(
    lived: Lived, earlier: Earlier, sqlite_house: House
) -> None:
    """What 0005 wrote reads back as the same library that was migrated where it stood."""
    assert "facts/fittings.jsonl" not in files_in(earlier.archive)
    assert "moves_to" not in facts(earlier.archive, "items")[0]
    restore_everything(sqlite_house.desk, io.BytesIO(earlier.archive))
    assert out_of(sqlite_house.desk) == earlier.migrated
    assert counts(earlier.migrated)["answers"] == counts(lived.archive)["answers"]


SPOILT_EARLIER: dict[str, tuple[Callable[[bytes], bytes], str]] = {
    "kept without a deed": (
        lambda archive: with_fact(archive, "check_ins", outcome="kept", count=0),
        "facts/check_ins.jsonl, line 1, cannot be read back",
    ),
    "an earlier one still": (
        lambda archive: with_manifest(archive, revision="0004"),
        "is not known in an archive of revision 0004",
    ),
}


@pytest.mark.parametrize("case", SPOILT_EARLIER)
def test_an_earlier_archive_that_was_changed_is_refused(
    earlier: Earlier, untouched: House, case: str
) -> None:
    """On the way up too, a line that cannot be is named, and nothing is kept."""
    spoil, said = SPOILT_EARLIER[case]
    refused(untouched, spoil(earlier.archive), said)


def refused(house: House, archive: bytes, said: str) -> None:
    """Hold that an archive is refused with these words, and that nothing of it is kept."""
    with pytest.raises(InvalidArchive) as refusal:
        restore_everything(house.desk, io.BytesIO(archive))
    assert said in refusal.value.message, refusal.value.message
    assert refusal.value.message.endswith(".")
    with house.store.reading() as work:
        found = {table.name: list(work.facts.rows(house.reader, table)) for table in archived()}
    assert not any(found.values())


def anothers(archive: bytes) -> object:
    """Return the id of a part that is not of the first item’s digest."""
    digest = facts(archive, "items")[0]["digest_id"]
    return next(part["id"] for part in facts(archive, "parts") if part["digest_id"] != digest)


SPOILT: dict[str, tuple[Callable[[bytes], bytes], str]] = {
    "a later state": (lambda archive: with_manifest(archive, revision="0099"), "later version"),
    "no state": (lambda archive: with_manifest(archive, revision="x"), "no state of a library"),
    "somebody else’s": (
        lambda archive: with_fact(archive, "answers", reader_id=str(UUID(int=9))),
        "facts/answers.jsonl, line 1, has a field “reader_id” that is not known",
    ),
    "no number": (
        lambda archive: with_fact(archive, "items", stability=float("nan")),
        "facts/items.jsonl, line 1, holds NaN",
    ),
    "a huge number": (
        lambda archive: with_fact(archive, "versions", revision=2**40),
        "facts/versions.jsonl, line 1, has no whole number",
    ),
    "no such grade": (
        lambda archive: with_fact(archive, "answers", grade="grand"),
        "facts/answers.jsonl, line 1, cannot be kept",
    ),
    "an answer to nothing": (
        lambda archive: with_fact(archive, "answers", item_id=str(UUID(int=9))),
        "facts/answers.jsonl, line 1, cannot be kept",
    ),
    "twice": (
        lambda archive: with_line(archive, "answers", lambda line: line * 2),
        "facts/answers.jsonl, line 2, cannot be kept",
    ),
    "no such file": (
        lambda archive: with_fact(archive, "originals", content="originals/x"),
        "facts/originals.jsonl, line 1, names a file that is not in the archive",
    ),
    "no such time zone": (
        lambda archive: with_fact(archive, "readers", time_zone="Mars/Olympus"),
        "facts/readers.jsonl, line 1, cannot be read back",
    ),
    "too few weights": (
        lambda archive: with_fact(archive, "readers", weights={"general": [1.0], "by_kind": {}}),
        "facts/readers.jsonl, line 1, cannot be read back",
    ),
    "a version of nothing": (
        lambda archive: with_fact(archive, "versions", kept={}),
        "facts/versions.jsonl, line 1, cannot be read back",
    ),
    "a digest without a title": (
        lambda archive: with_fact(archive, "digests", title=""),
        "facts/digests.jsonl, line 1, cannot be read back",
    ),
    "a measure of nothing": (
        lambda archive: with_fact(archive, "commitments", measure=[1]),
        "facts/commitments.jsonl, line 1, cannot be read back",
    ),
    "missed with deeds": (
        lambda archive: with_fact(archive, "check_ins", outcome="missed", count=3),
        "facts/check_ins.jsonl, line 1, cannot be read back",
    ),
    "a sheet of nothing": (
        lambda archive: with_fact(archive, "sheets", lines=[{}]),
        "facts/sheets.jsonl, line 1, cannot be read back",
    ),
    "a draft of nothing": (
        lambda archive: with_fact(archive, "drafts", notices=["x"]),
        "facts/drafts.jsonl, line 1, cannot be read back",
    ),
    "an answer too late for its kind of words": (
        lambda archive: with_fact(archive, "answers", ticked="one two"),
        "facts/answers.jsonl, line 1, cannot be read back",
    ),
    "an item of another book’s part": (
        lambda archive: with_fact(archive, "items", part_id=anothers(archive)),
        "facts/items.jsonl, line 1, cannot be read back",
    ),
}


@pytest.mark.parametrize("case", SPOILT)
def test_what_cannot_be_is_refused_and_nothing_is_kept(
    lived: Lived, untouched: House, case: str
) -> None:
    """One sentence that names the file and the line; the library is as empty as before."""
    spoil, said = SPOILT[case]
    refused(untouched, spoil(lived.archive), said)


def test_bytes_that_are_not_those_of_the_row_are_refused(lived: Lived, untouched: House) -> None:
    """An original whose SHA-256 is not the one its row and its name say, manifest or not."""

    def swap(files: dict[str, bytes]) -> None:
        path = next(path for path in files if path.startswith("originals/"))
        files[path] = b"another"

    refused(untouched, forged(lived.archive, swap), "says another SHA-256 than its file has")


def test_a_library_that_was_only_set_up_goes_round_too(sqlite_house: House) -> None:
    """Settings and nothing else, as they were."""
    set_preferences(sqlite_house.desk, Preferences(minutes=7))
    archive = out_of(sqlite_house.desk)
    again = sqlite_house.another_reader()
    restore_everything(again.desk, io.BytesIO(archive))
    assert out_of(again.desk) == archive
    assert not list_digests(again.desk).entries
