"""An attempt held against the digest's words, idea by idea."""

import pytest

from cards.digest import Digest, Point
from cards.kinds.alike import meanings
from cards.kinds.base import Attempt, Occasion
from cards.kinds.comparing import compare
from cards.kinds.theme import THEME
from cards.parts import PartKind
from tests.cards.digests import only


@pytest.mark.parametrize("text", ["To be or not to be", "It is what it is.", "…!", "如", "?"])
def test_a_text_without_content_words_is_one_idea_all_the_same(text):
    """Where no word carries an idea, all its words do: the same words are found, others not."""
    (same,) = compare(text, text).ideas
    (other,) = compare(text, "whales").ideas
    assert same.span.hit
    assert not other.span.hit


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("marry", "wedding"),
        ("arrogance", "pride"),
        ("wealthy", "fortune"),
        ("voyage", "journey"),
        ("labor", "labour"),
        ("honour", "honor"),
        ("went", "goes"),
        ("taught", "teaches"),
        ("widower", "widowed"),
        ("seven", "7"),
        ("nineteenth", "19"),
        ("Cunégonde", "Cunegonde"),
        ("children", "kids"),
    ],
)
def test_words_that_say_nearly_the_same_meet(one, other):
    """Near-synonyms, irregular forms, families, spellings, numbers and accents."""
    assert meanings(one) & meanings(other)


@pytest.mark.parametrize(
    ("one", "other"),
    [("pride", "prejudice"), ("love", "hate"), ("seven", "8"), ("whale", "sailor")],
)
def test_words_that_say_something_else_do_not_meet(one, other):
    """Contraries least of all."""
    assert not meanings(one) & meanings(other)


@pytest.mark.parametrize(
    ("wanted", "given", "found"),
    [
        ("Raskolnikov confesses", "Raskolnikof", True),
        ("Thornton strikes", "Thorton", True),
        ("Medicine corrupts", "medecine", True),
        ("Emma pines", "Anna", False),
        ("The ropes tangle", "roles", False),
    ],
)
def test_a_slip_in_a_long_word_is_let_pass(wanted, given, found):
    """One in names of five letters and words of seven, two from eight; less is another word."""
    assert compare(wanted, given).ideas[0].span.hit is found


def test_an_idea_is_found_in_neighbouring_sentences_and_not_across_a_page():
    """Its words lie close together where it is told."""
    source = "The weaver hoards golden guineas beneath the floor"
    near = "The weaver hoards. Golden guineas."
    far = "The weaver wept. Harpoons fly. Ropes tangle. Golden were the fields. Guineas bought ale."
    assert compare(source, near).ideas[0].span.hit
    assert compare(source, far).ideas[0].part < 0.5


def test_what_no_word_of_the_attempt_can_have_said_is_unsaid():
    """Half of the words given back, and nothing else; or something else besides."""
    source = "Whales swim, captains rage, harpoons splinter, ropes tangle"
    bare = compare(source, "whales swim, captains rage").unsaid
    full = compare(source, "whales swim, captains rage, blades shiver and lines knot").unsaid
    assert bare == pytest.approx(0.5)
    assert full == 0


def test_an_idea_told_by_its_stage_is_found():
    """Points are the stages of a theme: their words count for the idea they stand for."""
    theme = "Riches estrange. A weaver robbed of his gold learns kindness from a foundling child."
    points = (
        Point("Eppie, the foundling child, toddles to the weaver’s hearth with golden curls"),
        Point("Dunstan falls into the quarry"),
    )
    digest, part = only(PartKind.THEME, Digest("A Book", theme=theme, points=points))
    words = "Eppie toddles to his hearth, her curls golden"
    marked = THEME.mark(Occasion(digest, part), Attempt(words=words))
    assert [idea.found for idea in marked.ideas] == [False, True]
    alone, part = only(PartKind.THEME, Digest("A Book", theme=theme))
    marked = THEME.mark(Occasion(alone, part), Attempt(words=words))
    assert [idea.found for idea in marked.ideas] == [False, False]
