"""Quotations as Web Annotations through the API.

Source of the shapes: Web Annotation Data Model and Protocol, W3C Recommendations of
23 February 2017.
"""

import json
from typing import Any
from uuid import UUID

import pytest
from werkzeug.test import TestResponse

from tests.api.conftest import Door

ANNOTATION: dict[str, Any] = {
    "@context": "http://www.w3.org/ns/anno.jsonld",
    "id": "http://example.org/anno1",
    "type": "Annotation",
    "target": {
        "source": "http://example.org/walks",
        "selector": [
            {"type": "TextQuoteSelector", "exact": "Water remembers every wall."},
            {"type": "FragmentSelector", "value": "page=120"},
        ],
    },
}


def post(door: Door, digest: UUID, body: bytes | str, kind: str) -> TestResponse:
    """Send annotations to a digest."""
    return door.client.post(
        f"/api/digests/{digest}/annotations",
        data=body,
        content_type=kind,
        headers={"If-Match": "*"},
    )


def test_quotations_leave_as_an_annotation_collection(door: Door, walks: UUID) -> None:
    """One annotation a quotation, with its words and page, under the protocol's media type."""
    left = door.client.get(f"/api/digests/{walks}/annotations")
    assert left.headers["Content-Type"] == (
        'application/ld+json; profile="http://www.w3.org/ns/anno.jsonld"'
    )
    collection = json.loads(left.data)
    assert (collection["type"], collection["total"]) == ("AnnotationCollection", 2)
    selectors = collection["first"]["items"][0]["target"]["selector"]
    assert selectors[0] == {
        "type": "TextQuoteSelector",
        "exact": "Mud keeps its own accounts.",
    }
    assert selectors[-1]["value"] == "page=14"


@pytest.mark.parametrize(
    "kind",
    [
        "application/ld+json",
        'application/ld+json; profile="http://www.w3.org/ns/anno.jsonld"',
        "application/ld+json; charset=utf-8",
    ],
)
def test_an_annotation_enters_as_a_quotation(door: Door, walks: UUID, kind: str) -> None:
    """Its words and page are added after the others; sent again they change nothing."""
    taken = post(door, walks, json.dumps(ANNOTATION), kind)
    assert taken.status_code == 200, taken.json
    assert len(taken.json["quotations"]) == 3
    assert taken.json["quotations"][2]["text"] == "Water remembers every wall."
    assert taken.json["quotations"][2]["page"] == 120
    assert taken.headers["ETag"] == door.tag(f"/api/digests/{walks}")
    again = post(door, walks, json.dumps(ANNOTATION), kind)
    assert again.json == taken.json


def test_what_left_enters_another_digest_unchanged(door: Door, walks: UUID) -> None:
    """The quotations of one digest, taken into another, have the same words and locators."""
    left = door.client.get(f"/api/digests/{walks}/annotations").data
    text = "# The Salt Road\n\n## Theme\n\nA carter turns back at the pass.\n"
    other = UUID(door.add(text, "salt.md").json["digest"]["id"])
    taken = post(door, other, left, "application/ld+json").json["quotations"]
    known = door.client.get(f"/api/digests/{walks}").json["quotations"]
    assert [{**each, "after": None} for each in known] == taken


@pytest.mark.parametrize(
    ("body", "kind", "status", "problem"),
    [
        (b"{", "application/ld+json", 422, "invalid-annotations"),
        (b"", "application/ld+json", 422, "invalid-annotations"),
        (b"[1, null]", "application/ld+json", 422, "invalid-annotations"),
        (b"[" * 5_000, "application/ld+json", 422, "invalid-annotations"),
        (b'{"type": "Annotation"}', "application/ld+json", 422, "invalid-annotations"),
        (b"\xff\xfe", "application/ld+json", 400, "malformed-request"),
        (b"{}", "application/json", 415, "media-type-refused"),
        (b"{}", "", 415, "media-type-refused"),
    ],
)
def test_what_holds_no_annotation_is_refused(
    door: Door, walks: UUID, body: bytes, kind: str, status: int, problem: str
) -> None:
    """Each is refused in a sentence, and the digest stays as it was."""
    before = door.tag(f"/api/digests/{walks}")
    refused = post(door, walks, body, kind)
    assert refused.status_code == status, refused.json
    assert refused.json["type"] == f"/api/problems/{problem}"
    assert refused.json["detail"].endswith(".")
    assert door.tag(f"/api/digests/{walks}") == before
