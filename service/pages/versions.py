"""`/books/<id>/versions`: what a digest said before, back to it, and the last word on an edit."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import DigestChanged, PartMissing
from service.pages import fields
from service.pages.fields import MOST_REVISIONS, Fault
from service.use_cases.ports import Desk
from service.use_cases.versions import (
    continue_part,
    last_changes,
    list_versions,
    open_version,
    restore_version,
    start_afresh,
)

SHOWN = 25
"""Versions on one page."""


def install(door: Blueprint, desk: Desk) -> None:
    """Add the versions to the door."""

    @door.get("/books/<uuid:digest_id>/versions")
    def versions(digest_id: UUID) -> str:
        """List the versions of a digest, with what its last edit did."""
        return _page(desk, digest_id)

    @door.get("/books/<uuid:digest_id>/versions/<int:revision>")
    def version(digest_id: UUID, revision: int) -> ResponseReturnValue:
        """Show a digest as it was at a revision."""
        if revision > MOST_REVISIONS:
            return _page(desk, digest_id), HTTPStatus.NOT_FOUND
        opened = open_version(desk, digest_id, revision)
        return render_template(
            "version.html", opened=opened, digest=opened.version.kept.digest(), kept=opened.kept
        )

    @door.post("/books/<uuid:digest_id>/versions/<int:revision>")
    def bring_back(digest_id: UUID, revision: int) -> ResponseReturnValue:
        """Make the digest say again what it said then."""
        try:
            restore_version(
                desk, digest_id, min(revision, MOST_REVISIONS), fields.revision(request.form)
            )
        except DigestChanged:
            return _page(desk, digest_id, _CHANGED), HTTPStatus.CONFLICT
        return redirect(
            url_for("pages.book", digest_id=digest_id, kept="version"), HTTPStatus.SEE_OTHER
        )

    @door.post("/books/<uuid:digest_id>/identity")
    def overrule(digest_id: UUID) -> ResponseReturnValue:
        """Keep the reader's word on what an edit did to a part."""
        part = fields.identity(request.form, "part")
        former = fields.identity(request.form, "former")
        try:
            if part is not None and former is not None:
                continue_part(desk, digest_id, part, former, fields.revision(request.form))
            elif part is not None:
                start_afresh(desk, digest_id, part, fields.revision(request.form))
        except (DigestChanged, PartMissing):
            return _page(desk, digest_id, _CHANGED), HTTPStatus.CONFLICT
        return redirect(
            url_for("pages.versions", digest_id=digest_id, overruled="one"), HTTPStatus.SEE_OTHER
        )


_CHANGED = "The digest was changed since you opened this page. Look at it as it is now."


def _page(desk: Desk, digest_id: UUID, fault: str = "") -> str:
    try:
        before = fields.whole(request.args, "before", "A version", 1, MOST_REVISIONS)
    except Fault:
        before = None
    listed = list_versions(desk, digest_id, before, SHOWN)
    return render_template(
        "versions.html",
        listed=listed,
        kept=listed.kept,
        changes=last_changes(desk, digest_id) if before is None else (),
        first=before is None,
        overruled="overruled" in request.args,
        fault=fault,
    )
