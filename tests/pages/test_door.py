"""What holds on every page: the head, what is loaded, what is refused, what is linked."""

import hashlib
import re
from collections.abc import Iterator
from html import unescape
from importlib import resources
from io import BytesIO
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from flask import Flask
from flask.testing import FlaskClient

from cards.errors import CatchwordError
from service import gate
from service.main import create_app
from service.pages import today
from service.use_cases.add_digest import Added
from service.use_cases.ports import Desk
from tests.pages.house import DIGEST, Clock, library
from tests.pages.sittings import answer, compare

STATIC = Path(str(resources.files("service.pages") / "static"))


def pages_of(client: FlaskClient, added: Added) -> Iterator[tuple[str, str]]:
    """Yield every page there is, by what it is called here."""
    book = f"/books/{added.kept.id}"
    addresses = ["/", "/books", book, f"{book}/mend", f"{book}/places", f"{book}/remove", "/write"]
    for address in [*addresses, "/commitments", "/reader", "/nowhere"]:
        yield address, client.get(address).text
    file = (BytesIO(DIGEST.encode()), "silas.md")
    draft = client.post("/books", data={"files": [file], "do": "look"}).location
    for address in (draft, "/drafts"):
        yield address, client.get(address).text
    yield "compared", compare(client, words="gold").text
    kept = answer(client, "clear", words="gold")
    yield "answered", client.get(kept.location).text
    yield "answer", client.get(f"/answers/{kept.location.partition('=')[2]}").text


def test_every_page_is_whole(client: FlaskClient, added: Added) -> None:
    """Each page has its language, one title, one main, one first heading, and a skip link."""
    for name, page in pages_of(client, added):
        assert page.startswith('<!doctype html>\n<html lang="en">'), name
        assert page.count("<main ") == 1, name
        assert page.count("<h1") == 1, name
        assert re.search(r"<title>[^<]+ · Catchword</title>", page), name
        assert '<a class="skip" href="#page">' in page, name


def test_no_page_holds_inline_styles_or_scripts(client: FlaskClient, added: Added) -> None:
    """The policy forbids inline styles, scripts and handlers, so no page has any."""
    for name, page in pages_of(client, added):
        assert not re.search(r"<style|\sstyle=|\son\w+=|<script(?![^>]*\ssrc=)", page), name


def test_no_id_stands_twice(client: FlaskClient, added: Added) -> None:
    """Labels and descriptions find their elements: no id is given twice on a page."""
    for name, page in pages_of(client, added):
        ids = re.findall(r'\sid="([^"]+)"', page)
        assert len(ids) == len(set(ids)), name
        for reference in re.findall(r'aria-(?:describedby|labelledby)="([^"]+)"', page):
            assert set(reference.split()) <= set(ids), name


def test_every_link_leads_somewhere(client: FlaskClient, added: Added) -> None:
    """No page links to a page that does not exist."""
    links = {
        unescape(link)
        for _, page in pages_of(client, added)
        for link in re.findall(r'(?:href|src)="(/[^"]*)"', page)
    }
    assert "/api/" in links
    for link in links:
        assert client.get(link).status_code == 200, link


def test_the_demo_says_so_on_every_page(tmp_path: Path, clock: Clock) -> None:
    """On the demo library every page is labelled as one, refusals too; elsewhere none is."""
    with library(tmp_path, clock.now, demo=True) as desk:
        client = create_app(desk).test_client()
        for address in ("/", "/books", "/commitments", "/reader", "/nowhere"):
            assert "a demo library: invented reader" in client.get(address).text


def test_a_readers_own_library_is_no_demo(client: FlaskClient) -> None:
    """A reader's own library bears no such label."""
    assert "invented reader" not in client.get("/").text


def test_the_room_one_is_in_is_marked(client: FlaskClient) -> None:
    """The head marks the page one is on, and only that."""
    for address, name in (("/", "Today"), ("/books", "Books"), ("/reader", "Settings")):
        page = client.get(address).text
        assert re.findall(r'aria-current="page">(\w+)<', page) == [name]


def test_what_does_not_exist_is_refused_in_words(client: FlaskClient) -> None:
    """An unknown address answers 404 and a wrong method 405, as pages with a way on."""
    missing = client.get("/nowhere")
    assert missing.status_code == 404
    assert "There is no such page in this house." in missing.text
    assert 'href="/books"' in missing.text
    wrong = client.delete("/books")
    assert wrong.status_code == 405
    assert "cannot be used in that way" in wrong.text
    assert "POST" in wrong.headers["Allow"]


def test_what_comes_from_elsewhere_is_refused_as_a_page(client: FlaskClient) -> None:
    """The gate's refusals are shown in the pages' own look."""
    refused = client.post("/reader", headers={"Sec-Fetch-Site": "cross-site"})
    assert refused.status_code == 403
    assert "not Catchword" in refused.text
    assert 'class="head"' in refused.text


def test_what_is_too_large_is_refused(app: Flask, monkeypatch: pytest.MonkeyPatch) -> None:
    """A request beyond the bound is refused with 413 and a sentence."""
    monkeypatch.setattr(gate, "LARGEST_REQUEST", 1000)
    data = {"time_zone": (BytesIO(b"x" * 2000), "large.md")}
    refused = app.test_client().post("/reader", data=data)
    assert refused.status_code == 413
    assert "larger than 20 MB" in refused.text


@pytest.mark.parametrize(
    ("error", "status", "sentence"),
    [
        (CatchwordError("The library was busy with other changes."), 503, "was busy"),
        (ZeroDivisionError("secret words"), 500, "the fault is not yours"),
    ],
)
def test_a_failure_shows_no_trace(
    app: Flask,
    monkeypatch: pytest.MonkeyPatch,
    caplog: pytest.LogCaptureFixture,
    error: Exception,
    status: int,
    sentence: str,
) -> None:
    """What fails inside is logged whole and shown as one sentence, never as a trace."""

    def fail(desk: Desk) -> None:
        raise error

    monkeypatch.setattr(today, "todays_sitting", fail)
    failed = app.test_client().get("/")
    assert failed.status_code == status
    assert sentence in failed.text
    assert "secret" not in failed.text
    assert "Traceback" not in failed.text
    assert str(error) in caplog.text


def test_what_is_loaded_may_be_kept_for_ever(client: FlaskClient) -> None:
    """An address with the file's hash is immutable; a bare one is asked about again."""
    page = client.get("/").text
    for address in re.findall(r'(?:href|src)="(/static/[^"]+)"', page):
        assert "?v=" in address
        kept = client.get(address)
        assert kept.headers["Cache-Control"] == "public, max-age=31536000, immutable"
    bare = client.get("/static/look.css")
    assert bare.headers["Cache-Control"] == "no-cache"
    assert bare.mimetype == "text/css"
    again = client.get("/static/look.css", headers={"If-None-Match": bare.headers["ETag"]})
    assert again.status_code == 304


def test_only_our_own_files_are_served(client: FlaskClient) -> None:
    """No path leads out of the folder, nor to a file that is not there."""
    for path in ("nothing.css", "../door.py", "%2e%2e/door.py", "fonts/", "fonts/../look.css", ""):
        assert client.get(f"/static/{path}").status_code == 404, path


def test_the_stylesheet_names_its_typeface_by_hash() -> None:
    """Each typeface's address in the stylesheet carries its own hash, so it is kept for ever."""
    named = re.findall(r'url\("([^"?]+)\?v=(\w+)"\)', (STATIC / "look.css").read_text())
    assert {name for name, _ in named} == {
        f"fonts/{file.name}" for file in (STATIC / "fonts").glob("*.woff2")
    }
    for name, version in named:
        assert hashlib.sha256((STATIC / name).read_bytes()).hexdigest().startswith(version)
        assert len(version) == 12


def test_the_typeface_comes_with_its_licence() -> None:
    """The Open Font License wants its text and the copyright notice beside the files."""
    licence = (STATIC / "fonts" / "source-serif-4-licence.txt").read_text()
    assert "Adobe" in licence
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence


def test_nothing_is_loaded_from_elsewhere(client: FlaskClient, added: Added) -> None:
    """Every stylesheet, script, picture and typeface is our own."""
    for name, page in pages_of(client, added):
        for address in re.findall(r'<(?:link|script|img)[^>]+(?:href|src)="([^"]+)"', page):
            assert not urlsplit(address).netloc, name
    for file in STATIC.glob("*.*"):
        text = re.sub(r'xmlns="[^"]+"', "", file.read_text())
        assert "//" not in re.sub(r"(^|\s)// ", "", text).replace("http://www.w3.org", ""), file
