"""What a commitment does and what it leaves for it: "walk instead of driving"."""

import re
from dataclasses import dataclass

from cards.kinds.attempted import Attempted
from cards.kinds.words import content_words, fold_word, negated

_LEFT_FOR_IT = re.compile(
    r"(?<!\S)(?:instead of|rather than|in place of) ((?:(?!(?:i|we|on|at|by|in|every|each|for|from"
    r"|until|through|during|when|before|after)(?!\S))[^\s,;:.~]+(?: |$))+)"
)


@dataclass(frozen=True, slots=True)
class _Choice:
    done: str
    left: str


def is_exchanged(commitment: str, attempt: str) -> bool:
    """Tell whether an attempt does what was to be left, for what was to be done.

    Args:
        commitment: its words, plain.
        attempt: those of the attempt, plain; where it leaves nothing for another thing, it must
            do what was to be left and hold nothing that was to be done in its place.
    """
    ours, theirs = _choice(commitment), _choice(attempt)
    if not ours.left:
        return False
    done, left = Attempted(theirs.done), Attempted(theirs.left)
    if not theirs.left:
        first = _content(ours.done)[:1]
        does_it = _share(ours.left, done) == 1 and not negated(attempt)
        return does_it and not any(map(done.holds, first))
    kept = _share(ours.left, left) + _share(theirs.left, Attempted(ours.left))
    crossed = _share(ours.left, done) + _share(theirs.left, Attempted(ours.done))
    return crossed > kept


def _choice(line: str) -> _Choice:
    left = " ".join(_LEFT_FOR_IT.findall(line))
    return _Choice(_LEFT_FOR_IT.sub(" ", line), left)


def _content(text: str) -> list[str]:
    return [fold_word(text[token.start : token.end]) for token in content_words(text)]


def _share(wanted: str, words: Attempted) -> float:
    said = _content(wanted)
    return sum(map(words.holds, said)) / max(1, len(said))
