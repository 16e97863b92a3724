"""The library's pages: handing in, looking through, placing, taking out."""

import re
from dataclasses import replace
from io import BytesIO
from uuid import uuid4

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from cards.digest import Point, Quotation
from cards.kinds.base import KindName
from service.pages import books
from service.store.sql_store import SqlStore
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.drafts import begin_draft
from service.use_cases.library import list_digests, open_digest
from service.use_cases.mend_digest import mend_digest, unplaced
from service.use_cases.ports import Desk
from service.use_cases.telling import NOWHERE
from tests.pages.house import DIGEST, WITHOUT_POINTS
from tests.pages.sittings import answer, form, these
from tests.store.statements import Statements

HOSTILE = "<script>alert('x')</script> \"quoted\" & \u202eright to left\u202c"


def hand_in(client: FlaskClient, *files: tuple[str, bytes], do: str = "add") -> TestResponse:
    """Hand files in as the form does."""
    data = {"files": [(BytesIO(content), name) for name, content in files], "do": do}
    return client.post("/books", data=data)


def test_a_file_handed_in_is_reported(client: FlaskClient, desk: Desk) -> None:
    """A digest is kept, and its page says what it makes and what is still to be asked."""
    page = hand_in(client, ("silas.md", DIGEST.encode()))
    assert page.status_code == 200
    assert "added" in page.text
    assert (
        "16 items: 1 theme, 3 next, 2 restate, 3 complete, 3 source, 1 order, 3 place" in page.text
    )
    (entry,) = list_digests(desk).entries
    assert f'href="/books/{entry.kept.id}"' in page.text
    assert "Say where one quotation stands" in page.text


def test_the_same_file_again_changes_nothing(client: FlaskClient, desk: Desk) -> None:
    """Handing the very file in again is reported as unchanged."""
    hand_in(client, ("silas.md", DIGEST.encode()))
    assert "unchanged" in hand_in(client, ("silas.md", DIGEST.encode())).text
    assert len(list_digests(desk).entries) == 1


def test_a_corrected_file_leads_to_what_it_changed(client: FlaskClient) -> None:
    """Handing a corrected file in says that its digest changed, and where to look at that."""
    hand_in(client, ("silas.md", DIGEST.encode()))
    changed = DIGEST.replace("her day,", "her day and wait,")
    page = hand_in(client, ("silas.md", changed.encode())).text
    lead = re.search(r'href="(/books/[^"]+/versions)">What changed in it', page)
    assert lead is not None
    assert "reworded" in client.get(lead[1]).text


def test_one_bad_file_stops_none_of_the_others(client: FlaskClient, desk: Desk) -> None:
    """Of several files the good ones are kept, and each bad one is refused in a sentence."""
    page = hand_in(
        client,
        ("empty.docx", b""),
        ("silas.md", DIGEST.encode()),
        ("picture.docx", b"\x89PNG\r\n\x1a\n" + b"\x00" * 64),
        ("nothing.md", b"Only a line about the weather."),
        ("essays.md", WITHOUT_POINTS.encode()),
    )
    assert page.status_code == 200
    assert page.text.count(">Refused<") == 3
    assert "“empty.docx” is empty" in page.text
    assert len(list_digests(desk).entries) == 2


def test_when_every_file_is_refused_the_status_says_so(client: FlaskClient) -> None:
    """With nothing kept the answer is 422, its page the sentence for each file."""
    page = hand_in(client, ("empty.docx", b""))
    assert page.status_code == 422
    assert "is empty" in page.text


def test_no_file_and_too_many_files(client: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    """Handing in nothing, or more than can be read at once, is refused beside the field."""
    page = client.post("/books", data={"do": "add"})
    assert page.status_code == 422
    assert "Choose a file first" in page.text
    assert 'aria-describedby="files-help files-fault"' in page.text
    monkeypatch.setattr(books, "MOST_FILES", 1)
    page = hand_in(client, ("a.md", b"a"), ("b.md", b"b"))
    assert page.status_code == 422
    assert "These are 2 files; at most 1" in page.text


def test_notices_are_shown(client: FlaskClient) -> None:
    """What the reading could not make sense of is told beside what was kept."""
    odd = DIGEST.replace("pages: 186", "pages: many")
    page = hand_in(client, ("odd.md", odd.encode())).text
    assert '<ul class="notices">' in page


def test_the_library_lists_its_books(client: FlaskClient, added: Added) -> None:
    """Books shows title, author, day finished, what a digest holds and how its items stand."""
    page = client.get("/books").text
    assert "Silas Marner" in page
    assert "George Eliot" in page
    assert "18\u00a0January\u00a02026" in page
    assert "three points, two commitments, three quotations" in page
    assert "6 unasked" in page
    answer(client, "blank", nothing="yes")
    assert "5 unasked, 1 faded" in client.get("/books").text


def test_the_library_goes_on_by_pages(
    client: FlaskClient, desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A long library is shown page by page, each book once; a cursor that is none is not found."""
    monkeypatch.setattr(books, "SHELF", 2)
    for number in range(5):
        text = WITHOUT_POINTS.replace("title: Essays", f"title: Volume {number}")
        add_digest(desk, f"{number}.md", text.encode())
    seen: list[str] = []
    address: str | None = "/books"
    while address:
        page = client.get(address).text
        seen += re.findall(r"Volume \d", page)
        more = re.search(r'rel="next" href="([^"]+)"', page)
        address = more[1] if more else None
    assert sorted(seen) == [f"Volume {number}" for number in range(5)]
    for wrong in ("x", "2026-03-02T20:00:00~x", f"2026-03-02T20:00:00~{uuid4()}"):
        assert client.get("/books", query_string={"after": wrong}).status_code == 404


def test_a_digest_is_laid_open(client: FlaskClient, added: Added) -> None:
    """A digest's page holds every part, each locator, its items, and the money's caution."""
    page = client.get(f"/books/{added.kept.id}").text
    for words in (
        "Driven out by a friend",
        "Dunstan takes the gold",
        "Put 20 euros a month",
        "This touches your money",
        "Nothing is so good as it seems beforehand",
        "p. 172",
        "Where quotation 3 stands",
        "Commitment 2, said again",
        "when its turn comes",
    ):
        assert words in page


def test_the_plot_line_draws_only_what_has_a_page(client: FlaskClient, added: Added) -> None:
    """Three points and two quotations are drawn; the one without a page is named apart."""
    page = client.get(f"/books/{added.kept.id}").text
    strip = re.search(r"<svg role=\"img\".*?</svg>", page, re.DOTALL)
    assert strip is not None
    assert strip[0].count('class="tick"') == 3
    assert strip[0].count("<circle") == 2
    assert "<title" in strip[0]
    assert "<desc" in strip[0]
    assert "Three points on pages 12, 20 and 45. Two quotations on pages 140 and 172." in page
    assert "Apart from the line, since no page is known: quotation 3 (Finale)." in page


def test_check_ins_are_counted_on_the_digest(client: FlaskClient, added: Added) -> None:
    """A commitment on the digest's page says how often it was kept."""
    page = client.get("/commitments").text
    report = form(page, "/check-ins")
    client.post(report.action, data={**report.hidden, "outcome": "kept"})
    assert "kept once" in client.get(f"/books/{added.kept.id}").text


def test_the_original_comes_back_whole(client: FlaskClient, added: Added) -> None:
    """The file a digest came from is handed back byte for byte, never shown as a page."""
    file = client.get(f"/books/{added.kept.id}/original")
    assert file.data == DIGEST.encode()
    assert file.headers["Content-Disposition"].startswith("attachment")
    assert "silas.md" in file.headers["Content-Disposition"]
    assert file.mimetype == "application/octet-stream"


def test_an_unknown_book_is_not_there(client: FlaskClient) -> None:
    """Every page of a book that is not there answers 404 in a sentence."""
    for page in ("", "/mend", "/places", "/remove", "/original"):
        refused = client.get(f"/books/{uuid4()}{page}")
        assert refused.status_code == 404
        assert "There is no digest at this address." in refused.text
        assert client.get(f"/books/not-an-id{page}").status_code == 404


def test_where_a_quotation_stands_is_asked_once(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """The reader says after which point a quotation stands, and is not asked again."""
    address = f"/books/{added.kept.id}/places"
    asked = client.get(address).text
    assert "Our consciousness rarely registers" in asked
    assert "Nothing is so good" not in asked
    assert "before all of these" in asked
    assert "I do not know" in asked
    sent = form(asked, "/places")
    answered = client.post(sent.action, data={**sent.hidden, "quotation-3": "0"})
    assert (answered.status_code, answered.location) == (
        303,
        f"/books/{added.kept.id}?kept=places",
    )
    assert "The places are kept." in client.get(answered.location).text
    kept = open_digest(desk, added.kept.id).kept
    assert kept.digest().quotations[2].after == 0
    assert unplaced(kept) == ()
    assert "Every quotation has its place" in client.get(address).text


def test_a_place_not_known_stays_open(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Not knowing is an answer: nothing is kept, nothing is invented."""
    sent = form(client.get(f"/books/{added.kept.id}/places").text, "/places")
    answered = client.post(sent.action, data={**sent.hidden, "quotation-3": ""})
    assert answered.status_code == 303
    assert unplaced(open_digest(desk, added.kept.id).kept) == (3,)


def test_places_that_cannot_be(client: FlaskClient, desk: Desk, added: Added) -> None:
    """A point that is not there is refused beside the question; an old page is a conflict."""
    address = f"/books/{added.kept.id}/places"
    sent = form(client.get(address).text, "/places")
    for wrong in ("4", "-1", "x"):
        refused = client.post(address, data={**sent.hidden, "quotation-3": wrong})
        assert refused.status_code == 422
        assert "Choose one of the places offered." in refused.text
    old = client.post(address, data={"revision": "99", "quotation-3": "1"})
    assert old.status_code == 409
    assert "was changed since you opened this page" in old.text
    assert unplaced(open_digest(desk, added.kept.id).kept) == (3,)


def test_a_book_is_taken_out_only_after_a_question(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """Taking a book out asks first, says what is kept, and then is done."""
    address = f"/books/{added.kept.id}/remove"
    asked = client.get(address).text
    assert "out of the library?" in asked
    assert len(list_digests(desk).entries) == 1
    sent = form(asked, "/remove")
    answered = client.post(sent.action, data=sent.hidden)
    assert answered.status_code == 303
    assert "A digest was taken out" in client.get(answered.location).text
    assert list_digests(desk).entries == ()
    assert "No books yet" in client.get("/").text


def test_a_book_changed_meanwhile_is_not_taken_out(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """A question answered on an old page removes nothing."""
    for revision in ("99", "x"):
        answered = client.post(f"/books/{added.kept.id}/remove", data={"revision": revision})
        assert answered.status_code == 409
        assert "Look at it once more" in answered.text
    assert len(list_digests(desk).entries) == 1


def test_hostile_words_are_shown_as_words(client: FlaskClient, desk: Desk) -> None:
    """Titles, points, quotations and file names are escaped on every page they are shown on."""
    text = DIGEST.replace("title: Silas Marner", f"title: {HOSTILE}").replace(
        "Dunstan takes", f"`{HOSTILE}` Dunstan takes"
    )
    page = hand_in(client, (f"{HOSTILE}.md", text.encode()))
    digest_id = list_digests(desk).entries[0].kept.id
    these(desk, KindName.THEME)
    addresses = ["/", "/books", f"/books/{digest_id}", "/commitments"]
    addresses += [f"/books/{digest_id}/{part}" for part in ("mend", "places", "remove")]
    pages = [page.text, *(client.get(address).text for address in addresses)]
    looked_over = hand_in(client, ("x.md", text.encode()), do="look")
    pages.append(client.get(looked_over.location).text)
    for shown in pages:
        assert "<script>alert" not in shown
        assert "&lt;script&gt;alert" in shown


@pytest.mark.parametrize("address", ["/books", "/commitments"])
def test_a_list_takes_a_fixed_number_of_statements(
    client: FlaskClient, desk: Desk, address: str
) -> None:
    """However many books there are, their lists ask the store the same few things."""
    assert isinstance(desk.store, SqlStore)
    statements = Statements(desk.store.engines)
    asked = []
    for number in range(3):
        text = DIGEST.replace("title: Silas Marner", f"title: Volume {number}")
        add_digest(desk, f"{number}.md", text.encode())
        statements.clear()
        assert f"Volume {number}" in client.get(address).text
        asked.append(len(statements))
    assert asked == [asked[0]] * 3
    assert asked[0] <= 6


def test_the_library_leads_to_writing_and_to_the_drafts(client: FlaskClient, desk: Desk) -> None:
    """Books and the first page lead to the blank form, the blanks, and the drafts by number."""
    for address in ("/books", "/"):
        page = client.get(address).text
        assert 'href="/write"' in page
        assert 'href="/write/blank.docx"' in page
        assert 'href="/drafts"' not in page
    for title in ("Walden", "Emma"):
        begin_draft(desk, {"title": title})
    for address in ("/books", "/"):
        assert '<a href="/drafts">Two drafts</a>' in client.get(address).text


def test_a_folder_is_reported_by_name(client: FlaskClient) -> None:
    """However the browser sends a folder's files, they are told of in the order of their names."""
    names = ("digests/c.md", "digests/a.md", "digests/b.md")
    folder = [(BytesIO(b"Only the weather."), name) for name in names]
    page = client.post("/books", data={"folder": folder, "do": "add"}).text
    assert re.findall(r">(digests/.\.md)</p>", page) == sorted(names)


def test_advice_on_a_kept_digest_is_quiet(client: FlaskClient, desk: Desk, added: Added) -> None:
    """What would make a digest worthier stands folded on its page; without any, nothing does."""
    digest = open_digest(desk, added.kept.id).kept.digest()
    bare = replace(digest, quotations=(Quotation("Gold, gold. " * 900),))
    mend_digest(desk, added.kept.id, bare)
    page = client.get(f"/books/{added.kept.id}").text
    folded = page[page.index('<details class="worth">') : page.index("</details>")]
    assert "This quotation has no locator" in folded
    assert "Page two is" in folded
    theme = "Driven out by a friend, a weaver hoards gold; it is stolen, and a child comes to the "
    theme += "hearth in its place and brings him back to his neighbours."
    good = replace(digest, theme=theme, commitments=(), quotations=(Quotation("Gold.", "p. 50"),))
    good = replace(good, points=(Point("Dunstan takes the gold at night.", "p. 40"),))
    mend_digest(desk, added.kept.id, good)
    assert 'class="worth"' not in client.get(f"/books/{added.kept.id}").text


def test_a_quotation_found_nowhere_is_one_thing(client: FlaskClient) -> None:
    """Neither a locator nor a place is one notice where it is shown, in a report and beside it."""
    text = DIGEST.replace("Finale", "").replace("(p. 172)", "").replace("()", "")
    page = hand_in(client, ("silas.md", text.encode())).text
    assert NOWHERE in page
    assert "It has no locator." not in page
    draft = hand_in(client, ("other.md", text.encode()), do="look")
    shown = client.get(draft.location).text
    assert NOWHERE in shown
    assert "This quotation has no locator" not in shown
