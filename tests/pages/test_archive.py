"""The page on which everything is taken out, or brought back."""

import html
import re
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pytest
from flask.testing import FlaskClient

from cards.answers import Grade
from service import gate
from service.main import create_app
from service.use_cases.answer import record_answer
from service.use_cases.ports import Desk
from service.use_cases.recording import GivenAnswer
from service.use_cases.sit import todays_sitting
from tests.pages.house import Clock, library


@pytest.fixture
def other(tmp_path: Path, clock: Clock) -> Iterator[FlaskClient]:
    """A browser on an empty library beside the first."""
    folder = tmp_path / "other"
    folder.mkdir()
    with library(folder, clock.now) as desk:
        yield create_app(desk).test_client()


def said(reply) -> str:
    """Return what a page says."""
    return html.unescape(reply.get_data(as_text=True))


def bare(reply) -> str:
    """Return what a page says without the ids it has ready for what is sent from it."""
    return re.sub(r'value="[0-9a-f-]{36}"', "", said(reply))


def test_a_library_moves_from_page_to_page(desk: Desk, client, other, added, clock):
    """Taken out here and brought back there, every page is the same, to the letter."""
    for place, view in enumerate(todays_sitting(desk).items):
        grade = (Grade.CLEAR, Grade.BLANK)[place % 2]
        record_answer(desk, GivenAnswer(desk.new_id(), view.kept.item.id, grade))
    clock.next_day(3)
    out = client.get("/archive/everything.zip")
    assert out.mimetype == "application/zip"
    assert "attachment; filename=catchword.zip" in out.headers["Content-Disposition"]
    assert "Bring everything back" in said(other.get("/archive"))
    back = other.post("/archive", data={"file": (BytesIO(out.data), "catchword.zip")})
    assert (back.status_code, back.location) == (303, "/archive?kept=everything")
    told = said(other.get(back.location))
    assert "Everything is back, as it was." in told
    assert "in this one books or drafts are" in told
    for page in ("/books", f"/books/{added.kept.id}", "/commitments", "/re-reading", "/reader"):
        assert bare(other.get(page)) == bare(client.get(page))
    assert other.get("/archive/everything.zip").data == out.data


def test_what_cannot_be_brought_back_is_told_beside_the_field(client, other, added, monkeypatch):
    """No file, no archive, and a library that is not empty: a sentence each, and nothing kept."""
    none = other.post("/archive", data={})
    assert (none.status_code, "Choose the archive first" in said(none)) == (422, True)
    letter = other.post("/archive", data={"file": (BytesIO(b"Dear aunt"), "aunt.zip")})
    assert letter.status_code == 422
    assert "no archive of Catchword’s" in said(letter)
    assert 'aria-invalid="true"' in said(letter)
    out = client.get("/archive/everything.zip").data
    full = client.post("/archive", data={"file": (BytesIO(out), "catchword.zip")})
    assert full.status_code == 409
    assert "nothing is ever mixed" in said(full)
    monkeypatch.setitem(gate.LARGEST_AT, "/archive", 100)
    large = other.post("/archive", data={"file": (BytesIO(b"x" * 200), "catchword.zip")})
    assert (large.status_code, "catchword restore" in said(large)) == (413, True)
    assert "Silas" not in said(other.get("/books"))


def test_the_settings_lead_to_it(client):
    """It is found where a reader looks for what concerns the whole library."""
    assert 'href="/archive"' in said(client.get("/reader"))
