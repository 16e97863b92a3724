"""Which words of a quotation are left out, and which part of it is asked by heart."""

from dataclasses import dataclass

from cards.kinds.base import Occasion
from cards.kinds.lots import one_from_each
from cards.kinds.wording import wording
from cards.kinds.words import Token, content_words, stems
from cards.parts import KeptDigest, Part

FEWEST_WORDS = 6
"""Words of a quotation below which there is no context to complete it from."""
LONGEST_BY_HEART = 60
"""Words of a quotation that may be asked by heart: half a minute's speech."""
SHOWN = 3
"""Words that begin a quotation asked by heart."""
_MOST_LEFT_OUT = 20
"""Words left out at once, however long the quotation is: each must be typed."""
_LEFT_OUT = ((2, 7), (4, 5))
"""Below so many answers, one word in so many is left out. Cloze procedure leaves out every
fifth (Taylor 1953; every seventh is in use too): reference, part 4."""
_LATER = 3
"""Once a quotation is known better, one word in so many is left out."""


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A quotation with words left out.

    Attributes:
        words: where they stand in it, in order.
        pieces: the text around them, one piece more.
    """

    words: tuple[tuple[int, int], ...]
    pieces: tuple[str, ...]


def can_be_completed(digest: KeptDigest, part: Part) -> bool:
    """Tell whether a quotation is long enough and has a word that can be left out."""
    return len(wording(part.text)) >= FEWEST_WORDS and bool(_candidates(digest, part))


def left_out(occasion: Occasion) -> LeftOut:
    """Leave out content words of a quotation, more the better it is known, others each time."""
    text = occasion.part.text
    candidates = _candidates(occasion.digest, occasion.part)
    one_in = next((each for below, each in _LEFT_OUT if occasion.asked < below), _LATER)
    count = min(max(1, len(wording(text)) // one_in), _MOST_LEFT_OUT)
    chosen = one_from_each(occasion, candidates, count)
    words = tuple((token.start, token.end) for token in chosen)
    begins = (0, *(end for _, end in words))
    ends = (*(start for start, _ in words), len(text))
    return LeftOut(words, tuple(text[a:b] for a, b in zip(begins, ends, strict=True)))


def by_heart(occasion: Occasion) -> str | None:
    """Return the words that begin a quotation to be given by heart, or None if it is not.

    It is when it is held and not long, unless what is shown holds half of the rest's words.
    """
    text, digest = occasion.part.text, occasion.digest
    words = wording(text)
    if not occasion.held or not FEWEST_WORDS <= len(words) <= LONGEST_BY_HEART:
        return None
    end = words[SHOWN - 1].end
    rest = stems(text[end:])
    known = stems(f"{text[:end]} {digest.title} {digest.author or ''}")
    return text[:end] if 2 * len(rest & known) < len(rest) else None


def _candidates(digest: KeptDigest, part: Part) -> tuple[Token, ...]:
    """Return the words that may be left out: whole words that the cue holds nowhere else."""
    text = part.text
    tokens = content_words(text)
    times: dict[str, int] = {}
    for token in tokens:
        times[token.stem] = times.get(token.stem, 0) + 1
    known = stems(f"{digest.title} {digest.author or ''}")
    plain = {(word.start, word.end): word.folded for word in wording(text)}
    folded: dict[str, int] = {}
    for word in plain.values():
        folded[word] = folded.get(word, 0) + 1
    return tuple(
        token
        for token in tokens
        if times[token.stem] == 1
        and token.stem not in known
        and folded.get(plain.get((token.start, token.end), ""), 0) == 1
    )
