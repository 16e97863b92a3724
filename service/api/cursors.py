"""Cursors: where the next page of a list begins, opaque to whoever is handed one.

They hold the place itself, not a number of entries to skip: so a list that grows
meanwhile neither repeats an entry nor leaves one out.
"""

import re
from base64 import urlsafe_b64decode, urlsafe_b64encode
from datetime import UTC, datetime, timedelta
from urllib.parse import urlencode
from uuid import UUID

from flask import request
from marshmallow import ValidationError, fields, validate

from service.api.fields import QueryWhole
from service.use_cases.library import MOST, PAGE

_BEGINNING = datetime(1, 1, 1, tzinfo=UTC)
_MICROSECOND = timedelta(microseconds=1)
_OF_ID = re.compile(r"^[A-Za-z0-9_-]{22}$")
# The first letter is always A: eight bytes of microseconds from year 1 to year 9134.
_OF_INSTANT = re.compile(r"^A[A-Za-z0-9_-]{31}$")
# The first letter is always A, and so the number below 2 to the power of 58.
_OF_NUMBER = re.compile(r"^A[A-Za-z0-9_-]{10}$")
_WRONG = "Not a cursor of this list. Take it from `next` of the page before, as it is."


def cursor_of(place: tuple[datetime, UUID] | UUID | int) -> str:
    """Return the cursor of a place in a list."""
    if isinstance(place, int):
        return _encoded(place.to_bytes(8, "big"))
    if isinstance(place, UUID):
        return _encoded(place.bytes)
    at, identity = place
    microseconds = (at - _BEGINNING) // _MICROSECOND
    return _encoded(microseconds.to_bytes(8, "big") + identity.bytes)


class IdCursor(fields.Field[UUID]):
    """A place in a list ordered by id: a UUID."""

    def __init__(self) -> None:
        super().__init__(load_default=None, metadata=_described(_OF_ID))

    def _deserialize(self, value: object, *_: object, **__: object) -> UUID:
        return UUID(bytes=_decoded(value, _OF_ID))


class InstantCursor(fields.Field[tuple[datetime, UUID]]):
    """A place in a list ordered by time: an instant and a UUID."""

    def __init__(self) -> None:
        super().__init__(load_default=None, metadata=_described(_OF_INSTANT))

    def _deserialize(self, value: object, *_: object, **__: object) -> tuple[datetime, UUID]:
        place = _decoded(value, _OF_INSTANT)
        at = _BEGINNING + int.from_bytes(place[:8], "big") * _MICROSECOND
        return at, UUID(bytes=place[8:])


class NumberCursor(fields.Field[int]):
    """A place in a list ordered by a whole number."""

    def __init__(self) -> None:
        super().__init__(load_default=None, metadata=_described(_OF_NUMBER))

    def _deserialize(self, value: object, *_: object, **__: object) -> int:
        return int.from_bytes(_decoded(value, _OF_NUMBER), "big")


def limit(of_what: str = "entries") -> QueryWhole:
    """Return the field for how many of something a page holds."""
    return QueryWhole(
        load_default=PAGE,
        validate=validate.Range(1, MOST),
        metadata={
            "description": f"How many {of_what} at the most, 1 to {MOST}; {PAGE} unless given."
        },
    )


def links(following: str | None) -> dict[str, str]:
    """Return the Link header (RFC 8288) to the page that follows the present one, if any."""
    if following is None:
        return {}
    query = urlencode({**request.args, "cursor": following})
    return {"Link": f'<{request.path}?{query}>; rel="next"'}


def _described(pattern: re.Pattern[str]) -> dict[str, str]:
    return {
        "description": "Where the page begins: `next` of the page before. The first page without.",
        "type": "string",
        "pattern": pattern.pattern,
    }


def _encoded(place: bytes) -> str:
    return urlsafe_b64encode(place).rstrip(b"=").decode()


def _decoded(cursor: object, pattern: re.Pattern[str]) -> bytes:
    if not isinstance(cursor, str) or not pattern.fullmatch(cursor):
        raise ValidationError(_WRONG)
    return urlsafe_b64decode(cursor + "=" * (-len(cursor) % 4))
