"""Whether what was read back of JSON is made of what its types say.

A document of JSON may say words where a number belongs, and whatever is built of it carries them
on, until a page that reckons with the number fails.
"""

from collections.abc import Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import fields, is_dataclass
from functools import cache
from math import isfinite
from types import UnionType
from typing import Any, TypeAlias, Union, get_args, get_origin, get_type_hints

_Hint: TypeAlias = Any
"""A type as it is written at a field."""


def check_types(value: object, hint: _Hint) -> None:
    """Check that a value is of a type, and all that it holds of theirs.

    Args:
        value: a dataclass, or whatever the fields of one hold.
        hint: a class, a union, or a tuple, a set, a sequence or a mapping of such.

    Raises:
        TypeError: it is not, or holds half a character or a number that is none.
    """
    if not _fits(value, hint):
        raise TypeError(hint)


def _fits(value: object, hint: _Hint) -> bool:
    origin: Any = get_origin(hint)
    if origin in {Union, UnionType}:
        return any(_fits(value, each) for each in get_args(hint))
    if origin is not None:
        return isinstance(value, origin) and _holds(value, get_args(hint))
    kind: Any = (int, float) if hint is float else getattr(hint, "__supertype__", hint)
    if not isinstance(value, kind) or (isinstance(value, bool) and hint is not bool):
        return False  # true and false are no numbers, though Python has them so
    match value:
        case float():
            return isfinite(value)
        case str():
            return value.isascii() or not any("\ud800" <= letter <= "\udfff" for letter in value)
        case _:
            return not is_dataclass(kind) or _is_sound(value, kind)


def _holds(value: object, hints: tuple[_Hint, ...]) -> bool:
    match value:
        case Mapping():
            key, held = hints
            return all(_fits(each, key) and _fits(value[each], held) for each in value)
        case tuple() if hints[-1] is not Ellipsis:
            return len(value) == len(hints) and all(map(_fits, value, hints))
        case Sequence() | AbstractSet():
            return all(_fits(each, hints[0]) for each in value)
        case _:
            return False


def _is_sound(value: object, kind: Any) -> bool:  # noqa: ANN401 - any dataclass
    return all(_fits(getattr(value, name), hint) for name, hint in _hints(kind).items())


@cache
def _hints(kind: Any) -> Mapping[str, _Hint]:  # noqa: ANN401
    told = get_type_hints(kind)
    return {each.name: told[each.name] for each in fields(kind)}
