"""A kept digest and its parts."""

from dataclasses import replace
from uuid import UUID

import pytest

from cards.identity import keep
from cards.parts import PartKind
from tests.cards.digests import WHOLE, kept, new_ids

KNOWN = kept()


def test_a_kept_digest_gives_back_the_digest():
    """Identities are added and nothing is lost."""
    assert KNOWN.digest() == WHOLE


def test_the_parts_held_are_in_the_digests_order():
    """By number, whatever order they are kept in."""
    turned = replace(KNOWN, parts=KNOWN.parts[::-1])
    assert turned.held(PartKind.POINT) == KNOWN.held(PartKind.POINT)
    assert turned.digest() == WHOLE


def test_what_is_retired_is_not_held():
    """A part the digest no longer holds is known by its id, and not part of it."""
    without = keep(replace(WHOLE, theme=None), KNOWN, new_ids(1000))
    gone = KNOWN.held(PartKind.THEME)[0]
    assert without.held(PartKind.THEME) == ()
    assert without.part(gone.id).retired
    assert without.digest() == replace(WHOLE, theme=None)


def test_a_part_it_never_had_is_a_key_error():
    """An unknown id is no part."""
    with pytest.raises(KeyError):
        KNOWN.part(UUID(int=10**9))


def test_a_part_knows_its_page():
    """Read from its locator, as the digest's own parts do."""
    pages = [part.page for part in KNOWN.held(PartKind.QUOTATION)]
    assert pages == [208, 1, None]
