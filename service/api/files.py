"""Files on their way in and out: their names are other people's, and go no further unchecked."""

from pathlib import PurePosixPath, PureWindowsPath
from urllib.parse import quote

_LONGEST_NAME = 200


def bare_name(name: str) -> str:
    """Return a file's name without folders and unprintable characters, "" when none is left.

    Of a longer one the last 200 characters, which hold the ending.
    """
    last = PureWindowsPath(PurePosixPath(name).name).name
    return "".join(letter for letter in last if letter.isprintable()).strip()[-_LONGEST_NAME:]


def shown_path(name: str) -> str:
    """Return a file's name with the folders it stood in, fit to be shown: never a path on disk.

    Of a longer one the last 200 characters; "digest" when none is left.
    """
    steps = (bare_name(step) for step in name.replace("\\", "/").split("/"))
    kept = "/".join(step for step in steps if step not in {"", ".", ".."})
    return kept[-_LONGEST_NAME:] or "digest"


def attachment(name: str) -> str:
    """Return a Content-Disposition under which a browser saves a file and never shows it.

    The name stands twice (RFC 6266): in ASCII, and as it is (RFC 8187).
    """
    plain = "".join(
        letter if letter.isascii() and (letter.isalnum() or letter in " ._-") else "_"
        for letter in bare_name(name)
    )
    exact = quote(bare_name(name), safe="", errors="replace")
    return f"attachment; filename=\"{plain or 'digest'}\"; filename*=UTF-8''{exact or 'digest'}"
