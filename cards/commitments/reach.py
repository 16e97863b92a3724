"""How far back the facts of a commitment must be known to tell its pace on a day."""

from collections.abc import Iterable
from datetime import date

from cards.commitments.decisions import Decision
from cards.commitments.deeds import Deeds
from cards.commitments.pace import JUDGED, arrived_past
from cards.commitments.periods import Rhythm
from cards.commitments.terms import Commitment, life_of
from cards.commitments.windows import is_closed, windows_back


def needed_from(commitment: Commitment, decisions: Iterable[Decision], day: date) -> date:
    """Return the first day about which `pace_of` must be given the check-ins.

    Of what is over, and of so many periods whose end a pause may have moved, all of its term;
    of what runs, the last two windows that count whatever was done, however long a pause lies
    between.
    """
    life = life_of(commitment, decisions, day)
    term = life.term
    last = term.last_day()
    if term.finishing or arrived_past(commitment, life, last):
        return term.start
    so_many = term.measure is not None and term.measure.periods is not None
    if last is not None and (is_closed(last, day) or (so_many and life.pauses)):
        return term.start
    rhythm = Rhythm(term.measure, term.start, last)
    left = JUDGED
    # What counts with nothing done in it counts whatever was done in it.
    for each in windows_back(rhythm, life, Deeds((), day), day):
        left -= each.counts
        if not left:
            return each.began
    return term.start
