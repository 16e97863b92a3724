"""Steps of `retention.feature`."""

import csv
import re
from collections import Counter
from datetime import timedelta
from io import StringIO
from itertools import pairwise
from math import log
from uuid import uuid4

import pytest
from lxml import html
from pytest_bdd import given, parsers, scenarios, then, when

from cards.answers import GRADES, Grade
from features.winter_steps import WINTER_MINUTES
from service.use_cases.answer import take_back
from service.use_cases.library import list_digests
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.recording import GivenAnswer, append

scenarios("retention.feature")


@given(
    parsers.parse(
        "its theme was asked day after day, and {recalled:d} of the {asked:d} times after the "
        "first it came back"
    )
)
def asked_daily(mira, recalled, asked):
    theme = mira.theme().item.id
    with mira.desk.store.writing() as work:
        for number in range(asked + 1):
            grade = Grade.CLEAR if number <= recalled else Grade.BLANK
            append(mira.desk, work, GivenAnswer(uuid4(), theme, grade))
            mira.now += timedelta(days=1)
        work.commit()


@given("its theme was answered twice on one day")
def twice_a_day(mira):
    for _ in range(2):
        mira.answer(mira.theme().item.id, Grade.CLEAR)


@when("she takes her last answer back")
def takes_back(doors, mira):
    theme = mira.theme().item.id
    with mira.desk.store.reading() as work:
        *_, last = work.answers.of_item(mira.desk.reader, theme)
    take_back(mira.desk, last.id, uuid4())


@when("she opens the page of retention")
def opens(doors):
    doors.seen = words_of(doors.page("/retention"))


@when("she opens the page of predictions")
def opens_predictions(doors):
    doors.seen = html.document_fromstring(doors.page("/retention/predictions"))


def words_of(page):
    """Return what a page says, its tags and turns of lines left out."""
    return " ".join(html.document_fromstring(page).find(".//main").text_content().split())


def figures(doors, name):
    """Return the table behind a picture."""
    return list(csv.DictReader(StringIO(doors.get(f"/retention/pictures/{name}.csv").text)))


def answers(doors):
    """Return her answers item by item, as they happened: (kind, title, answers)."""
    with doors.desk.store.reading() as work:
        for entry in list_digests(doors.desk).entries:
            for item in work.items.of_digest(doors.desk.reader, entry.kept.id):
                given_answers = work.answers.of_item(doors.desk.reader, item.item.id)
                yield item.item.kind, entry.kept.title, given_answers


def recalls(doors):
    """Return the answers that tell of recall: on a later day than the item was asked on before."""
    return [
        (kind, title, answer)
        for kind, title, given_answers in answers(doors)
        for before, answer in pairwise(given_answers)
        if answer.day > before.day
    ]


@then("it says that nothing has been asked a second time yet")
def nothing_yet(doors):
    assert "Nothing has been asked a second time yet." in doors.seen


@then("no share stands on it")
def no_share(doors):
    assert not re.search(r"\d+ of \d+ came back", doors.seen)
    assert figures(doors, "by-kind") == []


@then(
    parsers.parse(
        "it says that {recalled} of {asked} came back, and that the true share lies from {low} to "
        "{high}"
    )
)
def says_share(doors, recalled, asked, low, high):
    assert f"{recalled} of {asked} came back" in doors.seen
    assert f"from {low} to {high}." in doors.seen


@then(parsers.parse('it says "{words}"'))
def says(doors, words):
    headline = doors.seen.partition("What came back when asked")[0]
    assert words in headline
    assert ("on target" in headline) is words.startswith("on target")


@then("what came back is what can be counted in her answers")
def counted(doors):
    recalled, asked = whole(doors)
    assert asked > 700
    assert f"{recalled:,} of {asked:,} came back" in doors.seen


def whole(doors):
    """Count what came back, and what was asked."""
    grades = [answer.grade for *_, answer in recalls(doors)]
    return sum(grade is not Grade.BLANK for grade in grades), len(grades)


@then("the shares by book, by kind, by age and by month each add up to it")
def add_up(doors):
    for name in ("by-book", "by-kind", "by-age", "by-month"):
        rows = figures(doors, name)
        summed = tuple(sum(int(row[each]) for row in rows) for each in ("came_back", "asked"))
        assert summed == whole(doors), name
        assert len(rows) > 1
        for row in rows:
            share = int(row["came_back"]) / int(row["asked"])
            assert float(row["share"]) == pytest.approx(share)
            assert float(row["low"]) < share <= float(row["high"])
    by_book = Counter(title for _, title, _ in recalls(doors))
    assert {row["book"]: int(row["asked"]) for row in figures(doors, "by-book")} == by_book


@then("the terminal and the API say the same")
def says_the_same(doors):
    recalled, asked = whole(doors)
    assert f"{recalled:,} of {asked:,} came back" in " ".join(doors.says("retention").split())
    share = doors.api("retention")["whole"]
    assert (share["came_back"], share["asked"]) == (recalled, asked)


@then("the log loss and the Brier score are those of what was foretold with each answer")
def as_foretold(doors):
    foretold = [(each.predicted, each.grade is not Grade.BLANK) for *_, each in recalls(doors)]
    loss = -sum(log(chance if came else 1 - chance) for chance, came in foretold) / len(foretold)
    brier = sum((chance - came) ** 2 for chance, came in foretold) / len(foretold)
    doors.noted = measured(doors.seen)
    assert doors.noted["Log loss"].startswith(f"{loss:.4f}")
    assert doors.noted["Brier score"].startswith(f"{brier:.4f}")


def measured(page):
    """Return the measures of predictions by their names, as the page says them."""
    pairs = page.findall(".//dl[@class='told-measures measure']/div")
    return {
        pair.find("dt").text: " ".join(pair.find("dd").text_content().split()) for pair in pairs
    }


@then("beside them stands what plain guesses would have cost")
def guesses(doors):
    (table,) = doors.seen.xpath("//section[@aria-labelledby='measures']//table")
    costs = [[each.text for each in row] for row in table.find("tbody")]
    recalled, asked = whole(doors)
    share = recalled / asked
    cost = -share * log(share) - (1 - share) * log(1 - share)
    chances = [row[1:4] for row in costs]
    assert [f"{share:.3f}", f"{cost:.4f}", f"{share * (1 - share):.4f}"] in chances
    assert ["0.500", "0.6931", "0.2500"] in chances


@when(parsers.parse("she aims for {target:d} % from now on"))
def aims_for(doors, target):
    set_preferences(doors.desk, Preferences(target=target / 100))


@then("what was foretold is judged as before")
def judged_as_before(doors):
    opens_predictions(doors)
    assert measured(doors.seen) == doors.noted


@then("of each book it says how much is known now, and in a year with and without sittings")
def known(doors):
    doors.noted = {row["book"]: row for row in figures(doors, "known")}
    titles = {entry.kept.title for entry in list_digests(doors.desk).entries}
    assert doors.noted.keys() == titles
    assert all(title in doors.seen for title in titles)


@then("a year without sittings loses some of each, of which sittings keep more")
def sittings_keep_more(doors):
    for row in doors.noted.values():
        now, alone, kept_up = (float(row[each]) for each in ("now", "left_alone", "kept_up"))
        assert 0 < alone < 0.9 * now
        assert alone < kept_up <= int(row["items"])


@then(
    "eight weeks stand there day by day in minutes, and no day asks more than the minutes she has"
)
def coming_weeks(doors):
    rows = figures(doors, "coming")
    today = doors.mira.now.date()
    assert [row["day"] for row in rows] == [str(today + timedelta(days=day)) for day in range(56)]
    minutes = [float(row["minutes"]) for row in rows]
    assert all(0 <= each <= WINTER_MINUTES + 0.001 for each in minutes)
    assert sum(each > 0 for each in minutes) > 50


@then("each mark stands there with her grades, as often as her answers hold both")
def marks_and_grades(doors):
    both = Counter(
        (answer.suggested, answer.grade)
        for _, _, given_answers in answers(doors)
        for answer in given_answers
        if answer.suggested is not None
    )
    rows = figures(doors, "grades")
    assert {row["mark"] for row in rows} == set(GRADES)
    told = {(mark["mark"], grade): int(mark[grade]) for mark in rows for grade in GRADES}
    assert told == {(mark, grade): both[mark, grade] for mark in GRADES for grade in GRADES}


@then("of each kind it says how many items came back blank, and after how many days half had")
def first_blanks(doors):
    lasted = {}
    for kind, _, given_answers in answers(doors):
        blank = next((each for each in given_answers if each.grade is Grade.BLANK), None)
        until = (blank or given_answers[-1]).day - given_answers[0].day
        lasted.setdefault(kind, []).append((until.days, blank is not None))
    told = Counter(
        (int(row["items"]), int(row["blanks"]), row["median"]) for row in figures(doors, "blanks")
    )
    assert told == Counter(
        (len(each), sum(blank for _, blank in each), half_gone(each)) for each in lasted.values()
    )


def half_gone(lasted):
    """Return the day beyond which at most half last, by Kaplan & Meier 1958; "" for none."""
    left = 1.0
    for day in sorted({each for each, blank in lasted if blank}):
        at_risk = sum(each >= day for each, _ in lasted)
        left *= 1 - sum(each == (day, True) for each in lasted) / at_risk
        if left <= 0.5:
            return str(day)
    return ""


@then("the promises are told by month as")
def promises_by_month(doors, datatable):
    rows = figures(doors, "promises")
    told = [[row[each] for each in ("month", "kept", "partly", "missed", "silent")] for row in rows]
    assert told == datatable[1:]
