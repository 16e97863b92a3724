"""A book's facts as BibTeX and CSL-JSON, through the API."""

import json
from uuid import UUID

import pytest

from tests.api.conftest import Door

BIBTEX = "@book{gaskell, title = {Cranford}, author = {Gaskell, Elizabeth}, year = {1853}}"


def test_a_book_is_cited_in_both_forms(door: Door, walks: UUID) -> None:
    """Each form comes under its own media type, with the book's facts in its own fields.

    Media types: IANA's registry for CSL-JSON; BibTeX has none registered, and this one is common
    practice.
    """
    where = f"/api/digests/{walks}"
    door.change(where, edition="Reed & Sons, 1911", isbn="9780141439679")
    bibtex = door.client.get(f"{where}/citation/bibtex")
    assert bibtex.headers["Content-Type"] == "application/x-bibtex; charset=utf-8"
    assert bibtex.text.startswith("@book{")
    assert "Reed \\& Sons" in bibtex.text
    csl = door.client.get(f"{where}/citation/csl-json")
    assert csl.headers["Content-Type"] == "application/vnd.citationstyles.csl+json"
    (item,) = json.loads(csl.data)
    assert (item["title"], item["publisher"]) == ("Walks in the Fens", "Reed & Sons")
    assert item["ISBN"].replace("-", "") == "9780141439679"


@pytest.mark.parametrize("form", ["bibtex", "csl-json"])
def test_what_was_cited_is_read_back(door: Door, walks: UUID, form: str) -> None:
    """The facts of a citation, read again, are those of the digest."""
    where = f"/api/digests/{walks}"
    door.change(where, edition="Reed & Sons, 1911", isbn="9780141439679")
    cited = door.client.get(f"{where}/citation/{form}")
    read = door.client.post(
        "/api/citations/read", data=cited.data, content_type=cited.headers["Content-Type"]
    )
    assert read.status_code == 200
    assert read.json["books"] == [
        {
            "title": "Walks in the Fens",
            "author": "E. Fell",
            "edition": "Reed & Sons, 1911",
            "isbn": "9780141439679",
            "pages": 200,
        }
    ]
    assert len(door.client.get("/api/digests").json["digests"]) == 1


@pytest.mark.parametrize(
    ("body", "kind", "status", "problem"),
    [
        (b"", "application/x-bibtex", 422, "invalid-bibliography"),
        (b"Dear aunt,", "application/x-bibtex", 422, "invalid-bibliography"),
        (b"[{}]", "application/vnd.citationstyles.csl+json", 422, "invalid-bibliography"),
        (b"x" * (1024 * 1024 + 1), "application/x-bibtex", 422, "invalid-bibliography"),
        (b"\xff", "application/x-bibtex", 400, "malformed-request"),
        (BIBTEX.encode(), "text/plain", 415, "media-type-refused"),
    ],
)
def test_what_describes_no_book_is_refused(
    door: Door, body: bytes, kind: str, status: int, problem: str
) -> None:
    """Each is refused in a sentence."""
    refused = door.client.post("/api/citations/read", data=body, content_type=kind)
    assert refused.status_code == status, refused.json
    assert refused.json["type"] == f"/api/problems/{problem}"
    assert refused.json["detail"].endswith(".")
