"""Days and spans told in words, relative to a day: "the 30th", "next Monday", "Easter".

Every phrase names a span with a first and a last day, so that "by" reaches its last day
and "before" stops short of its first: "by Friday" includes Friday, "before June" ends with
May. A bare weekday or date is the next one, after today; a span that is not over yet
("June", "this month") is the present one.
"""

import re
from datetime import date

from cards.wording.named_spans import NAMED_SPANS
from cards.wording.single_days import SINGLE_DAYS
from cards.wording.spans import Span

_READERS = (*SINGLE_DAYS, *NAMED_SPANS)
DATE = "(?:" + re.sub(r"\?P<\w+>", "?:", "|".join(pattern for pattern, _ in _READERS)) + ")"
"""Pattern of every phrase `day_or_span` reads, to be put into a larger one of `line.words`."""
_COMPILED = tuple((re.compile(pattern), reader) for pattern, reader in _READERS)


def day_or_span(phrase: str, on: date) -> Span | None:
    """Return the span a phrase of a line names, seen from a day; None for none."""
    for pattern, reader in _COMPILED:
        found = pattern.fullmatch(phrase)
        if found is not None:
            try:
                return reader(found, on)
            except (OverflowError, ValueError):
                return None
    return None
