"""Steps of `fitted.feature`."""

import json
import re
from contextlib import ExitStack
from dataclasses import dataclass, field
from datetime import date, timedelta
from itertools import pairwise
from uuid import UUID

import pytest
from lxml import html
from pytest_bdd import given, parsers, scenarios, then, when

from cards.answers import Answer
from cards.schedule import DEFAULT_WEIGHTS, Schedule
from features.winter_steps import AS_FORETOLD, MUCH_FASTER, Doors
from service.use_cases.items import list_items
from service.use_cases.preferences import show_reader

scenarios("fitted.feature")


@dataclass
class Before(Doors):
    """The doors, and how all was before the machine tidied.

    Attributes:
        due: the day each item was due.
        answers: what was answered.
        judged: what the page said of the predictions.
        days: the due days after each day it tidied on.
    """

    due: dict[UUID, date] = field(default_factory=dict)
    answers: dict[UUID, list[Answer]] = field(default_factory=dict)
    judged: str = ""
    days: list[dict[UUID, date]] = field(default_factory=list)


@pytest.fixture
def doors(mira):
    with ExitStack() as opened:
        yield Before(mira, opened)


@given("Mira kept books for a winter, and forgot as was foretold")
def like_them(doors):
    doors.keeps_for_a_winter(AS_FORETOLD)
    doors.due = due_days(doors)


@given("Mira kept books for a winter, and forgot much faster than was foretold")
def unlike_them(doors):
    doors.keeps_for_a_winter(MUCH_FASTER)
    doors.due = due_days(doors)
    doors.answers = answers(doors)
    doors.judged = judged(page(doors))


@when("the machine tidies")
@when("the machine tidies again")
def tidies(doors):
    doors.mira.now += timedelta(hours=1)
    doors.seen = json.loads(doors.says("tidy", "--json"))["weights"]


@when("the machine tidies on the days to come")
def tidies_on(doors):
    doors.days = [due_days(doors)]
    while doors.seen["waiting"]:
        doors.mira.now += timedelta(days=1)
        tidies(doors)
        doors.days.append(due_days(doors))


def page(doors):
    return html.document_fromstring(doors.page("/retention/predictions"))


def weights_told(doors):
    """Return what the page says of the weights, and the table of them: a row for each set."""
    section = page(doors).find(".//section[@aria-labelledby='weights']")
    rows = [[cell.text for cell in row[1:]] for row in section.findall(".//table//tr")]
    names, *numbers = rows
    sets = dict(zip(names, zip(*numbers, strict=True), strict=True))
    return " ".join(section.text_content().split()), sets


def judged(seen):
    """Return what the page says of how the predictions were."""
    return " ".join(seen.find(".//dl").text_content().split())


def kept_items(doors):
    return [view.kept for view in list_items(doors.desk, limit=500).items]


def due_days(doors):
    """Return the day each item is due."""
    return {each.item.id: each.memory.due_on for each in kept_items(doors) if each.memory}


def answers(doors):
    """Return every answer of hers."""
    with doors.desk.store.reading() as work:
        items = [each.item.id for each in kept_items(doors)]
        return {item: work.answers.of_item(doors.desk.reader, item) for item in items}


def own_schedule(doors):
    weighting = show_reader(doors.desk).weighting
    assert weighting.general != DEFAULT_WEIGHTS
    assert weighting.by_kind == ()
    return Schedule(weights=weighting.general)


@then("the published weights are in force, and the page says how many answers are still to come")
def too_few(doors):
    said, sets = weights_told(doors)
    assert not doors.seen["considered"]
    assert "In force are the published default weights" in said
    assert "when 100 answers tell of forgetting; 100 are still to come" in said
    assert list(sets) == ["Published"]


@then("the published weights are in force, and the page says that hers foresaw no better")
def no_better(doors):
    said, sets = weights_told(doors)
    assert (doors.seen["considered"], doors.seen["adopted"]) == (True, False)
    assert "In force are the published default weights" in said
    assert doors.seen["sentences"][0] in said
    proposed, in_force, gain, error = losses(said)
    assert in_force - proposed == pytest.approx(gain, abs=0.0002)
    assert gain < 2 * error
    assert list(sets) == ["Published"]
    assert show_reader(doors.desk).weighting.general == DEFAULT_WEIGHTS


def losses(said):
    """Return both losses, the difference and its error, as the page says them."""
    told = re.search(
        r"log loss ([\d.]+) against ([\d.]+), a difference of (-?[\d.]+) give or take ([\d.]+)",
        said,
    )
    return tuple(map(float, told.groups()))


@then("no due day waits to be moved")
def none_waits(doors):
    assert (doors.seen["moved"], doors.seen["waiting"]) == (0, 0)
    assert due_days(doors) == doors.due


@then("weights of her own are in force, and the page says by how much better they foresaw")
def in_force(doors):
    said, sets = weights_told(doors)
    assert "In force since 5 April 2026 are weights fitted to your own answers." in said
    proposed, before, gain, error = losses(said)
    assert before - proposed == pytest.approx(gain, abs=0.0002)
    assert gain > error > 0
    own = own_schedule(doors).weights
    assert sets["In force"] == tuple(f"{each:.4f}" for each in own)


@then("the published ones are told as in force before, and stand beside hers")
def former(doors):
    said, sets = weights_told(doors)
    assert "In force before The published default weights, until 5 April 2026." in said
    assert sets["Published"] == tuple(f"{each:.4f}" for each in DEFAULT_WEIGHTS)


@then("nothing of her answers was touched, nor how what was foretold is judged")
def untouched(doors):
    assert answers(doors) == doors.answers
    assert judged(page(doors)) == doors.judged


@then("of each item recall is foreseen by her own weights")
def foreseen(doors):
    schedule, today = own_schedule(doors), doors.mira.now.date()
    for view in list_items(doors.desk, limit=500).items:
        memory = schedule.fold(view.kept.item.id, doors.answers[view.kept.item.id])
        assert view.recall == pytest.approx(schedule.recall(memory, today), rel=1e-9)


@then(parsers.parse("{most:d} due days were moved at most, and some wait"))
def moved_at_most(doors, most):
    assert 0 < doors.seen["moved"] <= most
    assert doors.seen["waiting"] > 0
    moved = [each for each, day in due_days(doors).items() if day != doors.due[each]]
    assert len(moved) == doors.seen["moved"]
    assert f"{doors.seen['waiting']} due days wait to be moved" in weights_told(doors)[0]
    doors.due = due_days(doors)


@then("not one more was moved, and nothing was fitted anew")
def nothing_more(doors):
    assert (doors.seen["considered"], doors.seen["moved"]) == (False, 0)
    assert due_days(doors) == doors.due


@then("every due day is the one her own weights foresee")
def all_moved(doors):
    schedule = own_schedule(doors)
    for item, given_answers in answers(doors).items():
        assert doors.days[-1][item] == schedule.fold(item, given_answers).due_on


@then(parsers.parse("no day moved more than {most:d}"))
def few_a_day(doors, most):
    changed = [
        sum(before[each] != after[each] for each in before)
        for before, after in pairwise(doors.days)
    ]
    assert changed
    assert 0 < max(changed) <= most
