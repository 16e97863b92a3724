"""A fact as a line of JSON, and back; whatever is not exactly what we write is refused."""

from collections.abc import Callable, Mapping
from datetime import UTC, date, datetime
from typing import Any, TypeAlias, cast
from uuid import UUID

from service.feeds.archive.strict_json import (
    Unreadable,
    halved,
    object_in,
    strict,
    text_of,
    written,
)
from service.use_cases.archiving_records import FactTable, Field, FieldType, Row

WIDEST = 2**31
"""Whole numbers are below this, and not below its negative: what every database keeps."""
_FIRST_INSTANT = datetime(1, 1, 2, tzinfo=UTC)
_LAST_INSTANT = datetime(9999, 12, 31, tzinfo=UTC)
"""A day from both ends of the calendar: in no time zone is an instant between them beyond it."""
_SHORTEST_EXACT = 2**53
"""Whole numbers up to this are numbers without a loss."""

Decoded: TypeAlias = str | int | float | bool | UUID | date | datetime
"""The value of a field that is there."""


def line_of(table: FactTable, row: Row) -> bytes:
    """Return a fact as a line of JSON in UTF-8, its fields in the table's order."""
    return written({each.name: _encoded(each, row[each.name]) for each in table.fields})


def fact_in(table: FactTable, line: bytes) -> Row:
    """Return the fact a line holds, its file still a path.

    Raises:
        Unreadable: it is not one of this sort.
    """
    found = object_in(line)
    for each in table.fields:
        if each.name not in found:
            raise Unreadable(f"has no field “{each.name}”")
    known = {each.name: each for each in table.fields}
    row: Row = {}
    for name, value in found.items():
        if name not in known:
            raise Unreadable(f"has a field “{_shown(name)}” that is not known")
        row[name] = _decoded(known[name], value)
    return row


def _shown(name: str) -> str:
    """Return a name that may be anyone's, fit to stand in a sentence."""
    return "".join(letter if letter.isprintable() else "�" for letter in name[:40])


def _encoded(field: Field, value: object) -> object:
    if value is None:
        return None
    match field.type:
        case FieldType.ID:
            return str(value)
        case FieldType.INSTANT:
            return cast("datetime", value).astimezone(UTC).isoformat(timespec="microseconds")
        case FieldType.DAY:
            return cast("date", value).isoformat()
        case FieldType.JSON:
            return _plain_json(cast("str", value))
        case _:
            return value


def _decoded(field: Field, value: object) -> Decoded | None:
    if value is None:
        if not field.optional:
            raise Unreadable(f"leaves “{field.name}” empty, which has to be there")
        return None
    found = _DECODERS[field.type](value)
    if found is None:
        raise Unreadable(f"has no {_SAID[field.type]} in “{field.name}”")
    if (
        isinstance(found, str)
        and field.type is not FieldType.JSON
        and ("\x00" in found or halved(found) or len(found) > (field.longest or len(found)))
    ):
        raise Unreadable(f"has words in “{field.name}” that cannot be kept or are too long")
    return found


def _id(value: object) -> UUID | None:
    return _exactly(value, UUID, str)


def _instant(value: object) -> datetime | None:
    found = _exactly(
        value, datetime.fromisoformat, lambda instant: instant.isoformat(timespec="microseconds")
    )
    if found is None or found.utcoffset() != UTC.utcoffset(None):
        return None
    return found if _FIRST_INSTANT <= found < _LAST_INSTANT else None


def _day(value: object) -> date | None:
    return _exactly(value, date.fromisoformat, date.isoformat)


_Read: TypeAlias = Callable[[str], Any]


def _exactly(value: object, read: _Read, write: Callable[[Any], str]) -> Any | None:  # noqa: ANN401
    """Return what a text says, or None unless it says it in the one way we write it."""
    if not isinstance(value, str):
        return None
    try:
        found = read(value)
    except ValueError:
        return None
    return found if write(found) == value else None


def _words(value: object) -> str | None:
    return value if isinstance(value, str) else None


def _whole_number(value: object) -> int | None:
    fits = type(value) is int and -WIDEST <= value < WIDEST
    return cast("int", value) if fits else None


def _double(value: object) -> float | None:
    if type(value) is int and abs(value) <= _SHORTEST_EXACT:
        return float(value)
    return value if isinstance(value, float) else None


def _flag(value: object) -> bool | None:
    return value if isinstance(value, bool) else None


def _json(value: object) -> str | None:
    try:
        return text_of(value) if isinstance(value, dict | list) else _no_json(value)
    except RecursionError as error:
        raise Unreadable("is nested too deeply") from error


def _no_json(value: object) -> str | None:
    """Return a text that stands where JSON may, or None for anything but such a text."""
    if not isinstance(value, str) or halved(value) or _plain_json(value) != value:
        return None
    return value


def _plain_json(text: str) -> object:
    """Return what a text of JSON says, or the text where no JSON in the strict sense says it.

    Nothing where weights are the published ones, say, or a figure that was no number.
    """
    try:
        found = strict(text)
    except (ValueError, RecursionError):
        return text
    return found if isinstance(found, dict | list) else text


_DECODERS: Mapping[FieldType, Callable[[object], Decoded | None]] = {
    FieldType.ID: _id,
    FieldType.INSTANT: _instant,
    FieldType.DAY: _day,
    FieldType.WORDS: _words,
    FieldType.WHOLE: _whole_number,
    FieldType.NUMBER: _double,
    FieldType.FLAG: _flag,
    FieldType.JSON: _json,
    FieldType.FILE: _words,
}
_SAID = {
    FieldType.ID: "id",
    FieldType.INSTANT: "instant in UTC",
    FieldType.DAY: "day",
    FieldType.WORDS: "words",
    FieldType.WHOLE: f"whole number below {WIDEST}",
    FieldType.NUMBER: "number",
    FieldType.FLAG: "true or false",
    FieldType.JSON: "object or list of JSON",
    FieldType.FILE: "path of a file",
}
