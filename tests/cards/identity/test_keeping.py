"""Which part of a digest is the same part as before."""

import re
from dataclasses import replace
from itertools import combinations
from pathlib import Path
from uuid import UUID

import pytest
from rapidfuzz import fuzz

import service.documents
from cards.digest import Commitment, Digest, Point, Quotation
from cards.identity import keep, restored, share_of, with_places_of
from cards.identity.matching import SAME_WORDS, turned
from cards.parts import Care, PartKind
from tests.cards.digests import POINTS, QUOTATIONS, WHOLE, kept, new_ids

LIBRARY = Path(service.documents.__file__).with_name("demo_library")
KNOWN = kept()


def again(digest, known=KNOWN):
    """Keep a digest that is known already; new parts get ids from 1000."""
    return keep(digest, known, new_ids(1000))


def ids(digest, kind):
    """Return the ids of the parts of a kind a kept digest holds, in order."""
    return [part.id for part in digest.held(kind)]


def likeness(one, other):
    """Return the similarity of two wordings, as parts are compared."""
    return fuzz.ratio(one.casefold(), other.casefold())


def listed():
    """Yield the parts of a kind in each digest of the demo library that is Markdown."""
    for path in sorted(LIBRARY.glob("*.md")):
        lists = re.split(r"\n(?:#+ .*|\*\*.*)\n", path.read_text(encoding="utf-8"))
        for text in lists:
            parts = re.findall(r"^(?:\d+[.)]|[*-]) +(.+)$", text, re.MULTILINE)
            yield [re.sub(r"\s*\([^()]*\)$", "", part) for part in parts]


PARTS = [part for parts in listed() for part in parts]


def typing_errors(text):
    """Yield a text with a letter dropped, doubled, wrong and swapped, in its middle."""
    middle = len(text) // 2
    yield text[:middle] + text[middle + 1 :]
    yield text[:middle] + text[middle] + text[middle:]
    yield text[:middle] + "x" + text[middle + 1 :]
    yield text[:middle] + text[middle + 1] + text[middle] + text[middle + 2 :]


def test_the_demo_library_is_large_enough_to_measure():
    """Three digests of a dozen listed parts each are compared."""
    assert len(PARTS) >= 35


def test_a_typing_error_scores_above_90():
    """Measured on every listed part of the demo library."""
    assert min(likeness(text, typo) for text in PARTS for typo in typing_errors(text)) > 90


def test_two_parts_of_one_book_score_under_50():
    """Measured on every pair of points, commitments or quotations in the demo library."""
    scores = [likeness(*pair) for parts in listed() for pair in combinations(parts, 2)]
    assert len(scores) > 80
    assert max(scores) < 50 < SAME_WORDS


REWORDED = (
    (
        "Darcy proposes without courtesy and is refused without mercy",
        "Darcy's proposal, made without courtesy, is refused without mercy",
    ),
    (
        "When the people rule, tyranny can come from the majority",
        "Tyranny can also come from the majority when the people rule",
    ),
    (
        "His letter makes her read her own conduct with shame",
        "Reading his letter she sees her own conduct with shame",
    ),
    ("Write to my sister twice a month until Christmas", "Write to my sister once a week"),
    (
        "To silence an opinion is to assume that we cannot be wrong",
        "Silencing an opinion assumes we cannot be wrong, and robs everyone",
    ),
)


def test_a_reworded_sentence_mostly_stays_the_same_part():
    """Four of five rewordings score at least 60; the threshold costs the fifth its history."""
    same = [likeness(*pair) >= SAME_WORDS for pair in REWORDED]
    assert same.count(True) >= 4


def test_adding_the_same_digest_twice_changes_nothing():
    """The same digest has the same parts under the same ids."""
    assert again(WHOLE) == KNOWN


@pytest.mark.parametrize("field", ["points", "commitments", "quotations"])
def test_a_typing_error_corrected_keeps_every_id(field):
    """A corrected letter in each part of a kind leaves all identities as they were."""
    wrong = tuple(
        replace(part, text=part.text[:5] + part.text[6:]) for part in getattr(WHOLE, field)
    )
    mended = again(replace(WHOLE, **{field: wrong}))
    assert [part.id for part in mended.parts] == [part.id for part in KNOWN.parts]


def test_a_theme_rewritten_is_the_same_theme():
    """A book has one theme."""
    mended = again(replace(WHOLE, theme="Quite other words about the book"))
    assert ids(mended, PartKind.THEME) == ids(KNOWN, PartKind.THEME)


def test_moving_a_point_keeps_its_id():
    """The order changes, the identities go with their words."""
    mended = again(replace(WHOLE, points=POINTS[::-1]))
    assert ids(mended, PartKind.POINT) == ids(KNOWN, PartKind.POINT)[::-1]


def test_removing_and_restoring_a_part_brings_its_history_back():
    """What is gone is retired, not dropped; the same words return under the same id."""
    without = again(replace(WHOLE, commitments=WHOLE.commitments[1:]))
    gone = KNOWN.held(PartKind.COMMITMENT)[0].id
    assert without.part(gone).retired
    assert gone not in ids(without, PartKind.COMMITMENT)
    assert again(WHOLE, without).part(gone) == KNOWN.part(gone)


def test_a_new_part_is_new():
    """Words unlike any other get an id of their own."""
    more = replace(WHOLE, points=(*POINTS, Point("Jane and Bingley are married at last")))
    assert ids(again(more), PartKind.POINT) == [*ids(KNOWN, PartKind.POINT), UUID(int=1000 + 6)]


def test_two_parts_that_trade_words_keep_to_their_words():
    """The same words come first, whatever their place."""
    mended = again(replace(WHOLE, commitments=WHOLE.commitments[::-1]))
    assert ids(mended, PartKind.COMMITMENT) == ids(KNOWN, PartKind.COMMITMENT)[::-1]


def test_twin_parts_keep_their_places():
    """Of two parts in the same words the first stays the first."""
    twins = Digest("A Book", points=(Point("Act"), Point("Rest"), Point("Act")))
    known = kept(twins)
    assert ids(again(twins, known), PartKind.POINT) == ids(known, PartKind.POINT)


UNPLACED = replace(QUOTATIONS[0], after=None)


def test_a_place_the_reader_told_is_carried_over():
    """A document that says no place does not take away the one the reader gave."""
    silent = again(replace(WHOLE, quotations=(UNPLACED, *QUOTATIONS[1:])))
    assert silent.held(PartKind.QUOTATION)[0].after is None
    assert with_places_of(KNOWN, silent).held(PartKind.QUOTATION)[0].after == 4


def test_a_place_follows_its_point_to_its_new_number():
    """With a point removed before it, the same point has another number."""
    silent = again(replace(WHOLE, points=POINTS[1:], quotations=(UNPLACED,)))
    assert with_places_of(KNOWN, silent).held(PartKind.QUOTATION)[0].after == 3


def test_a_place_after_a_point_that_is_gone_is_unknown():
    """Positions are never invented."""
    points = (*POINTS[:3], POINTS[4])
    silent = again(replace(WHOLE, points=points, quotations=(UNPLACED,)))
    assert with_places_of(KNOWN, silent).held(PartKind.QUOTATION)[0].after is None


def test_what_the_document_says_of_a_place_stands():
    """A place in the document is not overridden by an older one."""
    moved = again(replace(WHOLE, quotations=(replace(QUOTATIONS[0], after=2), *QUOTATIONS[1:])))
    assert with_places_of(KNOWN, moved).held(PartKind.QUOTATION)[0].after == 2


def test_before_all_points_stays_before_all_points():
    """Place 0 is no point's number."""
    truth = replace(QUOTATIONS[1], after=None)
    silent = again(replace(WHOLE, points=POINTS[::-1], quotations=(truth,)))
    assert with_places_of(KNOWN, silent).held(PartKind.QUOTATION)[0].after == 0


@pytest.mark.parametrize(
    ("digest", "share"),
    [
        (WHOLE, 1.0),
        (replace(WHOLE, points=POINTS[:1], commitments=(), quotations=()), 1.0),
        (replace(WHOLE, points=(), commitments=(), quotations=(Quotation("Call me Ishmael"),)), 0),
        (Digest("A Book", theme="Only a theme"), 0),
        (
            Digest("A Book", points=POINTS[:1], commitments=(Commitment("Go to sea each May"),)),
            0.5,
        ),
    ],
)
def test_how_much_of_a_digest_is_known(digest, share):
    """The share of its points, commitments and quotations that a kept digest has or had."""
    assert share_of(digest, KNOWN) == share


def test_words_a_part_once_had_bring_it_back():
    """A wording of an earlier version finds its part, however far it was reworded since."""
    first, second, third = "Act at once", "Act at once and openly", "Be open in what you do now"
    known = kept(Digest("A Book", points=(Point(first),)))
    identity = known.held(PartKind.POINT)[0].id
    reworded = replace(known, parts=(replace(known.parts[0], text=third),))
    digest = Digest("A Book", points=(Point(first),))
    assert ids(again(digest, reworded), PartKind.POINT) != [identity]
    said = {identity: (second, first)}
    back = keep(digest, reworded, new_ids(1000), said)
    assert ids(back, PartKind.POINT) == [identity]


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Ahab forgives the whale in the end", "Ahab does not forgive the whale in the end"),
        ("Freedom can be lent to others", "Freedom can never be lent to others"),
        ("Die Menge hat immer recht behalten", "Die Menge hat nicht immer recht behalten"),
        ("I will answer letters after nine", "I won't answer letters after nine"),
    ],
)
def test_a_claim_turned_round_is_another_claim(one, other):
    """A point that says the opposite starts afresh, alike as the letters are."""
    assert likeness(one, other) >= SAME_WORDS
    assert turned(one, other)
    known = kept(Digest("A Book", points=(Point(one),)))
    turned_round = again(Digest("A Book", points=(Point(other),)), known)
    assert ids(turned_round, PartKind.POINT) != ids(known, PartKind.POINT)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Thunder frightened nobody here", "Thunder frightenednobody here"),
        ("It is not down in any map", "It is not down on any map"),
        ("He never came back to the mill", "He did not come back to the mill ever"),
    ],
)
def test_a_slip_in_a_negation_turns_nothing_round(one, other):
    """A typing error in a negation, or one negation for another, keeps the claim."""
    assert not turned(one, other)


def test_a_quotation_that_lacked_a_negation_is_the_same_quotation():
    """Its words are the book's, and a slip in them is mended."""
    known = kept(Digest("A Book", quotations=(Quotation("It is down in any map of ours"),)))
    mended = again(Digest("A Book", quotations=(Quotation("It is not down in any map"),)), known)
    assert ids(mended, PartKind.QUOTATION) == ids(known, PartKind.QUOTATION)


def test_a_restored_version_says_what_it_said_under_the_same_ids():
    """What came since is retired; care and revision stay the digest's own."""
    other = Digest("Another title", points=(*POINTS[:2], Point("A later thought of mine")))
    now = replace(again(other), revision=7, care=Care.CLOSE)
    back = restored(KNOWN, now)
    assert back.digest() == WHOLE
    assert {p.id for p in back.parts if not p.retired} == {p.id for p in KNOWN.parts}
    assert {p.id for p in back.parts} == {p.id for p in now.parts}
    assert (back.revision, back.care) == (7, Care.CLOSE)
