"""Steps of `sitting.feature`."""

from datetime import timedelta
from itertools import pairwise
from random import Random
from uuid import uuid4

from pytest_bdd import given, parsers, scenarios, then, when

from cards.answers import Grade, graded_first
from cards.items import Standing, occasion_of
from cards.kinds.base import Asked, Attempt, KindName
from cards.kinds.words import stems
from cards.parts import Care, PartKind
from cards.sitting import Candidate, pages_of
from service.use_cases.answer import compare, record_answer, show_answer
from service.use_cases.demo_answers import invented
from service.use_cases.items import item_history, show_item
from service.use_cases.leave_out import leave_out, take_in
from service.use_cases.library import open_digest
from service.use_cases.links import GivenLink, drop_link, link
from service.use_cases.mend_digest import remove_digest
from service.use_cases.minutes import set_minutes_today
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.price import price_of_kept
from service.use_cases.recording import GivenAnswer
from service.use_cases.sheets import Entered, enter_sheet, print_sheet

scenarios("sitting.feature")

WALDEN = """\
# Walden

Henry David Thoreau · 320 pages

Finished: 2 January 2026

## Summary

A man goes to the woods to live simply and to wake up. What he owns turns out to own him; what
he gives up is given back as mornings.

## Points

1. Most people lead lives of quiet desperation among their possessions. (p. 8)
2. The cost of a thing is the amount of life exchanged for it. (p. 30)
3. The hut by the pond is built for twenty-eight dollars. (p. 48)
4. He leaves the woods for as good a reason as he went there. (p. 313)

## Commitments

1. After every purchase above ten pounds I will write down how many hours of work it cost me.

## Quotations

> Our life is frittered away by detail. Simplify, simplify, and let your affairs be as two or
> three. (p. 91)
"""

MORE_QUOTATIONS = """
> There is some one else than Silas here, and she has come in out of the snow. (p. 112)
"""


@given('Mira keeps "Silas Marner" and "Walden"')
def keeps_two(mira):
    mira.at(5, "January")
    mira.source += MORE_QUOTATIONS
    mira.adds()
    mira.source, mira.file = WALDEN, "walden.docx"
    mira.adds()


@given("she let all of it in on the first day, and a month went by")
def let_all_in(mira):
    set_preferences(mira.desk, Preferences(unasked_a_day=100, minutes=120))
    for _ in range(6):
        mira.answers_everything(Grade.CLEAR)
        mira.now += timedelta(days=1)
    mira.now += timedelta(days=30)
    set_preferences(mira.desk, Preferences(minutes=10))


@given("Mira answered everything for some weeks")
def some_weeks(mira):
    keeps_two(mira)
    mira.noted = []
    for _ in range(40):
        for _ in range(30):
            items = mira.sitting().items
            if not items:
                break
            item = items[0].kept
            says_nothing = compare(mira.desk, item.item.id, Attempt())
            attempt = invented(Random(1), items[0], says_nothing.answered, Grade.VIVID)
            compared = compare(mira.desk, item.item.id, attempt)
            mira.noted.append((item.item.id, compared.asked, compared.graded_first))
            mira.answer(item.item.id, Grade.HAZY)
        mira.now += timedelta(days=1)


# What is asked, and what she says


def digest_of(mira, title):
    return next(each.kept for each in mira.reports if each.kept.title == title)


def part_with(mira, words, kind):
    for report in mira.reports:
        kept = open_digest(mira.desk, report.kept.id).kept
        for part in kept.held(kind):
            if words in part.text:
                return kept, part
    raise AssertionError(f"nobody wrote {words}")


def ask(mira, kind, part_id=None):
    """Look at one item whether it is due or not, as if it were asked now."""
    found = [
        item
        for item in mira.items().values()
        if item.kept.item.kind is kind and part_id in (None, item.kept.item.part_id)
    ]
    mira.noted = found[0]
    return mira.noted


def says(mira, attempt):
    mira.attempt = attempt
    mira.compared = compare(mira.desk, mira.noted.kept.item.id, attempt)
    return mira.compared.mark.grade


@when('she is asked what comes after "Fifteen years of weaving"')
def asked_next(mira):
    kept, part = part_with(mira, "Fifteen years of weaving", PartKind.POINT)
    following = kept.held(PartKind.POINT)[part.number]
    ask(mira, KindName.NEXT, following.id)
    mira.following = following


@then("the cue shows that point and nothing of the next")
def cue_shows_the_point_before(mira):
    cue = mira.noted.cue
    assert "Fifteen years of weaving" in cue.words
    assert len(stems(cue.words) & stems(mira.following.text)) <= 1


@when('she says "Dunstan takes the gold and Raveloe begins to pity him"')
def says_dunstan(mira):
    says(mira, Attempt(words="Dunstan takes the gold and Raveloe begins to pity him"))


@then(parsers.parse("{one:w} or {other:w} is suggested"))
def either_is_suggested(mira, one, other):
    assert mira.compared.mark.grade.value in (one, other), mira.compared.mark.reason


@then("vivid is suggested")
def vivid_is_suggested(mira):
    assert mira.compared.mark.grade is Grade.VIVID, mira.compared.mark.reason


@when('she is asked the order of the points of "Silas Marner"')
def asked_the_order(mira):
    kept = digest_of(mira, "Silas Marner")
    mira.noted = next(
        item
        for item in mira.items().values()
        if item.kept.item.kind is KindName.ORDER and item.kept.item.digest_id == kept.id
    )


@then("they are shown, and not in their order")
def shown_shuffled(mira):
    kept = digest_of(mira, "Silas Marner")
    shown = [mark.text for mark in mira.noted.cue.landmarks]
    points = [part.text for part in kept.held(PartKind.POINT)]
    assert sorted(shown) == sorted(points)
    assert shown != points


def right_order(mira):
    return compare(mira.desk, mira.noted.kept.item.id, Attempt()).answered.order


@when("she puts all four in order")
def puts_in_order(mira):
    says(mira, Attempt(order=right_order(mira)))


@when("she turns two of them round")
def turns_two(mira):
    one, two, *rest = right_order(mira)
    says(mira, Attempt(order=(two, one, *rest)))


@when('she is asked to complete "The gods of the hearth exist for us still."')
def asked_to_complete(mira):
    _, part = part_with(mira, "gods of the hearth", PartKind.QUOTATION)
    ask(mira, KindName.COMPLETE, part.id)


@then("no word left out stands anywhere in the cue")
def left_out_words_are_not_shown(mira):
    cue = mira.noted.cue
    assert cue.asked == (Asked.BLANKS,)
    answered = compare(mira.desk, mira.noted.kept.item.id, Attempt()).answered
    assert len(answered.blanks) == len(cue.pieces) - 1 > 0
    shown = stems(" ".join([cue.words, *cue.pieces]))
    assert not shown & stems(" ".join(answered.blanks))


@when("she gives every word left out, in capitals")
def gives_every_word(mira):
    answered = compare(mira.desk, mira.noted.kept.item.id, Attempt()).answered
    says(mira, Attempt(blanks=tuple(word.upper() for word in answered.blanks)))


@when('she is asked whose words "There is some one else than Silas here" are')
def asked_whose_words(mira):
    _, part = part_with(mira, "some one else than Silas", PartKind.QUOTATION)
    ask(mira, KindName.SOURCE, part.id)


@then("the name Silas is veiled")
def name_is_veiled(mira):
    assert "Silas" not in mira.noted.cue.words
    assert "out of the snow" in mira.noted.cue.words


@then("the choices are books of her own")
def choices_are_her_own(mira):
    titles = {report.kept.title for report in mira.reports}
    cue = mira.noted.cue
    assert {book.title for book in cue.choices} <= titles
    assert cue.choices or cue.asked == (Asked.WORDS,)


@when('she finds that the second point of "Silas Marner" speaks to "Walden"')
def finds_a_link(mira):
    kept, other = digest_of(mira, "Silas Marner"), digest_of(mira, "Walden")
    point = kept.held(PartKind.POINT)[1]
    why = "What one owns comes to own one."
    mira.link = link(mira.desk, GivenLink(uuid4(), kept.id, point.id, other.id, why))
    mira.point = point


@then("she is asked which other book speaks to it")
def asked_across(mira):
    cue = ask(mira, KindName.ACROSS, mira.point.id).cue
    assert mira.point.text in cue.words
    assert "Walden" not in cue.words + cue.question + cue.heading


@when('she names "Walden, by Thoreau"')
def names_walden(mira):
    says(mira, Attempt(words="Walden, by Thoreau"))
    mira.answer(mira.noted.kept.item.id, Grade.CLEAR)


@when('she takes "Walden" out of her library')
def takes_walden_out(mira):
    remove_digest(mira.desk, digest_of(mira, "Walden").id)


@then("it is not asked any more")
def not_asked_any_more(mira):
    assert mira.noted.kept.item.id not in mira.items()


@when("she drops the link")
def drops_the_link(mira):
    mira.source, mira.file = WALDEN, "walden.docx"
    mira.adds()
    assert mira.noted.kept.item.id in mira.items()
    drop_link(mira.desk, digest_of(mira, "Silas Marner").id, mira.link.id)


@then("its history is kept")
def history_is_kept(mira):
    assert mira.noted.kept.item.id not in mira.items()
    assert len(item_history(mira.desk, mira.noted.kept.item.id).answers) == 1


# The mark and the grade


@when('she recalls the theme of "Silas Marner" in words of her own')
def recalls_the_theme(mira):
    mira.noted = mira.items()[mira.theme().item.id]
    assert mira.noted.title == "Silas Marner"
    says(mira, Attempt(words="He is driven out by treachery and a drawn lot and hoards gold."))


@then("some of its ideas are ticked and some are not")
def some_ticked(mira):
    found = [idea.found for idea in mira.compared.mark.ideas]
    assert any(found)
    assert not all(found)


@when("she ticks them all")
def ticks_all(mira):
    every = frozenset(range(1, len(mira.compared.mark.ideas) + 1))
    said = mira.attempt.words
    assert says(mira, Attempt(words=said, ticked=every))
    mira.ticked = every


@when("she grades it hazy")
def grades_hazy(mira):
    given_answer = GivenAnswer(uuid4(), mira.noted.kept.item.id, Grade.HAZY, attempt=mira.attempt)
    mira.answers.append(record_answer(mira.desk, given_answer))


@then("hazy is what counts, vivid stands beside it, and her ticks are kept")
def both_are_kept(mira):
    kept = show_answer(mira.desk, mira.answers[-1].answer.answer.id).answer.answer
    assert (kept.grade, kept.suggested, kept.ticked) == (Grade.HAZY, Grade.VIVID, mira.ticked)


@when('she says of the theme of "Walden" that he did not live simply and did not wake')
def says_the_opposite(mira):
    walden = digest_of(mira, "Walden")
    ask(mira, KindName.THEME, walden.held(PartKind.THEME)[0].id)
    words = (
        "A man goes to the woods and does not live simply and does not wake up. What he owns "
        "never owns him; what he gives up is never given back as mornings."
    )
    says(mira, Attempt(words=words))


@then("about one answer in ten was graded before its mark was shown")
def one_in_ten(mira):
    firsts = sum(first for *_, first in mira.noted)
    assert len(mira.noted) > 60
    assert 0.02 <= firsts / len(mira.noted) <= 0.25


@then("it is the same ones on another device")
def the_same_ones(mira):
    assert all(graded_first(item, asked) is first for item, asked, first in mira.noted)


# The minutes


@when(parsers.parse("she has {minutes:d} minutes"))
@when(parsers.parse("she comes back with {minutes:d} minutes"))
def has_minutes(mira, minutes):
    set_preferences(mira.desk, Preferences(minutes=minutes))


@when(parsers.parse("she has {minutes:d} minutes more"))
def has_more(mira, minutes):
    set_minutes_today(mira.desk, mira.sitting().minutes + minutes)


@then(parsers.parse("today's sitting takes about {minutes:d} minutes"))
@then(parsers.parse("the sitting takes about {minutes:d} minutes"))
def takes_about(mira, minutes):
    sitting = mira.sitting()
    assert sitting.minutes == minutes
    assert 0.6 * 60 * minutes <= sitting.seconds <= 60 * minutes + 60


@when(parsers.parse("she sits down every day for two weeks, {minutes:d} minutes each"))
def two_weeks(mira, minutes):
    set_preferences(mira.desk, Preferences(minutes=minutes))
    mira.noted = []
    for _ in range(14):
        asked = []
        waiting = any(i.kept.standing is Standing.UNASKED for i in mira.items().values())
        while items := mira.sitting().items:
            asked.append(items[0].kept)
            mira.answer(items[0].kept.item.id, Grade.CLEAR)
        mira.noted.append((asked, waiting))
        mira.now += timedelta(days=1)


@then("every day a commitment was asked")
def a_commitment_every_day(mira):
    for asked, _ in mira.noted:
        assert any(kept.item.kind is KindName.RESTATE for kept in asked)


@then("something unasked was asked every day that anything unasked could be")
def something_unasked_every_day(mira):
    for asked, waiting in mira.noted:
        assert any(kept.memory is None for kept in asked) or not waiting


@then("no two items of one book follow each other while another has some left")
def books_take_turns(mira):
    books = [item.kept.item.digest_id for item in mira.sitting().items]
    for place, (one, other) in enumerate(pairwise(books)):
        assert one != other or set(books[place:]) == {one}


@when("she answers everything that is asked in 20 minutes")
def answers_twenty_minutes(mira):
    set_preferences(mira.desk, Preferences(minutes=20))
    mira.noted = []
    while items := mira.sitting().items:
        kept = items[0].kept
        digest = open_digest(mira.desk, kept.item.digest_id).kept
        mira.noted.append(pages_of(Candidate(kept, occasion_of(kept, digest))))
        mira.answer(kept.item.id, Grade.CLEAR)


@then("no page she saw showed what a later one asked")
def nothing_was_given_away(mira):
    assert len(mira.noted) > 5
    for place, read in enumerate(mira.noted):
        assert not any(read.give_away(later) for later in mira.noted[place + 1 :])


@then("she is told when all will be level again")
def told_when_level(mira):
    sitting = mira.sitting()
    assert sitting.away is not None
    assert sitting.away.level_on is not None
    assert sitting.away.level_on > sitting.day


@when("she leaves the first item out for today")
def leaves_out(mira):
    mira.noted = mira.sitting().items[0].kept.item.id
    leave_out(mira.desk, mira.noted)


def asked_ids(mira):
    return [item.kept.item.id for item in mira.sitting().items]


@then("it is not asked today")
def not_asked_today(mira):
    assert mira.noted not in asked_ids(mira)
    assert mira.sitting().left_out == (mira.noted,)


@then("it is asked tomorrow")
def asked_tomorrow(mira):
    mira.now += timedelta(days=1)
    assert mira.noted in asked_ids(mira)
    mira.now -= timedelta(days=1)


@when("she takes it in again")
def takes_in_again(mira):
    take_in(mira.desk, mira.noted)


@then("it may be asked today")
def may_be_asked(mira):
    assert mira.noted in asked_ids(mira)


@when("she answers two items on her telephone")
def answers_two(mira):
    for _ in range(2):
        mira.answer(asked_ids(mira)[0], Grade.CLEAR)


@then("her laptop asks what the telephone would have asked next")
def another_device(mira):
    asked = asked_ids(mira)
    assert asked
    assert asked == asked_ids(mira)
    answered = {recorded.item.item.id for recorded in mira.answers}
    assert not answered & set(asked)


# The price


@then('keeping "Walden" close costs more a day than keeping it steadily')
def close_costs_more(mira):
    mira.noted = price_of_kept(mira.desk, digest_of(mira, "Walden").id)
    close, steady = mira.noted[Care.CLOSE], mira.noted[Care.STEADY]
    assert close.minutes_a_day[0] > steady.minutes_a_day[0] > 0


@then("the first year costs more than the fifth")
def first_year_costs_more(mira):
    for care in (Care.CLOSE, Care.STEADY):
        years = mira.noted[care].minutes_a_day
        assert years[0] > years[-1] > 0


# Paper


@when("she has today's sitting printed")
def has_it_printed(mira):
    mira.noted = print_sheet(mira.desk)
    assert mira.noted.lines


@when("she enters the grades of all but one at night")
def enters_grades(mira):
    mira.now += timedelta(hours=3)
    mira.entered = {line.item_id: Entered(Grade.CLEAR) for line in mira.noted.lines[1:]}
    assert enter_sheet(mira.desk, mira.noted.sheet.id, mira.entered) == len(mira.entered)


@then("they are kept, and the one is still asked")
def they_are_kept(mira):
    for item in mira.entered:
        assert show_item(mira.desk, item).kept.memory.answers == 1
    assert show_item(mira.desk, mira.noted.lines[0].item_id).kept.memory is None


@when("the form is sent once more")
def sent_once_more(mira):
    mira.fresh = enter_sheet(mira.desk, mira.noted.sheet.id, mira.entered)


@then("nothing is counted twice")
def nothing_twice(mira):
    assert mira.fresh == 0
    they_are_kept(mira)
