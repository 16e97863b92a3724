"""Words that a spreadsheet would take for a formula, written so that it takes them for words.

Source: OWASP, "CSV Injection" (from memory): a cell that begins with =, +, -, @, a tab, a
carriage return or a line feed, or their full-width forms, can be run as a formula; an apostrophe
before it makes it text. What spreadsheets skip before they look, spaces and quotation marks, is
skipped here too, and with them all that takes no room on a line: who strips the one from a cell
strips the other.
"""

from unicodedata import category

_ARMED = frozenset("=+-@\t\r\n＝＋－＠")
_UNSEEN = frozenset({"Cc", "Cf", "Zs", "Zl", "Zp"})
_SKIPPED = "\"'\ufeff" + "".join(
    letter
    for letter in map(chr, range(0x3001))
    if category(letter) in _UNSEEN and letter not in _ARMED
)


def disarmed(words: str) -> str:
    """Return words that no spreadsheet runs: as they are, or with an apostrophe before them."""
    if words[:1].isalnum():
        return words
    inner = words.lstrip(_SKIPPED)
    return f"'{words}" if inner[:1] in _ARMED and inner else words
