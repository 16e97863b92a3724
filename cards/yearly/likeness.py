"""Commitments of different books that repeat each other or collide, side by side.

The rule is our own and conservative: more than half of the words of the shorter one must stand in
the other, and the act of each must be held by the other, as the marking of a restated commitment
holds it (`cards.kinds.slots`); what then is turned round collides, what is not repeats. The same
hour of the clock on a day both fall on collides too. English, like the marking; of other languages
nothing is said.
"""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import combinations

from cards.commitments import Measure, Period
from cards.commitments.measure import WEEKDAYS
from cards.kinds.amounts import measurable
from cards.kinds.hours import Hour
from cards.kinds.same_deeds import deeds_of
from cards.kinds.slots import hold
from cards.kinds.words import content_words, fold_word
from cards.yearly.promises import Promise

MOST_PAIRS = 400
"""Pairs held against each other, those that share most first: each takes a millisecond or two."""
MOST_SHOWN = 20
"""Pairs told of."""
_LONGEST = 500
"""Characters of a commitment that are compared."""
_FEWEST = 2
"""Words two must share to be held against each other."""
_SHARED = 0.5
"""Share of the shorter one’s words; where no more stand in the other, the two are two acts."""
_COMMON = 40
"""Commitments in which a word may stand and still bring two of them together."""


class Likeness(StrEnum):
    """How two commitments meet, what is to be settled first before the rest."""

    COLLIDES = "collides"
    SAME_HOUR = "same hour"
    REPEATS = "repeats"


RULES = {
    Likeness.REPEATS: "Both ask nearly the same act: would one do?",
    Likeness.COLLIDES: "One asks to do what the other asks not to: which is to hold?",
    Likeness.SAME_HOUR: "Both fall on the same hour of a day: which comes first?",
}
"""What is said of each."""


@dataclass(frozen=True, slots=True)
class Pair:
    """Two commitments of different books that meet.

    Attributes:
        likeness: how.
        one, other: the commitments, in the order of the review.
    """

    likeness: Likeness
    one: Promise
    other: Promise

    @property
    def rule(self) -> str:
        """What it was found by, as a sentence to the reader."""
        return RULES[self.likeness]


def pairs_of(promises: Sequence[Promise]) -> tuple[Pair, ...]:
    """Return the pairs of live commitments that meet, by how they do."""
    live = [each for each in promises if each.live]
    found = []
    for one, other in _near(live):
        likeness = _likeness(one.text[:_LONGEST], other.text[:_LONGEST])
        if likeness is not None:
            found.append(Pair(likeness, one, other))
    met = {(pair.one.id, pair.other.id) for pair in found}
    found += [pair for pair in _same_hours(live) if (pair.one.id, pair.other.id) not in met]
    found.sort(key=lambda pair: tuple(Likeness).index(pair.likeness))
    return tuple(found[:MOST_SHOWN])


def _likeness(one: str, other: str) -> Likeness | None:
    ours, theirs = sorted((_words(one), _words(other)), key=len)
    met = sum(any(word & each for each in theirs) for word in ours)
    if met <= _SHARED * len(ours):
        return None
    there, back = hold(one, other, ""), hold(other, one, "")
    if not (there.act and back.act):
        return None
    if there.turned and back.turned:
        return Likeness.COLLIDES
    return None if there.turned or back.turned else Likeness.REPEATS


def _near(promises: Sequence[Promise]) -> list[tuple[Promise, Promise]]:
    """Return the pairs of different books that share words enough, those with most first."""
    holding: dict[str, list[int]] = {}
    sizes = []
    for place, promise in enumerate(promises):
        keys = _keys(promise.text[:_LONGEST])
        sizes.append(len(keys))
        for key in keys:
            holding.setdefault(key, []).append(place)
    shared: Counter[tuple[int, int]] = Counter()
    for places in holding.values():
        if len(places) <= _COMMON:
            shared.update(combinations(places, 2))
    near = [
        (one, other)
        for (one, other), count in shared.most_common()
        if count >= min(_FEWEST, sizes[one], sizes[other])
        and promises[one].digest_id != promises[other].digest_id
    ]
    return [(promises[one], promises[other]) for one, other in near[:MOST_PAIRS]]


def _keys(text: str) -> frozenset[str]:
    return frozenset[str]().union(*_words(text))


def _words(text: str) -> list[frozenset[str]]:
    """Return the content words of a text but for its measure: stems, deeds by their groups too."""
    left = measurable(text).left
    return [
        deeds_of(fold_word(left[token.start : token.end])) | {token.stem}
        for token in content_words(left)
    ]


def _same_hours(promises: Sequence[Promise]) -> Iterator[Pair]:
    timed: dict[int, list[tuple[Promise, Hour, frozenset[str]]]] = {}
    for promise in promises:
        days = _days_of(promise.stand.life.term.measure)
        hours = measurable(promise.text[:_LONGEST]).hours if days else ()
        for hour in hours:
            timed.setdefault(hour.minutes, []).append((promise, hour, days))
    for together in timed.values():
        for (one, at, on), (other, then, days) in combinations(together[:_COMMON], 2):
            if one.digest_id != other.digest_id and at.same(then) and on & days:
                yield Pair(Likeness.SAME_HOUR, one, other)


def _days_of(measure: Measure | None) -> frozenset[str]:
    """Return the weekdays a measure surely falls on, none where that is the reader's choice."""
    if measure is None:
        return frozenset()
    if measure.on:
        return frozenset(day for day in measure.on if day in WEEKDAYS)
    daily = measure.period is Period.DAY and measure.every == 1
    return frozenset(WEEKDAYS) if daily else frozenset()


def minutes_a_day(promises: Iterable[Promise]) -> tuple[int, tuple[Promise, ...]]:
    """Return what the live commitments ask of a day in minutes, and those that say how long.

    Of what is asked by the week, its seventh part; what is done once, by the month or by the
    year is left out. Rounded down: nobody is told of more than is asked.
    """
    total, timed = 0.0, []
    for promise in promises:
        measure = promise.stand.life.term.measure
        if promise.live and measure is not None and measure.minutes is not None:
            share = _a_day(measure)
            if share:
                total += share * measure.minutes
                timed.append(promise)
    return int(total), tuple(timed)


def _a_day(measure: Measure) -> float:
    days = {Period.DAY: 1, Period.WEEK: len(WEEKDAYS)}.get(measure.period)
    if days is None:
        return 0.0
    if measure.period is Period.DAY and measure.on:
        return measure.times * len(measure.on) / len(WEEKDAYS) / measure.every
    return measure.times / days / measure.every
