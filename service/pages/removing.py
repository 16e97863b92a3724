"""`/books/<id>/remove`: a digest is taken out of the library, once the reader said so twice."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import DigestChanged
from service.pages import fields
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import remove_digest
from service.use_cases.ports import Desk


def install(door: Blueprint, desk: Desk) -> None:
    """Add the taking out to the door."""

    @door.get("/books/<uuid:digest_id>/remove")
    def ask_to_remove(digest_id: UUID) -> str:
        """Ask whether a digest is really to go, and say what that means."""
        return render_template("remove.html", opened=open_digest(desk, digest_id), fault="")

    @door.post("/books/<uuid:digest_id>/remove")
    def remove(digest_id: UUID) -> ResponseReturnValue:
        """Take a digest out, unless it was changed since the question was asked."""
        try:
            revision = fields.whole(
                request.form, "revision", "A revision", 1, fields.MOST_REVISIONS
            )
            remove_digest(desk, digest_id, revision)
        except (DigestChanged, fields.Fault):
            fault = "The digest was changed since you opened this page. Look at it once more."
            page = render_template("remove.html", opened=open_digest(desk, digest_id), fault=fault)
            return page, HTTPStatus.CONFLICT
        return redirect(url_for("pages.books", removed="one"), HTTPStatus.SEE_OTHER)
