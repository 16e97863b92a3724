"""The encoding a text is in: what its bytes are, whatever it says of itself."""

import codecs
import re

_BOMS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF32_LE, "utf-32-le"),
    (codecs.BOM_UTF32_BE, "utf-32-be"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)
_DECLARED = re.compile(
    rb"""<meta[^<>]{0,200}?charset\s*=\s*["']?\s*([\w.:-]{1,40})"""
    rb"""|<\?xml[^<>]{0,100}?encoding\s*=\s*["']([\w.:-]{1,40})""",
    re.IGNORECASE,
)
_KNOWN = re.compile(
    r"(windows-?|cp)(?!1252)12\d\d|(cp|ibm)8\d\d|iso-?8859-?([2-9]|1\d)|koi8-[ru]|tis-620"
    r"|shift_?jis|euc-(jp|kr)|gb(k|2312|18030)|big5|mac(intosh|_?roman)?",
    re.IGNORECASE,
)
_HEAD = 4096
"""Bytes in which a page declares its encoding; HTML asks for the first 1024."""
_PADDING = b"\x00" * 4
"""What a file ends with that a crash or a download left too long."""
_HIGH = re.compile("[^\x00-\x7f]")
MAX_SLIPS = 20
"""One byte out of place in so many characters beyond ASCII leaves a text UTF-8."""


def decoded_text(content: bytes) -> str:
    """Return the text of bytes.

    By a byte order mark; UTF-16 by where its zero bytes stand; UTF-8 where the bytes are
    UTF-8, or are but for a few, whatever was declared; else as declared, when that can be;
    else Windows-1252, which is what old Western texts are in. What can not be read stands
    as U+FFFD.
    """
    for mark, encoding in _BOMS:
        if content.startswith(mark):
            return content[len(mark) :].decode(encoding, errors="replace")
    if content.endswith(_PADDING):
        content = content.rstrip(b"\x00") + b"\x00" * (len(content.rstrip(b"\x00")) % 2)
    if (wide := _wide(content)) is not None:
        return content.decode(wide, errors="replace")
    if (text := _utf8(content)) is not None:
        return text
    for encoding in _declared(content):
        try:
            return content.decode(encoding)
        except (UnicodeDecodeError, LookupError):
            continue
    return content.decode("cp1252", errors="replace")


def _wide(content: bytes) -> str | None:
    """Return which UTF-16 the bytes are in without a mark, or None.

    In text that ends its lines every new line has a zero byte, always on the same side.
    """
    zeros = content.count(0)
    if zeros == 0 or len(content) % 2:
        return None
    first = content[::2].count(0)
    one_sided = min(first, zeros - first) * 4 <= zeros
    if not one_sided or (zeros * 5 < len(content) and _utf8(content) is not None):
        return None
    encoding = "utf-16-be" if first * 2 > zeros else "utf-16-le"
    text = content.decode(encoding, errors="replace")
    readable = sum(letter.isprintable() or letter.isspace() for letter in text)
    return encoding if readable * 20 >= len(text) * 19 else None


def _utf8(content: bytes) -> str | None:
    """Return bytes as UTF-8, or None where too many of them are something else.

    Halves of characters, each written as a character, are joined where they fit.
    """
    try:
        text = content.decode("utf-8", errors="surrogatepass")
        return text.encode("utf-16", errors="surrogatepass").decode("utf-16", errors="replace")
    except UnicodeDecodeError:
        text = content.decode("utf-8", errors="replace")
    wrong = text.count("\ufffd")
    return text if len(_HIGH.findall(text)) - wrong >= MAX_SLIPS * wrong else None


def _declared(content: bytes) -> list[str]:
    """Return the encodings a page declares, of those whose plain letters are ASCII.

    `iso-8859-1` and `us-ascii` mean Windows-1252 (WHATWG, Encoding Standard, 4.2).
    """
    said = [found[1] or found[2] for found in _DECLARED.finditer(content[:_HEAD])]
    return [name for each in said if _KNOWN.fullmatch(name := each.decode("ascii", "replace"))]
