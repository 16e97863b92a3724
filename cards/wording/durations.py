"""Times of the clock, and how long a deed lasts, in minutes."""

import re
from collections.abc import Callable

from cards.wording.line import Line, words
from cards.wording.spans import MONTHS

_PREPOSITIONS = "at|by|before|after|until|from|around|about|past|to|between|and|since|towards"
_PART_OF_DAY = r"(?: (?:in the (?:morning|afternoon|evening)|at night|sharp))?"
_DATES = rf"(?:from )?\d{{1,2}} to \d{{1,2}} (?:{'|'.join(MONTHS)})"
"""Days of a month from one to another, which are no hours: "from 1 to 24 December"."""
_CLOCK = (
    words(
        rf"(?!{_DATES})(?:(?:{_PREPOSITIONS}) )?"
        r"(?:half|quarter|a quarter|\d+(?: minutes)?) (?:past|to) "
        rf"(?:\d{{1,2}}|noon|midnight)(?: oclock)?{_PART_OF_DAY}"
    ),
    words(rf"(?:(?:{_PREPOSITIONS}) )?half \d{{1,2}}{_PART_OF_DAY}(?= |$)(?! (?:a|an|dozen))"),
    words(rf"(?:(?:{_PREPOSITIONS}) )?(?:@|\d{{1,2}} (?:oclock|[ap] ?m))(?: and @)?{_PART_OF_DAY}"),
    words(
        r"between \d{1,2} and \d{1,2}(?: oclock)?"
        + _PART_OF_DAY
        + r"(?! (?:minutes|hours|times|days|weeks|pages|people))"
    ),
    words(
        rf"(?!{_DATES})"
        rf"(?:at|by|before|after|until|from|around|past) \d{{1,2}}(?:\.\d\d)?(?: "
        rf"\d\d)?{_PART_OF_DAY}"
        r"(?= (?:[.,;:!?()~]|each|every|on|and|at|in|daily|with|to|until|for|i|when"
        r"|for|the next|next|tomorrow|today|this|tonight"
        r"|monday|tuesday|wednesday|thursday|friday|saturday|sunday"
        r"|mondays|tuesdays|wednesdays|thursdays|fridays|saturdays|sundays)(?!\S)|$)"
    ),
    words(
        r"(?:at|by|before|after|until) (?:noon|midday|midnight|sunrise|sunset|dusk|dawn|nightfall)"
    ),
)
_LEAD = (
    r"(?:(?P<lead>for|within|after|in|under|than|least|most|only|every|each|wait|spend|exactly)"
    r" )?(?:(?:the|a|an|full|about|some|least|at least|at most|up to|only|just"
    r"|another|the first|a full|a whole|no more than) ){0,4}"
)
_OFFSET = (
    r"(?= (?:before|after|earlier|later|of (?:waking|getting|rising|coming"
    r"|arriving|reading|receiving|my)|ago|from now|early|late)(?!\S))"
)
_SHAPES: tuple[tuple[str, Callable[[re.Match[str]], int]], ...] = (
    (r"(?P<n>\d+) (?:and a half|1 half) hours?", lambda f: int(f["n"]) * 60 + 30),
    (r"(?:an|1|a) (?:hour and a half|and a half hours?)", lambda _: 90),
    (r"(?:an|1|a) hour and (?:a quarter)", lambda _: 75),
    (r"(?P<n>\d+) hours? and (?P<m>\d+) minutes?", lambda f: int(f["n"]) * 60 + int(f["m"])),
    (r"(?:an|1|a) hour and (?P<m>\d+) minutes?", lambda f: 60 + int(f["m"])),
    (r"(?:3|three) quarters of an hour|3 quarter hours?", lambda _: 45),
    (r"(?:a )?quarter (?:of an hour|hour)", lambda _: 15),
    (r"half (?:an|a|1) hour|half hour", lambda _: 30),
    (r"(?P<d>\d+\.\d+) hours?", lambda f: round(float(f["d"]) * 60)),
    (
        (
            r"(?P<n>\d{1,4}) (?:more )?(?:quiet |whole |full |good |silent "
            r"|uninterrupted |unbroken )?minutes?"
        ),
        lambda f: int(f["n"]),
    ),
    (
        (
            r"(?P<n>\d{1,3}) (?:more )?(?:quiet |whole |full |good |silent "
            r"|uninterrupted |unbroken )?hours?"
        ),
        lambda f: int(f["n"]) * 60,
    ),
    (r"(?:an|1|a) (?:\w+ )?hour(?: long)?", lambda _: 60),
    (r"(?:a|1) minute", lambda _: 1),
    (r"(?P<s>\d{2,4}) seconds", lambda f: int(f["s"]) // 60),
)
_COMPILED = tuple(
    (re.compile(rf"(?<!\S){_LEAD}(?:{shape})(?!\S)(?P<off>{_OFFSET})?"), value)
    for shape, value in _SHAPES
)
_LONGEST = 12 * 60
"""Minutes one deed can last: what is longer ("for 24 hours") is a term, not a deed."""
_NOT_A_LENGTH = frozenset({"within", "after", "in"})


def take_clock(line: Line) -> bool:
    """Take every time of the clock from a line; tell whether there was any."""
    found = False
    for pattern in _CLOCK:
        for _ in range(4):
            if line.take(pattern) is None:
                break
            found = True
    return found


def take_minutes(line: Line) -> int | None:
    """Take how long a deed lasts from a line, in whole minutes; None when it does not say.

    "Ten minutes before bed" is a time of day and no length, unless "for" stands before it.
    """
    for pattern, value in _COMPILED:
        for found in pattern.finditer(line.left):
            lead = found["lead"]
            bounded = lead in {"within", "in"} and value(found) >= _LONGEST
            if lead in {"every", "each"} or bounded:
                continue
            offset = found["off"] is not None and lead not in {"for", "spend", "wait"}
            if lead in _NOT_A_LENGTH or offset:
                line.left = _gapped(line.left, found)
                return take_minutes(line) if offset or lead in _NOT_A_LENGTH else None
            minutes = value(found)
            if not 1 <= minutes <= _LONGEST:
                continue
            line.left = _gapped(line.left, found)
            return minutes
    return None


def _gapped(left: str, found: re.Match[str]) -> str:
    return f"{left[: found.start()]}~{left[found.end() :]}"
