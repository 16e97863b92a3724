"""Steps of `cautions.feature`."""

from pytest_bdd import given, parsers, scenarios, then, when

from cards.digest import Commitment
from cards.kinds.base import Attempt, KindName
from service.use_cases.answer import compare

scenarios("cautions.feature")


@given(parsers.parse('a digest with the commitment "{text}"'))
def digest_with(mira, text):
    mira.source = f"# A Book\n\nBy Anonymous\n\n## Commitments\n\n- {text}\n"
    mira.adds()
    assert mira.reports[0].kept.digest().commitments == (Commitment(text),)


@when("the commitment is asked")
def asked(mira):
    (item,) = mira.sitting().items
    assert item.kept.item.kind is KindName.RESTATE
    mira.noted = (item.cue, compare(mira.desk, item.kept.item.id, Attempt()).answered)


@then(parsers.parse("the cue and the answer both say to talk to {whom}"))
def both_say(mira, whom):
    for shown in mira.noted:
        assert f"Talk to {whom}" in shown.caution


@then("neither the cue nor the answer carries a caution")
def none_says(mira):
    assert [shown.caution for shown in mira.noted] == [None, None]
