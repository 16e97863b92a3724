"""Words that a spreadsheet would take for a formula, written so that it takes them for words.

Source: OWASP, "CSV Injection" (from memory): a cell that begins with =, +, -, @, a tab, a
carriage return or a line feed, or their full-width forms, can be run as a formula; an apostrophe
before it makes it text. What spreadsheets skip before they look, spaces and quotation marks, is
skipped here too.
"""

_ARMED = frozenset("=+-@\t\r\n＝＋－＠")
_SKIPPED = " \u00a0\u3000\ufeff\u200b\"'"


def disarmed(words: str) -> str:
    """Return words that no spreadsheet runs: as they are, or with an apostrophe before them."""
    if words[:1].isalnum():
        return words
    inner = words.lstrip(_SKIPPED)
    return f"'{words}" if inner[:1] in _ARMED and inner else words
