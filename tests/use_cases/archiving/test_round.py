"""Everything out at once and back again: the same bytes, the same memory, or nothing at all."""

import io
import json
import zipfile
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from uuid import UUID

import pytest

from cards.answers import Grade
from cards.digest import Digest
from cards.errors import LibraryNotEmpty
from cards.intake.heading_words import Part
from service.documents.press.press import Press
from service.store.archive.tables import archived
from service.store.migrations import HEAD
from service.use_cases.add_digest import add_digest
from service.use_cases.archiving_back import is_empty, restore_everything
from service.use_cases.drafts import begin_draft
from service.use_cases.headings import set_headings, show_headings
from service.use_cases.library import list_digests
from service.use_cases.mend_digest import remove_digest
from service.use_cases.minutes import set_minutes_today
from service.use_cases.preferences import Preferences, set_preferences, show_reader
from service.use_cases.records import Form
from service.use_cases.reminding import new_address, set_reminders
from service.use_cases.tallying import bring_on, tallied
from tests.feeds.archive.forging import files_in
from tests.use_cases.archiving.lives import Earlier, Lived, counts, facts, out_of
from tests.use_cases.house import DIGEST, House


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
    new_address(house.desk, "this machine")
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


def test_an_archive_of_an_earlier_catchword_is_brought_up_to_date(
    lived: Lived, earlier: Earlier, sqlite_house: House
) -> None:
    """What 0005 wrote reads back as the same library that was migrated where it stood."""
    assert "facts/fittings.jsonl" not in files_in(earlier.archive)
    assert "moves_to" not in facts(earlier.archive, "items")[0]
    restore_everything(sqlite_house.desk, io.BytesIO(earlier.archive))
    assert out_of(sqlite_house.desk) == earlier.migrated
    assert counts(earlier.migrated)["answers"] == counts(lived.archive)["answers"]


def test_a_library_that_was_only_set_up_goes_round_too(sqlite_house: House) -> None:
    """Settings and nothing else, as they were."""
    set_preferences(sqlite_house.desk, Preferences(minutes=7))
    archive = out_of(sqlite_house.desk)
    again = sqlite_house.another_reader()
    restore_everything(again.desk, io.BytesIO(archive))
    assert out_of(again.desk) == archive
    assert not list_digests(again.desk).entries
