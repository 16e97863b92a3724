"""Properties of a sitting on paper: design, rule 4, “nothing gives away what is still to be asked”.

On paper all cues are in sight at once, so the rule holds both ways.
"""

from itertools import permutations

from hypothesis import given, settings

from cards.kinds import KINDS
from cards.kinds.base import Asked, KindName
from cards.kinds.words import content_words, stems
from cards.sitting import Candidate, compose
from service.use_cases.sheets import side_by_side
from tests.property.test_sitting import half_shown, libraries, minutes

BY_WORDS = (KindName.THEME, KindName.NEXT, KindName.RESTATE)


def shown_by(each: Candidate) -> list[str]:
    """Return the texts that stand on paper where an item is asked, its book's name left out."""
    cue = KINDS[each.kept.item.kind].cue(each.occasion)
    return [*cue.words.split("\n"), *cue.pieces, *(mark.text for mark in cue.landmarks)]


def asked_in_words(each: Candidate) -> str:
    """Return the content words an item asks for that its own cue does not show."""
    kind = KINDS[each.kept.item.kind]
    cued, secret = stems(kind.cue(each.occasion).words), kind.secret(each.occasion)
    words = [secret[token.start : token.end] for token in content_words(secret)]
    return " ".join(word for word in words if stems(word).isdisjoint(cued))


@settings(max_examples=60)
@given(libraries(), minutes)
def test_no_cue_on_a_sheet_shows_what_another_asks(waiting, seconds):
    """Neither the words, nor the points of a theme, nor the order, nor whose words they are.

    Read off the words of the cues themselves, by what the design calls showing.
    """
    asked = side_by_side(compose(waiting, seconds))
    for each, other in permutations(asked, 2):
        shown = shown_by(other)
        if each.kept.item.kind in BY_WORDS:
            assert not half_shown(asked_in_words(each), stems("\n".join(shown)))
        if each.book != other.book:
            continue
        match each.kept.item.kind:
            case KindName.THEME:
                points = {point for point in each.occasion.digest.parts if point.kind == "point"}
                assert not {point.text for point in points} & set(shown)
            case KindName.ORDER:
                by_points = other.occasion.part.after is not None
                ways = KINDS[other.kept.item.kind].cue(other.occasion).asked
                assert not (by_points and Asked.GAP in ways)
            case KindName.SOURCE:
                assert other.occasion.part.id != each.occasion.part.id
                assert each.occasion.part.text not in shown
            case KindName.COMPLETE:
                quoted = each.occasion.part.text
                assert f"“{quoted}”" not in shown
                assert quoted not in shown


@settings(max_examples=60)
@given(libraries(), minutes)
def test_nothing_is_left_out_that_has_room(waiting, seconds):
    """The order is kept, and each item left out clashes with one that stays."""
    composed = compose(waiting, seconds)
    stays = side_by_side(composed)
    assert [each for each in composed if each in stays] == stays
    for each in composed:
        if each not in stays:
            beside = [one for one in composed if one in stays or one is each]
            clashes = [len(side_by_side([each, one])) == 1 for one in beside if one is not each]
            assert any(clashes)
