"""Links from points to other books, and what keeping a book costs, through the API."""

from uuid import UUID

import pytest

from tests.api.conftest import Door
from tests.api.shelf import digest_of, fill, link_first_point, made_up


@pytest.fixture
def fens(door: Door) -> str:
    """The address of the links of a book that stands beside others."""
    fill(door, books=3)
    return f"/api/digests/{digest_of(door, 'Walks in the Fens')}/links"


def across(door: Door) -> list[str]:
    """Return the ids of the items that ask for another book."""
    items = door.client.get("/api/items?kind=across").json["items"]
    return [each["id"] for each in items]


def test_a_link_is_made_once_and_asked(door: Door, fens: str) -> None:
    """It is kept with its why, listed with its point, makes one item; sent again it is alike."""
    first = link_first_point(door, why="Both  weigh\nwhat they own.")
    assert first.status_code == 201
    assert (first.json["title"], first.json["why"]) == ("Walden", "Both weigh what they own.")
    assert link_first_point(door, why="Both weigh what they own.").json == first.json
    points = door.client.get(fens).json["points"]
    assert [len(each["links"]) for each in points] == [1, 0, 0]
    assert points[0]["links"] == [first.json]
    (item,) = across(door)
    attempt = {"attempt": {"words": "Walden"}}
    compared = door.client.post(f"/api/items/{item}/comparison", json=attempt).json
    assert compared["mark"]["grade"] in {"clear", "vivid"}


def test_the_same_point_and_book_keep_their_link(door: Door, fens: str) -> None:
    """Under another id it is still the first link, with what is now said of the why."""
    first = link_first_point(door, why="Said badly.").json
    again = link_first_point(door, id=made_up("another link"), why="Said better.").json
    assert again == {**first, "why": "Said better."}
    assert len(across(door)) == 1


@pytest.mark.parametrize(
    ("wrong", "status", "problem", "where"),
    [
        ("itself", 422, "link-invalid", "book"),
        ("unknown point", 422, "link-invalid", "point"),
        ("a quotation", 422, "link-invalid", "point"),
        ("a commitment", 422, "link-invalid", "point"),
        ("unknown book", 404, "digest-missing", "digest"),
        ("removed book", 404, "digest-missing", "digest"),
        ("an id that is taken", 422, "link-invalid", "id"),
        ("too long a why", 422, "invalid-request", None),
        ("a why with NUL", 422, "invalid-request", None),
        ("a why that is null", 422, "invalid-request", None),
        ("an id that is none", 422, "invalid-request", None),
        ("a field too many", 422, "invalid-request", None),
    ],
)
def test_what_is_no_link_is_refused(
    door: Door, fens: str, wrong: str, status: int, problem: str, where: str | None
) -> None:
    """A link leads from a point the digest holds to another book; nothing else is kept."""
    own = digest_of(door, "Walks in the Fens")
    digest = door.client.get(f"/api/digests/{own}").json
    if wrong == "removed book":
        body = {"book": digest_of(door, "Cranford")}
        door.client.delete(f"/api/digests/{body['book']}", headers={"If-Match": "*"})
    elif wrong == "an id that is taken":
        link_first_point(door)
        body = {"point": door.client.get(fens).json["points"][1]["id"]}
    else:
        body = {
            "itself": {"book": own},
            "unknown point": {"point": made_up("no point")},
            "a quotation": {"point": made_up("a quotation")},
            "a commitment": {"point": digest["commitments"][0]["id"]},
            "unknown book": {"book": made_up("no book")},
            "too long a why": {"why": "x" * 501},
            "a why with NUL": {"why": "a\x00b"},
            "a why that is null": {"why": None},
            "an id that is none": {"id": "seven"},
            "a field too many": {"mood": "fair"},
        }[wrong]
    kept = door.client.get(fens).json
    refused = link_first_point(door, **body)
    assert (refused.status_code, refused.json["type"]) == (status, f"/api/problems/{problem}")
    assert refused.json.get("where") == where
    assert refused.json["detail"].endswith(".")
    assert door.client.get(fens).json == kept


def test_a_dropped_link_is_asked_no_more(door: Door, fens: str) -> None:
    """Its item retires with its history; dropped twice, or from another book, it is missing."""
    made = link_first_point(door).json["id"]
    (item,) = across(door)
    answer = door.answer(item).json["id"]
    elsewhere = f"/api/digests/{digest_of(door, 'Walden')}/links/{made}"
    assert door.client.delete(elsewhere).json["type"] == "/api/problems/link-missing"
    assert door.client.delete(f"{fens}/{made}").status_code == 204
    again = door.client.delete(f"{fens}/{made}")
    assert (again.status_code, again.json["type"]) == (404, "/api/problems/link-missing")
    assert across(door) == []
    assert door.client.get(f"/api/items/{item}").json["retired"] is True
    history = door.client.get(f"/api/items/{item}/answers").json["answers"]
    assert [each["id"] for each in history] == [answer]
    assert link_first_point(door).status_code == 201
    assert across(door) == [item]


def test_links_of_no_digest_are_missing(door: Door) -> None:
    """Listing, making and dropping below an id that is none is 404 `digest-missing`."""
    nowhere = f"/api/digests/{made_up('no digest')}/links"
    body = {"id": made_up("link"), "point": made_up("point"), "book": made_up("book")}
    for refused in (
        door.client.get(nowhere),
        door.client.post(nowhere, json=body),
        door.client.delete(f"{nowhere}/{made_up('link')}"),
    ):
        assert (refused.status_code, refused.json["type"]) == (404, "/api/problems/digest-missing")


def test_a_book_has_its_price_at_each_care(door: Door, walks: UUID) -> None:
    """Five years of minutes a day; close costs most, and at rest what was never asked nothing."""
    shown = door.client.get(f"/api/digests/{walks}/price").json
    assert set(shown) == {"close", "steady", "resting"}
    years = {care: price["minutes_a_day"] for care, price in shown.items()}
    assert {len(each) for each in years.values()} == {5}
    assert sum(years["close"]) > sum(years["steady"]) > 0
    assert years["resting"] == [0.0] * 5
    assert all(year < years["steady"][0] for year in years["steady"][1:])
    missing = door.client.get(f"/api/digests/{made_up('no digest')}/price")
    assert missing.json["type"] == "/api/problems/digest-missing"


def test_the_price_before_is_the_price_after(door: Door) -> None:
    """A digest that is posted to be priced is not kept, and costs what it costs when it is."""
    body = {
        "title": "Walden",
        "theme": "A man goes to the woods to live simply.",
        "points": [{"text": "The hut is built for little."}, {"text": "The beans are hoed."}],
    }
    before = door.client.post("/api/prices", json=body)
    assert before.status_code == 200
    assert door.client.get("/api/digests").json["digests"] == []
    text = (
        "# Walden\n\n## Theme\n\nA man goes to the woods to live simply.\n\n## Points\n\n"
        "1. The hut is built for little.\n2. The beans are hoed.\n"
    )
    added = door.add(text, "walden.md").json["digest"]["id"]
    assert door.client.get(f"/api/digests/{added}/price").json == before.json


@pytest.mark.parametrize(
    ("body", "problem"),
    [
        ({"title": "Walden"}, "invalid-digest"),
        ({"title": "", "theme": "Woods."}, "invalid-request"),
        ({"theme": "Woods."}, "invalid-request"),
        ({"title": "Walden", "theme": "Woods.", "points": "none"}, "invalid-request"),
    ],
)
def test_what_is_no_digest_has_no_price(door: Door, body: dict[str, object], problem: str) -> None:
    """What could not be kept is refused as it would be then."""
    refused = door.client.post("/api/prices", json=body)
    assert (refused.status_code, refused.json["type"]) == (422, f"/api/problems/{problem}")
