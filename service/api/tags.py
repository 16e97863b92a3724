"""ETags: what can be edited is edited only by who has seen what it says now (RFC 9110, 13).

A tag is made of an identity and a revision, so it is strong, costs nothing to make, and
is compared by the use case inside its transaction.
"""

import re
from collections.abc import Callable
from http import HTTPStatus
from uuid import UUID

from flask import Response, request
from werkzeug.exceptions import PreconditionRequired

NO_REVISION = 0
"""A revision nothing has: revisions count from 1."""

_REVISION = re.compile(r"\d{1,18}", re.ASCII)


def tag_of(identity: UUID, revision: int) -> str:
    """Return the strong tag of one state of a thing, in its quotation marks."""
    return f'"{identity}.{revision}"'


def unchanged(tag: str) -> Response | None:
    """Return 304 when the present request has that state already, else None."""
    if not request.if_none_match.contains_weak(tag.strip('"')):
        return None
    return Response(status=HTTPStatus.NOT_MODIFIED, headers={"ETag": tag})


def expected_revision(identity: UUID, current: Callable[[], int]) -> int | None:
    """Return the revision the present request was made for, from its If-Match.

    Args:
        identity: of what is to be edited.
        current: its revision now; asked only when the request names several.

    Returns:
        None when any state will do (`*`); `NO_REVISION` when no tag fits.

    Raises:
        PreconditionRequired: there is no If-Match.
    """
    wanted = request.if_match
    if not wanted:
        raise PreconditionRequired(
            "Send the ETag you were given with what you edit, as If-Match, so that nobody's "
            "change is overwritten unseen."
        )
    if wanted.star_tag:
        return None
    before = f"{identity}."
    tails = [tag.removeprefix(before) for tag in wanted.as_set() if tag.startswith(before)]
    revisions = {int(tail) for tail in tails if _REVISION.fullmatch(tail)}
    if len(revisions) > 1:
        now = current()
        return now if now in revisions else NO_REVISION
    return next(iter(revisions), NO_REVISION)
