"""A zip of digests is opened file by file, and what is wrong with one stops none of the others."""

import io
import os
import stat
import struct
import zipfile
import zlib
from collections.abc import Iterator
from pathlib import Path

import pytest

from cards.errors import DocumentRefused
from service.documents.bundles import MAX_FILES, files_in
from service.documents.reader import PandocDocuments
from service.use_cases.ports import LARGEST_BUNDLE, LARGEST_FILE
from service.use_cases.records import BundledFile
from tests.documents.files import DIGEST, archive, made, odt


def found(content: bytes, name: str = "digests.zip") -> list[BundledFile]:
    """Return the files of a bundle."""
    files = files_in(name, content)
    assert files is not None
    return list(files)


def refusal_of(file: BundledFile) -> DocumentRefused:
    """Return why a file was refused, and that it has no content."""
    assert file.content is None
    assert file.refusal is not None
    return file.refusal


def raw_named(name: bytes, extra: bytes = b"") -> bytes:
    """Return a zip of one file whose name is these bytes, without a word on their encoding."""
    stand_in = "x" * len(name)
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as written:
        info = zipfile.ZipInfo(stand_in)
        info.extra = extra
        written.writestr(info, b"words")
    return target.getvalue().replace(stand_in.encode(), name)


def test_files_come_with_folders_numbers_and_bytes():
    """Each file comes in the zip's order, its folders in its name; folders alone are no files."""
    content = archive({"a.md": b"A", "1998/": b"", "1998/b/c.txt": b"C"})
    assert found(content) == [
        BundledFile("a.md", b"A", None, 1, 2),
        BundledFile("1998/b/c.txt", b"C", None, 2, 2),
    ]


@pytest.mark.parametrize("suffix", ["docx", "odt", "epub"])
def test_documents_that_are_zips_are_no_bundles(suffix: str):
    """Word, OpenDocument and EPUB files are documents, whatever they are called."""
    content = made(DIGEST, suffix)
    assert files_in(f"x.{suffix}", content) is None
    assert files_in("x.zip", content) is None


def test_other_files_are_no_bundles():
    """Text is no bundle, nor is a damaged archive of another name."""
    assert files_in("x.txt", b"Words") is None
    assert files_in("x.docx", archive({"a.md": b"A"})) is None
    assert files_in("x.bin", archive({"a.md": b"A"})[:40]) is None


@pytest.mark.parametrize(
    ("raw", "shown"),
    [
        ("Bücher/Größe.md".encode(), "Bücher/Größe.md"),
        ("Größe.md".encode("cp437"), "Größe.md"),
        ("Élan.md".encode("cp437"), "Élan.md"),
        (b"1998\\June\\emma.md", "1998/June/emma.md"),
        (b"../../etc/cron.md", "etc/cron.md"),
        (b"/etc/passwd.txt", "etc/passwd.txt"),
        (b"C:\\Users\\x\\emma.md", "Users/x/emma.md"),
        (b"\\\\host\\share\\emma.md", "host/share/emma.md"),
        (b"a/./b/..//c.md", "a/b/c.md"),
        (b"two\nlines\x1b[31m.md", "two lines [31m.md"),
        ("gnp\u202e.md".encode(), "gnp .md"),
        (b"../..", "a file without a name"),
        (b"x" * 300 + b".md", "x" * 177 + ".md"),
    ],
    ids=lambda value: repr(value)[:24],
)
def test_names_are_read_rightly_and_are_harmless(raw: bytes, shown: str):
    """UTF-8 without its flag, the zip's own code page, backslashes, and paths that climb out.

    PKWARE's APPNOTE 6.3.10, 4.4.17 and appendix D: code page 437 unless bit 11 says UTF-8.
    """
    assert [file.name for file in found(raw_named(raw))] == [shown]


def test_a_name_given_in_an_extra_field_wins_where_it_fits():
    """A UTF-8 name in the field 0x7075 holds for the very name it was made for (APPNOTE, 4.6.9)."""
    raw = b"emma?.md"
    for crc, shown in ((zlib.crc32(raw), "emmá.md"), (0, "emma?.md")):
        field = b"\x01" + struct.pack("<L", crc) + "emmá.md".encode()
        extra = struct.pack("<HH", 0x7075, len(field)) + field
        assert found(raw_named(raw, extra))[0].name == shown


def test_nothing_is_written_to_the_disk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """Opening a bundle with climbing names leaves every folder as it was."""
    monkeypatch.chdir(tmp_path)
    found(archive({"../out.md": b"A", "/tmp/out.md": b"B", "in.md": b"C"}))
    assert os.listdir(tmp_path) == []  # noqa: PTH208 - names alone


def test_hidden_files_are_passed_over_in_one_line():
    """What systems and word processors keep for themselves is counted in one line at the end."""
    content = archive(
        {
            "a.docx": b"A",
            "__MACOSX/._a.docx": b"x",
            ".DS_Store": b"x",
            ".git/config.md": b"x",
            "books/Thumbs.db": b"x",
            "~$a.docx": b"x",
        }
    )
    first, last = found(content)
    assert (first.name, first.number, first.of) == ("a.docx", 1, 2)
    assert refusal_of(last).message.startswith(
        "5 hidden files in “digests.zip”, such as “__MACOSX/._a.docx”, were passed over"
    )


def test_one_broken_file_stops_none_of_the_others():
    """A file whose bytes do not add up is refused by name, and the rest come."""
    content = archive({"a.md": b"A" * 50, "b.md": b"B" * 50, "c.md": b"C" * 50}, packed=False)
    files = found(content.replace(b"B" * 50, b"B" * 49 + b"?"))
    assert [file.content for file in files] == [b"A" * 50, None, b"C" * 50]
    assert "“b.md” is cut short or damaged" in refusal_of(files[1]).message


def test_what_is_not_taken_out_says_why():
    """Locked, swollen, oversized, twice there, a link, a zip: each in a sentence of its own."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED) as written:
        written.writestr("swollen.md", b" " * 3_000_000)
        written.writestr("vast.md", os.urandom(1000) * (LARGEST_FILE // 1000 + 1))
        link = zipfile.ZipInfo("link.md")
        link.external_attr = (stat.S_IFLNK | 0o777) << 16
        written.writestr(link, "/etc/hostname")
        written.writestr("inner.zip", archive({"a.md": b"A"}))
        written.writestr("fine.md", b"A")
        with pytest.warns(UserWarning, match="Duplicate"):
            written.writestr("fine.md", b"B")
    files = {file.number: file for file in found(target.getvalue())}
    said = [
        (1, "“swollen.md” unpacks to far more"),
        (2, "“vast.md” unpacks to far more"),
        (3, "“link.md” is a link to a file elsewhere"),
        (4, "“inner.zip” is a zip inside a zip"),
        (6, "“fine.md” is in the zip more than once"),
    ]
    for number, words in said:
        assert words in refusal_of(files[number]).message
        assert refusal_of(files[number]).message.endswith(".")
    assert files[5].content == b"A"


def test_a_locked_file_is_refused_by_itself():
    """A file under a password is refused, and its neighbours are not."""
    content = bytearray(archive({"a.md": b"A", "b.md": b"B"}))
    content[6] |= 1
    content[content.index(b"PK\x01\x02") + 8] |= 1
    first, second = found(bytes(content))
    assert "protected by a password" in refusal_of(first).message
    assert second.content == b"B"


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (archive({}), "is empty"),
        (archive({"a/": b""}), "is empty"),
        (archive({"a.md": b"A"})[:-30], "cut short or damaged"),
        (b"no zip at all", "cut short or damaged"),
        (archive({f"{n}.md": b"" for n in range(MAX_FILES + 1)}), "more than 2000 files"),
        (b"PK\x03\x04" + b"PK\x01\x02" * 50_001, "more than 2000 files"),
        (b"PK\x03\x04" + b"\x00" * LARGEST_BUNDLE, "larger than 200 MB"),
    ],
    ids=["empty", "folders", "cut", "no zip", "too many", "a directory of millions", "too large"],
)
def test_a_bundle_that_can_not_be_opened_is_one_refusal(content: bytes, words: str):
    """The bundle itself comes back by name with a sentence, and nothing is raised."""
    (only,) = found(content)
    assert only.name == "digests.zip"
    assert words in refusal_of(only).message


def test_files_that_swell_together_are_refused_before_any_is_unpacked():
    """A hundred files just under the bound, that unpack to gigabytes, are one refusal."""
    inner = zlib.compressobj(9, zlib.DEFLATED, -15)
    block = os.urandom(16_000) * 1200
    packed = inner.compress(block) + inner.flush()
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_STORED) as written:
        for number in range(60):
            written.writestr(f"{number}.md", packed)
    content = target.getvalue()
    swollen = content.replace(
        struct.pack("<LL", len(packed), len(packed)), struct.pack("<LL", len(packed), len(block))
    )
    (only,) = found(swollen)
    assert "unpacks to more than 1000 MB" in refusal_of(only).message


def test_one_file_is_in_memory_at_a_time(monkeypatch: pytest.MonkeyPatch):
    """A file is unpacked when it is asked for, and not before."""
    unpacked: list[str] = []
    read = zipfile.ZipFile.read

    def noted(self: zipfile.ZipFile, name: zipfile.ZipInfo) -> bytes:
        unpacked.append(name.filename)
        return read(self, name)

    monkeypatch.setattr(zipfile.ZipFile, "read", noted)
    files = files_in("x.zip", archive({"a.md": b"A", "b.md": b"B"}))
    assert isinstance(files, Iterator)
    assert unpacked == []
    next(files)
    assert unpacked == ["a.md"]


def test_every_flipped_byte_gives_files_or_refusals():
    """Damage anywhere in a bundle ends in files, refusals or no bundle, never in another error."""
    content = archive({"a.md": b"A" * 90, "b/c.md": b"C" * 90, ".h": b"x"})
    refused = 0
    for place in range(len(content)):
        damaged = content[:place] + bytes([content[place] ^ 0xFF]) + content[place + 1 :]
        refused += any(file.content is None for file in files_in("x.zip", damaged) or ())
    assert refused > 0


def test_the_reader_of_documents_opens_bundles(documents: PandocDocuments):
    """The port's own method gives the same files."""
    files = documents.unpack("x.zip", archive({"a.md": b"A"}))
    assert files is not None
    assert [file.name for file in files] == ["a.md"]
    assert documents.unpack("x.odt", odt("")) is None


def test_an_unusual_packing_is_one_refusal():
    """A file packed otherwise than zips of documents are is refused, and its neighbours are not."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w") as written:
        written.writestr("a.md", b"A" * 300, zipfile.ZIP_LZMA)
        written.writestr("b.md", b"B", zipfile.ZIP_DEFLATED)
    sound = target.getvalue()
    at = sound.index(b"a.md") + 12
    for content in (sound, sound[:at] + bytes(12) + sound[at + 12 :]):
        first, second = found(content)
        assert "is packed in a way that is not unpacked here" in refusal_of(first).message
        assert second.content == b"B"
