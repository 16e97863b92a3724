"""Odd digests are understood as their readers meant them. Layouts are common practice."""

from typing import Any

import pytest

from cards.digest import Digest
from tests.cards.intake.blocks_of import understood
from tests.cards.intake.odd_digests import ODD


def part(digest: Digest, name: str) -> Any:
    """Return a part of a digest in the form in which `ODD` writes it."""
    match name:
        case "P":
            return [(point.text, point.locator) for point in digest.points]
        case "A":
            return [quotation.after for quotation in digest.quotations]
        case "points" | "commitments":
            return [one.text for one in getattr(digest, name)]
        case "quotations":
            return [(one.text, one.locator) for one in digest.quotations]
        case "finished_on":
            return None if digest.finished_on is None else digest.finished_on.isoformat()
        case _:
            return getattr(digest, name)


@pytest.mark.parametrize("name", ODD)
def test_odd_digests(name: str):
    """Every part that is said of an odd digest is as its reader meant it."""
    text, wanted = ODD[name]
    digest = understood(text, "reading.docx").digest
    assert {key: part(digest, key) for key in wanted} == wanted
