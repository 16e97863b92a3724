"""The life of a commitment: its terms, its pauses, and how it ended, folded from decisions."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from uuid import UUID

from cards.commitments.cutting import LAST, Span
from cards.commitments.decisions import Act, Decision
from cards.commitments.measure import Measure, Period
from cards.commitments.periods import Rhythm

_DAY = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Commitment:
    """A commitment as it came into the library.

    Attributes:
        id: of the part of the digest.
        text: its words.
        made_on: the day the book was finished, or else the day it came in; what "tomorrow" in
            it is relative to.
        entered_on: the reader's day it came into the library, on which one can first be asked.
        measure: what its words were read to ask, or None.
    """

    id: UUID
    text: str
    made_on: date
    entered_on: date
    measure: Measure | None = None


@dataclass(frozen=True, slots=True)
class Term:
    """A stretch in which a commitment asks one thing.

    Attributes:
        start: its first day.
        measure: what it asks, its deadline as it was moved; None where it has no measure.
        moves: how often its last day was moved.
    """

    start: date
    measure: Measure | None
    moves: int = 0

    @property
    def once(self) -> bool:
        """Whether it is done and over by a day."""
        measure = self.measure
        return measure is not None and measure.period is Period.ONCE and bool(measure.deadline)

    @property
    def finishing(self) -> bool:
        """Whether it is over once done, by a day or whenever."""
        return self.measure is not None and self.measure.period is Period.ONCE

    def last_day(self) -> date | None:
        """Return the day it ends on when nothing is paused, or None when it is open."""
        measure = self.measure
        if measure is None:
            return None
        ends = [] if measure.deadline is None else [measure.deadline]
        if measure.periods is not None:
            ends.append(Rhythm(measure, self.start).nth_period(measure.periods).last)
        return max(min(ends), self.start) if ends else None


@dataclass(frozen=True, slots=True)
class Life:
    """What the decisions known on a day make of a commitment.

    Attributes:
        text: its words as they are now.
        terms: from the first to the one that runs, or ran last; never empty.
        pauses: spans in which nothing is asked, in order; an open one ends with `date.max`.
        released: the decision that released it, or None.
        closed: the decision that closed the last term, or None.
        former: earlier wordings, the first first.
        asked_from: the first day one could be asked about it. What was due before counts only
            where the reader reports on it.
    """

    text: str
    terms: tuple[Term, ...]
    pauses: tuple[Span, ...] = ()
    released: Decision | None = None
    closed: Decision | None = None
    former: tuple[str, ...] = ()
    asked_from: date = date.min

    @property
    def term(self) -> Term:
        """The term that runs, or ran last."""
        return self.terms[-1]

    def paused_on(self, day: date) -> bool:
        """Tell whether a day lies in a pause, or before one could be asked."""
        return day < self.asked_from or any(
            pause.first <= day <= pause.last for pause in self.pauses
        )


def life_of(commitment: Commitment, decisions: Iterable[Decision], day: date) -> Life:
    """Return what the decisions known on a day make of a commitment, in any order they came."""
    known = sorted((each for each in decisions if each.known_on(day)), key=lambda each: each.place)
    life = Life(
        commitment.text,
        (Term(commitment.made_on, commitment.measure),),
        asked_from=commitment.entered_on,
    )
    for decision in known:
        life = _after(life, decision)
    return life


def _after(life: Life, decision: Decision) -> Life:
    match decision.act:
        case Act.PAUSE:
            pause = Span(decision.day, decision.until or date.max)
            return replace(life, pauses=(*life.pauses, pause))
        case Act.RESUME:
            return replace(life, pauses=_resumed(life.pauses, decision.day))
        case Act.RELEASE:
            return replace(life, released=decision)
        case Act.CLOSE:
            return replace(life, closed=decision)
        case Act.RENEW | Act.HALVE | Act.REWORD:
            return _begun(life, decision)
        case Act.START | Act.MEASURE | Act.MOVE:
            terms = (*life.terms[:-1], _corrected(life.term, decision))
            return replace(life, terms=terms, closed=None)


def _begun(life: Life, decision: Decision) -> Life:
    """Return a life with another term begun, whatever ended or paused the one before."""
    term = Term(decision.day, decision.measure or renewed(life.term, decision.day))
    former, text = life.former, life.text
    if decision.act is Act.REWORD:
        former, text = (*former, text), decision.words
    return replace(
        life,
        text=text,
        terms=(*life.terms, term),
        pauses=_resumed(life.pauses, decision.day),
        released=None,
        closed=None,
        former=former,
    )


def _corrected(term: Term, decision: Decision) -> Term:
    if decision.act is Act.START:
        return replace(term, start=decision.day)
    if decision.act is Act.MEASURE:
        return replace(term, measure=decision.measure, moves=0)
    if term.measure is None:
        return term
    moved = replace(term.measure, deadline=decision.until, periods=None)
    return replace(term, measure=moved, moves=term.moves + 1)


def _resumed(pauses: tuple[Span, ...], day: date) -> tuple[Span, ...]:
    """Return the pauses, those that reach a day cut to end before it."""
    return tuple(
        Span(each.first, min(each.last, day - _DAY)) for each in pauses if each.first < day
    )


def renewed(term: Term, start: date) -> Measure | None:
    """Return the measure of a term begun anew on another day: its last day moves along."""
    measure = term.measure
    if measure is None or measure.deadline is None:
        return measure
    length = max(0, (measure.deadline - term.start).days)
    return replace(measure, deadline=date.fromordinal(min(start.toordinal() + length, LAST)))
