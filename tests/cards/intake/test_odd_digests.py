"""Odd digests are understood as their readers meant them. Layouts are common practice.

`odd/` holds each in the brief notation of `blocks_of`, and beside it the parts it should have:
`after` for the points that quotations stand after, points and quotations with their locators
where these matter. The readers are invented, the books in the public domain.
"""

import json
from pathlib import Path
from typing import Any

import pytest

from cards.digest import Digest
from tests.cards.intake.blocks_of import understood

ODD = Path(__file__).parent / "odd"
NAMES = sorted(path.stem for path in ODD.glob("*.txt"))


def part(digest: Digest, name: str, wanted: Any) -> Any:
    """Return a part of a digest in the form in which what is wanted is written."""
    match name:
        case "after":
            return [quotation.after for quotation in digest.quotations]
        case "quotations":
            return [[one.text, one.locator] for one in digest.quotations]
        case "points" if wanted and isinstance(wanted[0], list):
            return [[one.text, one.locator] for one in digest.points]
        case "points" | "commitments":
            return [one.text for one in getattr(digest, name)]
        case "finished_on":
            return None if digest.finished_on is None else digest.finished_on.isoformat()
        case _:
            return getattr(digest, name)


@pytest.mark.parametrize("name", NAMES)
def test_odd_digests(name: str):
    """Every part that is said of an odd digest is as its reader meant it."""
    wanted = json.loads((ODD / f"{name}.json").read_text(encoding="utf-8"))
    digest = understood((ODD / f"{name}.txt").read_text(encoding="utf-8"), "reading.docx").digest
    assert {key: part(digest, key, value) for key, value in wanted.items()} == wanted


def test_there_are_enough_of_them():
    """At least thirty odd digests are tried, each with what is expected of it."""
    assert len(NAMES) >= 30
    assert {path.stem for path in ODD.glob("*.json")} == set(NAMES)
