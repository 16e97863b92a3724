"""Where a page of the library begins, as its address names it: `2026-03-02T20:00:00+00:00~id`."""

from datetime import datetime
from http import HTTPStatus
from uuid import UUID

from flask import abort

Place = tuple[datetime, UUID]
"""The instant a digest was added, and its id: what the library is ordered by."""


def written(place: Place | None) -> str | None:
    """Return a place as an address names it, None for none."""
    return None if place is None else f"{place[0].isoformat()}~{place[1]}"


def read(name: str | None) -> Place | None:
    """Return the place an address names, None without a name; not found when it is none."""
    if name is None:
        return None
    instant, _, digest_id = name.partition("~")
    try:
        at, after = datetime.fromisoformat(instant), UUID(digest_id)
    except ValueError:
        abort(HTTPStatus.NOT_FOUND)
    if at.tzinfo is None:
        abort(HTTPStatus.NOT_FOUND)
    return at, after
