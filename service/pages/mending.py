"""`/books/<id>/mend`: a form for everything a digest says."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.digest import MAX_EDITION, MAX_LOCATOR, MAX_PAGES, MAX_TEXT, MAX_TITLE
from cards.errors import DigestChanged
from service.pages import fields
from service.pages.digest_form import LISTS, DigestForm, form_from, form_of
from service.pages.fields import Faults
from service.pages.form_digest import FormFaults, digest_from
from service.pages.worth import worth_as_typed
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from service.use_cases.ports import Desk

LARGEST_FORM = 4 * 1024 * 1024
"""Bytes: the longest digest, every letter of it escaped, and the names of its fields."""
MOST = {
    "title": MAX_TITLE,
    "edition": MAX_EDITION,
    "text": MAX_TEXT,
    "locator": MAX_LOCATOR,
    "pages": MAX_PAGES,
}
"""Characters the fields of the form take, and the pages of a book."""
THEN = {"sitting": "pages.today"}
"""Where mending leads afterwards, when it does not lead to the book: by the name in `then`."""
_CHANGED = (
    "The digest was changed since you opened it. What you typed is still below: look at the "
    "digest as it is now, then keep yours in its place, or go back."
)


def install(door: Blueprint, desk: Desk) -> None:
    """Add the mending to the door."""

    @door.get("/books/<uuid:digest_id>/mend")
    def mend(digest_id: UUID) -> str:
        """Lay a digest out as a form."""
        kept = open_digest(desk, digest_id).kept
        return _page(desk, digest_id, form_of(kept.digest()), kept.revision, {})

    @door.post("/books/<uuid:digest_id>/mend")
    def keep_mended(digest_id: UUID) -> ResponseReturnValue:
        """Keep the digest as the form says it, measure it, or give the form one more row."""
        request.max_form_memory_size = LARGEST_FORM
        form, revision = form_from(request.form), fields.revision(request.form)
        more = request.form.get("more")
        if more in LISTS:
            return _page(desk, digest_id, form.with_more(more), revision, {}, more)
        if more == "measure":
            return _page(desk, digest_id, form, revision, {})
        try:
            mend_digest(desk, digest_id, digest_from(form), revision)
        except FormFaults as wrong:
            page = _page(desk, digest_id, form, revision, wrong.faults)
            return page, HTTPStatus.UNPROCESSABLE_ENTITY
        except DigestChanged:
            now = open_digest(desk, digest_id).kept.revision
            return _page(desk, digest_id, form, now, {"form": _CHANGED}), HTTPStatus.CONFLICT
        then = THEN.get(_then())
        if then is not None:
            return redirect(url_for(then, mended=digest_id), HTTPStatus.SEE_OTHER)
        address = url_for("pages.book", digest_id=digest_id, kept="digest")
        return redirect(address, HTTPStatus.SEE_OTHER)


def _then() -> str:
    """Return the name of where to lead afterwards, of those there are; "" for the book."""
    wanted = request.values.get("then", "")
    return wanted if wanted in THEN else ""


def _page(
    desk: Desk,
    digest_id: UUID,
    form: DigestForm,
    revision: int,
    faults: Faults,
    more: str | None = None,
) -> str:
    return render_template(
        "mend.html",
        digest_id=digest_id,
        form=form,
        view=worth_as_typed(desk, form),
        revision=revision,
        faults=faults,
        more=more,
        most=MOST,
        then=_then(),
        unmended=url_for(THEN[_then()]) if _then() else url_for("pages.book", digest_id=digest_id),
    )
