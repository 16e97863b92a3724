"""Writing out: a digest on paper or as a file, and blank ones to fill in."""

from http import HTTPStatus
from uuid import UUID

from flask import Response

from cards.errors import CannotPrint, CannotWrite, DigestMissing
from service.api.desk import desk
from service.api.files import attachment
from service.api.operations import BINARY, Content, Gives, Reply, Resource
from service.use_cases.records import Form
from service.use_cases.writing_out import BLANKS, MEDIA_TYPES, Written, blank, write_out

resource = Resource(
    "written", "/digests", "A digest written out: on two pages of paper, or as a file."
)
blanks = Resource("blanks", "/blanks", "Blank digests to fill in, which read back perfectly.")

_TEXT = {"type": "string"}
_CONTENTS = {
    Form.PDF: Content("application/pdf", BINARY, "(the bytes of silas-marner.pdf)"),
    Form.DOCX: Content(MEDIA_TYPES[Form.DOCX], BINARY, "(the bytes of silas-marner.docx)"),
    Form.ODT: Content(MEDIA_TYPES[Form.ODT], BINARY, "(the bytes of silas-marner.odt)"),
    Form.MARKDOWN: Content("text/markdown", _TEXT, "# Silas Marner\n\nby George Eliot\n"),
    Form.JSON: Content(
        "application/json",
        {"type": "object", "description": "What the digest says, as `/api/digests` reads it."},
        {"catchword": 1, "title": "Silas Marner", "author": "George Eliot"},
    ),
}
_FORM = f"<any({', '.join(Form)}):form>"
_BLANK = f"<any({', '.join(BLANKS)}):form>"


@resource.operation(
    f"GET /<uuid:digest_id>/written/{_FORM}",
    path={"digest_id": "Id of the digest.", "form": "What it is written out as."},
    gives=Gives(
        {HTTPStatus.OK: "The file."},
        headers={HTTPStatus.OK: ("Content-Disposition",)},
        contents=tuple(_CONTENTS.values()),
    ),
    refuses=(DigestMissing, CannotPrint, CannotWrite),
)
def get_written(digest_id: UUID, form: str) -> Reply:
    """Write a digest out.

    As PDF, theme, points and commitments stand on page one, quotations on page two. Every other
    form reads back to the same digest.
    """
    return _file(write_out(desk(), digest_id, Form(form)))


@blanks.operation(
    f"GET /{_BLANK}",
    path={"form": "What it comes as."},
    gives=Gives(
        {HTTPStatus.OK: "The file."},
        headers={HTTPStatus.OK: ("Content-Disposition",)},
        contents=tuple(_CONTENTS[form] for form in BLANKS),
    ),
    refuses=(CannotWrite,),
)
def get_blank(form: str) -> Reply:
    """Take a blank digest to fill in."""
    return _file(blank(desk(), Form(form)))


def _file(written: Written) -> Response:
    return Response(
        written.content,
        content_type=written.media_type,
        headers={"Content-Disposition": attachment(written.name)},
    )
