"""The fields of the wire, stricter than the library's: nothing is taken for something else.

A number in quotation marks is not a number, `1` is not `true`, and a time without its
zone is not a time: what a program sends by mistake is refused, not guessed at.
"""

import re
from collections.abc import Mapping
from datetime import UTC, date, datetime
from typing import Any, ClassVar
from uuid import UUID

from marshmallow import RAISE, Schema, ValidationError, fields

_DAY = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)
_INSTANT = re.compile(
    r"\d{4}-\d{2}-\d{2}[Tt]\d{2}:\d{2}:\d{2}(\.\d{1,9})?([Zz]|[+-]\d{2}:\d{2})", re.ASCII
)
_WHOLE = re.compile(r"-?\d{1,18}", re.ASCII)
_EARLIEST = datetime(1900, 1, 1, tzinfo=UTC)
_LATEST = datetime(9998, 12, 31, tzinfo=UTC)


class Shape(Schema):
    """A shape of JSON.

    Attributes:
        rules: JSON Schema keywords to add to what is generated from the fields.
    """

    rules: ClassVar[dict[str, Any]] = {}


class Request(Shape):
    """A shape that is sent to Catchword: fields it does not know are refused."""

    class Meta:
        """What is not a field is a mistake."""

        unknown = RAISE


class Identity(fields.UUID):
    """A UUID as RFC 9562 writes it, in five groups."""

    def _deserialize(
        self, value: object, attr: str | None, data: Mapping[str, Any] | None, **kwargs: object
    ) -> UUID:
        identity = super()._deserialize(value, attr, data, **kwargs)
        if str(identity) != str(value).lower():
            raise self.make_error("invalid_uuid")
        return identity


class Text(fields.String):
    """Words that can be kept: no NUL, no half of a surrogate pair."""

    def __init__(self, **options: Any) -> None:  # noqa: ANN401 - passed on
        options["metadata"] = {"pattern": r"^[^\u0000]*$", **options.get("metadata", {})}
        super().__init__(**options)

    def _deserialize(self, value: object, *args: Any, **kwargs: Any) -> str:  # noqa: ANN401 - passed on
        text = super()._deserialize(value, *args, **kwargs)
        if "\x00" in text:
            raise ValidationError("Holds a NUL character.")
        try:
            text.encode()
        except UnicodeEncodeError:
            raise ValidationError(
                "Holds half of a surrogate pair, which is no character."
            ) from None
        return text


class Whole(fields.Integer):
    """A whole number, written as a number."""

    def _validated(self, value: object) -> int:
        if isinstance(value, float) and value.is_integer():
            return int(value)
        if isinstance(value, bool) or not isinstance(value, int):
            raise self.make_error("invalid", input=value)
        return value


class QueryWhole(fields.Integer):
    """A whole number in a query, in plain digits and within 64 bits."""

    def _validated(self, value: object) -> int:
        if not isinstance(value, str) or not _WHOLE.fullmatch(value):
            raise self.make_error("invalid", input=value)
        return int(value)


class Number(fields.Float):
    """A number, written as a number."""

    def _validated(self, value: object) -> float:
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.make_error("invalid", input=value)
        validated = super()._validated(value)
        assert validated is not None
        return validated


class Truth(fields.Boolean):
    """`true` or `false`, and no other word for either."""

    def _deserialize(self, value: object, *_: object, **__: object) -> bool:
        if not isinstance(value, bool):
            raise self.make_error("invalid", input=value)
        return value


class Day(fields.Date):
    """A date as RFC 3339 writes it."""

    def _deserialize(self, value: object, *args: Any, **kwargs: Any) -> date:  # noqa: ANN401 - passed on
        if not isinstance(value, str) or not _DAY.fullmatch(value):
            raise self.make_error("invalid", input=value, obj_type=self.OBJ_TYPE)
        return super()._deserialize(value, *args, **kwargs)


class Instant(fields.AwareDateTime):
    """A date and time with its zone, as RFC 3339 writes them, from 1900 to 9998."""

    def _deserialize(self, value: object, *_: object, **__: object) -> datetime:
        if not isinstance(value, str) or not _INSTANT.fullmatch(value):
            raise ValidationError(
                "Not a date and time with its zone, as in 2026-03-01T21:40:00+01:00."
            )
        try:
            instant = datetime.fromisoformat(value.upper())
        except ValueError:
            raise self.make_error("invalid", input=value, obj_type=self.OBJ_TYPE) from None
        # The difference is taken without converting either, which could overflow.
        if not _EARLIEST <= instant <= _LATEST:
            raise ValidationError("Not within the years 1900 to 9998.")
        return instant
