"""A sitting on paper, on the pages."""

import pytest
from flask.testing import FlaskClient

from cards.answers import Grade
from service.use_cases.add_digest import Added
from service.use_cases.answer import record_answer
from service.use_cases.items import item_history
from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.recording import GivenAnswer
from service.use_cases.sheets import open_sheets
from tests.pages.house import Clock


@pytest.fixture
def made(client: FlaskClient, added: Added) -> str:
    """The address of a sheet that was just made."""
    answered = client.post("/sheets", data={"minutes": "10"})
    assert answered.status_code == 303
    return answered.location


def test_a_sheet_is_made_printed_and_entered(client: FlaskClient, desk: Desk, made: str) -> None:
    """In one form, with the cues and no answers, and what was kept is counted."""
    page = client.get(made).text
    assert "The sheet of 2\u00a0March\u00a02026" in page
    assert "hoards" not in page
    pdf = client.get(f"{made}.pdf")
    assert pdf.mimetype == "application/pdf"
    assert pdf.data.startswith(b"%PDF")
    sheet = open_sheets(desk)[0]
    given = {"grade-1": "clear", "grade-2": "vivid", "on": "2026-03-02"}
    kept = client.post(made, data=given)
    assert "Two answers are kept." in client.get(kept.location).text
    assert "No answers are kept." in client.get(client.post(made, data=given).location).text
    (history,) = item_history(desk, sheet.items[0].item_id).answers
    assert history.answer.grade is Grade.CLEAR
    assert made not in client.get("/sheets").text


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({}, "at least one"),
        ({"grade-1": "superb"}, "Choose blank, hazy, clear or vivid."),
        ({"grade-1": "clear", "on": "2026-02-30"}, "This day does not exist."),
        ({"grade-1": "clear", "on": "2026-03-01"}, "is answered on that day or later"),
        ({"grade-1": "clear", "on": "2027-01-01"}, "not after today"),
    ],
)
def test_what_cannot_be_entered_keeps_nothing(
    client: FlaskClient, desk: Desk, made: str, given: dict[str, str], said: str
) -> None:
    """The fault is named, what was ticked is still ticked, and no answer is kept."""
    answered = client.post(made, data={"grade-2": "hazy", **given} if given else {})
    assert answered.status_code == 422
    assert said in answered.text
    if given:
        assert 'name="grade-2" value="hazy" checked' in answered.text
    for item in open_sheets(desk)[0].items:
        assert not item_history(desk, item.item_id).answers


def test_what_was_answered_since_is_told(client: FlaskClient, desk: Desk, made: str) -> None:
    """Beside the item, so that nobody counts it twice without knowing."""
    item = open_sheets(desk)[0].items[0]
    record_answer(desk, GivenAnswer(item.answer_id, item.item_id, Grade.CLEAR))
    assert "It was answered since the sheet was printed" in client.get(made).text


def test_a_sheet_is_named_after_the_readers_day(client: FlaskClient, desk: Desk, made: str) -> None:
    """The file bears the day the form bears, wherever the reader is."""
    set_preferences(desk, Preferences(time_zone="Pacific/Kiritimati"))
    assert "The sheet of 3\u00a0March\u00a02026" in client.get(made).text
    assert "sitting-2026-03-03.pdf" in client.get(f"{made}.pdf").headers["Content-Disposition"]


def test_sheets_that_wait_are_listed(client: FlaskClient, clock: Clock, made: str) -> None:
    """Each with its day, until its answers are entered."""
    page = client.get("/sheets").text
    assert made in page
    assert "The sheet of 2\u00a0March\u00a02026" in page


@pytest.mark.parametrize("minutes", ["0", "many", "1000"])
def test_minutes_that_cannot_be_are_refused(
    client: FlaskClient, added: Added, minutes: str
) -> None:
    """Beside the field, with what was typed still in it."""
    answered = client.post("/sheets", data={"minutes": minutes})
    assert answered.status_code == 422
    assert "The number of minutes is a whole number from 1 to 120." in answered.text
    assert f'value="{minutes}"' in answered.text


def test_without_books_there_is_nothing_to_print(client: FlaskClient) -> None:
    """A sentence says so."""
    answered = client.post("/sheets", data={"minutes": "10"})
    assert answered.status_code == 422
    assert "there is nothing to print" in answered.text


def test_a_sheet_of_nobodys_is_missing(client: FlaskClient, added: Added) -> None:
    """An id that is none leads to the page for what is not there."""
    assert client.get("/sheets/00000000-0000-4000-8000-000000000001").status_code == 404
