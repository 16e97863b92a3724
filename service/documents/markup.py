"""The words of a stretch of HTML that someone typed into Markdown."""

import re
from html import unescape

_UNSEEN = re.compile(
    r"<!--.*?(?:-->|\Z)|<(script|style|iframe|object|template|head)\b.*?(?:</\1\s*>|\Z)",
    re.IGNORECASE | re.DOTALL,
)
_PARTING = re.compile(
    r"</?(?:p|div|h[1-6]|li|ul|ol|tr|table|blockquote|section|article|details|summary|dt|dd|td|th|caption)\b"
    r"[^<>]*>",
    re.IGNORECASE,
)
_BREAK = re.compile(r"<br\b[^<>]*>", re.IGNORECASE)
_TAG = re.compile(r"</?[a-zA-Z!?][^<>]*>")


def words_of_markup(markup: str) -> str:
    """Return the words a browser would show, paragraphs parted by an empty line."""
    shown = _PARTING.sub("\n\n", " ".join(_UNSEEN.sub(" ", markup).split()))
    return unescape(_TAG.sub("", _BREAK.sub("\n", shown)))
