"""What each target takes and keeps: minutes a day against what is known."""

from cards.parts import Care
from cards.planning import YEARS, CarePlan, Proposal, TargetPlan
from service.use_cases.picture_records import (
    Axis,
    Column,
    Curves,
    Dot,
    Line,
    Picture,
    Scale,
    Table,
    Unit,
)
from service.use_cases.retaining import Retained
from service.use_cases.retention_pictures.words import counted, minutes_in_words, percent

_IN_WORDS = {1: "one year", 5: "five years", 10: "ten years"}
_OF_CARE = {
    Care.CLOSE: "Books kept close, target by target",
    Care.STEADY: "Books kept steadily, target by target",
    Care.RESTING: "Books at rest, target by target",
}
_COLUMNS = (
    Column("target", "Target", Unit.SHARE),
    *(Column(f"minutes_{year}", f"Minutes a day, year {year}", Unit.MINUTES) for year in YEARS),
    Column("minutes_mean", "Minutes a day, ten years", Unit.MINUTES),
    *(Column(f"known_{year}", f"Known after {_IN_WORDS[year]}", Unit.COUNT) for year in YEARS),
    Column("until_lasting", "Minutes until an item lasts", Unit.MINUTES),
)


def whole(retained: Retained) -> Picture:
    """Return what each target takes and keeps of the whole library."""
    return _picture(retained, retained.plan.whole, "target", "The whole library, target by target")


def of_care(retained: Retained, care: Care) -> Picture | None:
    """Return what each target takes and keeps of the books of a care; None without any."""
    if care not in {*retained.items.cares, *(each.care for each in retained.unasked)}:
        return None  # a plan takes its time
    plan = next(each for each in retained.plan.by_care if each.care is care)
    return _picture(retained, plan, f"target-{care.value}", _OF_CARE[care])


def _picture(retained: Retained, plan: CarePlan, name: str, title: str) -> Picture:
    now = _nearest(plan, retained.reader.target)
    nothing = not plan.items or not any(each.minutes[0] or each.known[0] for each in plan.targets)
    # Minutes of a low target and of a high one lie far apart; of none there is no logarithm.
    always = all(minutes > 0 for each in plan.targets for minutes in each.minutes)
    scale = Scale.LOG if always else Scale.LINEAR
    if nothing:
        return _nothing(name, title)
    lines = tuple(
        Line(
            f"in year {year}",
            tuple((each.minutes[place], each.known[place] / plan.items) for each in plan.targets),
        )
        for place, year in enumerate(YEARS)
    )
    marked = {now.target: f"{now.target:.0%}, yours"}
    if plan.proposal is not None and not _as_good(plan.proposal, now.target):
        marked[plan.proposal.target] = f"{plan.proposal.target:.0%}, proposed"
    dots = tuple(
        Dot(
            each.minutes[place],
            each.known[place] / plan.items,
            label="" if place else marked[each.target],
        )
        for place in range(len(YEARS))
        for each in plan.targets
        if each.target in marked
    )
    return Picture(
        name,
        title,
        _told(plan, now),
        Table(_COLUMNS, tuple(_row(each) for each in plan.targets)),
        Curves(
            Axis("minutes a day", Unit.NUMBER, scale),
            Axis("share of the items known", Unit.SHARE),
            lines,
            dots,
        ),
    )


def _nothing(name: str, title: str) -> Picture:
    axes = Axis("minutes a day", Unit.NUMBER), Axis("share of the items known", Unit.SHARE)
    told = "There is nothing to plan yet: no book has an item to ask."
    return Picture(name, title, told, Table(_COLUMNS, ()), Curves(*axes, ()))


def _row(each: TargetPlan) -> tuple[float | None, ...]:
    return (each.target, *each.minutes, each.mean_minutes, *each.known, each.until_lasting)


def _nearest(plan: CarePlan, target: float) -> TargetPlan:
    return min(plan.targets, key=lambda each: abs(each.target - target))


def _told(plan: CarePlan, now: TargetPlan) -> str:
    first, *_, last = (_IN_WORDS[year] for year in YEARS)
    return (
        f"At {now.target:.0%} your {counted(plan.items, 'item')} take "
        f"{minutes_in_words(now.minutes[0])} a day in the first year and "
        f"{minutes_in_words(now.minutes[-1])} in the tenth; some {now.known[0]:,.0f} are known "
        f"after {first} and {now.known[-1]:,.0f} after {last}. Without a sitting it would be "
        f"{plan.left_alone[0]:,.0f} and {plan.left_alone[-1]:,.0f}."
    )


def proposal_in_words(plan: CarePlan, target: float) -> str:
    """Return which target is proposed and why, in a sentence or two."""
    found = plan.proposal
    if found is None:
        return (
            "No target is proposed: what is asked lasts already, or the books rest, and a target "
            "would make no difference."
        )
    now, best = _nearest(plan, target), _nearest(plan, found.target)
    alike = f"from {found.alike_from:.0%} to {found.alike_to:.0%} all are alike"
    edge = (
        " It is the last target there is in that direction, and one beyond it might take fewer."
        if found.at_edge
        else ""
    )
    if _as_good(found, now.target):
        if found.alike_from == found.alike_to:
            return f"Your {now.target:.0%} is the target that keeps most per minute.{edge}"
        return (
            f"Your {now.target:.0%} is among the targets that keep most per minute: {alike} within "
            f"what the model can tell.{edge}"
        )
    others = "" if found.alike_from == found.alike_to else f" ({alike})"
    return (
        f"Most is kept per minute at {found.target:.0%}{others}: under it an item takes "
        f"{_minutes(best)} until it lasts by itself, and {_minutes(now)} at the {now.target:.0%} "
        f"you aim for.{edge}"
    )


def _as_good(found: Proposal, target: float) -> bool:
    return found.alike_from <= target <= found.alike_to


def within_in_words(retained: Retained) -> str:
    """Return which targets fit into the minutes the reader has."""
    fits, minutes = retained.plan.within, retained.habits.minutes
    if fits is None:
        return (
            f"Not even the lowest target fits into the {minutes:g} minutes a day you have in the "
            "first year: what is worth most for the time is asked, and the rest waits."
        )
    return f"The {minutes:g} minutes a day you have suffice for any target up to {percent(fits)}."


def _minutes(each: TargetPlan) -> str:
    return "no time" if each.until_lasting is None else minutes_in_words(each.until_lasting)
