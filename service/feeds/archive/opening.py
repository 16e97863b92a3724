"""Opens an archive: whoever wrote it, nothing of it is trusted before it was checked."""

import struct
import zipfile
import zlib
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from hashlib import sha256
from typing import IO

from cards.errors import InvalidArchive
from service.feeds.archive import layout
from service.feeds.archive.manifest import Manifest, manifest_in

_PACKINGS = frozenset({zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED})
_BREAKAGE = (
    zipfile.BadZipFile,
    zlib.error,
    struct.error,
    EOFError,
    OSError,
    RuntimeError,
    NotImplementedError,
    ValueError,
    OverflowError,
)
"""What the library for zips lets out of a broken one."""
_PIECE = 256 * 1024
_DAMAGED = (
    "The archive is cut short, damaged, or no archive of Catchword’s. Export it again, or send "
    "the whole file once more."
)


@contextmanager
def damage_told() -> Iterator[None]:
    """Refuse an archive in one sentence where the zip itself turns out to be broken."""
    try:
        yield
    except _BREAKAGE as error:
        raise InvalidArchive(_DAMAGED, where="file") from error


class _Bounded:
    """A file of which nothing is read at once that would fill the memory.

    A zip's directory is read whole, and says of itself how long it is.
    """

    def __init__(self, source: IO[bytes]) -> None:
        self._source = source
        self.tell, self.seek = source.tell, source.seek

    def seekable(self) -> bool:
        return True

    def read(self, size: int = -1) -> bytes:
        most = layout.MAX_DIRECTORY + 1
        content = self._source.read(most if size < 0 else min(size, most))
        if len(content) == most:
            raise zipfile.BadZipFile("a directory without end")
        return content


def open_zip(source: IO[bytes]) -> tuple[zipfile.ZipFile, Manifest]:
    """Return an archive with what its manifest says, every file of it held against that.

    Raises:
        InvalidArchive: it is damaged, beyond its bounds, of a later Catchword, or has a file
            more or less than its manifest says, or another one.
    """
    with damage_told():
        archive = zipfile.ZipFile(_Bounded(source))
        entries = _entries(archive)
        _check_sizes(source, entries)
        manifest = _manifest(archive, entries)
        _compare(entries, manifest)
        for path, told in manifest.files.items():
            with archive.open(entries[path]) as file:
                if (entries[path].file_size, _hash(file)) != told:
                    raise InvalidArchive(
                        f"{path} is not as it was written: its SHA-256 is another than the "
                        "manifest says. Use an archive nothing was changed in.",
                        where=path,
                    )
    return archive, manifest


def _entries(archive: zipfile.ZipFile) -> dict[str, zipfile.ZipInfo]:
    # A program that packs the files of an archive anew lists their folders too.
    listed = [each for each in archive.infolist() if not each.is_dir()]
    if len(listed) > layout.MAX_ENTRIES + 1:
        raise InvalidArchive(
            f"The archive lists {len(listed)} files, and no library has more than "
            f"{layout.MAX_ENTRIES}. It was not opened.",
            where="file",
        )
    entries: dict[str, zipfile.ZipInfo] = {}
    for each in listed:
        if each.filename in entries:
            raise InvalidArchive(
                f"{_shown(each.filename)} is in the archive twice. Use one as it was exported.",
                where="file",
            )
        if not layout.is_known(each.filename):
            raise InvalidArchive(
                f"{_shown(each.filename)} is no file of an archive of Catchword’s. Use one as it "
                "was exported.",
                where="file",
            )
        entries[each.filename] = each
    return entries


def _check_sizes(source: IO[bytes], entries: Mapping[str, zipfile.ZipInfo]) -> None:
    if any(
        each.flag_bits & 0x1 or each.compress_type not in _PACKINGS for each in entries.values()
    ):
        raise InvalidArchive(
            "The archive is protected by a password or packed in another way than Catchword "
            "packs. Use one as it was exported.",
            where="file",
        )
    packed = source.seek(0, 2)
    unpacked = sum(each.file_size for each in entries.values())
    if unpacked > min(layout.MAX_UNPACKED, layout.ALLOWED + layout.MAX_RATIO * packed):
        raise InvalidArchive(
            "The archive unpacks to far more than a library can hold, so it was not opened.",
            where="file",
        )


def _manifest(archive: zipfile.ZipFile, entries: Mapping[str, zipfile.ZipInfo]) -> Manifest:
    entry = entries.get(layout.MANIFEST)
    if entry is None or entry.file_size > layout.MAX_MANIFEST:
        raise InvalidArchive(
            f"The archive has no {layout.MANIFEST}, so it is none of Catchword’s. Choose the file "
            "that “catchword export everything” wrote.",
            where="file",
        )
    with archive.open(entry) as file:
        return manifest_in(file.read(layout.MAX_MANIFEST))


def _compare(entries: Mapping[str, zipfile.ZipInfo], manifest: Manifest) -> None:
    listed = set(manifest.files) | {layout.MANIFEST}
    if amiss := sorted(listed.symmetric_difference(entries)):
        what = "is missing" if amiss[0] in listed else "is not in the manifest"
        raise InvalidArchive(
            f"{_shown(amiss[0])} {what}. Use an archive as it was exported.", where="file"
        )


def _hash(file: IO[bytes]) -> str:
    hashed = sha256()
    while piece := file.read(_PIECE):
        hashed.update(piece)
    return hashed.hexdigest()


def _shown(path: str) -> str:
    """Return a path that may be anyone's, fit to stand in a sentence."""
    letters = (letter if letter.isprintable() else "�" for letter in path[:80])
    return f"“{''.join(letters)}”"
