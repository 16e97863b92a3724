"""Where a stretch of folded words stands in a folded book: every exact place, or the likest.

An exact place is found by plain search. Failing one, short runs of characters taken from
all along the stretch are searched for as they are: where errors are few some runs are whole
yet, and their places agree on where the stretch would begin. The few beginnings most runs
agree on are then compared in full.
"""

import re
from collections import Counter
from dataclasses import dataclass

from rapidfuzz.distance import Indel
from rapidfuzz.fuzz import partial_ratio_alignment

_UNSPACED = re.compile(
    "[\u0e00-\u0eff\u1000-\u109f\u1780-\u17ff\u3005-\u30ff\u3400-\u4dbf\u4e00-\u9fff]"
)
"""Letters of Thai, Lao, Burmese, Khmer, Japanese and Chinese, whose words no space parts."""
_LOOKED_AT = 20_000_000
"""Characters compared at places where words stand inside others, before they are given up: of one
letter as many as the longest book has, of words of nothing else, ten thousand times over, few."""
MOST_PLACES = 64
"""Exact places that are told apart; words repeated oftener are no quotation."""
_COMMON, _VERY_COMMON = 48, 600
"""Places of a run of characters from which it tells nothing, and is given up: at first, and where
all the runs of a few common words are such."""
_FEW = 60
"""Characters of so few words that all their runs may be common."""
_RUNS, _RUNS_OF_LONG = 40, 24
"""Runs searched for at most, of shorter words and of longer: each costs a pass over the book."""
_LONG = 120
"""Characters from which words are long: their runs are rarer, and more of them are whole."""
_ROUNDS = 8
"""Rounds in which they are searched for, each spread over the whole of the words."""
_AGREED = 4
"""Runs that agree on a beginning, and twice as many as on any other, before no more are asked."""
_BUCKET = 32
"""Characters within which two beginnings are taken for one: what errors add or drop up to there."""
_COMPARED = 6
"""Beginnings compared in full."""
_SHORT = 192
"""Characters up to which a whole stretch is aligned; of a longer one its two ends are."""
_END = 96
"""Characters of such an end."""
_SNAP = 14
"""Characters around an end of the likest stretch in which the end of a word is looked for."""
_LEAST = 10
"""Characters of the shortest stretch looked for by likeness; a shorter one is like too much."""


@dataclass(frozen=True, slots=True)
class Hit:
    """A place in a folded text: from `start` to `end`, and how like it is, 0 to 100."""

    start: int
    end: int
    score: float


def weight(words: str) -> int:
    """Return how many letters of an alphabet words come to: an ideograph counts for three."""
    return len(words) + 2 * len(_UNSPACED.findall(words))


def exact(words: str, text: str, low: int = 0, high: int | None = None) -> list[Hit]:
    """Return the places where words stand exactly, whole, the first `MOST_PLACES` of them."""
    high = len(text) if high is None else min(high, len(text))
    hits: list[Hit] = []
    start = text.find(words, low, high) if words else -1
    left = _LOOKED_AT
    while start >= 0 and len(hits) < MOST_PLACES and left > 0:
        left -= len(words)
        end = start + len(words)
        if _parted(text, start) and _parted(text, end):
            hits.append(Hit(start, end, 100.0))
        start = text.find(words, start + 1, high)
    return hits


def likest(words: str, text: str, low: int = 0, high: int | None = None) -> list[Hit]:
    """Return the places most like the words, best first, none overlapping; at most a few."""
    high = len(text) if high is None else min(high, len(text))
    if len(words) < _LEAST:
        return []
    hits: list[Hit] = []
    for beginning in _beginnings(words, text, low, high):
        hit = _compared(words, text, beginning, (low, high))
        if hit is not None:
            hits.append(hit)
    hits.sort(key=lambda hit: (-hit.score, hit.start))
    kept: list[Hit] = []
    for hit in hits:
        if all(hit.end <= other.start or other.end <= hit.start for other in kept):
            kept.append(hit)
    return kept


def _beginnings(words: str, text: str, low: int, high: int) -> list[int]:
    """Return where the words would begin, by what most of their runs of characters agree on."""
    length = len(words)
    run, runs = (9, _RUNS_OF_LONG) if length > _LONG else (7 if length > 30 else 5, _RUNS)
    last = max(0, length - run)
    offsets = sorted({last * number // runs for number in range(runs + 1)})
    for common in (_COMMON, _VERY_COMMON) if length <= _FEW else (_COMMON,):
        votes: Counter[int] = Counter()
        where: dict[int, int] = {}
        for turn in range(_ROUNDS):
            for offset in offsets[turn::_ROUNDS]:
                for place in _places(words[offset : offset + run], text, (low, high), common):
                    beginning = place - offset
                    votes[beginning // _BUCKET] += 1
                    where.setdefault(beginning // _BUCKET, beginning)
            if _agreed(votes):
                break
        if max(votes.values(), default=0) >= _AGREED:
            break
    # Two neighbouring buckets are one beginning cut in half.
    joined = {bucket: count + votes.get(bucket + 1, 0) for bucket, count in votes.items()}
    best = sorted(joined, key=lambda bucket: (-joined[bucket], bucket))[: 2 * _COMPARED]
    chosen: list[int] = []
    for bucket in best:
        if bucket - 1 not in chosen and bucket + 1 not in chosen:
            chosen.append(bucket)
    return [where[bucket] for bucket in chosen[:_COMPARED]]


def _agreed(votes: Counter[int]) -> bool:
    if not votes:
        return False
    (best, most), *_ = votes.most_common(1)
    other = max((count for bucket, count in votes.items() if abs(bucket - best) > 1), default=0)
    return most >= _AGREED and most >= 2 * other


def _places(run: str, text: str, bounds: tuple[int, int], common: int) -> list[int]:
    low, high = bounds
    places: list[int] = []
    place = text.find(run, low, high)
    while place >= 0:
        places.append(place)
        if len(places) > common:
            return []
        place = text.find(run, place + 1, high)
    return places


def _compared(words: str, text: str, beginning: int, bounds: tuple[int, int]) -> Hit | None:
    low, high = bounds
    slack = _BUCKET + _SNAP + len(words) // 8
    first = max(low, beginning - slack)
    last = min(high, beginning + len(words) + slack)
    if last <= first:
        return None
    if len(words) <= _SHORT:
        start, end = _aligned(words, text, first, last)
    else:
        start, _ = _aligned(words[:_END], text, first, min(last, first + 2 * slack + _END))
        _, end = _aligned(words[-_END:], text, max(start + 1, last - 2 * slack - _END), last)
    if end <= start:
        return None
    start, end = _snapped(words, text, start, end)
    if end <= start:
        return None
    return Hit(start, end, 100 * Indel.normalized_similarity(words, text[start:end]))


def _aligned(words: str, text: str, first: int, last: int) -> tuple[int, int]:
    if last - first <= len(words):
        return first, last
    found = partial_ratio_alignment(words, text[first:last])
    return (first + found.dest_start, first + found.dest_end) if found else (first, first)


def _snapped(words: str, text: str, start: int, end: int) -> tuple[int, int]:
    """Move both ends to the ends of words, those that make the stretch the likest."""
    head, tail = words[:_END], words[-_END:]
    starts = _word_starts(text, start)
    start = max(
        starts,
        key=lambda at: (
            Indel.normalized_similarity(head, text[at : min(end, at + _END)]),
            -abs(at - start),
        ),
    )
    ends = [at for at in _word_ends(text, end) if at > start] or [end]
    end = max(
        ends,
        key=lambda at: (
            Indel.normalized_similarity(tail, text[max(start, at - _END) : at]),
            -abs(at - end),
        ),
    )
    return start, end


def _word_starts(text: str, near: int) -> list[int]:
    around = range(max(0, near - _SNAP), min(len(text), near + _SNAP))
    return [at for at in around if text[at] != " " and _parted(text, at)] or [near]


def _word_ends(text: str, near: int) -> list[int]:
    around = range(max(1, near - _SNAP), min(len(text), near + _SNAP) + 1)
    return [at for at in around if text[at - 1] != " " and _parted(text, at)] or [near]


def _parted(text: str, at: int) -> bool:
    """Tell whether a word may end or begin at a place: at a space, or between unspaced letters."""
    if at in {0, len(text)} or " " in text[at - 1 : at + 1]:
        return True
    return _UNSPACED.search(text, at - 1, at + 1) is not None
