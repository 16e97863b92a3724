"""The re-reading list on its page: why, where, how long, and what was read again."""

import re
from datetime import date
from uuid import uuid4

import pytest
from flask.testing import FlaskClient

from cards.answers import Grade
from cards.kinds.base import KindName
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.answer import record_answer
from service.use_cases.items import list_items
from service.use_cases.ports import Desk
from service.use_cases.recording import GivenAnswer
from service.use_cases.rereading import earlier_rereadings
from tests.pages.house import DIGEST, Clock

HOSTILE = "</textarea><script>alert(1)</script>"


@pytest.fixture
def forgotten(desk: Desk, clock: Clock, added: Added) -> str:
    """The address re-readings of Silas Marner are sent to; its theme came back blank twice."""
    (theme,) = list_items(desk, kind=KindName.THEME).items
    for _ in range(2):
        record_answer(desk, GivenAnswer(uuid4(), theme.kept.item.id, Grade.BLANK))
        clock.next_day()
    return f"/books/{added.kept.id}/re-readings"


def test_without_reasons_the_page_says_what_brings_a_book_here(client: FlaskClient) -> None:
    """An empty list explains itself, and the room is in the navigation."""
    page = client.get("/re-reading").text
    assert "No book needs opening again." in page
    assert '<a href="/re-reading" aria-current="page">Re-reading</a>' in page
    assert '<a href="/re-reading">Re-reading</a>' in client.get("/commitments").text


def test_a_book_is_shown_with_why_where_and_how_long(client: FlaskClient, forgotten: str) -> None:
    """The reason with its figures, pages with what stands there, the rest by its own locator."""
    page = client.get("/re-reading").text
    assert "The theme came back blank twice running, on 2 March 2026 and on 3 March 2026." in page
    for said in ("pp. 11-13", "pp. 139-141", "Finale", "30 minutes or so", f'action="{forgotten}"'):
        assert said in page
    assert "“Nothing is so good as it seems beforehand.”" in page


def test_what_was_read_again_is_kept_and_told_of(
    client: FlaskClient, desk: Desk, forgotten: str
) -> None:
    """The book leaves the list; below stands what was read, escaped, and that it is too soon."""
    kept = client.post(
        forgotten,
        data={"pages": "11-13", "minutes": "9", "day": "2026-03-03", "note": HOSTILE},
    )
    assert kept.status_code == 303
    page = client.get(kept.location).text
    assert "It is kept that you read it again." in page
    assert "No book needs opening again." in page
    assert "Too soon to say: one item is still to be asked." in page
    assert "<script>alert" not in page
    (told,) = earlier_rereadings(desk)
    read = told.rereading
    assert (read.pages, read.minutes, read.day) == ("11-13", 9, date(2026, 3, 3))


@pytest.mark.parametrize(
    ("field", "value", "said"),
    [
        ("day", "2027-03-03", "has not come yet"),
        ("day", "yesterday", "This day does not exist."),
        ("minutes", "0", "The number of minutes is a whole number from 1 to 10000."),
        ("pages", "1" * 201, "At most 200 characters are kept here"),
        ("note", HOSTILE * 60, "At most 2000 characters are kept here"),
    ],
)
def test_what_cannot_be_kept_comes_back_as_typed(
    client: FlaskClient, desk: Desk, forgotten: str, field: str, value: str, said: str
) -> None:
    """The form stays open with what was typed, the fault beside its field and linked from above."""
    refused = client.post(forgotten, data={"pages": "11-13", field: value})
    digest_id = forgotten.split("/")[2]
    assert refused.status_code == 422
    assert f'href="#{field}-{digest_id}"' in refused.text
    assert f'id="{field}-{digest_id}-fault"' in refused.text
    assert said in refused.text
    assert "<details open>" in refused.text
    assert "<script>alert" not in refused.text
    assert earlier_rereadings(desk) == []


def test_a_form_sent_twice_is_kept_once_and_another_under_its_id_is_refused(
    client: FlaskClient, desk: Desk, forgotten: str
) -> None:
    """Its id is in the form."""
    sent = {"rereading": "00000000-0000-4000-8000-000000000001", "pages": "11-13"}
    assert [client.post(forgotten, data=sent).status_code for _ in range(2)] == [303, 303]
    assert len(earlier_rereadings(desk)) == 1
    refused = client.post(forgotten, data={**sent, "pages": "12"})
    assert refused.status_code == 422
    assert "is already kept, and says something else" in refused.text


def test_a_rereading_is_taken_back(client: FlaskClient, desk: Desk, forgotten: str) -> None:
    """The book is on the list again; what never was is not found."""
    client.post(forgotten, data={"pages": "11-13"})
    (told,) = earlier_rereadings(desk)
    gone = client.post(f"/re-readings/{told.rereading.id}/withdrawal")
    page = client.get(gone.location).text
    assert "The re-reading is taken back." in page
    assert "The theme came back blank twice running" in page
    assert client.post(f"/re-readings/{uuid4()}/withdrawal").status_code == 404
    assert client.post(f"/books/{uuid4()}/re-readings", data={}).status_code == 404


def test_no_id_stands_twice_however_many_books_there_are(
    client: FlaskClient, desk: Desk, clock: Clock, added: Added
) -> None:
    """Two books on the list, one of them refused: each field has a label and an id of its own."""
    add_digest(desk, "other.md", DIGEST.replace("Silas Marner", "Middlemarch").encode())
    for _ in range(2):
        for view in list_items(desk, kind=KindName.THEME).items:
            record_answer(desk, GivenAnswer(uuid4(), view.kept.item.id, Grade.BLANK))
        clock.next_day()
    page = client.post(f"/books/{added.kept.id}/re-readings", data={"minutes": "many"}).text
    ids = re.findall(r'\sid="([^"]+)"', page)
    assert len(ids) == len(set(ids))
    assert page.count("<details") == 2
    assert set(re.findall(r'\sfor="([^"]+)"', page)) <= set(ids)
