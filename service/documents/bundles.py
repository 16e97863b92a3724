"""A zip of digests, opened one file at a time in memory: nothing of it ever touches the disk."""

import io
import stat
import zipfile
import zlib
from collections.abc import Iterator

from cards.errors import (
    DocumentBroken,
    DocumentEmpty,
    DocumentLocked,
    DocumentRefused,
    DocumentTooLarge,
    DocumentUnsupported,
)
from service.documents.archives import MAX_RECORDS, is_packed_oddly, is_swollen, records_in
from service.documents.bundle_names import is_hidden, shown_name
from service.use_cases.ports import LARGEST_BUNDLE, LARGEST_FILE
from service.use_cases.records import BundledFile

MAX_FILES = 2_000
"""Files in one bundle: twice the digests of a lifetime of reading."""
MAX_UNPACKED = 5 * LARGEST_BUNDLE
"""Bytes all files of a bundle come to; documents, packed already, hardly shrink in a zip."""
_ZIP_OPENINGS = (b"PK\x03\x04", b"PK\x05\x06")
_DOCUMENTS = (".docx", ".odt", ".epub")
_OF_A_DOCUMENT = frozenset({"mimetype", "[Content_Types].xml", "META-INF/container.xml"})
"""Entries by which a zip is one document: of OpenDocument and EPUB, of Word, of EPUB."""


def files_in(name: str, content: bytes) -> Iterator[BundledFile] | None:
    """Return the files of a zip in its order, one by one, or None when it is no bundle.

    A Word or OpenDocument file and an EPUB are zips too, and no bundles. What can not
    be taken out comes with its refusal; so does the bundle itself, alone, when it can not
    be opened. Files that systems keep for themselves are passed over in one line.
    """
    named = name.lower().endswith(".zip")
    if not (named or content.startswith(_ZIP_OPENINGS)) or name.lower().endswith(_DOCUMENTS):
        return None
    shown = name[-200:]
    if (refusal := _too_much(shown, content)) is not None:
        return iter([BundledFile(shown, None, refusal)])
    try:
        archive = zipfile.ZipFile(io.BytesIO(content))
    except (zipfile.BadZipFile, NotImplementedError, ValueError, EOFError, OSError):
        return iter([BundledFile(shown, None, _damaged(shown))]) if named else None
    if _OF_A_DOCUMENT & set(archive.namelist()):
        archive.close()
        return None
    return _files(shown, archive)


def _files(name: str, archive: zipfile.ZipFile) -> Iterator[BundledFile]:
    with archive:
        entries = [(shown_name(entry), entry) for entry in archive.infolist() if _is_file(entry)]
        hidden = [shown for shown, _ in entries if is_hidden(shown)]
        wanted = [(shown, entry) for shown, entry in entries if not is_hidden(shown)]
        if (refusal := _whole(name, [entry for _, entry in wanted])) is not None:
            yield BundledFile(name, None, refusal)
            return
        of = len(wanted) + bool(hidden)
        seen: set[str] = set()
        for number, (shown, entry) in enumerate(wanted, 1):
            again = shown in seen
            seen.add(shown)
            try:
                content = _taken(shown, archive, entry, again=again)
            except DocumentRefused as refusal:
                yield BundledFile(shown, None, refusal, number, of)
            else:
                yield BundledFile(shown, content, None, number, of)
        if hidden:
            yield BundledFile(name, None, _passed_over(name, hidden), of, of)


def _is_file(entry: zipfile.ZipInfo) -> bool:
    return not entry.orig_filename.endswith(("/", "\\"))


def _too_much(name: str, content: bytes) -> DocumentRefused | None:
    if len(content) > LARGEST_BUNDLE:
        return DocumentTooLarge(
            f"“{name}” is larger than {LARGEST_BUNDLE // (1024 * 1024)} MB. Hand over its files in "
            "several zips, or as a folder.",
            where="file",
        )
    if records_in(content) > MAX_RECORDS:
        return _too_many(name)
    return None


def _whole(name: str, entries: list[zipfile.ZipInfo]) -> DocumentRefused | None:
    """Return why a bundle is refused as a whole, or None."""
    if not entries:
        return DocumentEmpty(
            f"“{name}” is empty. Hand over a zip with digests in it.", where="file"
        )
    if len(entries) > MAX_FILES:
        return _too_many(name)
    if sum(entry.file_size for entry in entries) > MAX_UNPACKED:
        return DocumentTooLarge(
            f"“{name}” unpacks to more than {MAX_UNPACKED // (1024 * 1024)} MB, far more than "
            "digests come to, so it was not opened. Hand over the digests alone.",
            where="file",
        )
    return None


def _taken(name: str, archive: zipfile.ZipFile, entry: zipfile.ZipInfo, *, again: bool) -> bytes:
    """Return the bytes of one file of a bundle."""
    if again:
        raise DocumentUnsupported(
            f"“{name}” is in the zip more than once; the first was read. Give the other a name of "
            "its own and hand it over.",
            where="file",
        )
    if stat.S_ISLNK(entry.external_attr >> 16):
        raise DocumentUnsupported(
            f"“{name}” is a link to a file elsewhere, which is not followed. Put the file itself "
            "into the zip.",
            where="file",
        )
    if entry.flag_bits & 0x1:
        raise DocumentLocked(
            f"“{name}” is protected by a password. Unpack the zip and hand over the file itself.",
            where="file",
        )
    if is_packed_oddly(entry):
        raise DocumentUnsupported(
            f"“{name}” is packed in a way that is not unpacked here. Make the zip again the usual "
            "way (deflate), or hand over the file itself.",
            where="file",
        )
    if entry.file_size > LARGEST_FILE or is_swollen(entry):
        raise DocumentTooLarge(
            f"“{name}” unpacks to far more than a two-page digest can hold, so it was left in the "
            "zip. Copy the digest alone into a new document and hand that over.",
            where="file",
        )
    if name.lower().endswith(".zip"):
        raise DocumentUnsupported(
            f"“{name}” is a zip inside a zip, which is not opened. Unpack it and hand it over by "
            "itself.",
            where="file",
        )
    try:
        return archive.read(entry)
    except (zipfile.BadZipFile, zlib.error, EOFError, ValueError, OSError) as error:
        raise _damaged(name) from error
    except (RuntimeError, NotImplementedError) as error:
        raise _damaged(name) from error


def _passed_over(name: str, hidden: list[str]) -> DocumentRefused:
    count = "A hidden file" if len(hidden) == 1 else f"{len(hidden)} hidden files"
    were = "was" if len(hidden) == 1 else "were"
    return DocumentUnsupported(
        f"{count} in “{name}”, such as “{hidden[0]}”, {were} passed over: a system keeps them for "
        "itself, and they hold no digest.",
        where="file",
    )


def _too_many(name: str) -> DocumentRefused:
    return DocumentTooLarge(
        f"“{name}” holds more than {MAX_FILES} files. Hand them over in several zips.", where="file"
    )


def _damaged(name: str) -> DocumentRefused:
    return DocumentBroken(
        f"“{name}” is cut short or damaged, so it can not be opened. Make it again, or send the "
        "whole file once more.",
        where="file",
    )
