"""The names of files in a zip: read in the encoding they were written in, and made harmless."""

import struct
import zipfile
import zlib

LONGEST = 180
"""Characters of a name, its folders among them; the end is kept."""
_UTF8 = 0x800
_UNICODE_PATH = 0x7075
"""The extra field in which older programs give a name in UTF-8 (PKWARE's APPNOTE, 4.6.9)."""
_SYSTEM = frozenset({"thumbs.db", "desktop.ini", "icon\r"})


def shown_name(entry: zipfile.ZipInfo) -> str:
    """Return the path of a file in a zip, fit to be shown: nothing it says is ever a path on disk.

    Drives, `..` and empty folders are left out, and so is what can not be printed.
    """
    steps = _decoded(entry).replace("\\", "/").split("/")
    kept = [
        shown
        for step in steps
        if (shown := _printable(step)) not in {"", ".", ".."} and not _is_drive(shown)
    ]
    return "/".join(kept)[-LONGEST:].lstrip("/") or "a file without a name"


def is_hidden(name: str) -> bool:
    """Tell whether a file is one that a system or a word processor keeps for itself."""
    steps = name.split("/")
    last = steps[-1].casefold()
    return (
        any(step.startswith(".") or step == "__MACOSX" for step in steps)
        or last in _SYSTEM
        or last.startswith("~$")
    )


def _decoded(entry: zipfile.ZipInfo) -> str:
    """Return a name as it was meant: many programs write UTF-8 and do not say so."""
    if entry.flag_bits & _UTF8:
        return entry.orig_filename
    raw = entry.orig_filename.encode("cp437")
    if (stated := _stated(entry.extra, raw)) is not None:
        return stated
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError:
        return entry.orig_filename


def _stated(extra: bytes, raw: bytes) -> str | None:
    """Return the name an extra field gives, where it was made for this very name."""
    while len(extra) >= 4:
        kind, size = struct.unpack_from("<HH", extra)
        field, extra = extra[4 : 4 + size], extra[4 + size :]
        if kind == _UNICODE_PATH and len(field) > 5 and field[0] == 1:
            fits = struct.unpack_from("<L", field, 1)[0] == zlib.crc32(raw)
            return field[5:].decode("utf-8", errors="replace") if fits else None
    return None


def _printable(step: str) -> str:
    return "".join(letter if letter.isprintable() else " " for letter in step).strip()


def _is_drive(step: str) -> bool:
    return len(step) == 2 and step[1] == ":" and step[0].isalpha()
