"""Links between books on the pages, and what keeping a book costs."""

import re
from uuid import uuid4

import pytest
from flask.testing import FlaskClient

from cards.answers import Grade
from cards.parts import PartKind
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.answer import record_answer
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.recording import GivenAnswer
from service.use_cases.sit import todays_sitting
from tests.pages.draft_pages import draft_form, press, pressed
from tests.pages.house import DIGEST
from tests.pages.sittings import form


@pytest.fixture
def other(desk: Desk, added: Added) -> Added:
    """Another book, with a title that is markup."""
    return add_digest(desk, "w.md", DIGEST.replace("Silas Marner", "Walden <b>").encode())


def test_a_single_book_has_nothing_to_link_to(client: FlaskClient, added: Added) -> None:
    """Without another book the page says nothing of links."""
    assert "What speaks to other books" not in client.get(f"/books/{added.kept.id}").text


def test_a_link_is_made_and_dropped(
    client: FlaskClient, desk: Desk, added: Added, other: Added
) -> None:
    """From the book's page, in one form, and shown there with its why, escaped."""
    address = f"/books/{added.kept.id}"
    action = f"{address}/links"
    hidden = form(client.get(address).text, action).hidden
    point = added.kept.held(PartKind.POINT)[1]
    sent = {**hidden, "point": point.id, "book": other.kept.id, "why": "Both count <i>."}
    made = client.post(action, data=sent)
    assert made.status_code == 303
    page = client.get(made.location).text
    assert "The link is kept, and will be asked." in page
    assert "Point 2 speaks to" in page
    assert "Walden &lt;b&gt;" in page
    assert "Both count &lt;i&gt;." in page
    assert "Which book speaks to point 2" in page
    (kept,) = open_digest(desk, added.kept.id).kept.links
    dropped = client.post(f"{action}/{kept.id}/dropped")
    assert "The link is dropped." in client.get(dropped.location).text
    assert not open_digest(desk, added.kept.id).kept.links


@pytest.mark.parametrize(
    ("field", "said"),
    [
        ("link", "came without its id"),
        ("point", "Choose the point"),
        ("book", "Choose the book"),
        ("why", "at most 500"),
    ],
)
def test_a_link_that_cannot_be_is_refused_in_a_sentence(
    client: FlaskClient, added: Added, other: Added, field: str, said: str
) -> None:
    """What is missing or too long is named."""
    point = added.kept.held(PartKind.POINT)[0]
    sent = {"link": uuid4(), "point": point.id, "book": other.kept.id, "why": ""}
    sent[field] = "x" * 501 if field == "why" else ""
    answered = client.post(f"/books/{added.kept.id}/links", data=sent)
    assert answered.status_code == 422
    assert said in answered.text


def test_a_point_is_offered_when_the_sitting_is_done(
    client: FlaskClient, desk: Desk, other: Added
) -> None:
    """One point of a book answered today; made from there, it leads back to Today."""
    set_preferences(desk, Preferences(minutes=1))
    while items := todays_sitting(desk).items:
        given = GivenAnswer(uuid4(), items[0].kept.item.id, Grade.CLEAR, seconds=60)
        record_answer(desk, given)
    page = client.get("/").text
    assert "Does this speak to another book of yours?" in page
    action = re.search(r'action="(/books/[^"]+/links)"', page)
    assert action
    hidden = form(page, action[1]).hidden
    choices = re.findall(r'<option value="([0-9a-f-]{36})">', page)
    made = client.post(action[1], data={**hidden, "book": choices[0], "why": ""})
    assert made.status_code == 303
    page = client.get(made.location).text
    assert "The link is kept, and will be asked." in page
    assert "Does this speak to another book" not in client.get("/").text


def test_the_price_of_a_book_stands_beside_its_care(client: FlaskClient, added: Added) -> None:
    """What each care costs a day, in the first year and in the fifth."""
    page = client.get(f"/books/{added.kept.id}").text
    assert len(re.findall(r'class="small price">[^<]*a day', page)) == 3


def test_the_price_is_shown_before_a_book_is_taken_up(client: FlaskClient) -> None:
    """On the page of a draft, for each care; it is kept at the care that was chosen."""
    blank = draft_form(client.get("/write").text)
    blank.fields.update(
        {
            "title": "Walden",
            "theme": "A man goes to the woods to live simply.",
            "points-1-text": "The hut by the pond is built for twenty-eight dollars.",
        }
    )
    saved = pressed(client, blank, "save")
    page = client.get(saved.action.removesuffix("/change")).text
    assert len(re.findall(r'id="price-\w+" data-live>: [^<]+', page)) == 3
    kept = press(client, saved, "keep", care="close")
    assert re.search(r'value="close" checked', client.get(kept.location).text)
