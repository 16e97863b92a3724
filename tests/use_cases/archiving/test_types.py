"""What was read back of JSON is held against the types it is built of."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum

import pytest

from service.use_cases.archiving_types import check_types


class Ink(StrEnum):
    """An enumeration."""

    DARK = "dark"


@dataclass(frozen=True)
class Page:
    """A dataclass that others hold."""

    number: int
    share: float = 0.5


@dataclass(frozen=True)
class Leaf:
    """A dataclass with a field of every sort."""

    pages: tuple[Page, ...] = (Page(1),)
    pair: tuple[str, int] = ("a", 1)
    typed: Mapping[str, str] | None = None
    ink: Ink = Ink.DARK
    seen: frozenset[int] = frozenset()
    said: bool = True


@pytest.mark.parametrize(
    "leaf",
    [
        Leaf(),
        Leaf((), typed={}),
        Leaf((Page(2, 1), Page(-3, 1e300)), typed={"ä": "漢"}),
        Leaf(seen=frozenset({1, 2}), said=False),
    ],
)
def test_what_is_of_its_types_passes(leaf):
    """A whole number may stand for any; nothing is asked of ranges."""
    check_types(leaf, Leaf)


@pytest.mark.parametrize(
    "leaf",
    [
        None,
        Leaf(pages=[Page(1)]),
        Leaf(pages=(1,)),
        Leaf(pages=(Page("1"),)),
        Leaf(pages=(Page(True),)),
        Leaf(pages=(Page(1.5),)),
        Leaf(pages=(Page(1, float("inf")),)),
        Leaf(pages=(Page(1, None),)),
        Leaf(pair=("a", "b")),
        Leaf(pair=("a",)),
        Leaf(typed={"a": 1}),
        Leaf(typed={"\ud800": "a"}),
        Leaf(typed=["a"]),
        Leaf(ink="dark"),
        Leaf(seen=frozenset({"1"})),
        Leaf(said=1),
    ],
)
def test_what_is_not_is_refused(leaf):
    """However deep it stands; a number in words, true for one, half a character."""
    with pytest.raises(TypeError):
        check_types(leaf, Leaf)
