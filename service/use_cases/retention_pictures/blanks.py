"""How long items last until they first come back blank."""

from collections.abc import Sequence

from cards.kinds.base import KindName
from cards.retention.survival import Survival
from service.use_cases.picture_records import Axis, Column, Picture, StepLine, Steps, Table, Unit
from service.use_cases.picture_records.curves import MOST_LINES
from service.use_cases.retaining import Retained
from service.use_cases.retention_pictures.words import KINDS, counted, percent

_COLUMNS = (
    Column("kind", "What is asked", Unit.TEXT),
    Column("items", "Items", Unit.COUNT),
    Column("blanks", "Came back blank", Unit.COUNT),
    Column("median", "Half last beyond, in days", Unit.COUNT),
    Column("median_low", "From", Unit.COUNT),
    Column("median_high", "To", Unit.COUNT),
    Column("month", "Last a month", Unit.SHARE),
    Column("half_year", "Last half a year", Unit.SHARE),
    Column("year", "Last a year", Unit.SHARE),
    Column("until", "Followed, in days", Unit.COUNT),
)
_LATER = (30, 182, 365)
_MOST_STEPS = 200
_FEWEST = 5
"""Items still followed to which a curve is drawn: beyond, one blank would move it by a quarter.
Pocock, Clayton & Altman 2002 (Lancet 359, from memory) ask for some such bound."""


def blanks(retained: Retained) -> Picture:
    """Return the share of each kind's items that never came back blank, by days (Kaplan-Meier)."""
    found = retained.figures.survival
    drawn = sorted(found, key=lambda kind: found[kind].items, reverse=True)[:MOST_LINES]
    told = "Nothing was asked yet."
    if found:
        items = sum(each.items for each in found.values())
        gone = sum(each.blanks for each in found.values())
        told = (
            f"Of {counted(items, 'item')} {gone:,} came back blank at least once"
            f"{_first_to_go(found)}."
        )
        if len(found) > MOST_LINES:
            told += f" Drawn are the {MOST_LINES} kinds with most items; the figures hold all."
    return Picture(
        "blanks",
        "Time to the first blank",
        told,
        Table(
            _COLUMNS,
            tuple(
                (
                    KINDS[kind],
                    each.items,
                    each.blanks,
                    each.median,
                    *each.median_bounds,
                    *(each.lasting(day) if day <= each.until else None for day in _LATER),
                    each.until,
                )
                for kind, each in found.items()
            ),
        ),
        Steps(
            Axis("days since it was first asked", Unit.DAYS, start=0.0),
            "share never blank so far",
            tuple(_line(KINDS[kind], found[kind]) for kind in found if kind in drawn),
        ),
    )


def _line(label: str, survival: Survival) -> StepLine:
    told = [each for each in survival.steps if each.at_risk >= _FEWEST]
    end = survival.until if len(told) == len(survival.steps) else survival.steps[len(told)].day
    return StepLine(
        label, _thinned([(float(each.day), each.lasting) for each in told]), (), float(end)
    )


def _thinned(steps: Sequence[tuple[float, float]]) -> tuple[tuple[float, float], ...]:
    """Return at most so many steps, the last of each stretch: more would be a smear."""
    every = -(-len(steps) // _MOST_STEPS)
    return tuple(
        steps[place] for place in range(len(steps)) if not (len(steps) - 1 - place) % every
    )


def _first_to_go(found: dict[KindName, Survival]) -> str:
    """Return which kind goes first and which last, by the share that lasts a month."""
    month = _LATER[0]
    told = {kind: each.lasting(month) for kind, each in found.items() if each.until >= month}
    if len(told) < 2:
        return ""
    first, last = min(told, key=lambda kind: told[kind]), max(told, key=lambda kind: told[kind])
    return (
        f". After a month {percent(told[last])} of the items that ask for {KINDS[last].lower()} "
        f"never had, and {percent(told[first])} of those for {KINDS[first].lower()}"
    )
