"""What the coming weeks ask, day by day."""

from cards.commitments.day_words import day_in_words
from service.use_cases.picture_records import Column, DayBar, Days, Picture, Table, Unit
from service.use_cases.retaining import Retained
from service.use_cases.retention_pictures.words import counted

_COLUMNS = (
    Column("day", "Day", Unit.DATE),
    Column("due", "Due", Unit.MINUTES),
    Column("unasked", "Asked for the first time", Unit.MINUTES),
    Column("minutes", "Together", Unit.MINUTES),
    Column("left_over", "Waits for the next day", Unit.MINUTES),
)
_WEEK = 7


def coming(retained: Retained) -> Picture:
    """Return the minutes that each of the coming days is expected to ask."""
    days = retained.coming
    minutes = retained.habits.minutes
    asked = any(each.minutes or each.left_over for each in days)
    told = "Nothing is asked in the coming weeks: there are no items yet, or all rest."
    if asked:
        week = days[:_WEEK]
        mean = sum(each.minutes for each in week) / len(week)
        fullest = max(days, key=lambda each: each.minutes)
        told = (
            f"The coming week asks some {_minutes(mean)} a day of the {minutes:g} you have; the "
            f"fullest day of the next {len(days) // _WEEK} weeks, {day_in_words(fullest.day)}, "
            f"takes {_minutes(fullest.minutes)}."
        )
        waiting = [each for each in days if each.left_over >= 1]
        if waiting:
            told += (
                f" On {counted(len(waiting), 'day')} something that is due does not fit and waits, "
                f"at most {_minutes(max(each.left_over for each in waiting))} of it."
            )
    return Picture(
        "coming",
        "What the coming weeks ask",
        told,
        Table(
            _COLUMNS,
            tuple((each.day, each.due, each.unasked, each.minutes, each.left_over) for each in days)
            if asked
            else (),
        ),
        Days(
            tuple(DayBar(each.day, each.minutes, each.left_over) for each in days),
            "minutes a day",
            Unit.MINUTES,
            limit=minutes,
            limit_label="the minutes you have",
            over_label="waits for the next day",
        ),
    )


def _minutes(minutes: float) -> str:
    return counted(max(1, round(minutes)), "minute")
