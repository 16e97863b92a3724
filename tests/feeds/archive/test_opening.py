"""Zips by whoever wants to do harm: refused in a sentence, before anything of them is believed."""

import io
import struct
import zipfile
from collections.abc import Callable

import pytest

from cards.errors import CannotWrite, InvalidArchive
from service.feeds.archive import layout
from service.feeds.archive.reading import OpenArchive
from service.feeds.archive.writing import write_archive
from service.use_cases.archiving_records import Contents, FactTable, Field, FieldType
from tests.feeds.archive.forging import files_in, forged, with_manifest, zipped

WORDS = FactTable(
    "heading_words",
    "A word of the reader’s own.",
    ("word",),
    (Field("word", FieldType.WORDS, False, None, "The word."),),
)


def an_archive(words: int = 3) -> bytes:
    """Return a sound archive of some words."""
    target = io.BytesIO()
    rows = [{"word": f"word {number}"} for number in range(words)]
    contents = Contents(
        "0007", (WORDS,), {}, lambda _: iter(rows), lambda _: iter(()), [("walden", b"# Walden\n")]
    )
    write_archive(target, contents)
    return target.getvalue()


def words_in(archive: bytes) -> list[object]:
    """Read the words of an archive back."""
    with OpenArchive(io.BytesIO(archive)) as opened:
        opened.hold_to([WORDS])
        return [each.row["word"] for each in opened.rows(WORDS)]


def test_a_sound_archive_is_read() -> None:
    """What was written is read, and so are the same files packed anew with their folders."""
    archive = an_archive()
    assert words_in(archive) == ["word 0", "word 1", "word 2"]
    again = zipped({"facts/": b"", "digests/": b"", **files_in(archive)})
    assert words_in(again) == ["word 0", "word 1", "word 2"]


def test_the_same_facts_are_the_same_bytes() -> None:
    """Nothing of the time or the place it is written at is in an archive."""
    assert an_archive() == an_archive()
    with zipfile.ZipFile(io.BytesIO(an_archive())) as opened:
        assert {entry.date_time for entry in opened.infolist()} == {(1980, 1, 1, 0, 0, 0)}


def twice(archive: bytes) -> bytes:
    """Return an archive with one path twice."""
    target = io.BytesIO(archive)
    with (
        zipfile.ZipFile(target, "a") as opened,
        pytest.warns(UserWarning, match="Duplicate name"),
    ):
        opened.writestr("README.md", b"another")
    return target.getvalue()


def encrypted(archive: bytes) -> bytes:
    """Return an archive of which every entry says that it is encrypted (APPNOTE 4.4.4, bit 0)."""
    return archive.replace(b"PK\x01\x02\x14\x03\x14\x00\x00", b"PK\x01\x02\x14\x03\x14\x00\x01")


def endless(archive: bytes) -> bytes:
    """Return an archive whose directory claims most of a huge file for its own (4.3.16)."""
    end = archive.rindex(b"PK\x05\x06")
    size = layout.MAX_DIRECTORY + 10
    record = bytearray(archive[end:])
    record[12:16] = struct.pack("<L", size)
    record[16:20] = struct.pack("<L", 0)
    return b"\0" * size + bytes(record)


def bomb(archive: bytes) -> bytes:
    """Return an archive that unpacks to far more than its weight: five hundred times."""
    with zipfile.ZipFile(io.BytesIO(archive)) as opened:
        unpacked = sum(entry.file_size for entry in opened.infolist())
    swollen = layout.ALLOWED + 500 * len(archive)
    return forged(archive, lambda files: files.update({"README.md": b" " * (swollen - unpacked)}))


def put(path: str, content: bytes = b"x") -> Callable[[bytes], bytes]:
    """Return a way to add a file that the manifest lists."""
    return lambda archive: forged(archive, lambda files: files.update({path: content}))


def drop(path: str) -> Callable[[bytes], bytes]:
    """Return a way to leave a file out that the manifest lists."""
    return lambda archive: zipped(
        {name: content for name, content in files_in(archive).items() if name != path}
    )


CASES: dict[str, tuple[Callable[[bytes], bytes], str]] = {
    "nothing": (lambda _: b"", "cut short, damaged"),
    "no zip": (lambda _: b"Dear aunt, thank you for the plums.", "cut short, damaged"),
    "cut short": (lambda archive: archive[:-40], "cut short, damaged"),
    "its middle gone": (lambda archive: archive[:300] + archive[400:], "cut short, damaged"),
    "a path twice": (twice, "README.md” is in the archive twice"),
    "encrypted": (encrypted, "protected by a password"),
    "a directory without end": (endless, "cut short, damaged"),
    "a bomb": (bomb, "unpacks to far more"),
    "a way out": (put("../escaped.md"), "escaped.md” is no file of an archive"),
    "an absolute path": (put("/etc/passwd"), "is no file of an archive"),
    "a way out further in": (put("originals/../../x"), "is no file of an archive"),
    "another folder": (put("private/diary.md"), "diary.md” is no file of an archive"),
    "a path that is no text": (put("originals/a\x1b[2Jb"), "is no file of an archive"),
    "facts of no known sort": (put("facts/grudges.jsonl", b""), "grudges.jsonl is not known"),
    "a file the manifest does not list": (
        lambda archive: zipped({**files_in(archive), "digests/0002-emma.md": b"# Emma\n"}),
        "emma.md” is not in the manifest",
    ),
    "a file too few": (drop("facts/heading_words.jsonl"), "heading_words.jsonl” is missing"),
    "no manifest": (drop("manifest.json"), "has no manifest.json"),
    "another content": (
        lambda archive: zipped({**files_in(archive), "digests/0001-walden.md": b"# Emma..\n"}),
        "walden.md is not as it was written: its SHA-256",
    ),
    "a sort too few": (
        lambda archive: forged(archive, lambda files: files.pop("facts/heading_words.jsonl")),
        "heading_words.jsonl is missing",
    ),
    "a later layout": (lambda archive: with_manifest(archive, version=2), "later version"),
    "no layout": (lambda archive: with_manifest(archive, version="1"), "names no version"),
    "another format": (lambda archive: with_manifest(archive, format="x"), "does not say"),
    "a manifest with more": (lambda archive: with_manifest(archive, more=1), "a field too many"),
    "files that are none": (lambda archive: with_manifest(archive, files=[1]), "lists a file"),
    "no files": (lambda archive: with_manifest(archive, files=None), "does not list the files"),
    "facts uncounted": (
        lambda archive: with_manifest(archive, facts={"heading_words": "3"}),
        "does not count",
    ),
    "facts miscounted": (
        lambda archive: with_manifest(archive, facts={"heading_words": 4}),
        "has 3 lines, which is not what the manifest counts",
    ),
    "a revision that is no text": (
        lambda archive: with_manifest(archive, revision=7),
        "names no revision",
    ),
    "a manifest that is none": (
        lambda archive: zipped({**files_in(archive), "manifest.json": b"[" * 100_000}),
        "is not JSON",
    ),
}


@pytest.mark.parametrize("case", CASES)
def test_a_hostile_archive_is_refused(case: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """One sentence or two, which name what is amiss and say what to do."""
    make, said = CASES[case]
    monkeypatch.setattr(layout, "ALLOWED", 64 * 1024)  # or the bomb would take seconds to make
    monkeypatch.setattr(layout, "MAX_DIRECTORY", 64 * 1024)
    with pytest.raises(InvalidArchive) as refused:
        words_in(make(an_archive()))
    assert said in refused.value.message
    assert refused.value.message.endswith(".")


def test_more_files_than_are_read_are_not_written(monkeypatch: pytest.MonkeyPatch) -> None:
    """What could not be read back is refused when it is written, not when it is needed."""
    monkeypatch.setattr(layout, "MAX_ENTRIES", 2)
    with pytest.raises(CannotWrite, match="an archive holds no more"):
        an_archive()
