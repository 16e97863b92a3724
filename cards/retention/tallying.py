"""What the answers to items add to the tallies that retention is told from."""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from datetime import date
from typing import NamedTuple
from uuid import UUID

from cards.answers import Grade
from cards.kinds.base import KindName
from cards.retention.ages import age_bin, survival_bin
from cards.retention.history_bins import history_bin
from cards.retention.packing import CAME, ONE, foreseen, unpacked
from cards.retention.tally import Of, Tally, TallyKey


class Counted(NamedTuple):
    """What of an answer is counted.

    Attributes:
        day: the reader's day it was given on.
        grade: the reader's own.
        predicted: the recall predicted before it was given, or None.
        suggested: the grade of the mark, or None.
        graded_first: whether it was graded before the mark was shown.
    """

    day: date
    grade: Grade
    predicted: float | None = None
    suggested: Grade | None = None
    graded_first: bool = False


class Tallying:
    """Adds up the answers to one item after another.

    Retention counts an answer when the item was asked before on an earlier day: the first one
    recalls nothing that was asked, and a further one of the same day is the second try of a
    sitting. Where the reader travelled and a later answer bears an earlier date, it counts as
    given on the day of the one before it, as the schedule has it. A mark is held against every
    grade, the first one too.

    An item survives from the day of its first answer to that of its first blank, which may be
    the same: then it never was there. One that never came back blank is known to have survived
    up to its last answer.
    """

    def __init__(self) -> None:
        self._all: dict[KindName, int] = defaultdict(int)
        self._books: dict[UUID, int] = defaultdict(int)
        self._ages: dict[KindName, dict[int, int]] = defaultdict(_by_number)
        self._months: dict[int, int] = _by_number()
        self._thousandths: dict[int, int] = _by_number()
        self._bins: dict[tuple[int, int, int], int] = defaultdict(int)
        self._marks: dict[tuple[Grade, Grade, bool], int] = defaultdict(int)
        self._survivals: dict[tuple[KindName, int, bool], int] = defaultdict(int)

    def add(
        self,
        kind: KindName,
        digest_id: UUID,
        answers: Iterable[Counted],
        through: date | None = None,
    ) -> None:
        """Add the answers to one item.

        Args:
            kind: of the item.
            digest_id: of its book.
            answers: to it, in the order they happened.
            through: the last day that is counted; None for all.
        """
        ages, months, marks = self._ages[kind], self._months, self._marks
        latest = date.max if through is None else through
        blank = Grade.BLANK
        day = date.min
        before = first = gone = length = blanks = everything = counted = 0
        for given_on, grade, predicted, suggested, graded_first in answers:
            day = max(day, given_on)
            if day > latest:
                break
            now = day.toordinal()
            came = grade != blank
            everything += CAME if came else ONE
            if suggested is not None:
                marks[suggested, grade, graded_first] += ONE
            if not before:
                first = now
            elif now > before:
                length += 1
                age = now - before
                if predicted is None:
                    one = CAME if came else ONE
                else:
                    one = foreseen(came, predicted)
                    self._thousandths[round(predicted * 1000)] += one
                    self._bins[history_bin(age, length, blanks)] += one
                counted += one
                ages[age_bin(age)] += one
                months[day.year * 12 + day.month - 1] += one
                blanks += not came
            before = now
            if not came:
                gone = gone or now
        if before:
            self._all[kind] += everything
            self._books[digest_id] += counted
            lasted = survival_bin((gone or before) - first)
            self._survivals[kind, lasted, bool(gone)] += ONE

    def tallies(self) -> dict[TallyKey, Tally]:
        """Return what all answers added come to; what comes to nothing is left out."""
        return {key: unpacked(numbers) for key, numbers in self._packed() if numbers}

    def _packed(self) -> Iterator[tuple[TallyKey, int]]:
        for kind, numbers in self._all.items():
            yield TallyKey(Of.ALL, kind.value), numbers
        for digest_id, numbers in self._books.items():
            yield TallyKey(Of.BOOK, digest_id.hex), numbers
        for kind, ages in self._ages.items():
            for age, numbers in ages.items():
                yield TallyKey(Of.KIND_AGE, f"{kind.value}|{age}"), numbers
        for month, numbers in self._months.items():
            yield TallyKey(Of.MONTH, f"{month // 12:04}-{month % 12 + 1:02}"), numbers
        for thousandth, numbers in self._thousandths.items():
            yield TallyKey(Of.PREDICTED, str(thousandth)), numbers
        for alike, numbers in self._bins.items():
            yield TallyKey(Of.BIN, ".".join(map(str, alike))), numbers
        for (suggested, grade, first), numbers in self._marks.items():
            when = "first" if first else "seen"
            yield TallyKey(Of.MARK, f"{suggested.value}>{grade.value}>{when}"), numbers
        for (kind, lasted, gone), numbers in self._survivals.items():
            end = "blank" if gone else "none"
            yield TallyKey(Of.SURVIVAL, f"{kind.value}|{lasted}|{end}"), numbers


def tallies_of(
    kind: KindName, digest_id: UUID, answers: Iterable[Counted], through: date | None = None
) -> dict[TallyKey, Tally]:
    """Return what the answers to one item add to the tallies; see `Tallying.add`."""
    tallying = Tallying()
    tallying.add(kind, digest_id, answers, through)
    return tallying.tallies()


def _by_number() -> dict[int, int]:
    return defaultdict(int)
