"""The situation a commitment is for: what may be said of it without saying it."""

import re
from collections import Counter
from dataclasses import dataclass

from cards.kinds.words import NEGATIONS, content_words, fold_word, numbers, stems

_OPENERS = (
    "when|whenever|if|after|before|while|as soon as|every time|each time|on waking|"
    "at the end of|at the start of|in the middle of|during|at|on|over"
)
_LEADING = re.compile(
    rf"^\s*(?P<when>(?:{_OPENERS})\s[^,;:.]{{2,80}}),\s*(?P<act>\S.*)$", re.IGNORECASE | re.DOTALL
)
_TRAILING = re.compile(
    r"^(?P<act>.*?\S),?\s+(?P<when>(?:when|whenever|after|before|while|as soon as)"
    r"\s[^,;:.]{2,80}?)[.;!]?\s*$",
    re.IGNORECASE | re.DOTALL,
)
_KIN = (
    "mother|father|parents?|brother|sister|son|daughter|children|child|wife|husband|partner|aunt|"
    "uncle|grandmother|grandfather|neighbours?|neighbors?|friends?|colleagues?|household|family|"
    "boss|teacher|students?|pupils?"
)
_TO_WHOM = re.compile(
    rf"\b(?i:to|with|for|ask|tell|thank|call|ring|telephone|phone|visit|meet|see|help|invite|write|"
    rf"greet|forgive|show|give|pay)\s+"
    rf"(?P<whom>(?:my|our|the)\s+(?:\w+\s+)?(?:{_KIN})\b|[A-Z][^\W\d_]+(?:\s[A-Z][^\W\d_]+)?)"
)
_POINT = re.compile(r"\(\s*(?:from |see )?point (?P<number>\d{1,3})\s*\)", re.IGNORECASE)
_PROMISE = re.compile(r"\bI(?:['’]ll|\s+(?:will|shall|am going to))\b", re.IGNORECASE)
_CADENCES = frozenset({"each", "every", "daily", "weekly", "monthly", "yearly"})
_NOT_NAMES = frozenset(
    """monday tuesday wednesday thursday friday saturday sunday january february march april
    may june july august september october november december easter christmas i""".split()
)


@dataclass(frozen=True, slots=True)
class Situation:
    """When, or to whom, a commitment applies, or the point it came from.

    Attributes:
        words: a phrase free of the commitment's action and numbers, or "".
        point: the number of the point the commitment names as its origin, or None.
    """

    words: str = ""
    point: int | None = None


def situation(text: str) -> Situation:
    """Read the situation from a commitment's own words; empty when they name none.

    A phrase is used only when it holds no number, no negation and no content word of
    the rest of the commitment, so that it cannot give the action away.
    """
    named = _POINT.search(text)
    point = int(named["number"]) if named else None
    bare = _POINT.sub("", text).strip()
    # A person says more of a situation than a clause that trails after the act.
    phrases = [_when(bare, _LEADING), _whom(bare), _when(bare, _TRAILING)]
    return Situation(next((phrase for phrase in phrases if phrase), ""), point)


def _when(text: str, shape: re.Pattern[str]) -> str:
    found = shape.match(text)
    if found is None or not _keeps_secret(found["when"], found["act"]):
        return ""
    when = found["when"].strip()
    return when[0].upper() + when[1:] + ", …"


def _whom(text: str) -> str:
    # Words are counted once: cutting each name out of a text full of names takes minutes.
    told = Counter(token.stem for token in content_words(text))
    for found in _TO_WHOM.finditer(text):
        whom = found["whom"]
        own = Counter(token.stem for token in content_words(whom))
        if (
            whom.casefold() not in _NOT_NAMES
            and own.total() < told.total()
            and all(told[stem] == times for stem, times in own.items())
            and _tells_nothing(whom)
        ):
            return f"Concerning {whom}"
    return ""


def _keeps_secret(phrase: str, rest: str) -> bool:
    return (
        _tells_nothing(phrase)
        and bool(content_words(rest))
        and stems(phrase).isdisjoint(stems(rest))
    )


def _tells_nothing(phrase: str) -> bool:
    """Tell whether a phrase is free of numbers, cadences, negations and the promise itself."""
    words = {fold_word(word) for word in phrase.split()}
    return (
        not numbers(phrase)
        and words.isdisjoint(NEGATIONS | _CADENCES)
        and not _PROMISE.search(phrase)
    )
