"""Steps of `planner.feature`."""

import re
from itertools import pairwise

import pytest
from lxml import html
from pytest_bdd import given, parsers, scenarios, then, when

from cards.parts import Care
from service.use_cases.care import set_care
from service.use_cases.library import named
from service.use_cases.preferences import show_reader

scenarios("planner.feature")

PLANNER = "/retention/target"
MINUTES = ("minutes_1", "minutes_5", "minutes_10")
KNOWN = ("known_1", "known_5", "known_10")
FIGURES = (*MINUTES, "minutes_mean", *KNOWN)
"""The columns of the table beside the target's own, as far as they are looked at."""
ITEMS = 96
"""Of the books she kept for a winter."""


@given(parsers.parse('she keeps "{title}" close'))
def keeps_close(doors, title):
    set_care(doors.desk, named(doors.desk, title).id, Care.CLOSE)


@when("she opens the page of targets")
def opens(doors):
    doors.seen = html.document_fromstring(doors.page(PLANNER))


@when(parsers.parse('she asks for a target of "{target}"'))
def takes(doors, target):
    (form,) = (each for each in doors.seen.forms if each.get("action") == PLANNER)
    doors.noted = doors.post(PLANNER, {**dict(form.fields), "target": target})


@when("she takes the target it proposes")
def takes_proposed(doors):
    assert proposed(doors) != "90"
    takes(doors, proposed(doors))


def proposed(doors):
    return re.search(r"Most is kept per minute at (\d+)%", said(doors))[1]


def said(doors):
    return " ".join(doors.seen.find(".//main").text_content().split())


def targets(doors, name="target"):
    """Return what each target takes and keeps, by its hundredths."""
    rows = doors.seen.xpath(f"//figure[@id='{name}']//tbody/tr")
    table = [[cell.text_content().rstrip("%") for cell in row] for row in rows]
    return {
        int(float(target)): dict(zip(FIGURES, map(float, figures), strict=False))
        for target, *figures in table
    }


@then(
    "for every target from 70 to 97 % it says the minutes a day, and what is known after one, "
    "five and ten years"
)
def every_target(doors):
    doors.noted = targets(doors)
    assert list(doors.noted) == list(range(70, 98))
    for row in doors.noted.values():
        assert all(0 < row[minutes] < 60 for minutes in MINUTES)
        assert all(0 < row[known] < ITEMS for known in KNOWN)


@then("a higher target takes more minutes and keeps more")
def higher_takes_more(doors):
    for lower, higher in pairwise(range(70, 98, 3)):
        for known in KNOWN:
            assert doors.noted[lower][known] < doors.noted[higher][known], (known, higher)
        for minutes in MINUTES:
            assert doors.noted[lower][minutes] <= doors.noted[higher][minutes], (minutes, higher)
    assert all(2 * doors.noted[70][each] < doors.noted[97][each] for each in MINUTES)


@then("what she aims for is told with what it keeps")
def told_with_kept(doors):
    first, _, tenth = (doors.noted[90][each] for each in KNOWN)
    assert f"At 90% your {ITEMS} items take" in said(doors)
    words = f"some {first:.0f} are known after one year and {tenth:.0f} after ten years"
    assert words in said(doors)


@then(
    "books kept close and books kept steadily have figures of their own, which add up to the whole"
)
def by_care(doors):
    assert doors.seen.xpath("//figure/@id") == ["target", "target-close", "target-steady"]
    close, steady = targets(doors, "target-close"), targets(doors, "target-steady")
    for target, whole in doors.noted.items():
        for known in KNOWN:
            assert close[target][known] > 0 < steady[target][known]
            together = close[target][known] + steady[target][known]
            assert whole[known] == pytest.approx(together, abs=1)  # each is rounded


@then("she aims for that from now on")
def aims_for_it(doors):
    assert doors.noted.status_code == 303
    assert show_reader(doors.desk).target == pytest.approx(int(proposed(doors)) / 100)


@then("she is told that it may be from 70 to 97")
def told_range(doors):
    assert doors.noted.status_code == 422
    (fault,) = html.document_fromstring(doors.noted.text).xpath("//*[@id='target-fault']")
    assert re.search(r"from 70 to 97", fault.text_content())


@then("she aims for 90 %")
def still_ninety(doors):
    assert show_reader(doors.desk).target == pytest.approx(0.9)


@then("it says that there is nothing to plan yet")
def nothing_to_plan(doors):
    assert "There is nothing to plan yet" in said(doors)
    assert not doors.seen.findall(".//table")
