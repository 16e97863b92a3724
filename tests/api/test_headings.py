"""A reader's own heading words through the API."""

import pytest
from werkzeug.test import TestResponse

from tests.api.conftest import WALKS, Door

PATH = "/api/reader/headings"
OWN = (
    WALKS.partition("## Quotations")[0]
    + "## Lines that stay\n\nMud keeps its own accounts.\n\nNobody waves at a ditch.\n"
)
"""Words that nothing but their heading tells from anything else."""


def put(door: Door, *headings: tuple[object, object], tag: str = "*") -> TestResponse:
    """Send all headings of the reader's own."""
    body = {"headings": [{"words": words, "part": part} for words, part in headings]}
    return door.client.put(PATH, json=body, headers={"If-Match": tag})


def test_a_heading_of_the_readers_own_is_known_from_then_on(door: Door) -> None:
    """A part under a heading of one's own is left until the heading is given, then read."""
    before = door.send("/api/digests/read", OWN.encode(), "walks.md").json
    assert before["quotations"] == []
    said = put(door, ("Lines that stay", "quotations"), tag=door.tag(PATH))
    assert said.status_code == 200
    assert said.json == {"headings": [{"words": "Lines that stay", "part": "quotations"}]}
    after = door.send("/api/digests/read", OWN.encode(), "walks.md").json
    assert len(after["quotations"]) == 2


def test_all_headings_are_given_at_once(door: Door) -> None:
    """What is put takes the place of all there was; nothing leaves the usual ones alone."""
    assert door.client.get(PATH).json == {"headings": []}
    put(door, ("Lines that stay", "quotations"), ("The drift", "theme"))
    put(door, ("The drift", "theme"))
    assert door.client.get(PATH).json == {"headings": [{"words": "The drift", "part": "theme"}]}
    assert put(door).json == {"headings": []}


def test_the_tag_is_of_what_they_say(door: Door) -> None:
    """It changes with the headings, and comes back with them; a stale one changes nothing."""
    none = door.tag(PATH)
    first = put(door, ("The drift", "theme"), tag=none)
    assert first.headers["ETag"] == door.tag(PATH) != none
    assert door.client.get(PATH, headers={"If-None-Match": door.tag(PATH)}).status_code == 304
    for tag in (none, f"W/{first.headers['ETag']}", '"headings"', "nonsense"):
        refused = put(door, tag=tag)
        assert refused.status_code == 412
        assert refused.json["type"] == "/api/problems/settings-changed"
    assert door.client.get(PATH).json == first.json
    assert put(door, tag=f'"other", {first.headers["ETag"]}').headers["ETag"] == none
    assert door.client.put(PATH, json={"headings": []}).status_code == 428


@pytest.mark.parametrize(
    ("headings", "problem"),
    [
        ([("", "theme")], "invalid-request"),
        ([("x" * 81, "theme")], "invalid-request"),
        ([("a\x00b", "theme")], "invalid-request"),
        ([("The drift", "moral")], "invalid-request"),
        ([(7, "theme")], "invalid-request"),
        ([("The drift", "theme")] * 2, "invalid-request"),
        ([("The drift", "theme"), ("The drift", "points")], "invalid-request"),
        ([(f"Heading {number}", "theme") for number in range(201)], "invalid-request"),
        ([("The drift", "theme"), ("the DRIFT!", "points")], "invalid"),
        ([("12", "theme")], "invalid"),
    ],
)
def test_what_is_no_heading_is_refused(
    door: Door, headings: list[tuple[object, object]], problem: str
) -> None:
    """No words, too many, no part, or one heading for two parts: 422, and nothing is kept."""
    refused = put(door, *headings)
    assert refused.status_code == 422
    assert refused.json["type"] == f"/api/problems/{problem}"
    assert refused.json["detail"].endswith(".")
    assert door.client.get(PATH).json == {"headings": []}
