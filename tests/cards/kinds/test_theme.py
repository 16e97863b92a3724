"""The kind `theme`: its cue, its marking."""

import pytest

from cards.answers import Grade
from cards.kinds.base import Attempt, Occasion
from cards.kinds.theme import THEME
from cards.parts import PartKind
from tests.cards.digests import THEME as TEXT
from tests.cards.digests import WHOLE, kept, theme

DIGEST = kept()
PART = DIGEST.held(PartKind.THEME)[0]


def mark(words):
    """Mark words against the theme of the example digest."""
    return THEME.mark(Occasion(DIGEST, PART), Attempt(words=words))


def test_the_cue_is_the_title_and_the_author():
    """The cue names the book and nothing of its theme."""
    cue = THEME.cue(Occasion(DIGEST, PART))
    assert cue.words == "Pride and Prejudice, by Jane Austen"
    assert cue.landmarks == ()


def test_a_book_without_an_author_is_cued_by_its_title():
    """Without an author nothing is invented."""
    digest, part = theme("Vanity blinds clever people")
    assert THEME.cue(Occasion(digest, part)).words == "A Book"


def test_the_whole_theme_is_vivid():
    """The digest's own words bring back every idea."""
    marked = mark(TEXT)
    assert marked.grade is Grade.VIVID
    assert all(idea.found for idea in marked.ideas)


def test_a_paraphrase_with_the_same_content_is_clear_or_better():
    """Other grammar and order, the same words of substance."""
    words = (
        "From the first evening a quick-witted woman and a proud man misjudged each other. Vanity "
        "had shaped the judgements of both, they learned. Humbled, they marry as equals"
    )
    assert mark(words).grade in {Grade.CLEAR, Grade.VIVID}


def test_half_a_theme_is_hazy():
    """The main idea with one of two others is two thirds or less."""
    digest, part = theme(
        "Whales swim north. Captains rage. Harpoons fly. Ropes tangle. Storms gather."
    )
    marked = THEME.mark(
        Occasion(digest, part), Attempt(words="The whales swim north, ropes tangle")
    )
    assert marked.grade is Grade.HAZY
    assert marked.reason.startswith("2 of 5 ideas came back, the main one among them.")


@pytest.mark.parametrize("words", ["", "  \n ", "I do not remember", "Something about love"])
def test_nothing_to_the_point_is_blank(words):
    """Silence and generalities bring nothing back."""
    assert mark(words).grade is Grade.BLANK


def test_the_limbs_of_a_sentence_share_its_weight():
    """A sentence of four limbs weighs no more than one of one: the main idea is two of three."""
    digest, part = theme(
        "Whales swim north. Old captains chase pale fish, young sailors mend torn ropes, tired "
        "cooks boil salt beef, and idle boys carve lucky bones."
    )
    marked = THEME.mark(Occasion(digest, part), Attempt(words="Whales swim north."))
    assert [idea.weight for idea in marked.ideas] == [2, 1, 1, 1, 1]
    assert marked.grade is Grade.HAZY


def test_a_theme_turned_round_is_no_better_than_hazy():
    """Comparing words alone cannot see a negation, so it is looked for."""
    digest, part = theme("Virtue is rewarded in the end. Patience conquers pride.")
    marked = THEME.mark(
        Occasion(digest, part),
        Attempt(words="Virtue is not rewarded in the end. Patience conquers pride."),
    )
    assert marked.grade is Grade.HAZY
    assert "turned round" in marked.reason


def test_what_matched_is_marked_in_both():
    """The words that both hold are marked in each, and the ideas they make up are found."""
    marked = mark("vanity shaped their judgement")
    words = "vanity shaped their judgement"
    assert [words[span.start : span.end] for span in marked.attempt_spans] == [
        "vanity shaped their judgement"
    ]
    assert [TEXT[span.start : span.end] for span in marked.answer_spans] == [
        "vanity has shaped that judgement"
    ]
    found = [TEXT[idea.start : idea.end] for idea in marked.ideas if idea.found]
    assert found == ["Each must learn how far vanity has shaped that judgement."]


def test_only_a_digest_with_a_theme_makes_the_item():
    """No theme, no item."""
    assert list(THEME.sources(DIGEST)) == [PART]
    assert list(THEME.sources(kept(type(WHOLE)("A Book", points=WHOLE.points)))) == []


def test_the_theme_asks_the_points_too_and_shows_itself():
    """The points are the stages of the theme, so what shows them gives it away."""
    points = {point.id for point in DIGEST.held(PartKind.POINT)}
    assert THEME.asks(Occasion(DIGEST, PART)) == {PART.id} | points
    assert THEME.shows(Occasion(DIGEST, PART)) == {PART.id}


IDEAS = "Whales swim north. Captains rage. Harpoons fly. Ropes tangle. Storms gather."


def ticked(words, *numbers):
    """Mark words against five ideas, those of some numbers ticked by the reader."""
    digest, part = theme(IDEAS)
    return THEME.mark(Occasion(digest, part), Attempt(words=words, ticked=frozenset(numbers)))


def test_the_ideas_are_the_stretches_of_the_theme_with_their_weight():
    """Each with its place; the main one, which is the first sentence, weighs double."""
    digest, part = theme(IDEAS)
    marked = THEME.mark(Occasion(digest, part), Attempt(words="whales swim north, ropes tangle"))
    assert [IDEAS[i.start : i.end] for i in marked.ideas][:2] == [
        "Whales swim north.",
        "Captains rage.",
    ]
    assert [idea.weight for idea in marked.ideas] == [2, 1, 1, 1, 1]
    assert [idea.found for idea in marked.ideas] == [True, False, False, True, False]


@pytest.mark.parametrize(
    ("numbers", "grade"),
    [
        ((1, 2, 3, 4, 5), Grade.VIVID),
        ((1, 2, 3), Grade.CLEAR),
        ((1, 2), Grade.HAZY),
        ((2, 3, 4, 5), Grade.BLANK),
        ((), Grade.BLANK),
        ((1, 99), Grade.BLANK),
    ],
)
def test_the_readers_ticks_take_the_place_of_what_was_found(numbers, grade):
    """The grade follows from them, by the same shares."""
    marked = ticked("whales swim north, captains rage, harpoons fly", *numbers)
    assert marked.grade is grade
    assert {n for n, idea in enumerate(marked.ideas, 1) if idea.found} == set(numbers) - {99}


def test_an_idea_taken_for_turned_round_can_be_ticked():
    """The reader says it was meant rightly; until then it is not found, and caps the grade."""
    words = IDEAS.replace("Ropes tangle", "Ropes never tangle")
    digest, part = theme(IDEAS)
    marked = THEME.mark(Occasion(digest, part), Attempt(words=words))
    assert marked.grade is Grade.HAZY
    assert [idea.turned for idea in marked.ideas] == [False, False, False, True, False]
    assert not marked.ideas[3].found
    assert "“Ropes tangle”" in marked.reason
    assert ticked(words, 1, 2, 3, 4, 5).grade is Grade.VIVID
    assert ticked(words, 1, 2, 3, 5).grade is Grade.HAZY


def test_ticking_one_idea_more_never_lowers_the_grade():
    """Ideas that came back in part still count in part."""
    words = "Whales swim north; captains; harpoons"
    grades = [ticked(words, *range(1, upto)).grade for upto in range(2, 7)]
    scale = list(Grade)
    assert [scale.index(g) for g in grades] == sorted(scale.index(g) for g in grades)
