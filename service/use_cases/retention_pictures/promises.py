"""What became of the commitments, month by month."""

from service.use_cases.picture_records import Column, Month, Months, Picture, Table, Unit
from service.use_cases.retaining import Retained
from service.use_cases.retention_pictures.words import counted, day_of, month_in_words, percent

_COLUMNS = (
    Column("month", "Month", Unit.TEXT),
    Column("kept", "Kept", Unit.COUNT),
    Column("partly", "Partly", Unit.COUNT),
    Column("missed", "Missed", Unit.COUNT),
    Column("silent", "Nothing said", Unit.COUNT),
    Column("share", "Share kept", Unit.SHARE),
    Column("low", "From", Unit.SHARE),
    Column("high", "To", Unit.SHARE),
)


def promises(retained: Retained) -> Picture:
    """Return what the windows of all commitments came to, by the month each ended in."""
    found = retained.figures.kept
    told = "No window of a commitment has closed yet: a week, or the period it is promised for."
    if found:
        last = found[-1]
        kept, judged = sum(each.kept for each in found), sum(each.share.asked for each in found)
        told = (
            f"Of {counted(judged, 'window')} in which something you promised was due, "
            f"{kept:,} {'was' if kept == 1 else 'were'} kept whole, {percent(kept / judged)}; in "
            f"{month_in_words(last.month)} {last.kept} of {last.share.asked}."
        )
    return Picture(
        "promises",
        "Commitments kept",
        told,
        Table(
            _COLUMNS,
            tuple(
                (
                    month_in_words(each.month),
                    each.kept,
                    each.partly,
                    each.missed,
                    each.silent,
                    each.share.share,
                    *each.share.bounds,
                )
                for each in found
            ),
        ),
        Months(
            tuple(
                Month(day_of(each.month), each.kept, each.partly, each.missed, each.silent)
                for each in found
            )
        ),
    )
