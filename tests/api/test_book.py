"""A digest proved against the text of its book, through the API."""

import json
import zipfile
from io import BytesIO
from typing import Any
from uuid import UUID, uuid4

import pytest

from service.gate import LARGEST_AT
from tests.api.conftest import Door

BOOK = """CHAPTER I

The drains were full that spring, and the clerk walked them from lock to lock. “Mud keeps its
own accounts,” said the ferryman, and spat. They went on until the light was gone.

CHAPTER II

In winter the mill stood dry. He held the lamp over the ditch and saw nothing there. “No lantern
has ever drained a ditch,” said Hanne, and shut the door upon the night and upon him.
"""
SLIPPED = [
    {"text": "Mud keeps its own acounts", "locator": None},
    {"text": "No lantern has ever drained a ditch", "locator": "ch. 1"},
    {"text": "The moon is a poor clerk and keeps no ledger of the tides.", "locator": None},
]


@pytest.fixture
def where(door: Door, walks: UUID) -> str:
    """The address of a digest whose quotations have slips."""
    assert door.change(f"/api/digests/{walks}", quotations=SLIPPED).status_code == 200
    return f"/api/digests/{walks}"


def give(door: Door, where: str, text: str = BOOK, name: str = "walks.txt") -> dict[str, Any]:
    """Give the text of the book; return the proof."""
    given = door.send(f"{where}/book", text.encode(), name, "PUT")
    assert given.status_code == 200, given.json
    return dict(given.json)


def test_giving_the_book_proves_each_quotation(door: Door, where: str) -> None:
    """Each is found with its chapter and slips, or is not; a wrong locator is said so."""
    proof = give(door, where)
    assert (proof["revision"], proof["book"]) == (2, "walks.txt")
    one, two, three = proof["quotations"]
    assert one["quotation"]["text"] == "Mud keeps its own acounts"
    assert one["found"]["exact"] == "Mud keeps its\nown accounts"
    assert one["found"]["chapter"] == {"number": 1, "title": "CHAPTER I"}
    assert (one["found"]["places"], one["found"]["pages"]) == (1, [])
    (slip,) = one["found"]["slips"]
    assert (slip["kind"], slip["quoted"], slip["book"]) == ("spelling", "acounts", "accounts")
    assert one["quotation"]["text"][slip["start"] : slip["end"]] == "acounts"
    assert one["found"]["mended"] == "Mud keeps its own accounts"
    assert BOOK.find("Mud") == one["found"]["start"]
    assert one["found"]["fraction"] == one["anchor"]["fraction"]
    assert set(one["mends"]) >= {"words", "locator"}
    assert two["found"]["chapter"]["number"] == 2
    assert two["contradiction"].endswith(".")
    assert "locator" in two["mends"]
    assert (three["found"], three["anchor"], three["mends"]) == (None, None, [])


def test_the_proof_can_be_asked_for_again(door: Door, where: str) -> None:
    """It is the same proof, under a tag that changes with the digest and with the book."""
    given = give(door, where)
    asked = door.client.get(f"{where}/book")
    assert asked.json == given
    known = {"If-None-Match": asked.headers["ETag"]}
    assert door.client.get(f"{where}/book", headers=known).status_code == 304
    give(door, where, BOOK.replace("spring", "April"))
    assert door.client.get(f"{where}/book", headers=known).status_code == 200


def test_only_what_is_wanted_is_mended(door: Door, where: str) -> None:
    """The words of one quotation are put right in one step; the others stay as they are."""
    give(door, where)
    mended = door.client.post(
        f"{where}/book/mending",
        json={"quotations": [{"number": 1, "mend": ["words"]}]},
        headers={"If-Match": door.tag(f"{where}/book")},
    )
    assert mended.status_code == 200, mended.json
    assert mended.json["revision"] == 3
    texts = [each["text"] for each in door.client.get(where).json["quotations"]]
    assert texts == ["Mud keeps its own accounts", SLIPPED[1]["text"], SLIPPED[2]["text"]]
    assert door.client.get(where).json["quotations"][1]["locator"] == "ch. 1"
    newest = door.client.get(f"{where}/versions").json["versions"][0]
    assert newest["cause"] == "proved"


@pytest.mark.parametrize("body", [None, {}, {"quotations": None}])
def test_everything_is_mended_unless_said_otherwise(
    door: Door, where: str, body: dict[str, object] | None
) -> None:
    """Words, locators and places are filled in as far as the text tells; items keep history."""
    give(door, where)
    item = door.item("place")
    door.answer(item)
    options = {} if body is None else {"json": body}
    mended = door.client.post(
        f"{where}/book/mending", headers={"If-Match": door.tag(where)}, **options
    )
    assert mended.status_code == 200, mended.json
    one, two, three = door.client.get(where).json["quotations"]
    assert (one["text"], one["locator"]) == ("Mud keeps its own accounts", "ch. 1")
    assert two["locator"] == "ch. 2"
    assert three["locator"] is None
    assert door.client.get(f"/api/items/{item}").json["standing"] == "settling"


@pytest.mark.parametrize(
    ("body", "problem"),
    [
        ({"quotations": []}, "invalid-request"),
        ({"quotations": [{"number": 0, "mend": ["words"]}]}, "invalid-request"),
        ({"quotations": [{"number": 2**70, "mend": ["words"]}]}, "invalid-request"),
        ({"quotations": [{"number": 1, "mend": []}]}, "invalid-request"),
        ({"quotations": [{"number": 1, "mend": ["spelling"]}]}, "invalid-request"),
        ({"quotations": [{"number": 4, "mend": ["words"]}]}, "invalid-digest"),
    ],
)
def test_mending_what_is_not_there_is_refused(
    door: Door, where: str, body: dict[str, object], problem: str
) -> None:
    """No quotation, one that is not there, and mends there are not: 422, nothing changed."""
    give(door, where)
    before = door.tag(where)
    refused = door.client.post(f"{where}/book/mending", json=body, headers={"If-Match": before})
    assert refused.status_code == 422
    assert refused.json["type"] == f"/api/problems/{problem}"
    assert door.tag(where) == before


def test_a_book_that_was_forgotten_is_missing(door: Door, where: str) -> None:
    """Its text is gone, where quotations were found stays; forgetting again changes nothing."""
    for path in ("book", "book/mending"):
        method = "GET" if path == "book" else "POST"
        refused = door.client.open(f"{where}/{path}", method=method, headers={"If-Match": "*"})
        assert refused.status_code == 404
        assert refused.json["type"] == "/api/problems/book-text-missing"
    give(door, where)
    for _ in range(2):
        gone = door.client.delete(f"{where}/book")
        assert (gone.status_code, gone.data) == (204, b"")
    assert door.client.get(f"{where}/book").status_code == 404
    collection = json.loads(door.client.get(f"{where}/annotations").data)
    selectors = collection["first"]["items"][0]["target"]["selector"]
    assert [each["type"] for each in selectors] == [
        "TextQuoteSelector",
        "TextPositionSelector",
    ]


def test_the_text_itself_is_never_given_out(door: Door, where: str) -> None:
    """Of the book no answer holds more than a quotation's own words and a line around them."""
    give(door, where)
    paths = ["book", "annotations", "written/json", "written/md", "versions/1", "changes"]
    for path in paths:
        said = door.client.get(f"{where}/{path}").text
        assert "The drains were full" not in said
        assert "the light was gone" not in said


def test_a_second_edition_finds_quotations_again(door: Door, where: str) -> None:
    """In another text the quotation is found where it stands there, under that text's hash."""
    first = give(door, where)["quotations"][0]
    longer = "CHAPTER I\n\nA foreword of the editor, who was never in the fens.\n\n" + BOOK
    second = give(door, where, longer, "second.txt")["quotations"][0]
    assert second["found"]["start"] == longer.find("Mud keeps")
    assert second["anchor"]["source"] != first["anchor"]["source"]


def zipped(**files: str) -> bytes:
    """Return a zip of text files."""
    written = BytesIO()
    with zipfile.ZipFile(written, "w") as archive:
        for name, text in files.items():
            archive.writestr(name, text)
    return written.getvalue()


@pytest.mark.parametrize(
    ("name", "content", "status", "problem"),
    [
        ("book.txt", b"", 422, "document-empty"),
        ("book.txt", b"\x00\x00", 422, "document-empty"),
        ("book.epub", b"no zip at all", 422, "document-broken"),
        ("book.epub", zipped(mimetype="application/epub+zip"), 422, "document-broken"),
        ("book.pdf", b"%PDF-1.7", 415, "document-unsupported"),
        ("book.zip", zipped(a="a"), 415, "document-unsupported"),
    ],
)
def test_a_file_that_is_no_book_is_refused(
    door: Door, where: str, name: str, content: bytes, status: int, problem: str
) -> None:
    """Each is refused in a sentence, and the text given before stays."""
    given = give(door, where)
    refused = door.send(f"{where}/book", content, name, "PUT")
    assert refused.status_code == status, refused.json
    assert refused.json["type"] == f"/api/problems/{problem}"
    assert door.client.get(f"{where}/book").json == given


def test_a_book_beyond_its_bound_is_not_read(door: Door, where: str) -> None:
    """A request of more than the largest book and its form is refused before it is read: 413."""
    route = "/api/digests/<uuid:digest_id>/book"
    refused = door.client.put(
        f"{where}/book",
        content_type="multipart/form-data; boundary=x",
        environ_overrides={"CONTENT_LENGTH": str(LARGEST_AT[route] + 1)},
    )
    assert refused.status_code == 413
    assert refused.json["type"] == "/api/problems/request-too-large"


def test_no_book_is_kept_of_a_digest_that_is_not_here(door: Door) -> None:
    """Giving, asking and forgetting are all 404 for a digest not of this library."""
    where = f"/api/digests/{uuid4()}/book"
    for refused in (
        door.send(where, BOOK.encode(), "walks.txt", "PUT"),
        door.client.get(where),
        door.client.delete(where),
    ):
        assert refused.status_code == 404
        assert refused.json["type"] == "/api/problems/digest-missing"
