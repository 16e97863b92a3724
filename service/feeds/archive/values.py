"""A fact as a line of JSON, and back; whatever is not exactly what we write is refused."""

import json
import math
from collections.abc import Callable, Mapping
from datetime import UTC, date, datetime
from typing import Any, NoReturn, TypeAlias, cast
from uuid import UUID

from service.use_cases.archiving_records import FactTable, Field, FieldType, Row

WIDEST = 2**31
"""Whole numbers are below this, and not below its negative: what every database keeps."""
_LONGEST_NUMBER = 24
"""Characters of a number: a double written exactly takes 24 at the most (IEEE 754, 17 digits)."""
_SHORTEST_EXACT = 2**53
"""Whole numbers up to this are numbers without a loss."""

Decoded: TypeAlias = str | int | float | bool | UUID | date | datetime
"""The value of a field that is there."""


class Unreadable(ValueError):
    """A line that is no such fact; the message says why, beginning with a small letter."""


def line_of(table: FactTable, row: Row) -> bytes:
    """Return a fact as a line of JSON in UTF-8, its fields in the table's order."""
    return written({each.name: _encoded(each, row[each.name]) for each in table.fields})


def written(value: object) -> bytes:
    """Return a value as one line of JSON."""
    return _text(value).encode() + b"\n"


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
            raise Unreadable(f"has a field “{name[:40]}” that is not known")
        row[name] = _decoded(known[name], value)
    return row


def object_in(text: bytes) -> dict[str, Any]:
    """Return the JSON object a text holds.

    Raises:
        Unreadable: it is none, names a field twice, or holds a number that is none.
    """
    try:
        found = _strict(text.decode())
    except UnicodeDecodeError as error:
        raise Unreadable("is not text in UTF-8") from error
    except Unreadable:
        raise
    except (ValueError, RecursionError) as error:
        raise Unreadable("is not JSON") from error
    if not isinstance(found, dict):
        raise Unreadable("is not a JSON object")
    return found


def _strict(text: str) -> Any:  # noqa: ANN401 - whatever JSON may say
    return json.loads(
        text,
        object_pairs_hook=_once,
        parse_constant=_no_number,
        parse_int=_whole,
        parse_float=_number,
    )


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
        and ("\x00" in found or _halved(found) or len(found) > (field.longest or len(found)))
    ):
        raise Unreadable(f"has words in “{field.name}” that cannot be kept or are too long")
    return found


def _id(value: object) -> UUID | None:
    return _exactly(value, UUID, str)


def _instant(value: object) -> datetime | None:
    found = _exactly(
        value, datetime.fromisoformat, lambda instant: instant.isoformat(timespec="microseconds")
    )
    return found if found is not None and found.utcoffset() == UTC.utcoffset(None) else None


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
        return _text(value) if isinstance(value, dict | list) else _no_json(value)
    except RecursionError as error:
        raise Unreadable("is nested too deeply") from error


def _no_json(value: object) -> str | None:
    """Return a text that stands where JSON may, or None for anything but such a text."""
    if not isinstance(value, str) or _halved(value) or _plain_json(value) != value:
        return None
    return value


def _plain_json(text: str) -> object:
    """Return what a text of JSON says, or the text where no JSON in the strict sense says it.

    Nothing where weights are the published ones, say, or a figure that was no number.
    """
    try:
        found = _strict(text)
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


def _text(value: object) -> str:
    plain = json.dumps(value, ensure_ascii=False, allow_nan=False)
    # Half a character of a pair stands in no file; JSON can spell it.
    return json.dumps(value, allow_nan=False) if _halved(plain) else plain


def _halved(text: str) -> bool:
    return any("\ud800" <= letter <= "\udfff" for letter in text) if not text.isascii() else False


def _once(pairs: list[tuple[str, object]]) -> dict[str, object]:
    found = dict(pairs)
    if len(found) != len(pairs):
        raise Unreadable("names a field twice")
    return found


def _no_number(name: str) -> NoReturn:
    raise Unreadable(f"holds {name}, which is no number")


def _whole(text: str) -> int:
    if len(text) > _LONGEST_NUMBER:
        raise Unreadable("holds a number of too many digits")
    return int(text)


def _number(text: str) -> float:
    found = float(text) if len(text) <= _LONGEST_NUMBER else math.inf
    if not math.isfinite(found):
        raise Unreadable("holds a number of too many digits, or beyond every bound")
    return found
