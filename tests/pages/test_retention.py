"""The pages of retention: what is said, drawn and handed out, whatever the books are called."""

from datetime import timedelta
from uuid import uuid4
from xml.etree import ElementTree as ET

import pytest
from flask.testing import FlaskClient

from cards.answers import Grade
from cards.kinds.base import KindName
from service.use_cases.add_digest import add_digest
from service.use_cases.answer import record_answer
from service.use_cases.items import list_items
from service.use_cases.ports import Desk
from service.use_cases.recording import GivenAnswer
from service.use_cases.retaining import show_retention
from service.use_cases.retention_pictures import PICTURES, PLANNED
from tests.pages.house import DIGEST, Clock

HOSTILE = '<script>alert("1")</script> & <b>Sons</b>'


@pytest.fixture
def answered(desk: Desk, clock: Clock) -> Desk:
    """A book of a hostile name, answered thrice on days apart; at the last its theme was blank."""
    add_digest(
        desk, "silas.md", DIGEST.replace("title: Silas Marner", f"title: '{HOSTILE}'").encode()
    )
    for round_ in range(3):
        for each in list_items(desk).items:
            blank = round_ == 2 and each.kept.item.kind is KindName.THEME
            grade = Grade.BLANK if blank else Grade.CLEAR
            record_answer(desk, GivenAnswer(uuid4(), each.kept.item.id, grade))
        clock.next_day(4)
    return desk


def test_an_empty_library_has_its_pages(client: FlaskClient) -> None:
    """With nothing asked each part says why nothing is there, and the room is in the navigation."""
    page = client.get("/retention")
    assert page.status_code == 200
    assert "Nothing has been asked a second time yet." in page.text
    assert '<a href="/retention" aria-current="page">Retention</a>' in page.text
    assert "<svg" not in page.text
    foreseen = client.get("/retention/predictions").text
    assert "Nothing was foretold yet" in foreseen
    assert "Weights of your own were not considered yet." in foreseen
    assert "The measures" not in foreseen


def test_what_came_back_is_said_and_drawn(client: FlaskClient, answered: Desk) -> None:
    """Each part has its sentence, its picture, its table and its files."""
    items = len(list_items(answered).items)
    page = client.get("/retention").text
    assert f"{2 * items - 1} of {2 * items} came back" in page
    for name in ("by-book", "by-kind", "by-age", "by-month", "known", "coming"):
        assert f'id="{name}"' in page
        assert f'href="/retention/pictures/{name}.svg"' in page
    assert page.count("<summary>The figures</summary>") == page.count('class="picture"') == 6
    assert "No window of a commitment has closed yet" in page


def test_a_hostile_title_stays_a_title(client: FlaskClient, answered: Desk) -> None:
    """Neither the page nor a drawing on it holds a tag that came with a book’s name."""
    page = client.get("/retention").text
    assert "<script" not in page
    assert "<b>" not in page
    assert "&lt;script&gt;" in page


def test_what_was_foreseen_is_explained(client: FlaskClient, answered: Desk) -> None:
    """Measures and guesses stand with their meaning, and whose weights are in force is said."""
    page = client.get("/retention/predictions").text
    for said in ("Log loss", "Brier score", "(AUC)", "Always the target"):
        assert said in page
    assert "In force are the published default weights" in page
    assert 'id="calibration"' in page
    assert "w20" in page


def test_every_picture_is_a_file(client: FlaskClient, answered: Desk) -> None:
    """As SVG it is well-formed, and its data are lines."""
    for name in PICTURES.keys() - PLANNED.keys():
        svg = client.get(f"/retention/pictures/{name}.svg")
        assert svg.mimetype == "image/svg+xml"
        assert svg.headers["Content-Disposition"] == f"attachment; filename={name}.svg"
        assert ET.fromstring(svg.data).tag.endswith("svg")
        data = client.get(f"/retention/pictures/{name}.csv")
        assert data.mimetype == "text/csv"
        assert data.data.count(b"\n") >= 1


def test_a_care_no_book_is_kept_with_has_no_picture(client: FlaskClient) -> None:
    """It is said to be missing."""
    assert client.get("/retention/pictures/target-resting.svg").status_code == 404


def test_a_picture_is_a_png_on_light_or_dark_paper(client: FlaskClient, answered: Desk) -> None:
    """Both are PNG, and not the same."""
    light = client.get("/retention/pictures/by-kind.png").data
    dark = client.get("/retention/pictures/by-kind.png?dark=1").data
    assert light[:8] == dark[:8] == b"\x89PNG\r\n\x1a\n"
    assert light != dark


@pytest.mark.parametrize("address", ["nothing.svg", "by-kind.gif", "by-kind", "../by-kind.svg"])
def test_no_such_picture(client: FlaskClient, address: str) -> None:
    """What is not there is said to be missing."""
    assert client.get(f"/retention/pictures/{address}").status_code == 404


def test_what_lies_ahead_agrees_with_the_items(answered: Desk, clock: Clock) -> None:
    """What is known by book adds up to what is known of all; eight weeks are told day by day."""
    retained = show_retention(answered)
    known = PICTURES["known"](retained)
    coming = PICTURES["coming"](retained)
    assert known is not None
    assert coming is not None
    items = len(list_items(answered).items)
    ((_, told, asked, now, *_),) = known.table.rows
    assert (told, asked) == (items, items)
    assert now == pytest.approx(retained.figures.known.whole.expected)
    days = [row[0] for row in coming.table.rows]
    assert days == [retained.day + timedelta(days=number) for number in range(56)]
    assert coming.description.startswith("The coming week asks some ")
