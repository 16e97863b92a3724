"""Zipped documents: checked before anything unpacks them, and slimmed to their words."""

import io
import zipfile
import zlib
from typing import IO

from cards.errors import (
    DocumentBroken,
    DocumentLocked,
    DocumentRefused,
    DocumentTooLarge,
    DocumentUnsupported,
)
from service.documents.formats import READABLE, Format

MAX_ENTRIES = 2_000
"""Files in one archive: a two-page document holds about fifteen; pictures add one each."""
MAX_UNPACKED = 32 * 1024 * 1024
"""Bytes of text parts after unpacking: three hundred times a two-page document's."""
MAX_RATIO = 200
"""Unpacked size over packed size of one large part; word processors' own XML stays under 60."""
MAX_RECORDS = 50_000
"""Directory records in one archive and the archives stored in it, before its directory is read."""
_PACKINGS = frozenset({zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED})
_RECORD = b"PK\x01\x02"
_LARGE = 1024 * 1024
_CHUNK = 256 * 1024
_ENTITIES = tuple(
    "<!ENTITY".encode(wide).rstrip(b"\x00") for wide in ("utf-8", "utf-16-le", "utf-32-le")
)
"""The declaration of an entity, as it stands in parts of one, two and four bytes a letter."""
_TEXT_PARTS = (".xml", ".rels")
_ODT_TYPE = b"application/vnd.oasis.opendocument.text"

Parts = dict[str, bytes]
"""The text parts of an archive, by their path in it."""


def open_parts(name: str, content: bytes) -> tuple[Format, Parts]:
    """Return which zipped format a file has, and its parts that carry text.

    Pictures, fonts and everything else in the archive are left packed.

    Raises:
        DocumentTooLarge: it holds more parts or bytes than a digest can need.
        DocumentLocked: its parts are encrypted.
        DocumentBroken: the archive is damaged or is not a document of its name.
        DocumentUnsupported: it is a sound archive of something else.
    """
    if records_in(content) > MAX_RECORDS:
        raise _swollen(name)
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            entries = archive.infolist()
            _check_sizes(name, entries)
            parts = {entry.filename: _unpack(archive, entry) for entry in entries if _wanted(entry)}
    except (zipfile.BadZipFile, zlib.error, EOFError, ValueError, OSError) as error:
        raise _damaged(name) from error
    except (RuntimeError, NotImplementedError) as error:
        raise _damaged(name) from error
    return _recognise(name, parts), parts


def packed(parts: Parts) -> bytes:
    """Return the parts as an archive of their own, the media type first as ODT asks."""
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_STORED) as archive:
        for path in sorted(parts, key=lambda path: (path != "mimetype", path)):
            archive.writestr(zipfile.ZipInfo(path), parts[path])
    return target.getvalue()


def _wanted(entry: zipfile.ZipInfo) -> bool:
    return entry.filename == "mimetype" or entry.filename.lower().endswith(_TEXT_PARTS)


def _check_sizes(name: str, entries: list[zipfile.ZipInfo]) -> None:
    if any(entry.flag_bits & 0x1 for entry in entries):
        raise _locked(name)
    if any(map(is_packed_oddly, entries)):
        raise _damaged(name)
    wanted = [entry for entry in entries if _wanted(entry)]
    unpacked = sum(entry.file_size for entry in wanted)
    if len(entries) > MAX_ENTRIES or unpacked > MAX_UNPACKED or any(map(is_swollen, entries)):
        raise _swollen(name)


def records_in(content: bytes) -> int:
    """Return the most files an archive can list, found without reading its directory."""
    return content.count(_RECORD)


def is_swollen(entry: zipfile.ZipInfo) -> bool:
    """Tell whether a part unpacks to far more than it is packed in."""
    return entry.file_size > _LARGE and entry.file_size > MAX_RATIO * max(entry.compress_size, 1)


def is_packed_oddly(entry: zipfile.ZipInfo) -> bool:
    """Tell whether a part is packed in another way than documents are: stored, or deflated.

    OpenDocument, Office Open XML and EPUB know these two alone (ISO 26300-3, 2.2; ISO 29500-2,
    annex B; EPUB 3.3, 4.2.2). Of the others one asks for memory as its maker says.
    """
    return entry.compress_type not in _PACKINGS


def _unpack(archive: zipfile.ZipFile, entry: zipfile.ZipInfo) -> bytes:
    with archive.open(entry) as stream:
        return b"".join(_chunks(stream))


def _chunks(stream: IO[bytes]) -> list[bytes]:
    chunks: list[bytes] = []
    while chunk := stream.read(_CHUNK):
        chunks.append(chunk)
    return chunks


def _recognise(name: str, parts: Parts) -> Format:
    if any(entity in part for part in parts.values() for entity in _ENTITIES):
        raise _damaged(name)
    if "word/document.xml" in parts:
        return Format.DOCX
    if parts.get("mimetype", b"").strip() == _ODT_TYPE and "content.xml" in parts:
        if b"encryption-data" in parts.get("META-INF/manifest.xml", b""):
            raise _locked(name)
        return Format.ODT
    lowered = name.lower()
    if lowered.endswith(".docx"):
        raise DocumentBroken(
            f"“{name}” holds no Word document: its text part (word/document.xml) is missing. Open "
            "it in a word processor and save it again as .docx.",
            where="file",
        )
    if lowered.endswith(".odt"):
        raise DocumentBroken(
            f"“{name}” holds no OpenDocument text: its text part (content.xml) is missing. Open it "
            "in a word processor and save it again as .odt.",
            where="file",
        )
    raise DocumentUnsupported(
        f"“{name}” is an archive of a kind Catchword does not read. Save the digest as {READABLE}.",
        where="file",
    )


def _swollen(name: str) -> DocumentRefused:
    return DocumentTooLarge(
        f"“{name}” unpacks to far more than a two-page digest can hold, so it was not opened. "
        "Copy the digest alone into a new document and hand that over.",
        where="file",
    )


def _locked(name: str) -> DocumentRefused:
    return DocumentLocked(
        f"“{name}” is protected by a password. Open it, take the password off, save it, and hand "
        "it over again.",
        where="file",
    )


def _damaged(name: str) -> DocumentRefused:
    return DocumentBroken(
        f"“{name}” is cut short or damaged, so it can not be opened. Open it in the program it was "
        "written with and save it again, or send the whole file once more.",
        where="file",
    )
