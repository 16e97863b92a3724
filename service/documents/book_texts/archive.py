"""The parts of an EPUB: looked at before they are unpacked, one at a time."""

import io
import posixpath
import re
import zipfile
import zlib
from urllib.parse import unquote

from cards.errors import DocumentLocked, DocumentRefused
from service.documents.archives import is_packed_oddly, records_in
from service.documents.book_texts.bounds import (
    LARGE_PART,
    MAX_ENTRIES,
    MAX_RATIO,
    MAX_RECORDS,
    MAX_UNPACKED,
    damaged,
    swollen,
)
from service.documents.book_texts.markup import NoMarkup, xml_of

_ENCRYPTION = "META-INF/encryption.xml"
_RIGHTS = ("META-INF/rights.xml", "META-INF/license.lcpl")
_FONT_ALGORITHMS = frozenset(
    {"http://www.idpf.org/2008/embedding", "http://ns.adobe.com/pdf/enc#RC"}
)
"""Ways of obscuring fonts alone (EPUB 3.3, section 4.3, and the older one): words stay open."""
_NO_WORDS = re.compile(
    r"\.(?:png|jpe?g|gif|svg|webp|ttf|otf|woff2?|css|js|mp[34]|m4a|ogg|smil|pdf)\Z", re.IGNORECASE
)


class Archive:
    """An EPUB's parts by their paths; names are only looked up, never written anywhere.

    Raises:
        DocumentTooLarge: it holds more parts or bytes than a book can need.
        DocumentLocked: its words are encrypted.
        DocumentBroken: it is no archive, or a damaged one.
    """

    def __init__(self, name: str, content: bytes) -> None:
        self._name = name
        if records_in(content) > MAX_RECORDS:
            raise swollen(name)
        try:
            self._zip = zipfile.ZipFile(io.BytesIO(content))
        except (zipfile.BadZipFile, ValueError, OSError, EOFError, NotImplementedError) as error:
            raise damaged(name) from error
        entries = [entry for entry in self._zip.infolist() if not entry.is_dir()]
        self._entries = {entry.filename: entry for entry in entries}
        self._folded = {entry.filename.lower(): entry for entry in entries}
        self._check(entries)

    def __contains__(self, path: str) -> bool:
        return self._entry(path) is not None

    def name_of(self, path: str) -> str:
        """Return the name a part bears in the archive, or the path itself where there is none."""
        entry = self._entry(path)
        return path if entry is None else entry.filename

    def part(self, path: str) -> bytes | None:
        """Return a part unpacked, or None when there is none of this path."""
        entry = self._entry(path)
        if entry is None:
            return None
        try:
            with self._zip.open(entry) as stream:
                return stream.read(entry.file_size)
        except (zipfile.BadZipFile, zlib.error, EOFError, ValueError, OSError) as error:
            raise damaged(self._name) from error
        except (RuntimeError, NotImplementedError) as error:
            raise damaged(self._name) from error

    def _entry(self, path: str) -> zipfile.ZipInfo | None:
        return self._entries.get(path) or self._folded.get(path.lower())

    def _check(self, entries: list[zipfile.ZipInfo]) -> None:
        if any(entry.flag_bits & 0x1 for entry in entries) or self._protected():
            raise _locked(self._name)
        if any(map(is_packed_oddly, entries)):
            raise damaged(self._name)
        wordy = [entry for entry in entries if not _NO_WORDS.search(entry.filename)]
        bomb = any(
            entry.file_size > LARGE_PART
            and entry.file_size > MAX_RATIO * max(entry.compress_size, 1)
            for entry in wordy
        )
        unpacked = sum(entry.file_size for entry in wordy)
        if len(entries) > MAX_ENTRIES or unpacked > MAX_UNPACKED or bomb:
            raise swollen(self._name)

    def _protected(self) -> bool:
        """Tell whether anything but fonts is encrypted."""
        if any(path in self for path in _RIGHTS):
            return True
        entry = self._entry(_ENCRYPTION)
        if entry is None or entry.file_size > LARGE_PART:
            return entry is not None
        try:
            root = xml_of(self.part(_ENCRYPTION) or b"")
        except NoMarkup:
            return True
        methods = root.iterfind(".//{*}EncryptedData/{*}EncryptionMethod")
        return any(method.get("Algorithm") not in _FONT_ALGORITHMS for method in methods)


def joined(base: str, reference: str) -> tuple[str, str]:
    """Return the path and the fragment a reference leads to from a part; "" beyond the archive."""
    path, _, fragment = reference.partition("#")
    if not path:
        return base, unquote(fragment)
    whole = posixpath.normpath(posixpath.join(posixpath.dirname(base), unquote(path)))
    inside = not whole.startswith(("..", "/")) and ":" not in path
    return (whole if inside else ""), unquote(fragment)


def _locked(name: str) -> DocumentRefused:
    return DocumentLocked(
        f"“{name}” is protected against copying (DRM), so its words can not be read. Hand over an "
        "unprotected edition, or the text of the book.",
        where="file",
    )
