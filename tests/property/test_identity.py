"""Properties of identity: design, rule 3, “identity survives edits”."""

from collections import Counter
from dataclasses import replace

from hypothesis import assume, given
from hypothesis import strategies as st

from cards.identity import keep, with_places_of
from cards.items import items_of, reconcile
from cards.parts import PartKind
from tests.cards.digests import new_ids
from tests.property.strategies import digests, with_a_typing_error

LISTS = ("points", "commitments", "quotations")


def again(digest, known):
    """Keep a digest that is known; whatever is new gets an id from a million."""
    return keep(digest, known, new_ids(10**6))


def ids_by_words(kept):
    """Return what each part held says with its id."""
    return {(part.kind, part.text): part.id for kind in PartKind for part in kept.held(kind)}


@given(digests())
def test_adding_a_digest_twice_changes_nothing(digest):
    """“Adding a digest twice changes nothing”: not a part, not an id, not an item."""
    known = keep(digest, None, new_ids())
    assert again(digest, known) == known
    assert reconcile(items_of(again(digest, known)), items_of(known)) == items_of(known)


@given(st.data())
def test_a_typing_error_in_every_part_keeps_every_id(data):
    """“Correcting a typing error keeps each item's history”, in all parts at once."""
    digest = data.draw(digests())
    known = keep(data.draw(with_a_typing_error(digest)), None, new_ids())
    mended = again(digest, known)
    assert [part.id for part in mended.parts] == [part.id for part in known.parts]
    assert mended.digest() == digest


@given(digests(), st.randoms(use_true_random=False))
def test_moving_parts_keeps_their_ids(digest, random):
    """“Moving a point keeps each item's history”: every part goes with its words."""
    known = keep(digest, None, new_ids())
    moved = {}
    for name in LISTS:
        parts = list(getattr(digest, name))
        random.shuffle(parts)
        moved[name] = tuple(parts)
    assert ids_by_words(again(replace(digest, **moved), known)) == ids_by_words(known)


def without_some(data, digest):
    """Return a digest without some of its parts, and with one at least."""
    fewer = {
        name: tuple(part for part in getattr(digest, name) if data.draw(st.booleans()))
        for name in LISTS
    }
    fewer["quotations"] = tuple(replace(part, after=None) for part in fewer["quotations"])
    theme = digest.theme if data.draw(st.booleans()) else None
    assume(theme or any(fewer.values()))
    return replace(digest, theme=theme, **fewer)


@given(st.data())
def test_removing_and_restoring_brings_both_back(data):
    """“Removing its source retires an item; restoring it brings both back”, the same as before."""
    digest = data.draw(digests())
    known = keep(digest, None, new_ids())
    fewer = again(without_some(data, digest), known)
    assert {part.id for part in fewer.parts} == {part.id for part in known.parts}
    restored = again(digest, fewer)
    assert ids_by_words(restored) == ids_by_words(known)
    assert restored.digest() == digest
    assert items_of(restored) == items_of(known)


@given(st.data())
def test_reconciling_keeps_every_item_ever_made(data):
    """A retired item is never dropped, and is not retired once it is made again."""
    digest = data.draw(digests())
    known = keep(digest, None, new_ids())
    fewer = again(without_some(data, digest), known)
    now = reconcile(items_of(fewer), items_of(known))
    assert {item.id for item in now} == {item.id for item in (*items_of(known), *items_of(fewer))}
    assert {item.id for item in now if not item.retired} == {item.id for item in items_of(fewer)}
    restored = reconcile(items_of(again(digest, fewer)), now)
    assert {item.id for item in restored} >= {item.id for item in now}
    assert [item for item in restored if not item.retired] == list(items_of(known))


@given(digests(), digests())
def test_no_two_parts_or_items_share_an_id(one, other):
    """However a digest is rewritten, identities stay distinct and are never given twice."""
    rewritten = again(other, keep(one, None, new_ids()))
    parts = Counter(part.id for part in rewritten.parts)
    items = Counter(item.id for item in items_of(rewritten))
    assert set(parts.values()) <= {1}
    assert set(items.values()) <= {1}
    assert rewritten.digest() == other


@given(digests(), st.randoms(use_true_random=False))
def test_what_the_reader_said_of_places_survives_a_silent_document(digest, random):
    """A quotation stands after the same point, wherever that point has moved."""
    known = keep(digest, None, new_ids())
    points = list(digest.points)
    random.shuffle(points)
    silent = replace(
        digest,
        points=tuple(points),
        quotations=tuple(replace(part, after=None) for part in digest.quotations),
    )
    placed = with_places_of(known, again(silent, known))

    def stands(kept):
        numbers = {part.number: part.id for part in kept.held(PartKind.POINT)}
        return {
            part.id: numbers.get(part.after, part.after) for part in kept.held(PartKind.QUOTATION)
        }

    assert stands(placed) == stands(known)
