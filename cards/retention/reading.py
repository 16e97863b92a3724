"""The tallies of a reader sorted by what they are of, their keys read back."""

from collections import defaultdict
from dataclasses import dataclass, replace
from uuid import UUID

from cards.answers import Grade
from cards.kinds.base import KindName
from cards.retention.tally import Of, Tallies, Tally, total

MarkKey = tuple[Grade, Grade, bool]
"""The suggested grade, the reader's, and whether that was given first."""


@dataclass(frozen=True, slots=True)
class Sorted:
    """Tallies by what they are of.

    Attributes:
        everything: all answers, by kind, also those retention leaves out.
        books: by digest.
        ages: by kind, then by the first day of the bin of the age.
        months: by `YYYY-MM`, in order.
        thousandths: by the recall predicted, in order.
        bins: by history, in order.
        marks: by mark and grade.
        survivals: items by kind, then by days and whether they ended in a blank.
    """

    everything: dict[KindName, Tally]
    books: dict[UUID, Tally]
    ages: dict[KindName, dict[int, Tally]]
    months: dict[str, Tally]
    thousandths: dict[int, Tally]
    bins: dict[str, Tally]
    marks: dict[MarkKey, int]
    survivals: dict[KindName, dict[tuple[int, bool], int]]

    def of_kind(self, kind: KindName) -> Tally:
        """Return what is counted of a kind."""
        return total(self.ages.get(kind, {}).values())

    def by_age(self) -> dict[int, Tally]:
        """Return what is counted by age, of all kinds, in order."""
        sums: dict[int, list[Tally]] = defaultdict(list)
        for ages in self.ages.values():
            for age, tally in ages.items():
                sums[age].append(tally)
        return {age: total(sums[age]) for age in sorted(sums)}

    def whole(self) -> Tally:
        """Return what is counted of everything."""
        return total(self.months.values())


def read(tallies: Tallies) -> Sorted:
    """Return tallies sorted; a key that is not written as `Of` says is a mistake of ours.

    Raises:
        ValueError: a key cannot be read.
    """
    sorts = Sorted({}, {}, defaultdict(dict), {}, {}, {}, {}, defaultdict(dict))
    for (of, key), tally in sorted(tallies.items()):
        match of:
            case Of.ALL:
                sorts.everything[KindName(key)] = tally
            case Of.BOOK:
                sorts.books[UUID(hex=key)] = tally
            case Of.KIND_AGE:
                kind, age = key.split("|")
                sorts.ages[KindName(kind)][int(age)] = tally
            case Of.MONTH:
                sorts.months[key] = tally
            case Of.PREDICTED:
                sorts.thousandths[int(key)] = tally
            case Of.BIN:
                sorts.bins[key] = tally
            case Of.MARK:
                mark, grade, when = key.split(">")
                sorts.marks[Grade(mark), Grade(grade), when == "first"] = tally.n
            case Of.SURVIVAL:
                kind, days, end = key.split("|")
                sorts.survivals[KindName(kind)][int(days), end == "blank"] = tally.n
    # Numbers written as text were sorted as text.
    return replace(sorts, thousandths=dict(sorted(sorts.thousandths.items())))
