"""ETags: what can be edited is edited only by who has seen what it says now (RFC 9110, 13).

A tag is made of an identity and a revision, so it is strong, costs nothing to make, and
is compared by the use case inside its transaction.
"""

import hashlib
import re
from collections.abc import Callable, Sequence
from http import HTTPStatus
from uuid import UUID

from flask import Response, request
from werkzeug.datastructures import ETags
from werkzeug.exceptions import PreconditionRequired

NO_REVISION = 0
"""A revision nothing has: revisions count from 1."""

_MARK = 16
"""Hexadecimal digits of a hash that stand in a tag."""
_REVISION = re.compile(rf"(\d{{1,18}})(?:\.[0-9a-f]{{{_MARK}}})?", re.ASCII)


def tag_of(identity: UUID, revision: int, *beside: str) -> str:
    """Return the strong tag of one state of a thing, in its quotation marks.

    Args:
        identity: of the thing.
        revision: of its state.
        beside: what else its representation depends on; the tag is told apart by it, and
            names the same revision.
    """
    return f'"{identity}.{revision}{_mark(beside)}"'


def tag_of_words(name: str, words: Sequence[str]) -> str:
    """Return the strong tag of what has no revision: of all it says, in its order."""
    return f'"{name}{_mark(words)}"'


def _mark(words: Sequence[str]) -> str:
    if not words:
        return ""
    return "." + hashlib.sha256("\0".join(words).encode()).hexdigest()[:_MARK]


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
    wanted = _wanted()
    if wanted.star_tag:
        return None
    before = f"{identity}."
    tails = [tag.removeprefix(before) for tag in wanted.as_set() if tag.startswith(before)]
    found = (_REVISION.fullmatch(tail) for tail in tails)
    revisions = {int(match[1]) for match in found if match is not None}
    if len(revisions) > 1:
        now = current()
        return now if now in revisions else NO_REVISION
    return next(iter(revisions), NO_REVISION)


def expects(tag: str) -> bool:
    """Tell whether the present request was made for the state of this tag, from its If-Match.

    Raises:
        PreconditionRequired: there is no If-Match.
    """
    return _wanted().contains(tag.strip('"'))


def _wanted() -> ETags:
    wanted = request.if_match
    if not wanted:
        raise PreconditionRequired(
            "Send the ETag you were given with what you edit, as If-Match, so that nobody's "
            "change is overwritten unseen."
        )
    return wanted
