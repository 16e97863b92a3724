"""Steps of `editing_keeps_memory.feature`."""

from dataclasses import replace
from datetime import timedelta

from pytest_bdd import given, scenarios, then, when

from cards.answers import Grade
from cards.digest import Commitment
from cards.identity import Became
from cards.items import Standing
from cards.kinds.base import KindName
from cards.parts import PartKind
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from service.use_cases.versions import (
    continue_part,
    last_changes,
    list_versions,
    restore_version,
    start_afresh,
)

scenarios("editing_keeps_memory.feature")

REWORDED = "When the tea is poured, I will ask Hanne a question before saying anything of mine."
OTHER = "Walk to the mill and back without speaking, every Sunday in March."
OPPOSITE = (
    "When the tea is poured, I will not ask Hanne one question before saying anything of mine."
)


def kept(mira):
    return open_digest(mira.desk, mira.reports[0].kept.id).kept


def memories(mira):
    return {
        key: (item.kept.memory, item.due_on)
        for key, item in mira.items().items()
        if item.kept.memory is not None
    }


def says(mira, *commitments):
    """Have the digest say these commitments."""
    now = kept(mira)
    digest = replace(now.digest(), commitments=tuple(map(Commitment, commitments)))
    mend_digest(mira.desk, now.id, digest, now.revision)


def second(mira):
    return kept(mira).digest().commitments[1].text


def the_change(mira):
    (change,) = last_changes(mira.desk, kept(mira).id)
    return change


def first_item(mira):
    part = kept(mira).held(PartKind.COMMITMENT)[0]
    return next(
        item.kept
        for item in mira.items().values()
        if item.kept.item.kind is KindName.RESTATE and item.kept.item.part_id == part.id
    )


@given("Mira answered everything that day")
def answered(mira):
    mira.answers_everything(Grade.CLEAR)
    mira.noted = memories(mira)
    assert len(mira.noted) == 5


@when("she words the first commitment a little otherwise")
def rewords(mira):
    says(mira, REWORDED, second(mira))


@when("she replaces the first commitment by quite another")
def replaces(mira):
    says(mira, OTHER, second(mira))


@when("she has the first commitment say the opposite")
def opposite(mira):
    says(mira, OPPOSITE, second(mira))


@when("she says that it is the same one after all")
def the_same_after_all(mira):
    change, now = the_change(mira), kept(mira)
    continue_part(mira.desk, now.id, change.part.id, change.before.id, now.revision)


@when("she says that it is another one")
def another_one(mira):
    change, now = the_change(mira), kept(mira)
    start_afresh(mira.desk, now.id, change.part.id, now.revision)


@when("she rewords, removes and replaces parts over a month")
def a_month_of_edits(mira):
    says(mira, REWORDED, second(mira))
    mira.now += timedelta(days=9)
    says(mira, OTHER)
    mira.now += timedelta(days=12)
    digest = kept(mira).digest()
    shorter = replace(digest, points=digest.points[1:], theme="Quite other words.", quotations=())
    mend_digest(mira.desk, kept(mira).id, shorter)
    mira.now += timedelta(days=8)


@when("she brings the first version back")
def brings_back(mira):
    first = list_versions(mira.desk, kept(mira).id).entries[-1]
    assert first.revision == 1
    restore_version(mira.desk, kept(mira).id, 1, kept(mira).revision)


@when("she rewords the first commitment three times, further each time")
def three_times(mira):
    for words in (
        REWORDED,
        "When the tea is poured, I will ask Hanne a question and wait for what she says.",
        "At tea I will ask Hanne how she is and wait for what she says to it.",
    ):
        says(mira, words, second(mira))


@when("she types its first words back in")
def types_back(mira):
    says(mira, mira.reports[0].kept.digest().commitments[0].text, second(mira))


@then("the page says it was reworded and keeps what she answered")
def told_reworded(mira):
    assert the_change(mira).became is Became.REWORDED


@then("the page says it was replaced and starts afresh")
def told_replaced(mira):
    change = the_change(mira)
    assert change.became is Became.REPLACED
    assert change.before.id != change.part.id


@then("every memory and every due day is as it was")
def as_it_was(mira):
    assert memories(mira) == mira.noted


@then("the new one is unasked")
def unasked(mira):
    assert first_item(mira).standing is Standing.UNASKED


@then("the new words have the old history")
def old_history(mira):
    assert kept(mira).digest().commitments[0].text == OTHER
    item = first_item(mira)
    assert (item.memory, item.memory.due_on) == mira.noted[item.item.id]


@then("the digest says what it said in January")
def as_in_january(mira):
    assert kept(mira).digest() == mira.reports[0].kept.digest()
