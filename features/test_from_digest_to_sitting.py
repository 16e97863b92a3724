"""Steps of `from_digest_to_sitting.feature`."""

from datetime import UTC, date, datetime, timedelta
from uuid import uuid4

from pytest_bdd import given, parsers, scenarios, then, when

from cards.answers import Answer, Grade
from cards.kinds.base import Asked, KindName
from cards.kinds.words import content_words, numbers, stems
from cards.parts import PartKind
from cards.schedule import Schedule
from service.use_cases.add_digest import Status
from service.use_cases.answer import record_answer, show_answer, take_back
from service.use_cases.items import item_history
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import place_quotations, unplaced
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.recording import GivenAnswer

scenarios("from_digest_to_sitting.feature")

NO_PLACES = """\
# Walks by the River

Anonymous

## Gist

A walker learns to see the same bank a new way each day, and stays.

## Ideas

- The river is never the same.
- The walker is not either.

## Words to keep

> I went out to see the water, and it was not the water I had seen.

> What is near is the last thing we look at.

> Stay, and it will come by.
"""


ASK_THE_POINTS = (KindName.THEME, KindName.NEXT, KindName.ORDER)


def kinds(mira) -> list[KindName]:
    return [item.kept.item.kind for item in mira.sitting().items]


def first_of(mira, kind: KindName):
    return next(item for item in mira.sitting().items if item.kept.item.kind is kind).kept.item.id


def due_days(mira) -> dict[object, date]:
    return {key: item.due_on for key, item in mira.items().items() if item.kept.memory}


@given('Mira\'s digest of "Silas Marner", written in a word processor')
def written(mira):
    mira.file = "silas-marner.docx"


@given("Mira's digest of a book whose quotations have no page and no point")
def written_without_places(mira):
    mira.source, mira.file = NO_PLACES, "walks.docx"


@given(parsers.parse("she lets in {count:d} unasked items a day"))
def lets_in(mira, count):
    set_preferences(mira.desk, Preferences(unasked_a_day=count))


@given("Mira lives in London, where her day turns over at 4 in the morning")
def in_london(mira):
    set_preferences(mira.desk, Preferences(time_zone="Europe/London", turns_at=4))


@given("Mira answered the theme clear on 5 January and clear on 20 January")
def answered_twice(mira):
    for day in (5, 20):
        mira.at(day, "January")
        mira.answer(mira.theme().item.id, Grade.CLEAR)


@given("she answered everything clear")
def all_clear(mira):
    mira.answers_all_of_it(Grade.CLEAR)
    mira.noted = due_days(mira)


@when(parsers.parse("she adds it on the evening of {day:d} {month} 2026"))
def adds_it(mira, day, month):
    mira.at(day, month)
    mira.adds()


@then("she is asked a commitment that day, and more of other kinds")
def several_kinds(mira):
    assert KindName.RESTATE in kinds(mira)
    assert len(set(kinds(mira))) > 3


@when("she finds the first vivid, the second clear, and the third blank")
def three_grades(mira):
    asked = [item.kept.item.id for item in mira.sitting().items]
    mira.noted = dict(zip((Grade.VIVID, Grade.CLEAR, Grade.BLANK), asked, strict=False))
    for grade, item in mira.noted.items():
        mira.answer(item, grade)
    while len(items := mira.sitting().items) > 1:
        mira.answer(items[0].kept.item.id, Grade.CLEAR)


@when("the third comes back clear when it comes round again")
def comes_back(mira):
    (again,) = mira.sitting().items
    assert again.kept.item.id == mira.noted[Grade.BLANK]
    mira.answer(again.kept.item.id, Grade.CLEAR)


@then("the three come back on different days, the forgotten one first")
def apart(mira):
    due = due_days(mira)
    blank, clear, vivid = (
        due[mira.noted[grade]] for grade in (Grade.BLANK, Grade.CLEAR, Grade.VIVID)
    )
    assert date(2026, 1, 5) < blank < clear < vivid
    mira.now += blank - date(2026, 1, 5)
    assert mira.noted[Grade.BLANK] in {item.kept.item.id for item in mira.sitting().items}


@when("she draws a blank on the first item twice running")
def blank_twice(mira):
    mira.noted = mira.sitting().items[0].kept.item.id
    mira.answer(mira.noted, Grade.BLANK)
    mira.answer(mira.noted, Grade.BLANK)


@then("it is still the last of that day's sitting")
def still_last(mira):
    items = mira.sitting().items
    assert len(items) > 1
    assert items[-1].kept.item.id == mira.noted


@when("she finds it hazy")
def hazy(mira):
    mira.answer(mira.noted, Grade.HAZY)


@then("it is not asked again that day")
def not_again(mira):
    assert mira.noted not in {item.kept.item.id for item in mira.sitting().items}


@then(parsers.parse("she is asked {count:d} items that day, each of another kind"))
def each_of_another_kind(mira, count):
    assert len(kinds(mira)) == count
    assert len(set(kinds(mira))) == count


@when("she answers them all clear")
def answers_all(mira):
    mira.answers_everything(Grade.CLEAR)


@then("nothing more is asked that day")
def nothing_more(mira):
    assert not mira.sitting().items
    assert any(item.kept.memory is None for item in mira.items().values())


@then("quotations are placed among the points after all that asks the points")
def placed_last(mira):
    placed = 0
    for _ in range(12):
        items = mira.sitting().items
        placing = [n for n, item in enumerate(items) if item.cue.asked[0] is Asked.GAP]
        asking = [n for n, item in enumerate(items) if item.kept.item.kind in ASK_THE_POINTS]
        placed += len(placing)
        assert all(n < first for n in asking for first in placing)
        mira.answers_everything(Grade.CLEAR)
        mira.now += timedelta(days=1)
    assert placed


@then("no cue of a commitment says what she meant to do")
def nothing_said(mira):
    digest = mira.reports[0].kept
    cues = [i for i in mira.items().values() if i.kept.item.kind is KindName.RESTATE]
    assert len(cues) == 2
    for item in cues:
        text = digest.part(item.kept.item.part_id).text
        situation = item.cue.words.splitlines()[0]
        act = text.split(",")[-1] if "," in text else text
        assert stems(situation).isdisjoint(token.stem for token in content_words(act))
        assert not set(numbers(situation.split("Commitment")[0])) & set(numbers(text))


@when(parsers.parse("she finds the theme {grade} at 23:50, the night the clocks go forward"))
def that_night(mira, grade):
    mira.at(28, "March", 23, 50)
    mira.answer(mira.theme().item.id, Grade(grade))


@when(parsers.parse("she finds it clear at {hour:d}:{minute:d} the next morning"))
def next_morning(mira, hour, minute):
    mira.at(29, "March", hour, minute)
    mira.answer(mira.theme().item.id, Grade.CLEAR)


@then("the two answers stand on two of her days, one apart")
def two_days(mira):
    first, second = (recorded.answer.answer.day for recorded in mira.answers)
    assert second - first == timedelta(days=1)


@then("the two answers stand on one of her days")
def one_day(mira):
    first, second = (recorded.answer.answer.day for recorded in mira.answers)
    assert first == second == date(2026, 3, 28)


@when("she finds the theme clear, and her telephone sends the answer twice")
def sent_twice(mira):
    answer = uuid4()
    mira.noted = mira.answer(mira.theme().item.id, Grade.CLEAR, answer).item
    again = mira.answer(mira.theme().item.id, Grade.CLEAR, answer)
    assert not again.fresh


@then("the theme has one answer")
def one_answer(mira):
    theme = mira.theme()
    assert len(item_history(mira.desk, theme.item.id).answers) == 1
    assert theme == mira.noted


@when("she finds the theme vivid by mistake and takes it back")
def by_mistake(mira):
    mira.noted = mira.sitting()
    recorded = mira.answer(mira.theme().item.id, Grade.VIVID)
    take_back(mira.desk, recorded.answer.answer.id, uuid4())


@then("the theme is asked that day as if nothing had been said")
def as_before(mira):
    assert mira.sitting() == mira.noted


@then("the record still holds what she said and that she took it back")
def on_record(mira):
    shown = show_answer(mira.desk, mira.answers[0].answer.answer.id)
    assert shown.answer.answer.grade is Grade.VIVID
    assert shown.answer.taken_back_at is not None


@when("an answer of 12 January, blank, arrives from her telephone on 21 January")
def late(mira):
    mira.at(21, "January")
    at = datetime(2026, 1, 12, 19, tzinfo=UTC)
    given_answer = GivenAnswer(uuid4(), mira.theme().item.id, Grade.BLANK, at)
    mira.answers.append(record_answer(mira.desk, given_answer))


@then("the theme is due as if the three had arrived in order")
def as_in_order(mira):
    theme = mira.theme()
    said = (
        (datetime(2026, 1, 5, 19, tzinfo=UTC), Grade.CLEAR),
        (datetime(2026, 1, 12, 19, tzinfo=UTC), Grade.BLANK),
        (datetime(2026, 1, 20, 19, tzinfo=UTC), Grade.CLEAR),
    )
    in_order = [Answer(uuid4(), theme.item.id, grade, at, at.date()) for at, grade in said]
    assert theme.memory == Schedule().fold(theme.item.id, in_order)


@then("the first answer was expected by nothing")
def expected_by_nothing(mira):
    assert mira.answers[0].answer.answer.predicted is None


@then("the second keeps the recall that was predicted just before it")
def expected(mira):
    before = mira.answers[0].item.memory
    predicted = mira.answers[1].answer.answer.predicted
    assert predicted == Schedule().recall(before, date(2026, 1, 20))
    assert 0 < predicted < 1


@when("she adds the same file again")
def same_again(mira):
    mira.noted = (mira.items(), open_digest(mira.desk, mira.reports[0].kept.id))
    mira.adds()


@then("Catchword says that it is unchanged")
def says_unchanged(mira):
    assert mira.reports[-1].status is Status.UNCHANGED


@then("nothing in her library has moved")
def nothing_moved(mira):
    assert mira.noted == (mira.items(), open_digest(mira.desk, mira.reports[0].kept.id))


@when("she corrects a typing error in each part and adds the document again")
def corrected(mira):
    for wrong, right in (
        ("treachery", "treacherry"),
        ("guineas", "guinneas"),
        ("old friend", "old freind"),
        ("angels", "angells"),
    ):
        assert wrong in mira.source
        mira.source = mira.source.replace(wrong, right)
    mira.adds()


@then("Catchword says that it was changed")
def says_changed(mira):
    assert mira.reports[-1].status is Status.CHANGED


@then("every item is due when it was due before")
def same_days(mira):
    assert due_days(mira) == mira.noted


@when("she takes the first commitment out of the digest")
def taken_out(mira):
    lines = mira.source.splitlines(keepends=True)
    mira.source = "".join(line for line in lines if not line.startswith("1. When the tea"))
    mira.adds()


@then("that commitment is not asked any more")
def not_asked(mira):
    gone = set(mira.noted) - set(mira.items())
    assert len(gone) == 1


@when("she puts it back")
def put_back(mira):
    kept = mira.reports[0].kept
    text = kept.held(PartKind.COMMITMENT)[0].text
    mira.source = mira.source.replace("## Commitments\n", f"## Commitments\n\n1. {text}\n")
    mira.adds()


@then("it is due when it was due before")
def due_as_before(mira):
    assert due_days(mira) == mira.noted


@then("Catchword says which quotations need a place")
def needs_places(mira):
    assert unplaced(mira.reports[-1].kept) == (1, 2, 3)
    said = [n.part for n in mira.reports[-1].notices if "stand" in n.message]
    assert said


@when("she says after which points they stand")
def says_places(mira):
    place_quotations(mira.desk, mira.reports[-1].kept.id, {1: 1, 2: 0, 3: 2})


@when("she adds the same document again with a word corrected")
def word_corrected(mira):
    mira.source = mira.source.replace("is never the same", "is never quite the same")
    mira.adds()


@then("the places she gave are kept")
def places_kept(mira):
    assert mira.reports[-1].status is Status.CHANGED
    digest = open_digest(mira.desk, mira.reports[-1].kept.id).kept.digest()
    assert [quotation.after for quotation in digest.quotations] == [1, 0, 2]
