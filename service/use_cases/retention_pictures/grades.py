"""The reader's own grade against the suggested mark."""

from cards.answers import GRADES
from service.use_cases.picture_records import Column, Grid, Picture, Table, Unit
from service.use_cases.retaining import Retained
from service.use_cases.retention_pictures.words import counted, percent

_NAMES = tuple(grade.value for grade in GRADES)


def grades(retained: Retained) -> Picture:
    """Return how often each mark met each grade."""
    found = retained.figures.agreements
    whole = found.all
    told = "No answer was marked yet: a mark is suggested where you write or choose an answer."
    if whole.n:
        lower = whole.n - whole.same - whole.higher
        told = (
            f"Of {counted(whole.n, 'answer')} with a suggested mark you graded "
            f"{percent(whole.same / whole.n)} as suggested, {percent(whole.higher / whole.n)} "
            f"higher and {percent(lower / whole.n)} lower."
        )
        if found.first.n and found.seen.n:
            first, seen = (each.same / each.n for each in (found.first, found.seen))
            told += (
                f" Where you graded before you saw the mark, {percent(first)} agreed; where you "
                f"saw it first, {percent(seen)}."
            )
    return Picture(
        "grades",
        "Your grade, and the mark suggested",
        told,
        Table(
            (
                Column("mark", "Mark suggested", Unit.TEXT),
                *(Column(name, f"You said {name}", Unit.COUNT) for name in _NAMES),
            ),
            tuple((mark, *row) for mark, row in zip(_NAMES, whole.counts, strict=True))
            if whole.n
            else (),
        ),
        Grid("mark suggested", "your grade", _NAMES, _NAMES, whole.counts),
    )
