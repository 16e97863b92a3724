"""How an archive is laid out: its files, what each may weigh, and the version of all this."""

import re

FORMAT = "catchword archive"
VERSION = 1
"""Of the layout. What the facts are made of is told by the revision of their store."""
README = "README.md"
FIELDS = "facts/README.md"
MANIFEST = "manifest.json"

MAX_ENTRIES = 50_000
"""Files in one archive: two a digest and one a sort of facts, for twenty thousand books."""
MAX_UNPACKED = 32 * 1024**3
"""Bytes it unpacks to: a hundred million answers."""
ALLOWED, MAX_RATIO = 256 * 1024**2, 200
"""Bytes an archive may unpack to whatever it weighs, and bytes for each of its own beyond that."""
MAX_DIRECTORY = 16 * 1024**2
"""Bytes of the directory at an archive's end, which is read whole: 300 for each of its files."""
MAX_MANIFEST = 16 * 1024**2
MAX_LINE = 32 * 1024**2
"""Bytes of one fact. The longest is a version or a draft of a digest at all its bounds."""
MAX_CONTENT = 64 * 1024**2
"""Bytes of one original, which is held in memory; documents are bounded at a third of it."""

EPOCH = (1980, 1, 1, 0, 0, 0)
"""When every file was changed, as far as the archive tells: the first instant a zip can name."""
_LONGEST_NAME = 100
"""Bytes of a file's name, without what is put before and after it; file systems allow 255."""
_NAME = re.compile(
    r"README\.md|manifest\.json|facts/README\.md|facts/[a-z_]{1,60}\.jsonl"
    r"|(digests|originals|draft-files)/[^/\\\x00-\x1f\x7f]{1,255}"
)


def facts_path(table: str) -> str:
    """Return where the facts of one sort stand."""
    return f"facts/{table}.jsonl"


def digest_path(number: int, stem: str) -> str:
    """Return where a digest stands in Markdown, by its number in the library."""
    return f"digests/{number:04}-{_short(stem)}.md"


def file_path(table: str, sha256: str, name: str) -> str:
    """Return where the bytes of a file stand: under its own name, harmless, and its hash."""
    folder = "originals" if table == "originals" else "draft-files"
    stem, dot, ending = name.rpartition(".")
    plain = re.sub(r"[^\w-]+", "-", stem if dot else name).strip("-")
    kind = re.sub(r"[^A-Za-z0-9]", "", ending)[:8] if dot else ""
    return f"{folder}/{_short(plain or 'file')}-{sha256}{f'.{kind}' if kind else ''}"


def is_known(path: str) -> bool:
    """Tell whether a file may stand at this path in an archive."""
    return _NAME.fullmatch(path) is not None and ".." not in path.split("/")


def _short(name: str) -> str:
    return name.encode()[:_LONGEST_NAME].decode(errors="ignore")
