"""JSON in the strict sense: no field twice, no number that is none, nothing beyond its bounds."""

import json
import math
from typing import Any, NoReturn

_LONGEST_NUMBER = 24
"""Characters of a number: a double written exactly takes 24 at the most (IEEE 754, 17 digits)."""


class Unreadable(ValueError):
    """A line that is no such fact; the message says why, beginning with a small letter."""


def written(value: object) -> bytes:
    """Return a value as one line of JSON."""
    return text_of(value).encode() + b"\n"


def object_in(text: bytes) -> dict[str, Any]:
    """Return the JSON object a text holds.

    Raises:
        Unreadable: it is none, names a field twice, or holds a number that is none.
    """
    try:
        found = strict(text.decode())
    except UnicodeDecodeError as error:
        raise Unreadable("is not text in UTF-8") from error
    except Unreadable:
        raise
    except (ValueError, RecursionError) as error:
        raise Unreadable("is not JSON") from error
    if not isinstance(found, dict):
        raise Unreadable("is not a JSON object")
    return found


def strict(text: str) -> Any:  # noqa: ANN401 - whatever JSON may say
    """Return what a text of JSON says.

    Raises:
        Unreadable: it names a field twice, or holds a number that is none or beyond its bounds.
        ValueError: it is not JSON.
        RecursionError: it is nested too deeply.
    """
    return json.loads(
        text,
        object_pairs_hook=_once,
        parse_constant=_no_number,
        parse_int=_whole,
        parse_float=_number,
    )


def text_of(value: object) -> str:
    """Return a value as JSON, in the one way the archive writes it.

    Raises:
        RecursionError: it is nested too deeply.
    """
    plain = json.dumps(value, ensure_ascii=False, allow_nan=False)
    # Half a character of a pair stands in no file; JSON can spell it.
    return json.dumps(value, allow_nan=False) if halved(plain) else plain


def halved(text: str) -> bool:
    """Tell whether a text holds half a character of a pair, which no file can hold."""
    return not text.isascii() and any("\ud800" <= letter <= "\udfff" for letter in text)


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
