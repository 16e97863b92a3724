"""`/books/<id>/links`: points that speak to other books."""

from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import InvalidLink
from cards.parts import KeptDigest, Link, Part
from service.pages import fields
from service.use_cases.links import GivenLink, drop_link, link
from service.use_cases.ports import Desk


def install(door: Blueprint, desk: Desk) -> None:
    """Add the links of a digest to the door."""

    @door.post("/books/<uuid:digest_id>/links")
    def make_a_link(digest_id: UUID) -> ResponseReturnValue:
        """Keep that a point speaks to another book."""
        link(
            desk,
            GivenLink(
                id=_chosen("link", "The link came without its id. Go back and try again."),
                digest_id=digest_id,
                part_id=_chosen("point", "Choose the point that speaks to another book."),
                book_id=_chosen("book", "Choose the book it speaks to."),
                why=fields.text(request.form, "why"),
            ),
        )
        if request.form.get("then") == "today":
            return redirect(url_for("pages.today", linked="yes"), HTTPStatus.SEE_OTHER)
        return _back(digest_id, "link")

    @door.post("/books/<uuid:digest_id>/links/<uuid:link_id>/dropped")
    def drop_a_link(digest_id: UUID, link_id: UUID) -> ResponseReturnValue:
        """Forget a link; its history is kept."""
        drop_link(desk, digest_id, link_id)
        return _back(digest_id, "no-link")


def links_of(kept: KeptDigest, point: Part) -> list[Link]:
    """Return the links of a point in the order of the other books' titles."""
    mine = (each for each in kept.links if each.part_id == point.id)
    return sorted(mine, key=lambda each: (each.title, each.id))


def _chosen(name: str, otherwise: str) -> UUID:
    found = fields.identity(request.form, name)
    if found is None:
        raise InvalidLink(otherwise, where=name)
    return found


def _back(digest_id: UUID, kept: str) -> ResponseReturnValue:
    address = url_for("pages.book", digest_id=digest_id, kept=kept, _anchor="links")
    return redirect(address, HTTPStatus.SEE_OTHER)
