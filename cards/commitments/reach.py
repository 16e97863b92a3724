"""How far back the facts of a commitment must be known to tell its pace on a day."""

from collections.abc import Iterable
from datetime import date

from cards.commitments.decisions import Decision
from cards.commitments.periods import Rhythm
from cards.commitments.terms import Commitment, Life, life_of
from cards.commitments.windows import CLOSING

_JUDGED = 2


def needed_from(commitment: Commitment, decisions: Iterable[Decision], day: date) -> date:
    """Return the first day about which `pace_of` must be given the check-ins.

    Of what has an end, all of its term; of what is open, the last two windows that can
    count, however long a pause lies between.
    """
    life = life_of(commitment, decisions, day)
    term = life.term
    if term.finishing or term.last_day() is not None:
        return term.start
    rhythm = Rhythm(term.measure, term.start)
    number = rhythm.window_at(day)
    left = _JUDGED
    while number > 0:
        if _surely_counts(rhythm, number, life, day):
            left -= 1
            if not left:
                break
        number -= 1
    if number <= 0:
        return term.start
    first = rhythm.window(number).first
    return min([first, *(each.first for each in rhythm.periods_in(rhythm.window(number)))])


def _surely_counts(rhythm: Rhythm, number: int, life: Life, day: date) -> bool:
    span = rhythm.window(number)
    if day <= span.last + CLOSING:
        return False
    periods = list(rhythm.periods_in(span))
    spans = [span, *periods]
    return bool(periods) and not any(each.meets(pause) for each in spans for pause in life.pauses)
