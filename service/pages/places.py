"""`/books/<id>/places`: after which point a quotation stands, asked once."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import DigestChanged
from cards.parts import KeptDigest, PartKind
from service.pages import fields
from service.pages.fields import MOST_REVISIONS, Fault, Faults
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import place_quotations, unplaced
from service.use_cases.ports import Desk


def install(door: Blueprint, desk: Desk) -> None:
    """Add the question to the door."""

    @door.get("/books/<uuid:digest_id>/places")
    def ask_places(digest_id: UUID) -> str:
        """Ask after which point each quotation without a known one stands."""
        return _page(open_digest(desk, digest_id).kept, {})

    @door.post("/books/<uuid:digest_id>/places")
    def keep_places(digest_id: UUID) -> ResponseReturnValue:
        """Keep the places the reader knows."""
        kept = open_digest(desk, digest_id).kept
        places, faults = _places(kept)
        if faults:
            return _page(kept, faults), HTTPStatus.UNPROCESSABLE_ENTITY
        try:
            revision = fields.whole(request.form, "revision", "A revision", 1, MOST_REVISIONS)
            if places:
                place_quotations(desk, digest_id, places, revision)
        except (DigestChanged, Fault):
            changed = {
                "form": "The digest was changed since you opened this page. Look at the points as "
                "they stand now, and keep the places once more."
            }
            return _page(open_digest(desk, digest_id).kept, changed), HTTPStatus.CONFLICT
        address = url_for("pages.book", digest_id=digest_id, kept="places")
        return redirect(address, HTTPStatus.SEE_OTHER)


def _page(kept: KeptDigest, faults: Faults) -> str:
    asked = unplaced(kept)
    return render_template(
        "places.html",
        kept=kept,
        points=kept.held(PartKind.POINT),
        quotations=[part for part in kept.held(PartKind.QUOTATION) if part.number in asked],
        form=request.form,
        faults=faults,
    )


def _places(kept: KeptDigest) -> tuple[dict[int, int | None], Faults]:
    """Return the point after which each quotation stands, where the reader knows it."""
    points = len(kept.held(PartKind.POINT))
    places: dict[int, int | None] = {}
    faults: Faults = {}
    for number in unplaced(kept):
        name = f"quotation-{number}"
        try:
            after = fields.whole(request.form, name, "A place", 0, points)
        except Fault:
            faults[name] = "Choose one of the places offered."
            continue
        if after is not None:
            places[number] = after
    return places, faults
