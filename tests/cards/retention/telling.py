"""Answers in few words, for the tests of what retention is told from."""

from datetime import date, timedelta
from uuid import UUID

from cards.answers import Grade
from cards.kinds.base import KindName
from cards.retention.reading import read
from cards.retention.tallying import Counted, tallies_of

BOOK = UUID("00000000-0000-4000-8000-0000000000b1")
OTHER = UUID("00000000-0000-4000-8000-0000000000b2")
FIRST = date(2026, 1, 5)


def day(number):
    """Return a day so many days after the first Monday of 2026."""
    return FIRST + timedelta(days=number)


def counted(number, grade="clear", predicted=None, suggested=None, *, first=False):
    """Return an answer on a day."""
    mark = None if suggested is None else Grade(suggested)
    return Counted(day(number), Grade(grade), predicted, mark, first)


def told(*answers, kind=KindName.NEXT, book=BOOK, through=None):
    """Return the tallies of one item, read back."""
    return read(tallies_of(kind, book, answers, through))


def foretold(came, predicted):
    """Return the tallies of one item asked every day, by what came back and what was predicted."""
    answers = [counted(0)]
    for number, (back, given) in enumerate(zip(came, predicted, strict=True), 1):
        answers.append(counted(number, "clear" if back else "blank", float(given)))
    return told(*answers)
