"""Digests through the API."""

from io import BytesIO
from uuid import UUID, uuid4

import pytest

from tests.api.conftest import WALKS, Clock, Door

READ_SHAPE = {
    "title",
    "author",
    "edition",
    "isbn",
    "pages",
    "finished_on",
    "theme",
    "judgement",
    "points",
    "commitments",
    "quotations",
    "warnings",
    "sources",
    "left",
    "advice",
}
TWO = f"{WALKS}\n\n# The Salt Road\n\nby M. Orr\n\n## Theme\n\nA carter turns back at the pass.\n"


def tag(door: Door, digest: UUID) -> str:
    """Return the tag of a digest as it is now."""
    return door.client.get(f"/api/digests/{digest}").headers["ETag"]


def test_reading_tells_the_whole_shape_and_keeps_nothing(door: Door) -> None:
    """Reading a file gives exactly the shape of a digest with warnings, and adds no digest."""
    read = door.send("/api/digests/read", WALKS.encode(), "walks.md")
    assert read.status_code == 200
    assert set(read.json) == READ_SHAPE
    assert read.json["points"][1] == {
        "text": "He loses the path at night.",
        "locator": "p. 80",
        "page": 80,
    }
    assert set(read.json["quotations"][0]) == {"text", "locator", "page", "after"}
    assert set(read.json["commitments"][0]) == {"text"}
    assert door.client.get("/api/digests").json == {"digests": [], "next": None}


def test_reading_tells_where_each_part_came_from_and_what_was_left(door: Door) -> None:
    """Sources give the words of the file part by part; what was not taken in is listed."""
    stray = WALKS.replace("## Theme", "## Weather\n\nRain until Easter.\n\n## Theme")
    read = door.send("/api/digests/read", stray.encode(), "walks.md").json
    sources = {each["part"]: each["words"] for each in read["sources"]}
    assert sources["points 2"] == "2. He loses the path at night (p. 80)."
    assert sources["title"] == "Walks in the Fens"
    assert "Rain until Easter." in read["left"]


def test_reading_gives_advice(door: Door) -> None:
    """Advice names the part it is about: a theme of a line, a quotation without a locator."""
    bare = WALKS.replace(" (p. 97)", "").replace(" He learns to wait for weather.", "")
    advice = door.send("/api/digests/read", bare.encode(), "walks.md").json["advice"]
    assert {"theme", "quotations 2"} <= {each["part"] for each in advice}


@pytest.mark.parametrize("path", ["/api/digests", "/api/digests/read"])
def test_several_digests_in_a_file_are_refused_where_one_is_asked_for(
    door: Door, path: str
) -> None:
    """A file with two digests is refused in a sentence that says how many, and nothing is kept."""
    refused = door.send(path, TWO.encode(), "two.md")
    assert refused.status_code == 422
    assert refused.json["type"] == "/api/problems/several-digests"
    assert "2 digests" in refused.json["detail"]
    assert door.client.get("/api/digests").json["digests"] == []


def test_a_new_digest_is_created_and_the_same_again_is_unchanged(door: Door) -> None:
    """Adding is answered 201 with a Location once, then 200 and `unchanged`, changing nothing."""
    first = door.add()
    again = door.add()
    assert (first.status_code, first.json["status"]) == (201, "added")
    assert (again.status_code, again.json["status"]) == (200, "unchanged")
    assert first.headers["Location"] == again.headers["Location"]
    assert first.json["file"] == "walks.md"
    assert first.json["items"] == {"theme": 1, "place": 2, "restate": 2}
    assert again.json["digest"] == first.json["digest"]
    assert door.client.get(first.headers["Location"]).headers["ETag"] == first.headers["ETag"]


def test_a_corrected_file_changes_the_digest(door: Door) -> None:
    """The same book with a correction is answered 200 and `changed`, with a new tag."""
    first = door.add()
    changed = door.add(WALKS.replace("wait for weather", "wait for the weather"))
    assert (changed.status_code, changed.json["status"]) == (200, "changed")
    assert changed.json["digest"]["id"] == first.json["digest"]["id"]
    assert changed.headers["ETag"] != first.headers["ETag"]


def test_commitments_carry_ids_and_cautions(door: Door, walks: UUID) -> None:
    """Each commitment has an id, and one that touches health its caution."""
    plain, health = door.client.get(f"/api/digests/{walks}").json["commitments"]
    assert UUID(plain["id"]) != UUID(health["id"])
    assert plain["caution"] is None
    assert "doctor" in health["caution"]


def test_a_digest_not_changed_meanwhile_is_not_sent_again(door: Door, walks: UUID) -> None:
    """If-None-Match with the present tag is answered 304 without a body."""
    known = door.client.get(f"/api/digests/{walks}", headers={"If-None-Match": tag(door, walks)})
    assert (known.status_code, known.data) == (304, b"")
    assert known.headers["ETag"] == tag(door, walks)


def test_what_was_given_can_be_sent_back_changed(door: Door, walks: UUID) -> None:
    """A digest as it was given, with one correction, mends it and gives its new tag."""
    given = door.client.get(f"/api/digests/{walks}")
    wanted = {**given.json, "author": "Edith Fell"}
    mended = door.client.put(
        f"/api/digests/{walks}", json=wanted, headers={"If-Match": given.headers["ETag"]}
    )
    assert mended.status_code == 200
    assert mended.json["author"] == "Edith Fell"
    assert mended.json["revision"] == given.json["revision"] + 1
    assert mended.headers["ETag"] == tag(door, walks) != given.headers["ETag"]
    assert mended.json["points"] == given.json["points"]


def test_edition_and_care_are_mended_with_the_rest(door: Door, walks: UUID) -> None:
    """Both are in every shape of a digest; sent with it they are changed, left out care stays."""
    given = door.client.get(f"/api/digests/{walks}").json
    assert (given["edition"], given["care"]) == (None, "steady")
    wanted = {**given, "edition": "Reed & Sons, 1911", "care": "close"}
    for sent in (wanted, {key: value for key, value in wanted.items() if key != "care"}):
        mended = door.client.put(
            f"/api/digests/{walks}", json=sent, headers={"If-Match": tag(door, walks)}
        )
        assert (mended.json["edition"], mended.json["care"]) == ("Reed & Sons, 1911", "close")
        assert mended.headers["ETag"] == tag(door, walks)
    (entry,) = door.client.get("/api/digests").json["digests"]
    assert (entry["edition"], entry["care"]) == ("Reed & Sons, 1911", "close")


def test_a_wrong_isbn_that_was_read_can_be_sent_back_and_no_other(door: Door) -> None:
    """A digest read with a number too short keeps it when it is sent back; a new one is refused."""
    added = door.add(WALKS.replace("Pages: 200", "Pages: 200\n\nISBN: 978-0-14-14396"))
    assert added.json["digest"]["isbn"] == "97801414396"
    where, given = added.headers["Location"], added.json["digest"]
    for isbn, status in (("97801414396", 200), ("9780141439", 200), ("978014143951", 422)):
        sent = door.client.put(where, json={**given, "isbn": isbn}, headers={"If-Match": "*"})
        assert sent.status_code == status, sent.json
    assert sent.json["errors"] == [
        {
            "detail": "An ISBN has 10 or 13 digits, the last of ten may be X.",
            "pointer": "#/isbn",
        }
    ]


@pytest.mark.parametrize("method", ["put", "delete"])
def test_editing_without_a_tag_is_refused(door: Door, walks: UUID, method: str) -> None:
    """Without If-Match a digest is neither mended nor taken out: 428."""
    body = {"title": "Other", "theme": "Other."} if method == "put" else None
    refused = door.client.open(f"/api/digests/{walks}", method=method.upper(), json=body)
    assert refused.status_code == 428
    assert refused.json["type"] == "/api/problems/if-match-required"
    assert door.client.get(f"/api/digests/{walks}").json["title"] == "Walks in the Fens"


@pytest.mark.parametrize("method", ["put", "delete"])
@pytest.mark.parametrize("kind", ["stale", "weak", "of another", "nonsense"])
def test_editing_with_a_wrong_tag_is_refused(
    door: Door, walks: UUID, method: str, kind: str
) -> None:
    """A tag that is stale, weak, of something else or nonsense changes nothing: 412."""
    present = tag(door, walks)
    wrong = {
        "stale": f'"{walks}.99"',
        "weak": f"W/{present}",
        "of another": f'"{uuid4()}.1"',
        "nonsense": "nonsense",
    }[kind]
    body = {"title": "Other", "theme": "Other."} if method == "put" else None
    refused = door.client.open(
        f"/api/digests/{walks}", method=method.upper(), json=body, headers={"If-Match": wrong}
    )
    assert refused.status_code == 412
    assert refused.json["type"] == "/api/problems/digest-changed"
    assert tag(door, walks) == present


@pytest.mark.parametrize("several", [True, False])
def test_a_star_or_one_of_several_tags_will_do(door: Door, walks: UUID, several: bool) -> None:
    """If-Match `*`, or a list with the present tag in it, takes the digest out."""
    wanted = f'"{walks}.7", {tag(door, walks)}' if several else "*"
    gone = door.client.delete(f"/api/digests/{walks}", headers={"If-Match": wanted})
    assert (gone.status_code, gone.data) == (204, b"")
    assert door.client.get(f"/api/digests/{walks}").status_code == 404
    assert door.client.get("/api/digests").json["digests"] == []
    assert door.client.get("/api/items").json["items"] == []


def test_a_list_of_stale_tags_will_not_do(door: Door, walks: UUID) -> None:
    """A list of tags none of which is the present one is refused with 412."""
    refused = door.client.delete(
        f"/api/digests/{walks}", headers={"If-Match": f'"{walks}.7", "{walks}.8"'}
    )
    assert refused.status_code == 412


def test_a_page_stands_in_for_a_locator(door: Door, walks: UUID) -> None:
    """A quotation with a page and no locator gets the locator `p.` and the page."""
    body = {"title": "Walks", "quotations": [{"text": "Mud.", "page": 14}, {"text": "Rain."}]}
    mended = door.client.put(f"/api/digests/{walks}", json=body, headers={"If-Match": "*"})
    assert mended.json["quotations"] == [
        {"text": "Mud.", "locator": "p. 14", "page": 14, "after": None},
        {"text": "Rain.", "locator": None, "page": None, "after": None},
    ]


@pytest.mark.parametrize(
    ("part", "where"),
    [
        ({"points": [{"text": "A", "locator": "p. 3", "page": 4}]}, "points 1"),
        ({"quotations": [{"text": "A", "locator": "ch. 3", "page": 3}]}, "quotations 1"),
        ({"quotations": [{"text": "A", "after": 1}]}, "quotations 1"),
        ({}, "theme"),
    ],
)
def test_a_digest_that_contradicts_itself_is_refused(
    door: Door, walks: UUID, part: dict[str, object], where: str
) -> None:
    """A page that is not the locator's, a point that is not there, or nothing at all: 422."""
    refused = door.client.put(
        f"/api/digests/{walks}", json={"title": "Walks", **part}, headers={"If-Match": "*"}
    )
    assert refused.status_code == 422
    assert refused.json["type"] == "/api/problems/invalid-digest"
    assert refused.json["where"] == where


@pytest.mark.parametrize(
    ("field", "value", "pointer"),
    [
        ("title", 7, "#/title"),
        ("title", "", "#/title"),
        ("title", "a\x00b", "#/title"),
        ("title", "half \ud800", "#/title"),
        ("pages", "200", "#/pages"),
        ("pages", True, "#/pages"),
        ("pages", 2**70, "#/pages"),
        ("isbn", "12", "#/isbn"),
        ("isbn", "1" * 41, "#/isbn"),
        ("edition", "", "#/edition"),
        ("edition", "x" * 501, "#/edition"),
        ("care", "dearly", "#/care"),
        ("finished_on", "20260301", "#/finished_on"),
        ("points", [{"text": "A", "page": -1}], "#/points/0/page"),
        ("a/~b", 1, "#/a~1~0b"),
    ],
)
def test_a_field_that_is_not_as_it_should_be_is_pointed_at(
    door: Door, walks: UUID, field: str, value: object, pointer: str
) -> None:
    """Each wrong field is listed with a JSON Pointer to it (RFC 6901), and nothing is changed."""
    body = {"title": "Walks", "theme": "A theme.", field: value}
    refused = door.client.put(f"/api/digests/{walks}", json=body, headers={"If-Match": "*"})
    assert refused.status_code == 422
    assert refused.json["type"] == "/api/problems/invalid-request"
    assert [each["pointer"] for each in refused.json["errors"]] == [pointer]
    assert door.client.get(f"/api/digests/{walks}").json["title"] == "Walks in the Fens"


def test_an_isbn_is_kept_without_hyphens(door: Door, walks: UUID) -> None:
    """An ISBN with hyphens is the same ISBN without them."""
    body = {"title": "Walks", "theme": "A theme.", "isbn": "978-0-14-143966-2"}
    mended = door.client.put(f"/api/digests/{walks}", json=body, headers={"If-Match": "*"})
    assert mended.json["isbn"] == "9780141439662"


def test_the_original_comes_back_as_it_was_sent(door: Door) -> None:
    """The original has the bytes that were sent, and a browser saves it and never shows it."""
    name = "../secret/Wälder; und Wege.md"
    added = door.add(name=name)
    original = door.client.get(added.headers["Location"] + "/original")
    assert original.data == WALKS.encode()
    assert original.headers["Content-Type"] == "application/octet-stream"
    assert original.headers["X-Content-Type-Options"] == "nosniff"
    disposition = original.headers["Content-Disposition"]
    assert disposition.startswith("attachment; ")
    assert "secret" not in disposition
    assert disposition.isascii()
    assert "filename*=UTF-8''W%C3%A4lder%3B%20und%20Wege.md" in disposition


def test_pages_neither_repeat_nor_skip_while_digests_are_added(door: Door, clock: Clock) -> None:
    """Following `next` gives every digest there was at the start once, whatever is added."""
    for number in range(5):
        clock.move(minutes=1)
        door.add(WALKS.replace("Walks", f"Walk {number}"), f"{number}.md")
    wanted = [each["id"] for each in door.client.get("/api/digests").json["digests"]]
    seen: list[str] = []
    path: str | None = "/api/digests?limit=2"
    while path:
        page = door.client.get(path)
        seen += [each["id"] for each in page.json["digests"]]
        clock.move(minutes=1)
        door.add(WALKS.replace("Walks", f"Later {len(seen)}"), f"later-{len(seen)}.md")
        link = page.headers.get("Link")
        path = link and link.removeprefix("<").removesuffix('>; rel="next"')
        assert (path is None) == (page.json["next"] is None)
    assert seen == wanted
    assert len(seen) == 5


@pytest.mark.parametrize(
    "query", ["limit=0", "limit=201", "limit=9223372036854775808", "limit=٣", "cursor=zz", "x=1"]
)
def test_a_wrong_query_is_refused_by_name(door: Door, query: str) -> None:
    """A limit out of bounds, a cursor that is none and an unknown name are listed: 422."""
    refused = door.client.get(f"/api/digests?{query}")
    assert refused.status_code == 422
    assert refused.json["errors"][0]["parameter"] == query.split("=", maxsplit=1)[0]


def test_a_form_without_a_file_is_refused(door: Door) -> None:
    """A form whose part `file` is missing, or is no file, is refused: 422."""
    for data in ({}, {"file": "text"}, {"other": (BytesIO(b"a"), "a.md")}):
        refused = door.client.post("/api/digests", data=data, content_type="multipart/form-data")
        assert refused.status_code == 422
        assert refused.json["errors"][0]["parameter"] == "file"
