"""`/books/<id>/care`: how much of a book to keep."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import Invalid
from cards.parts import Care
from service.use_cases.care import set_care
from service.use_cases.ports import Desk


def install(door: Blueprint, desk: Desk) -> None:
    """Add the care of a book to the door."""

    @door.post("/books/<uuid:digest_id>/care")
    def keep_care(digest_id: UUID) -> ResponseReturnValue:
        """Keep a book as close as the reader says."""
        try:
            care = Care(request.form.get("care", ""))
        except ValueError as error:
            raise Invalid(
                "Choose how much of the book to keep: close, steady or resting.", where="care"
            ) from error
        set_care(desk, digest_id, care)
        address = url_for("pages.book", digest_id=digest_id, kept="care", _anchor="care")
        return redirect(address, HTTPStatus.SEE_OTHER)
