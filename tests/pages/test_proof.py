"""A digest held against the text of its book, and mended from there."""

import io
import json
import re

import pytest
from flask.testing import FlaskClient

from cards.parts import Care
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from tests.pages.house import DIGEST

NOVEL = """\
CHAPTER 1

In old days there were angels who came and took men by the hand and led them away from the city
of destruction. We see no white-winged angels now.
"""
SLIPPED = """\
# Silas Marner

George Eliot

## Points

1. The child on the hearth. (ch. 12)

## Quotations

> In old days there were angels who cam and took men by the hand
"""


@pytest.fixture
def slipped(desk: Desk) -> Added:
    """A digest whose quotation has a slip and no locator."""
    return add_digest(desk, "slipped.md", SLIPPED.encode())


def give(client: FlaskClient, added: Added, text: bytes, name: str = "novel.txt"):
    """Hand over the text of the book."""
    return client.post(
        f"/books/{added.kept.id}/proof",
        data={"book": (io.BytesIO(text), name)},
        content_type="multipart/form-data",
    )


def test_the_book_is_asked_for_and_then_shown(client: FlaskClient, slipped: Added) -> None:
    """Where each quotation stands, its slip, and what could be mended, all ticked."""
    assert "The text of the whole book" in client.get(f"/books/{slipped.kept.id}/proof").text
    answered = give(client, slipped, NOVEL.encode())
    assert answered.status_code == 303
    page = client.get(answered.location).text
    assert "You have “<span" in page
    assert re.findall(r'name="mend" value="([^"]+)" checked', page) == ["1 words", "1 locator"]


def test_what_is_ticked_is_mended_in_one_step(
    client: FlaskClient, desk: Desk, slipped: Added
) -> None:
    """Ticks that mean nothing are passed over."""
    give(client, slipped, NOVEL.encode())
    mend = ["1 words", "1 locator", "7 rubbish", "1 rubbish", "words"]
    answered = client.post(
        f"/books/{slipped.kept.id}/proof/mend", data={"revision": "1", "mend": mend}
    )
    assert answered.status_code == 303
    assert "There is nothing the book could mend." in client.get(answered.location).text
    (quotation,) = open_digest(desk, slipped.kept.id).kept.digest().quotations
    assert quotation.locator == "ch. 1"
    assert "who came and" in quotation.text


def test_a_stale_mending_is_refused(client: FlaskClient, desk: Desk, slipped: Added) -> None:
    """Nothing is mended when the digest was changed since."""
    give(client, slipped, NOVEL.encode())
    answered = client.post(
        f"/books/{slipped.kept.id}/proof/mend", data={"revision": "7", "mend": ["1 words"]}
    )
    assert answered.status_code == 409
    assert open_digest(desk, slipped.kept.id).kept.revision == 1


@pytest.mark.parametrize(
    "text", [b"", b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 20, b"PK\x03\x04" + bytes(80)]
)
def test_what_is_no_book_is_refused_in_words(
    client: FlaskClient, slipped: Added, text: bytes
) -> None:
    """The sentence stands on the page, and no text is kept."""
    answered = give(client, slipped, text)
    assert answered.status_code == 422
    assert 'role="alert"' in answered.text
    assert "The text of the whole book" in client.get(f"/books/{slipped.kept.id}/proof").text


def test_no_file_is_asked_for_again(client: FlaskClient, slipped: Added) -> None:
    """Sending the form without a file keeps nothing."""
    assert client.post(f"/books/{slipped.kept.id}/proof", data={}).status_code == 422


def test_the_text_can_be_forgotten(client: FlaskClient, slipped: Added) -> None:
    """The page asks for it again afterwards."""
    give(client, slipped, NOVEL.encode())
    answered = client.post(f"/books/{slipped.kept.id}/proof/forget")
    page = client.get(answered.location).text
    assert "The text of the whole book" in page
    assert "The text of the book is forgotten." in page


def test_the_text_of_another_book_is_suspected(client: FlaskClient, slipped: Added) -> None:
    """Where none of the quotations is found, the page asks whether it is the right book."""
    other = "CHAPTER 1\n\nCall me Ishmael. Some years ago, never mind how long, I went to sea.\n"
    page = client.get(give(client, slipped, other.encode(), "whale.txt").location).text
    assert "Is it the text of another book" in page
    page = client.get(give(client, slipped, NOVEL.encode()).location).text
    assert "Is it the text of another book" not in page


@pytest.mark.parametrize("care", Care)
def test_care_is_kept_by_one_form(
    client: FlaskClient, desk: Desk, added: Added, care: Care
) -> None:
    """And shown as chosen afterwards."""
    answered = client.post(f"/books/{added.kept.id}/care", data={"care": care.value})
    assert answered.status_code == 303
    assert f'value="{care}" checked' in client.get(f"/books/{added.kept.id}").text
    assert open_digest(desk, added.kept.id).kept.care is care


def test_care_that_is_none_is_refused(client: FlaskClient, added: Added) -> None:
    """A sentence says what to choose from."""
    assert client.post(f"/books/{added.kept.id}/care", data={"care": "dear"}).status_code == 422


@pytest.mark.parametrize(
    ("form", "begins"),
    [("pdf", b"%PDF-"), ("docx", b"PK"), ("odt", b"PK"), ("md", b"---"), ("json", b"{")],
)
def test_every_form_is_handed_out(
    client: FlaskClient, added: Added, form: str, begins: bytes
) -> None:
    """Under the name of its book."""
    answered = client.get(f"/books/{added.kept.id}/written/{form}")
    assert answered.status_code == 200
    assert answered.data.startswith(begins)
    assert f"silas-marner.{form}" in answered.headers["Content-Disposition"]


def test_what_other_programs_take_is_handed_out(client: FlaskClient, added: Added) -> None:
    """BibTeX, CSL-JSON and annotations; any other name is no page."""
    stem = f"/books/{added.kept.id}/cited"
    assert client.get(f"{stem}/book.bib").text.startswith("@book{")
    assert json.loads(client.get(f"{stem}/book.csl.json").text)[0]["title"] == "Silas Marner"
    assert json.loads(client.get(f"{stem}/quotations.jsonld").text)["@context"]
    assert client.get(f"{stem}/book.xml").status_code == 404
    assert client.get(f"/books/{added.kept.id}/written/exe").status_code == 404


BIBTEX = """\
@book{eliot, title={Silas Marner: The Weaver of Raveloe}, author={Eliot, George},
  publisher={Penguin}, year={1996}, pagetotal={240}, isbn={978-0-306-40615-7}}
"""


def test_facts_are_taken_from_a_bibliography(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Title, edition, ISBN and pages; the parts stay."""
    data = {"bibliography": BIBTEX, "revision": "1"}
    assert client.post(f"/books/{added.kept.id}/facts", data=data).status_code == 303
    digest = open_digest(desk, added.kept.id).kept.digest()
    assert digest.title == "Silas Marner: The Weaver of Raveloe"
    assert (digest.isbn, digest.pages) == ("9780306406157", 240)
    assert "Penguin" in (digest.edition or "")
    assert digest.points == added.kept.digest().points


def test_of_several_books_the_reader_chooses(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Nothing is taken before one is chosen."""
    two = BIBTEX + BIBTEX.replace("eliot,", "other,").replace("240", "333")
    data = {"bibliography": two, "revision": "1"}
    page = client.post(f"/books/{added.kept.id}/facts", data=data)
    assert "Which of these is it?" in page.text
    assert open_digest(desk, added.kept.id).kept.revision == 1
    answered = client.post(f"/books/{added.kept.id}/facts", data=data | {"book": "2"})
    assert answered.status_code == 303
    assert open_digest(desk, added.kept.id).kept.pages == 333


def test_what_is_no_bibliography_is_refused(client: FlaskClient, added: Added) -> None:
    """The sentence stands beside the field, and what was pasted stays in it."""
    data = {"bibliography": "Dear aunt,", "revision": "1"}
    answered = client.post(f"/books/{added.kept.id}/facts", data=data)
    assert answered.status_code == 422
    assert "Dear aunt," in answered.text


def test_annotations_go_out_and_come_in(client: FlaskClient, desk: Desk, added: Added) -> None:
    """What one digest hands out, another of the same book takes in, once."""
    shared = client.get(f"/books/{added.kept.id}/cited/quotations.jsonld").data
    bare = re.sub(r"## Quotations.*", "", DIGEST, flags=re.DOTALL).replace("Silas Marner", "Silas")
    other = add_digest(desk, "other.md", bare.encode())
    for said in ("are taken in", "Nothing was changed"):
        revision = str(open_digest(desk, other.kept.id).kept.revision)
        answered = client.post(
            f"/books/{other.kept.id}/annotations",
            data={"annotations": (io.BytesIO(shared), "q.jsonld"), "revision": revision},
            content_type="multipart/form-data",
        )
        assert answered.status_code == 303
        assert said in client.get(answered.location).text
    taken = [each.text for each in open_digest(desk, other.kept.id).kept.digest().quotations]
    assert taken == [each.text for each in added.kept.digest().quotations]


@pytest.mark.parametrize("content", [b"\xff\xfe\x00", b"[[[[", b'{"id": 1}', b""])
def test_what_are_no_annotations_is_refused(
    client: FlaskClient, added: Added, content: bytes
) -> None:
    """A sentence, and the digest as it was."""
    answered = client.post(
        f"/books/{added.kept.id}/annotations",
        data={"annotations": (io.BytesIO(content), "q.jsonld"), "revision": "1"},
        content_type="multipart/form-data",
    )
    assert answered.status_code == 422
    assert 'role="alert"' in answered.text


AGAIN = """\
# Silas Marner

George Eliot

Finished: 11 February 2036

## Points

1. Godfrey learns that what is refused once is not offered again.
"""


def test_two_readings_stand_side_by_side(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Each digest leads to the other, and both to facing pages, the earlier first."""
    again = add_digest(desk, "again.md", AGAIN.encode())
    if again.kept.id == added.kept.id:
        pytest.fail("the second reading was taken for a correction")
    page = client.get(f"/books/{added.kept.id}").text
    assert f"/books/{added.kept.id}/beside/{again.kept.id}" in page
    both = client.get(f"/books/{again.kept.id}/beside/{added.kept.id}").text
    assert both.index("The earlier reading") < both.index("The later reading")
