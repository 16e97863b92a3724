"""A measure as a reader would say it."""

from cards.commitments.day_words import day_in_words, in_letters, listed, times_in_words
from cards.commitments.measure import WEEKEND, WORKING_DAYS, Measure, Period

_DAYS = {
    "MO": "Monday",
    "TU": "Tuesday",
    "WE": "Wednesday",
    "TH": "Thursday",
    "FR": "Friday",
    "SA": "Saturday",
    "SU": "Sunday",
}
_WHICH = {"1": "first", "2": "second", "3": "third", "4": "fourth", "5": "fifth", "-1": "last"}


def measure_in_words(measure: Measure) -> str:
    """Return a measure as a reader would say it.

    As in "three times a week, on Monday, Wednesday and Friday, until 3 March 2026".
    """
    said = [f"{times_in_words(measure.times)}{_how_often(measure)}"]
    if measure.on:
        said.append(_on(measure.on))
    if measure.minutes is not None:
        said.append(f"{_counted(measure.minutes, 'minute')} each time")
    if measure.periods is not None:
        said.append(_how_long(measure, measure.periods))
    if measure.deadline is not None:
        edge = "by" if measure.period is Period.ONCE else "until"
        said.append(f"{edge} {day_in_words(measure.deadline)}")
    return ", ".join(said)


def _how_often(measure: Measure) -> str:
    unit, every = measure.period.value, measure.every
    if measure.period is Period.ONCE:
        return ""
    if every == 1:
        return f" a {unit}"
    if measure.period is Period.DAY and measure.on:
        return f" in {in_letters(every)} of the days named"
    if every == 2:
        return f" every other {unit}"
    if measure.period is Period.MONTH and every == 3:
        return " a quarter"
    return f" every {in_letters(every)} {unit}s"


def _on(named: tuple[str, ...]) -> str:
    if named == WORKING_DAYS:
        return "on working days"
    if named == WEEKEND:
        return "at the weekend"
    return f"on {listed(_day(each) for each in named)}"


def _day(named: str) -> str:
    """Return a BYDAY value in words: Monday, the first Monday, the second last Monday."""
    number, day = named[:-2], _DAYS[named[-2:]]
    if not number:
        return day
    which = _WHICH.get(number)
    if which is None:
        counted = int(number)
        ordinal = _WHICH.get(str(abs(counted))) or f"{abs(counted)}th"
        which = ordinal if counted > 0 else f"{ordinal} last"
    return f"the {which} {day}"


def _how_long(measure: Measure, periods: int) -> str:
    unit = measure.period.value
    if measure.period is Period.DAY and measure.on:
        return f"{_counted(periods * measure.every, 'day')} in all"
    return f"for {_counted(periods * measure.every, unit)}"


def _counted(number: int, unit: str) -> str:
    return f"{in_letters(number)} {unit}{'' if number == 1 else 's'}"
