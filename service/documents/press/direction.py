"""Which way a paragraph runs."""

import unicodedata

_LEFTWARD = frozenset({"R", "AL"})


def runs_to_the_left(text: str) -> bool:
    """Tell whether the first letter of a text runs to the left (Unicode annex 9, rule P2)."""
    for letter in text:
        direction = unicodedata.bidirectional(letter)
        if direction == "L" or direction in _LEFTWARD:
            return direction in _LEFTWARD
    return False
