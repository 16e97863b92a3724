"""The same commitment in the shape "When ..., I will ...", in the reader's own words.

The shape is the one that was found to help (Gollwitzer & Sheeran 2006, 94 tests, d = .65).
Nothing the reader wrote is left out: parts change places, and what is missing is marked in
brackets for the reader to fill in. Where health is touched nothing is added to the act
either, so that no rewording can soften it.
"""

import re

from cards.cautions import Matter, matters
from cards.wording.concreteness import act_of
from cards.wording.cues import Cue, Tie
from cards.wording.line import MAX_READ, plain

_PROMISE = re.compile(
    r"(?P<before>^.{0,400}?)(?<!\w)(?:I|We) ?(?:will|shall|'ll|am going to|want "
    r"to|would like to|should|plan to|intend to|"
    r"hope to|aim to|need to|must|ought to|have to|could|promise to|might)(?!\w) (?P<act>.+)$",
    re.IGNORECASE | re.DOTALL,
)
_TRYING = re.compile(
    r"^(?:really )?(?:try|aim|attempt|strive|endeavou?r) (?:to|and) ", re.IGNORECASE
)
_LEAD = re.compile(
    r"^(?P<before>(?:for|until|by|before|from|starting|once|twice|over|during"
    r"|every|each|on|in|at|within|daily|weekly|monthly|this|next|tomorrow|today"
    r"|tonight)\b[^,:]{1,120})[,:] (?P<act>.+)$",
    re.IGNORECASE | re.DOTALL,
)
_SEEN = "[what someone would see you do]"
_MOMENT = "[a moment of your day]"
_MEASURE = "[how often, or by when]"
_WHOM = "[to whom, or where]"
LONGEST = 400
"""Characters of a commitment that is reworded: a longer one wants parting first."""


def reworded(text: str, cue: Cue | None, *, specific: bool, measured: bool) -> str | None:
    """Return the commitment as "When ..., I will ...", or None where that would not serve.

    Args:
        text: the commitment.
        cue: the situation it names, or None.
        specific: whether it says to whom, to what, where or when.
        measured: whether it has a measure.
    """
    said = plain(text)
    health = Matter.HEALTH in matters(text)
    if not said or len(said) > LONGEST or len(said) >= MAX_READ:
        return None
    before, deed = _parts(_without(said, cue))
    if act_of(f"I will {deed}", measured=True).concrete:
        words = [deed, before]
    elif health:
        return None
    else:
        words = [_SEEN, before]
    if not specific and not health:
        words.insert(1, _WHOM)
    if not measured and not health:
        words.append(_MEASURE)
    shaped = f"{_when(cue)}, I will {' '.join(word for word in words if word)}."
    return None if _plain_words(shaped) == _plain_words(said) else shaped


def _when(cue: Cue | None) -> str:
    if cue is None:
        return f"When {_MOMENT}"
    words = cue.words
    if cue.tie is not Tie.TIME:
        words = re.sub(
            r"^(?:whenever|every time|each time|if)\b", "when", words, flags=re.IGNORECASE
        )
    return words[0].upper() + words[1:]


def _without(said: str, cue: Cue | None) -> str:
    if cue is None:
        return said
    left = f"{said[: cue.start].rstrip()} {said[cue.end :].lstrip(' ,')}"
    return left.strip(" ,")


def _parts(said: str) -> tuple[str, str]:
    """Return what stands before the act, and the act without its promise and full stop."""
    said = said.strip().rstrip(".!").strip()
    found = _PROMISE.match(said) or _LEAD.match(said)
    if found is None:
        return "", _lowered(_TRYING.sub("", said))
    before = found["before"].strip(" ,;:.")
    return _lowered(before), _lowered(_TRYING.sub("", found["act"].strip()))


def _lowered(words: str) -> str:
    first = words.split(" ", maxsplit=1)[0]
    if first in {"I", "I'll", "I'm"} or (len(first) > 1 and first.isupper()):
        return words
    return words[:1].lower() + words[1:]


def _plain_words(words: str) -> list[str]:
    return re.findall(r"\w+", words.casefold())
