"""Which format a file has: what its bytes say first, its name only where they leave it open."""

from enum import StrEnum
from pathlib import PurePosixPath

from cards.errors import DocumentBroken, DocumentLocked, DocumentUnsupported


class Format(StrEnum):
    """A format Catchword reads."""

    DOCX = "Word (.docx)"
    ODT = "OpenDocument (.odt)"
    RTF = "RTF"
    HTML = "HTML"
    MARKDOWN = "Markdown"
    PLAIN = "plain text"
    JSON = "JSON"


READABLE = ".docx, .odt, .rtf, .html, .md or .txt"
"""The endings a reader is told to save as."""

ZIPPED = frozenset({Format.DOCX, Format.ODT})
"""The formats whose files are zip archives."""

_BY_SUFFIX = {
    ".docx": Format.DOCX,
    ".odt": Format.ODT,
    ".rtf": Format.RTF,
    ".html": Format.HTML,
    ".htm": Format.HTML,
    ".xhtml": Format.HTML,
    ".md": Format.MARKDOWN,
    ".markdown": Format.MARKDOWN,
    ".txt": Format.PLAIN,
    ".text": Format.PLAIN,
    ".json": Format.JSON,
    "": Format.PLAIN,
}
_PICTURES = {
    b"\x89PNG\r\n\x1a\n": "PNG",
    b"\xff\xd8\xff": "JPEG",
    b"GIF87a": "GIF",
    b"GIF89a": "GIF",
    b"II*\x00": "TIFF",
    b"MM\x00*": "TIFF",
    b"BM": "BMP",
}
_OLE = bytes.fromhex("d0cf11e0a1b11ae1")
_ZIP_OPENINGS = (b"PK\x03\x04", b"PK\x05\x06")
_OLD_WORD = frozenset({".doc", ".dot", ".xls", ".ppt"})
_HEAD = 4096


def format_of(name: str, content: bytes) -> Format:
    """Return the format of a file from its opening bytes and its name.

    A zip archive is only told apart from other files here; which of the two
    zipped formats it holds, `archives` says.

    Raises:
        DocumentLocked: it is protected by a password.
        DocumentBroken: it is not what its name says.
        DocumentUnsupported: it is of a format that is not read.
    """
    suffix = PurePosixPath(name).suffix.lower()
    named = _BY_SUFFIX.get(suffix)
    if content.startswith(_OLE):
        raise _compound(name, suffix, content)
    if (picture := _picture(content)) is not None:
        raise _other(name, named, f"a picture ({picture})", "Hand over the digest itself")
    if content.startswith(b"%PDF"):
        raise _other(name, named, "a PDF", "Hand over the document it was printed from")
    if content.startswith(_ZIP_OPENINGS):
        return named if named in ZIPPED else Format.DOCX
    if content.lstrip(b"\xef\xbb\xbf \t\r\n").startswith(b"{\\rtf"):
        return Format.RTF
    if named is None:
        raise DocumentUnsupported(
            f"“{name}” is of a kind Catchword does not read. Save the digest as {READABLE}.",
            where="file",
        )
    if named in ZIPPED or named is Format.RTF:
        raise DocumentBroken(
            f"“{name}” is not {_article(named)} document, whatever its name says, or its beginning "
            "is damaged. Open it in the program it was written with and save it again.",
            where="file",
        )
    if named is Format.PLAIN and _looks_like_html(content):
        return Format.HTML
    return named


def _picture(content: bytes) -> str | None:
    for opening, kind in _PICTURES.items():
        if content.startswith(opening) and (kind != "BMP" or content[6:10] == b"\x00" * 4):
            return kind
    if content[:4] == b"RIFF" and content[8:12] == b"WEBP":
        return "WebP"
    if content[4:12] in {b"ftypheic", b"ftypheix", b"ftypmif1", b"ftypavif"}:
        return "HEIF"
    return None


def _looks_like_html(content: bytes) -> bool:
    opening = content[:_HEAD].lstrip(b"\xef\xbb\xbf \t\r\n").lower()
    return opening.startswith((b"<!doctype html", b"<html"))


def _compound(name: str, suffix: str, content: bytes) -> DocumentLocked | DocumentUnsupported:
    """Say which of its uses an OLE compound file was put to."""
    if "EncryptedPackage".encode("utf-16-le") in content:
        return DocumentLocked(
            f"“{name}” is protected by a password. Open it, take the password off, save it, and "
            "hand it over again.",
            where="file",
        )
    if suffix in _OLD_WORD or "WordDocument".encode("utf-16-le") in content:
        return DocumentUnsupported(
            f"“{name}” is in the old Word format (.doc). Open it and save it as .docx.",
            where="file",
        )
    return DocumentLocked(
        f"“{name}” is protected by a password, or is an old Word document (.doc) under another "
        "name. Open it, take the password off, and save it as .docx.",
        where="file",
    )


def _other(
    name: str, named: Format | None, found: str, advice: str
) -> DocumentBroken | DocumentUnsupported:
    if named is not None:
        return DocumentBroken(
            f"“{name}” is {found}, not {_article(named)} document. {advice}, as {READABLE}.",
            where="file",
        )
    return DocumentUnsupported(
        f"“{name}” is {found}, which Catchword does not read. {advice}, as {READABLE}.",
        where="file",
    )


def _article(named: Format) -> str:
    article = "an" if named in {Format.ODT, Format.RTF, Format.HTML} else "a"
    return f"{article} {named.value}"
