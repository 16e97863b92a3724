"""What can be measured in a commitment, held against what an attempt says of it."""

from cards.kinds.acts_said import Said
from cards.kinds.amounts import Amount, Measurable


def facts_of(told: Measurable) -> frozenset[object]:
    """Return what a text measures, to be compared one by one."""
    amounts = ((each.number, each.unit) for each in told.amounts)
    days = told.days
    return frozenset(
        (*amounts, *told.periods, *told.ordinals, *told.hours, *days.dates, *days.years)
    ) | (days.feasts | days.weekdays)


def wrong_measures(wanted: Measurable, given: Measurable, ours: Said, theirs: Said) -> list[str]:
    """Return, in words, which of what can be measured is wrong or missing."""
    due, said = wanted.days, given.days
    another_part = ours.parts_of_day and theirs.parts_of_day.isdisjoint(ours.parts_of_day)
    often = given.periods | (frozenset({"week"}) if said.weekdays else frozenset())
    checks = (
        ("how much or how many", not _same_amounts(wanted, given)),
        ("how often", not wanted.periods <= often),
        (
            "on which days",
            due.weekdays != said.weekdays or not wanted.ordinals <= given.ordinals,
        ),
        (
            "at what time of day",
            not _same_hours(wanted, given) or bool(another_part and theirs.parts_of_day),
        ),
        (
            "from or until when",
            due.dates != said.dates or due.feasts != said.feasts or not due.years <= said.years,
        ),
    )
    return [what for what, is_wrong in checks if is_wrong]


def _same_hours(wanted: Measurable, given: Measurable) -> bool:
    return all(any(hour.same(each) for each in given.hours) for hour in wanted.hours)


def _same_amounts(wanted: Measurable, given: Measurable) -> bool:
    left = list(given.amounts)
    for amount in wanted.amounts:
        match = next((each for each in left if amount.same(each)), None)
        if match is not None:
            left.remove(match)
        elif not _one_is_told(amount, given):
            return False
    return not any(
        each.number != 1 and not any(each.same(amount) for amount in wanted.amounts)
        for each in left
    )


def _one_is_told(amount: Amount, given: Measurable) -> bool:
    """Tell whether one of a thing is told without a number: "a page", "the letter"."""
    if amount.number != 1:
        return False
    if not amount.things:
        return amount.unit == ""
    return not set(given.left.split()).isdisjoint(amount.things)
