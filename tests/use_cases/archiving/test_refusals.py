"""An archive that cannot be is refused in a sentence, and nothing of it is kept."""

import io
from collections.abc import Callable
from uuid import UUID

import pytest

from cards.errors import InvalidArchive
from service.store.archive.tables import archived
from service.use_cases.archiving_back import restore_everything
from tests.feeds.archive.forging import forged, with_fact, with_line, with_manifest
from tests.use_cases.archiving.lives import Earlier, Lived, facts
from tests.use_cases.house import House

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
    assert refusal.value.message.isprintable()
    with house.store.reading() as work:
        found = {table.name: list(work.facts.rows(house.reader, table)) for table in archived()}
    assert not any(found.values())


def anothers(archive: bytes) -> object:
    """Return the id of a part that is not of the first item’s digest."""
    digest = facts(archive, "items")[0]["digest_id"]
    return next(part["id"] for part in facts(archive, "parts") if part["digest_id"] != digest)


def with_part(archive: bytes, **changed: object) -> bytes:
    """Return an archive in whose first version the first part says something else."""
    kept = facts(archive, "versions")[0]["kept"]
    first, *others = kept["parts"]
    return with_fact(archive, "versions", kept={**kept, "parts": [{**first, **changed}, *others]})


def with_measure(archive: bytes, **changed: object) -> bytes:
    """Return an archive whose first commitment has another measure."""
    measure = next(each["measure"] for each in facts(archive, "commitments") if each["measure"])
    return with_fact(archive, "commitments", measure={**measure, **changed})


def headings(_: bytes) -> bytes:
    """Return five thousand headings: read once for each of them, they would take many minutes."""
    return b"".join(b'{"word":"w%d","part":"theme"}\n' % number for number in range(5_000))


SPOILT: dict[str, tuple[Callable[[bytes], bytes], str]] = {
    "a later state": (lambda archive: with_manifest(archive, revision="0099"), "later version"),
    "no state": (lambda archive: with_manifest(archive, revision="x"), "no state of a library"),
    "of somebody else": (
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
        lambda archive: with_fact(archive, "readers", time_zone="Mars\x1b[2J/Olympus"),
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
    "a version with a number in words": (
        lambda archive: with_part(archive, number="one"),
        "facts/versions.jsonl, line 1, cannot be read back",
    ),
    "a version with half a character": (
        lambda archive: with_part(archive, locator="\udcff"),
        "facts/versions.jsonl, line 1, cannot be read back",
    ),
    "a weight that is true": (
        lambda archive: with_fact(
            archive, "readers", weights={"general": [True] * 21, "by_kind": {}}
        ),
        "facts/readers.jsonl, line 1, cannot be read back",
    ),
    "a digest without a title": (
        lambda archive: with_fact(archive, "digests", title=""),
        "facts/digests.jsonl, line 1, cannot be read back",
    ),
    "a measure of nothing": (
        lambda archive: with_fact(archive, "commitments", measure=[1]),
        "facts/commitments.jsonl, line 1, cannot be read back",
    ),
    "a period of no days": (
        lambda archive: with_measure(archive, every=0),
        "facts/commitments.jsonl, line 1, cannot be read back",
    ),
    "a day of no week": (
        lambda archive: with_measure(archive, on=["SOMEDAY"]),
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
    "a draft of no fields": (
        lambda archive: with_fact(archive, "drafts", typed=["title"]),
        "facts/drafts.jsonl, line 1, cannot be read back",
    ),
    "a draft of half a character": (
        lambda archive: with_fact(archive, "drafts", typed={"title": "\ud800"}),
        "facts/drafts.jsonl, line 1, cannot be read back",
    ),
    "a draft that leaves out no words": (
        lambda archive: with_fact(archive, "drafts", left_out=[1]),
        "facts/drafts.jsonl, line 1, cannot be read back",
    ),
    "an instant at the end of the calendar": (
        lambda archive: with_fact(archive, "drafts", changed_at="9999-12-31T23:59:59.999999+00:00"),
        "facts/drafts.jsonl, line 1, has no instant in UTC",
    ),
    "more headings than are kept": (
        lambda archive: with_line(archive, "heading_words", headings),
        "At most 200 heading words are kept",
    ),
    "ideas ticked in words": (
        lambda archive: with_fact(archive, "answers", ticked="one two"),
        "facts/answers.jsonl, line 1, cannot be read back",
    ),
    "an item of another book": (
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
