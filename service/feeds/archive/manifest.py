"""What the manifest of an archive says, read and checked."""

from collections.abc import Mapping
from dataclasses import dataclass

from cards.errors import InvalidArchive
from service.feeds.archive import layout
from service.feeds.archive.strict_json import Unreadable, object_in


@dataclass(frozen=True, slots=True)
class Manifest:
    """What a manifest says.

    Attributes:
        revision: of the store the facts come from.
        facts: how many there are of each sort.
        files: by their paths, the bytes and the SHA-256 of each.
    """

    revision: str
    facts: Mapping[str, int]
    files: Mapping[str, tuple[int, str]]


def manifest_in(text: bytes) -> Manifest:
    """Return what a manifest says.

    Raises:
        InvalidArchive: it is none, or of a layout only a later Catchword knows.
    """
    try:
        found = object_in(text)
    except Unreadable as error:
        raise _amiss(str(error)) from error
    if found.get("format") != layout.FORMAT:
        raise _amiss("does not say that this is an archive of Catchword’s")
    version = found.get("version")
    if type(version) is int and version > layout.VERSION:
        raise InvalidArchive(
            "The archive was written by a later version of Catchword. Restore it with that one.",
            where=layout.MANIFEST,
        )
    if version != layout.VERSION:
        raise _amiss("names no version of the archive’s layout")
    if set(found) != {"format", "version", "revision", "facts", "files"}:
        raise _amiss("has a field too many or too few")
    revision = found["revision"]
    if not isinstance(revision, str):
        raise _amiss("names no revision of the library")
    return Manifest(revision, _facts(found["facts"]), _files(found["files"]))


def _facts(found: object) -> dict[str, int]:
    if not isinstance(found, dict) or not all(type(count) is int for count in found.values()):
        raise _amiss("does not count the facts")
    return found


def _files(found: object) -> dict[str, tuple[int, str]]:
    if not isinstance(found, list):
        raise _amiss("does not list the files")
    files: dict[str, tuple[int, str]] = {}
    for each in found:
        match each:
            case {"path": str(path), "bytes": int(size), "sha256": str(digits)} if (
                len(each) == 3 and path not in files
            ):
                files[path] = (size, digits)
            case _:
                raise _amiss("lists a file twice, or not as files are listed")
    return files


def _amiss(what: str) -> InvalidArchive:
    return InvalidArchive(
        f"{layout.MANIFEST} {what}. Use an archive as it was exported.", where=layout.MANIFEST
    )
