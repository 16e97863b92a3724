"""Bad input through every door: a sentence that says what is wrong, and nothing half kept."""

import html
import json
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any
from uuid import UUID, uuid4

import pytest
from click.testing import CliRunner
from flask.testing import FlaskClient
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from service.cli import catchword
from service.main import open_desk, tools
from service.settings import from_environment
from service.use_cases.library import list_digests
from service.use_cases.ports import Desk
from tests.documents.files import DIGEST, made
from tests.documents.test_refusals import CASES
from tests.standing import application_on, lay_empty_library

FILES = {
    name: CASES[name][:2]
    for name in (
        "empty",
        "a picture named .docx",
        "a password",
        "50 MB of text",
        "a bomb of 60 MB",
        "an encrypted archive",
        "text named .docx",
    )
} | {
    "truncated": ("a.docx", made(DIGEST, "docx")[:3000]),
    "no recognisable part": ("a.docx", made("Dear aunt, thank you for the plums.\n", "docx")),
}

NOBODYS = "00000000-0000-4000-8000-00000000dead"
"""An id that nothing here bears."""


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """A data folder."""
    home = tmp_path / "home"
    lay_empty_library(home / "library.sqlite3")
    return home


@pytest.fixture
def desk(home: Path) -> Iterator[Desk]:
    """The desk of the library in it."""
    with open_desk(from_environment({"CATCHWORD_HOME": str(home)})) as opened:
        yield opened


@pytest.fixture
def client(desk: Desk) -> Iterator[FlaskClient]:
    """A client of the HTTP doors."""
    with application_on(desk) as app:
        yield app.test_client()


def upload(field: str, name: str, content: bytes) -> dict[str, Any]:
    """Write a form with one file as a browser would (RFC 7578)."""
    head = f'--x\r\nContent-Disposition: form-data; name="{field}"; filename="{name}"\r\n\r\n'
    body = head.encode() + content + b"\r\n--x--\r\n"
    return {"data": body, "content_type": "multipart/form-data; boundary=x"}


@pytest.mark.parametrize("case", FILES)
def test_the_api_refuses_a_bad_file(client, desk, case):
    """A problem document with a sentence; the library stays empty."""
    name, content = FILES[case]
    for address in ("/api/digests", "/api/digests/read"):
        reply = client.post(address, **upload("file", name, content))
        problem = reply.get_json()
        assert reply.mimetype == "application/problem+json"
        assert 400 <= reply.status_code < 500
        assert problem["detail"].endswith(".")
    assert not list_digests(desk).entries


@pytest.mark.parametrize("case", FILES)
def test_the_pages_refuse_a_bad_file(client, desk, case):
    """A page with the sentence; the library stays empty."""
    name, content = FILES[case]
    reply = client.post("/books", **upload("files", name, content))
    said = html.unescape(reply.get_data(as_text=True))
    assert reply.mimetype == "text/html"
    assert reply.status_code < 500
    assert name in said or reply.status_code == 413
    assert "Traceback" not in said
    assert not list_digests(desk).entries


@pytest.mark.parametrize("case", FILES)
def test_the_commands_refuse_a_bad_file(home, desk, tmp_path, case):
    """A line and exit code 6; the library stays empty."""
    name, content = FILES[case]
    (tmp_path / name).write_bytes(content)
    for command in ("add", "read"):
        result = CliRunner().invoke(
            catchword,
            [command, str(tmp_path / name)],
            obj=tools({"CATCHWORD_HOME": str(home)}),
        )
        assert result.exit_code == 6
        assert name in result.output
    assert not list_digests(desk).entries


def an_item(client: FlaskClient) -> str:
    """Add a digest and find an item of it."""
    client.post("/api/digests", **upload("file", "a.docx", made(DIGEST, "docx")))
    return client.get("/api/sitting").get_json()["items"][0]["id"]


@pytest.mark.parametrize(
    ("change", "status"),
    [
        ({"item": str(uuid4())}, 404),
        ({"grade": "splendid"}, 422),
        ({"grade": None}, 422),
        ({"answered_at": (datetime.now(UTC) + timedelta(days=1)).isoformat()}, 422),
        ({"answered_at": "yesterday"}, 422),
        ({"answered_at": "2026-01-05T19:00:00"}, 422),
        ({"answered_at": "0001-01-01T00:00:00+14:00"}, 422),
        ({"answered_at": "9999-12-31T23:59:59-14:00"}, 422),
        ({"id": "seven"}, 422),
        ({"attempt": {"words": "x" * 30_000}}, 422),
        ({"attempt": {"page": -3}}, 422),
        ({"attempt": {"page": 2**70}}, 422),
        ({"attempt": "words"}, 422),
        ({"mood": "fair"}, 422),
    ],
)
def test_the_api_refuses_a_bad_answer(client, change, status):
    """An item that is not there, an unknown grade, a date that has not come, what is malformed."""
    item = an_item(client)
    body = {"id": str(uuid4()), "item": item, "grade": "clear"} | change
    reply = client.post("/api/answers", json=body)
    assert reply.status_code == status, reply.get_data(as_text=True)
    assert reply.get_json()["detail"].endswith(".")
    assert client.get(f"/api/items/{item}").get_json()["standing"] == "unasked"


@pytest.mark.parametrize(
    ("body", "kind", "status"),
    [
        (b"{", "application/json", 400),
        (b"", "application/json", 422),
        (b"[]", "application/json", 422),
        (b"\xff\xfe", "application/json", 400),
        (b"id=1", "application/x-www-form-urlencoded", 415),
        (b"[" * 100_000, "application/json", 400),
    ],
)
def test_the_api_refuses_what_is_no_answer_at_all(client, body, kind, status):
    """Broken JSON, another type of body, nesting without end."""
    reply = client.post("/api/answers", data=body, content_type=kind)
    assert reply.status_code == status, reply.get_data(as_text=True)
    assert reply.mimetype == "application/problem+json"


@pytest.mark.parametrize(
    ("item", "fields", "status"),
    [
        (None, {"grade": "splendid"}, 422),
        (None, {}, 422),
        (None, {"grade": "clear", "answer": "seven"}, 422),
        ("00000000-0000-4000-8000-00000000dead", {"grade": "clear", "answer": str(uuid4())}, 404),
        ("seven", {"grade": "clear", "answer": str(uuid4())}, 404),
    ],
)
def test_the_pages_refuse_a_bad_answer(client, item, fields, status):
    """The same through a form: a page with a sentence, and nothing kept."""
    known = an_item(client)
    reply = client.post(f"/items/{item or known}/answers", data={"answer": str(uuid4())} | fields)
    assert reply.status_code == status, reply.get_data(as_text=True)
    assert "Traceback" not in reply.get_data(as_text=True)
    assert client.get(f"/api/items/{known}").get_json()["standing"] == "unasked"


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(body=st.recursive(st.none() | st.booleans() | st.integers() | st.text(), st.lists))
def test_any_json_is_an_answer_or_a_problem(client, body):
    """Whatever JSON is sent, the reply is a problem document and never a failure of our own."""
    reply = client.post("/api/answers", data=json.dumps(body), content_type="application/json")
    assert reply.status_code in {400, 422}
    assert reply.mimetype == "application/problem+json"


def test_another_libraries_ids_say_nothing(client):
    """An id that is not here is missing, whatever it is elsewhere."""
    for address in ("items", "digests", "answers"):
        reply = client.get(f"/api/{address}/{UUID(int=7)}")
        assert reply.status_code == 404
        assert reply.mimetype == "application/problem+json"


def sentence(reply: Any) -> str:
    """Return what a page or a problem says, after checking that it is one and tells no more."""
    assert reply.mimetype in {"application/problem+json", "text/html"}
    said = html.unescape(reply.get_data(as_text=True))
    assert "Traceback" not in said
    return said


def test_an_attempt_in_a_way_not_asked_is_refused(client):
    """Words for a place, and an order for words: through the API, and through the forms."""
    an_item(client)
    listed = client.get("/api/items").get_json()["items"]
    place, theme = (next(it["id"] for it in listed if it["kind"] == k) for k in ("place", "theme"))
    for item, attempt in ((place, {"words": "In the woods."}), (theme, {"order": [1, 2]})):
        body = {"id": str(uuid4()), "item": item, "grade": "vivid", "attempt": attempt}
        for reply in (
            client.post("/api/answers", json=body),
            client.post(f"/api/items/{item}/comparison", json={"attempt": attempt}),
        ):
            assert reply.status_code == 422
            assert "This is asked" in sentence(reply)
    fields = {"words": "In the woods.", "answer": str(uuid4()), "grade": "vivid"}
    for address in (f"/items/{place}/compare", f"/items/{place}/answers"):
        reply = client.post(address, data=fields)
        assert reply.status_code == 422
        assert "or say that you can’t tell" in sentence(reply)
    for item in (place, theme):
        assert client.get(f"/api/items/{item}").get_json()["standing"] == "unasked"


@pytest.mark.parametrize(
    "wrong",
    [{}, {"point": NOBODYS}, {"book": NOBODYS}, {"why": "x" * 501}],
    ids=["itself", "no point", "no book", "too long a why"],
)
def test_a_link_that_is_none_is_refused(client, wrong):
    """To the book itself, from no point, to no book, with too much said: the API and a form."""
    an_item(client)
    digest = client.get("/api/digests").get_json()["digests"][0]["id"]
    points = client.get(f"/api/digests/{digest}/links").get_json()["points"]
    body = {"id": str(uuid4()), "point": points[0]["id"], "book": digest, "why": ""} | wrong
    for reply in (
        client.post(f"/api/digests/{digest}/links", json=body),
        client.post(f"/books/{digest}/links", data={**body, "link": body["id"]}),
    ):
        assert reply.status_code == (404 if "book" in wrong else 422)
        assert sentence(reply)
    assert client.get(f"/api/digests/{digest}/links").get_json()["points"] == points


def test_a_link_of_nobodys_is_missing(client):
    """Dropping one that is not there: the API and a form."""
    an_item(client)
    digest = client.get("/api/digests").get_json()["digests"][0]["id"]
    for reply in (
        client.delete(f"/api/digests/{digest}/links/{NOBODYS}"),
        client.post(f"/books/{digest}/links/{NOBODYS}/dropped"),
    ):
        assert reply.status_code == 404
        assert "There is no link" in sentence(reply)


def test_a_sheet_of_nobodys_is_missing(client, home):
    """Looked at, printed and entered: the API, the pages and the command line."""
    entries = {"entries": [{"item": NOBODYS, "grade": "clear"}]}
    for reply in (
        client.get(f"/api/sheets/{NOBODYS}"),
        client.get(f"/api/sheets/{NOBODYS}/pdf"),
        client.post(f"/api/sheets/{NOBODYS}/answers", json=entries),
        client.get(f"/sheets/{NOBODYS}"),
        client.get(f"/sheets/{NOBODYS}.pdf"),
        client.post(f"/sheets/{NOBODYS}", data={"grade-1": "clear"}),
    ):
        assert reply.status_code == 404
        assert "There is no sheet" in sentence(reply)
    result = CliRunner().invoke(
        catchword, ["sheet", "--id", NOBODYS], obj=tools({"CATCHWORD_HOME": str(home)})
    )
    assert result.exit_code == 4
    assert "There is no sheet" in result.output


def test_a_sheet_entered_amiss_keeps_nothing(client):
    """One good grade beside one that is none: the API and a form keep neither."""
    entries = [{"item": item, "grade": "clear"} for item in (an_item(client), NOBODYS)]
    sheet = client.post("/api/sheets").get_json()
    for reply in (
        client.post(f"/api/sheets/{sheet['id']}/answers", json={"entries": entries}),
        client.post(f"/sheets/{sheet['id']}", data={"grade-1": "clear", "grade-2": "superb"}),
    ):
        assert reply.status_code == 422
        assert sentence(reply)
    for line in sheet["lines"]:
        assert client.get(f"/api/items/{line['item']}").get_json()["standing"] == "unasked"
