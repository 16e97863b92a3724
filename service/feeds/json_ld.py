"""JSON-LD as others write it: parsed within bounds, one value or several read alike."""

import json
from typing import Any

from cards.errors import InvalidAnnotations

MAX_CHARACTERS = 16_000_000
"""Characters of one file: ten thousand quotations with all around them take some 10 million."""
MAX_ANNOTATIONS = 10_000
"""Annotations in one file: twenty times the quotations of the largest digest."""
MAX_DEPTH = 24
"""Objects and arrays in one another; a collection of ours is 7 deep, the model's examples 8."""
MAX_VALUES = 1_000_000
"""Values in one file."""


def parsed(text: str) -> object:
    """Return what a text in JSON holds.

    Raises:
        InvalidAnnotations: it is no JSON, or over a bound in length, depth or number.
    """
    if len(text) > MAX_CHARACTERS:
        raise too_large()
    try:
        root = json.loads(text.removeprefix("\ufeff"), parse_constant=_no_number)
    except (ValueError, RecursionError) as error:
        raise InvalidAnnotations(
            "This is no JSON, or is cut short. Export the annotations once more and hand over the "
            "whole of them.",
            where="annotations",
        ) from error
    level: list[object] = [root]
    values = 0
    for _ in range(MAX_DEPTH):
        level = [inner for each in level for inner in _inside(each)]
        values += len(level)
        if values > MAX_VALUES:
            raise too_large()
    if level:
        raise InvalidAnnotations(
            f"The values stand in one another deeper than annotations do ({MAX_DEPTH} levels), so "
            "they were not read.",
            where="annotations",
        )
    return root


def _no_number(constant: str) -> object:
    raise ValueError(constant)


def _inside(value: object) -> list[object]:
    if isinstance(value, dict):
        return list(value.values())
    return value if isinstance(value, list) else []


def too_large() -> InvalidAnnotations:
    """Return the refusal of a file with more in it than one book gives."""
    return InvalidAnnotations(
        f"There are more than {MAX_ANNOTATIONS} annotations, or more than "
        f"{MAX_CHARACTERS // 1_000_000} million characters of them. Export one book at a time.",
        where="annotations",
    )


def types_of(made: dict[str, Any]) -> frozenset[str]:
    """Return the types a value says it is of, without their prefixes."""
    said = each_of(made.get("type", made.get("@type")))
    return frozenset(each.rpartition(":")[2] for each in said if isinstance(each, str))


def each_of(value: object) -> list[Any]:
    """Return the values given under a key: several, one, or none."""
    if value is None:
        return []
    return value if isinstance(value, list) else [value]


def text_of(value: object, most: int) -> str:
    """Return a text, or the first of several, cut to a length; "" for what is none."""
    first = value[0] if isinstance(value, list) and value else value
    return first[:most] if isinstance(first, str) else ""
