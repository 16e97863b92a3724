"""`/books/<id>/annotations`: quotations taken in from Web Annotations."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import DigestChanged, Invalid
from cards.parts import PartKind
from service.pages import fields
from service.pages.fields import MOST_REVISIONS, Fault
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from service.use_cases.prove import take_annotations

ENDINGS = ".jsonld,.json"
"""What the browser offers to choose; what is read is decided by the file's content."""


def install(door: Blueprint, desk: Desk) -> None:
    """Add the taking in to the door."""

    @door.get("/books/<uuid:digest_id>/annotations")
    def ask_annotations(digest_id: UUID) -> str:
        """Ask for a file of annotations."""
        return _page(desk, digest_id)

    @door.post("/books/<uuid:digest_id>/annotations")
    def take(digest_id: UUID) -> ResponseReturnValue:
        """Add the quotations that a file of annotations holds."""
        file = request.files.get("annotations")
        try:
            text = file.read().decode("utf-8-sig") if file is not None else ""
            revision = fields.whole(request.form, "revision", "A revision", 1, MOST_REVISIONS)
            before = open_digest(desk, digest_id).kept.held(PartKind.QUOTATION)
            kept = take_annotations(desk, digest_id, text, revision)
        except UnicodeDecodeError:
            fault = "These annotations are not in UTF-8. Save the file again as UTF-8."
            return _page(desk, digest_id, fault), HTTPStatus.UNPROCESSABLE_ENTITY
        except Invalid as refusal:
            return _page(desk, digest_id, refusal.message), HTTPStatus.UNPROCESSABLE_ENTITY
        except (DigestChanged, Fault):
            fault = "The digest was changed since you opened this page. Hand the file in again."
            return _page(desk, digest_id, fault), HTTPStatus.CONFLICT
        more = len(kept.held(PartKind.QUOTATION)) > len(before)
        done = "annotations" if more else "no-annotations"
        address = url_for("pages.book", digest_id=digest_id, kept=done)
        return redirect(address, HTTPStatus.SEE_OTHER)


def _page(desk: Desk, digest_id: UUID, fault: str = "") -> str:
    kept = open_digest(desk, digest_id).kept
    return render_template("annotations.html", kept=kept, endings=ENDINGS, fault=fault)
