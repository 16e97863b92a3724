"""`/books/<id>/beside/<other>`: two readings of one book, side by side."""

from uuid import UUID

from flask import Blueprint, render_template

from service.use_cases.ports import Desk
from service.use_cases.readings import beside


def install(door: Blueprint, desk: Desk) -> None:
    """Add the side by side to the door."""

    @door.get("/books/<uuid:digest_id>/beside/<uuid:other_id>")
    def side_by_side(digest_id: UUID, other_id: UUID) -> str:
        """Show two digests on facing pages, the earlier reading on the left."""
        return render_template("beside.html", both=beside(desk, digest_id, other_id))
