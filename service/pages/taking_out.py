"""`/books/<id>/written/...`: a digest on paper, as a file, and for other programs."""

from http import HTTPStatus
from io import BytesIO
from uuid import UUID

from flask import Blueprint, Response, abort, send_file

from service.use_cases.bibliography import cite_bibtex, cite_csl_json
from service.use_cases.ports import Desk
from service.use_cases.prove import annotations_of
from service.use_cases.records import Form
from service.use_cases.writing_out import write_out

_CITED = {
    "book.bib": (cite_bibtex, "application/x-bibtex"),
    "book.csl.json": (cite_csl_json, "application/vnd.citationstyles.csl+json"),
    "quotations.jsonld": (
        annotations_of,
        'application/ld+json; profile="http://www.w3.org/ns/anno.jsonld"',
    ),
}


def install(door: Blueprint, desk: Desk) -> None:
    """Add the ways out to the door."""

    @door.get("/books/<uuid:digest_id>/written/<form>")
    def written(digest_id: UUID, form: str) -> Response:
        """Hand out a digest as a file; the PDF opens in the browser."""
        if form not in list(Form):
            abort(HTTPStatus.NOT_FOUND)
        file = write_out(desk, digest_id, Form(form))
        return send_file(
            BytesIO(file.content),
            mimetype=file.media_type,
            as_attachment=form != Form.PDF,
            download_name=file.name,
        )

    @door.get("/books/<uuid:digest_id>/cited/<name>")
    def cited(digest_id: UUID, name: str) -> Response:
        """Hand out what other programs take of a digest."""
        if name not in _CITED:
            abort(HTTPStatus.NOT_FOUND)
        way, media_type = _CITED[name]
        return send_file(
            BytesIO(way(desk, digest_id).encode()),
            mimetype=media_type,
            as_attachment=True,
            download_name=name,
        )
