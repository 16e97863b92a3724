"""Several parts or hours of one day: "morning and night", "at nine and at five"."""

import re

from cards.wording.line import Line, words

_PART = r"(?:morning|noon|midday|afternoon|evening|night|bedtime|dawn|dusk)"
_EACH = r"(?:(?:in the |at )?(?:each |every |the )?)"
_JOIN = r" ?(?:,|and|, and) "
_MEAL = r"(?:breakfast|lunch|dinner|supper|tea|bed|bedtime|waking|rising|noon|midday|dawn|dusk)"
_AT = r"(?:at|before|after|with|on|over) "
PARTS_OF_A_DAY = words(
    rf"{_AT}{_MEAL}(?:{_JOIN}(?:again )?{_AT}{_MEAL}){{1,3}}|before and after {_MEAL}|"
    rf"{_EACH}{_PART}s?(?: ~)?(?:{_JOIN}{_EACH}{_PART}s?){{1,3}}"
    r"(?! (?:prayers?|office|news|papers?|service|tea|coffee|shifts?|meal|walk)(?!\S))"
)
"""Pattern of two parts of the day or more, in which something is to be done."""
_ONE = re.compile(rf"(?<!\S)(?:{_PART}s?|{_MEAL})(?!\S)")
_HOUR = r"(?:@|noon|midday|midnight|\d{1,2}(?: oclock)?)"
_HOURS = words(
    rf"(?:at )?{_HOUR}(?:{_JOIN}(?:again )?(?:at )?{_HOUR}){{1,3}}"
    r"(?! (?:minutes|hours|times|past|to))"
)


def parts_in(said: str) -> int:
    """Return how many parts of the day a stretch of a line names."""
    return max(2, len(_ONE.findall(said)))


def hours_named(line: Line) -> int:
    """Return how many times of the clock a line names side by side, 1 when it does not.

    The first must be told as one: "at nine and at five", "8 a.m. and 8 p.m.".
    """
    for found in _HOURS.finditer(line.left):
        if found[0].startswith(("at ", "@")):
            return len(re.findall(rf"(?<!\S){_HOUR}(?!\S)", found[0]))
    return 1
