"""Digests written out, and blank ones, through the API."""

import json
from io import BytesIO
from uuid import UUID

import pytest
from pypdf import PdfReader

from tests.api.conftest import Door

FORMS = {
    "pdf": "application/pdf",
    "docx": "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
    "odt": "application/vnd.oasis.opendocument.text",
    "md": "text/markdown; charset=utf-8",
    "json": "application/json",
}
"""Media types by form: IANA's registry of media types, RFC 7763 for Markdown."""


@pytest.mark.parametrize("form", FORMS)
def test_a_digest_is_handed_out_as_a_file(door: Door, walks: UUID, form: str) -> None:
    """Each form comes under its media type and a name made of the title, to be saved."""
    written = door.client.get(f"/api/digests/{walks}/written/{form}")
    assert written.status_code == 200
    assert written.headers["Content-Type"] == FORMS[form]
    assert written.headers["X-Content-Type-Options"] == "nosniff"
    assert (
        f'attachment; filename="walks-in-the-fens.{form}"'
        in (written.headers["Content-Disposition"])
    )


@pytest.mark.parametrize("form", ["docx", "odt", "md", "json"])
def test_what_was_written_reads_back_to_the_same_digest(door: Door, walks: UUID, form: str) -> None:
    """Every form but the PDF, read again, is the digest it was written from."""
    kept = door.client.get(f"/api/digests/{walks}").json
    written = door.client.get(f"/api/digests/{walks}/written/{form}").data
    read = door.send("/api/digests/read", written, f"walks.{form}").json
    for field in ("title", "author", "edition", "isbn", "pages", "finished_on", "theme"):
        assert read[field] == kept[field], field
    assert read["points"] == kept["points"]
    assert read["quotations"] == kept["quotations"]
    assert [each["text"] for each in read["commitments"]] == [
        each["text"] for each in kept["commitments"]
    ]


def test_the_pdf_has_two_pages(door: Door, walks: UUID) -> None:
    """Theme, points and commitments stand on page one, quotations with locators on page two."""
    written = door.client.get(f"/api/digests/{walks}/written/pdf").data
    one, two = (page.extract_text() for page in PdfReader(BytesIO(written)).pages)
    assert "The clerk sells his clock" in one
    assert "Mud keeps" not in one
    assert "Mud keeps its own accounts" in two
    assert "p. 14" in two


def test_letters_no_typeface_has_are_named(door: Door, walks: UUID) -> None:
    """A digest that cannot be printed is refused as PDF, 422, and written as JSON all the same.

    U+10FFF0 is for private use (Unicode, 23.5): no typeface has a letter there that means anything.
    """
    where = f"/api/digests/{walks}"
    assert door.change(where, theme="A sign of their own: \U0010fff0.").status_code == 200
    refused = door.client.get(f"{where}/written/pdf")
    assert refused.status_code == 422
    assert refused.json["type"] == "/api/problems/cannot-print"
    assert "U+10FFF0" in refused.json["detail"]
    written = door.client.get(f"{where}/written/json").data
    assert json.loads(written)["theme"] == "A sign of their own: \U0010fff0."


@pytest.mark.parametrize("form", ["docx", "odt", "md"])
def test_a_blank_digest_can_be_had(door: Door, form: str) -> None:
    """A blank digest is a file under its media type, and holds no digest until it is filled in."""
    taken = door.client.get(f"/api/blanks/{form}")
    assert (taken.status_code, taken.headers["Content-Type"]) == (200, FORMS[form])
    assert f'filename="digest.{form}"' in taken.headers["Content-Disposition"]
    refused = door.send("/api/digests/read", taken.data, f"digest.{form}")
    assert refused.status_code == 422


@pytest.mark.parametrize("path", ["written/epub", "written/PDF", "written/pdf/x"])
def test_a_form_there_is_not_is_no_address(door: Door, walks: UUID, path: str) -> None:
    """A form digests are not written in is nothing here: 404."""
    refused = door.client.get(f"/api/digests/{walks}/{path}")
    assert refused.json["type"] == "/api/problems/nothing-here"
    assert door.client.get("/api/blanks/pdf").status_code == 404
