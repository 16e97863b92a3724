r"""RTF made ready for pandoc, whose reader loses words after `\u8220?`.

RTF writes a character outside its code page as `\uN` and a stand-in for old
programs. Where the stand-in is a bare character, pandoc 3.9 skips the words
that follow as well; written as `\'hh` it skips the stand-in alone.
"""

import re

_TOKEN = re.compile(
    rb"[{}]|\\bin(?P<bin>\d{1,9}) ?|\\uc(?P<uc>\d{1,2}) ?"
    rb"|\\u(?P<u>-?\d{1,6})(?P<space> ?)(?P<after>[^\\{}\r\n])?|\\[a-zA-Z]+|\\."
)

_TAB = re.compile(rb"\\tab(?![a-zA-Z0-9]) ?")
_PICTURE = re.compile(rb"[0-9a-fA-F\r\n]{4000,}")
"""A run of hexadecimal digits longer than any paragraph is a picture's data."""


def without_pictures(content: bytes) -> bytes:
    """Return RTF without the data of its pictures, which would fill pandoc's memory."""
    return _PICTURE.sub(b"", content)


def with_notes_kept(content: bytes) -> bytes:
    """Return RTF whose footnotes are not marked as something old programs may pass over."""
    return content.replace(rb"{\*\footnote", rb"{\footnote")


def with_tabs_kept(content: bytes) -> bytes:
    """Return RTF whose tabs are the character that stands for one, which pandoc lets through."""
    return _TAB.sub(rb"{\\uc0\\u-8190 }", content)


def with_escaped_stand_ins(content: bytes) -> bytes:
    """Return RTF in which every stand-in is an escape, and means what it meant."""
    written: list[bytes] = []
    skips = [1]
    position = 0
    while (found := _TOKEN.search(content, position)) is not None:
        written.append(content[position : found.start()])
        position = found.end()
        token = found[0]
        if token == b"{":
            skips.append(skips[-1])
        elif token == b"}":
            if len(skips) > 1:
                skips.pop()
        elif found["uc"] is not None:
            skips[-1] = int(found["uc"])
        elif found["bin"] is not None:
            position = min(position + int(found["bin"]), len(content))
            token = b""
        elif found["after"] is not None and skips[-1] == 1:
            token = b"\\u" + found["u"] + b"\\'%02x" % found["after"][0]
        written.append(token)
    written.append(content[position:])
    return b"".join(written)
