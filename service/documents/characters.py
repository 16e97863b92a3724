"""Characters that are no words: what a program left in a text, taken out on the way in."""

import re

_BREAKS = "\x0b\x0c\x1c\x1d\x1e\x85\u2028\u2029"
"""Breaks of lines, pages and paragraphs that word processors write for a new line."""
_STRANGE = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ud800-\udfff\ufeff\ufffe\uffff]")
_TABLE = {ord(letter): "\n" for letter in _BREAKS}


def cleaned(text: str) -> str:
    """Return text with no control characters but tabs and new lines.

    Every break is a new line; other controls, halves of characters and what is no
    character are left out. Marks of direction stay: right-to-left text needs them.
    """
    if _STRANGE.search(text) is None:
        return text
    return _STRANGE.sub(lambda found: _TABLE.get(ord(found[0]), ""), text.replace("\r\n", "\n"))
