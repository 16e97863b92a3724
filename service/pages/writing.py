"""`/write`: a blank form to write a digest on, and blank ones to take away."""

from http import HTTPStatus
from io import BytesIO

from flask import Blueprint, Response, abort, send_file

from service.pages.digest_form import blank_form
from service.pages.draft_view import view_of
from service.pages.looking_over import page
from service.use_cases.ports import Desk
from service.use_cases.records import Form
from service.use_cases.writing_out import BLANKS, blank


def install(door: Blueprint, desk: Desk) -> None:
    """Add the writing to the door."""

    @door.get("/write")
    def write() -> str:
        """Show a blank form. Its draft begins when it is first saved, under an id made here."""
        return page(view_of(desk, desk.new_id(), None, blank_form()))

    @door.get("/write/blank.<form>")
    def blank_digest(form: str) -> Response:
        """Hand out a blank digest to fill in with a word processor or a text editor."""
        if form not in set(BLANKS):
            abort(HTTPStatus.NOT_FOUND)
        written = blank(desk, Form(form))
        return send_file(
            BytesIO(written.content),
            mimetype=written.media_type,
            as_attachment=True,
            download_name=written.name,
        )
