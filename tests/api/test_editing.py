"""Whatever edits asks for If-Match, and does nothing for a state that is no more."""

import json
from typing import Any
from uuid import UUID, uuid4

import pytest

from tests.api.conftest import Door
from tests.api.test_annotations import ANNOTATION

EDITS: dict[str, tuple[str, str, dict[str, Any]]] = {
    "restoration": ("POST", "versions/1/restoration", {}),
    "identity": (
        "PUT",
        "parts/00000000-0000-4000-8000-00000000dead/identity",
        {"json": {"afresh": True}},
    ),
    "care": ("PUT", "care", {"json": {"care": "close"}}),
    "mending": ("POST", "book/mending", {}),
    "annotations": (
        "POST",
        "annotations",
        {"data": json.dumps(ANNOTATION), "content_type": "application/ld+json"},
    ),
}


@pytest.mark.parametrize("edit", EDITS)
def test_an_edit_without_a_tag_is_refused(door: Door, walks: UUID, edit: str) -> None:
    """Without If-Match nothing is edited: 428, in a sentence."""
    method, path, body = EDITS[edit]
    before = door.tag(f"/api/digests/{walks}")
    refused = door.client.open(f"/api/digests/{walks}/{path}", method=method, **body)
    assert refused.status_code == 428
    assert refused.json["type"] == "/api/problems/if-match-required"
    assert door.tag(f"/api/digests/{walks}") == before


@pytest.mark.parametrize("edit", EDITS)
@pytest.mark.parametrize("kind", ["stale", "weak", "of another", "nonsense"])
def test_an_edit_with_a_wrong_tag_is_refused(door: Door, walks: UUID, edit: str, kind: str) -> None:
    """A tag that is stale, weak, of something else or nonsense edits nothing: 412."""
    method, path, body = EDITS[edit]
    present = door.tag(f"/api/digests/{walks}")
    wrong = {
        "stale": f'"{walks}.99"',
        "weak": f"W/{present}",
        "of another": f'"{uuid4()}.1"',
        "nonsense": "nonsense",
    }[kind]
    refused = door.client.open(
        f"/api/digests/{walks}/{path}", method=method, headers={"If-Match": wrong}, **body
    )
    assert refused.status_code == 412
    assert refused.json["type"] == "/api/problems/digest-changed"
    assert door.tag(f"/api/digests/{walks}") == present


@pytest.mark.parametrize("edit", EDITS)
def test_a_digest_that_is_not_here_is_missing(door: Door, edit: str) -> None:
    """Editing a digest no library of this reader holds is answered 404, whatever the tag."""
    method, path, body = EDITS[edit]
    refused = door.client.open(
        f"/api/digests/{uuid4()}/{path}", method=method, headers={"If-Match": "*"}, **body
    )
    assert refused.status_code == 404
    assert refused.json["type"] == "/api/problems/digest-missing"


@pytest.mark.parametrize(
    "path",
    [
        "versions",
        "versions/1",
        "changes",
        "care",
        "readings",
        "readings/00000000-0000-4000-8000-00000000dead",
        "budget",
        "advice",
        "written/pdf",
        "written/json",
        "book",
        "annotations",
        "citation/bibtex",
        "citation/csl-json",
    ],
)
def test_what_is_asked_of_a_digest_not_here_is_missing(door: Door, path: str) -> None:
    """Nothing is told of a digest this library does not hold: 404, in a sentence."""
    refused = door.client.get(f"/api/digests/{uuid4()}/{path}")
    assert refused.status_code == 404
    assert refused.json["type"] == "/api/problems/digest-missing"
    assert refused.json["detail"].endswith(".")
