"""Steps of `what_to_do.feature`."""

import re
from datetime import date

import pytest
from pytest_bdd import given, parsers, scenarios, then, when

from cards.answers import Grade
from cards.commitments import Act, Outcome, Pace, Pressing, pressing
from cards.commitments.telling import measure_in_words
from cards.commitments.telling import told as told_of
from cards.errors import Invalid
from cards.kinds.base import KindName
from cards.parts import PartKind
from features.keeping_steps import DAY, days_to, told
from service.use_cases.commitments import open_commitment
from service.use_cases.decide import withdraw_decision
from service.use_cases.items import item_history
from service.use_cases.library import open_digest
from service.use_cases.versions import list_versions

scenarios("what_to_do.feature")

BLAME = re.compile(
    r"(?i)\b(fail\w*|fault|blame\w*|neglect\w*|broke\w*|should|ought|must|again|only|still|bad\w*"
    r"|sorry|disappoint\w*|lazy|forgot\w*)\b"
)
"""Words that reproach: our own list, no published source."""
WORSE = (Pace.ON_COURSE, Pace.SLIPPING, Pace.STALLED)
"""From the best pace to the worst; paused is as good as the best."""
BROTHER = "Twice a week I will write to my brother."


# What she says and decides


@when(parsers.parse("of the first two weeks she says: {what}"))
def says_of_two_weeks(keeping, what):
    for day in (date(2026, 1, 11), date(2026, 1, 18)) if what == "missed" else ():
        keeping.mira.on(day)
        keeping.says(Outcome.MISSED)


@given(told("she said it over in her sittings until {last:Day}"))
def said_over_until(keeping, last):
    for day in days_to(keeping.made_on, last):
        keeping.mira.on(day)
        for view in keeping.mira.sitting().items:
            keeping.mira.answer(view.kept.item.id, Grade.CLEAR)
    keeping.noted = restate(keeping)
    assert keeping.noted.memory.answers > 1


def restate(keeping):
    """Look at the item that asks her to say it over."""
    (found,) = (
        view.kept
        for view in keeping.mira.items().values()
        if view.kept.item.kind is KindName.RESTATE
    )
    return found


@when(told('on {on:Day} she rewords it: "{words}"'))
def rewords(keeping, on, words):
    keeping.mira.on(on)
    keeping.decides(Act.REWORD, words=words)


@when(told("on {on:Day} she takes that decision back"))
def takes_decision_back(keeping, on):
    keeping.mira.on(on)
    withdraw_decision(keeping.desk, keeping.decision.id)


@when(told("on {on:Day} she halves it"))
def halves(keeping, on):
    keeping.mira.on(on)
    keeping.decides(Act.HALVE)


@given(told("on {on:Day} she kept both"))
def kept_both(keeping, on):
    keeping.mira.on(on)
    for which in (0, 1):
        keeping.says(Outcome.KEPT, which=which)


@when(told("on {on:Day} she falls ill, and pauses the letters to her sister until {until:Day}"))
def falls_ill(keeping, on, until):
    keeping.mira.on(on)
    keeping.decides(Act.PAUSE, 1, until=until, words="In bed.")


@when(told('on {on:Day} she lets it go: "{reason}"'))
def lets_go(keeping, on, reason):
    keeping.mira.on(on)
    keeping.decides(Act.RELEASE, words=reason)


@when(told("on {on:Day} she would {act:w} it without a word"))
def would_decide(keeping, on, act):
    keeping.mira.on(on)
    with pytest.raises(Invalid) as refusal:
        keeping.decides(Act(act))
    keeping.noted = str(refusal.value)


# What she is met with


@then(parsers.parse('she is asked "{question}"'))
def is_asked(keeping, question):
    assert keeping.held().offer.question.value == question


@then(parsers.re(r"she may (?P<acts>reword.*) it"))
def may(keeping, acts):
    offered = [str(each) for each in keeping.held().offer.acts]
    assert offered == re.split(r", | or ", acts)


@then("nothing is offered yet")
def nothing_offered(keeping):
    assert keeping.held().offer.acts == ()


@then(parsers.parse('half of it is "{words}"'))
def half_is(keeping, words):
    assert measure_in_words(keeping.held().offer.halved) == words


@then("no word she is told blames her")
def no_blame(keeping):
    for day in days_to(keeping.made_on, date(2026, 3, 31)):
        held = keeping.held(on=day)
        said = [told_of(held.stand), *([held.offer.question.value] if held.offer else [])]
        assert not BLAME.search(" ".join(said)), said


@then("the digest says the new words, and once said the old ones")
def digest_says_new(keeping):
    words = keeping.decision.words
    digest = open_digest(keeping.desk, keeping.digests[0]).kept
    assert [each.text for each in digest.held(PartKind.COMMITMENT)] == [words]
    assert digest.revision == 2
    assert len(list_versions(keeping.desk, digest.id).entries) == 2


@then("the digest says the old words again")
def digest_says_old(keeping):
    digest = open_digest(keeping.desk, keeping.digests[0]).kept
    assert [each.text for each in digest.held(PartKind.COMMITMENT)] == [BROTHER]


@then("it is recalled as well as it was, and its history is kept")
def memory_is_kept(keeping):
    now = restate(keeping)
    assert (now.item.id, now.memory) == (keeping.noted.item.id, keeping.noted.memory)
    history = item_history(keeping.desk, now.item.id).answers
    assert len(history) == keeping.noted.memory.answers


@then("she finds what she said before, and the words it had then")
def finds_history(keeping):
    found = open_commitment(keeping.desk, keeping.ids[0])
    assert [each.day for each in found.check_ins] == [date(2026, 1, 7)]
    assert found.held.stand.life.former == (BROTHER,)
    assert found.held.kept.text == keeping.decision.words


@then(told("on no day until {last:Day} do the letters to her sister stand worse than the others"))
def never_worse(keeping, last):
    brother, sister = (keeping.paces(keeping.made_on, last, which) for which in (0, 1))
    assert Pace.PAUSED in sister
    for one, other in zip(sister, brother, strict=True):
        assert one is Pace.PAUSED or WORSE.index(one) <= WORSE.index(other)


@then(told("on {day:Day} the letters to her sister are paused, and ask for no word"))
def sister_is_paused(keeping, day):
    stand = keeping.stand(day, 1)
    assert stand.pace is Pace.PAUSED
    assert pressing(stand) is Pressing.NOT_AT_ALL


@then(told("on {day:Day} they are asked again"))
def asked_again(keeping, day):
    assert keeping.stand(day - DAY, 1).pace is Pace.PAUSED
    assert keeping.stand(day, 1).pace is Pace.ON_COURSE
    assert pressing(keeping.stand(day, 1)) > Pressing.NOT_AT_ALL


@then("it is said over no more, and stays on record")
def said_over_no_more(keeping):
    for day in days_to(date(2026, 1, 21), date(2026, 2, 28)):
        keeping.mira.on(day)
        assert keeping.restated() == set()
    (decision,) = open_commitment(keeping.desk, keeping.ids[0]).decisions
    assert decision.act is Act.RELEASE


@then(parsers.parse('she is told "{refusal}"'))
def is_told(keeping, refusal):
    assert keeping.noted == refusal


@then("nothing is decided")
def nothing_decided(keeping):
    assert open_commitment(keeping.desk, keeping.ids[0]).decisions == ()


@then(parsers.parse("it carries its caution: {words}"))
def carries_caution(keeping, words):
    assert words in keeping.held().caution.lower()
