"""The kind `complete`: which words are left out, and what is said of those given.

The limits of its grades are checked in `tests/reference/test_cloze.py`.
"""

import pytest

from cards.answers import Grade
from cards.digest import Digest, Quotation
from cards.kinds.base import Asked, Attempt, Occasion, place_of
from cards.kinds.complete import COMPLETE
from cards.kinds.opposites import opposed
from cards.parts import PartKind
from tests.cards.digests import kept, only

TRUTH = (
    "It is a truth universally acknowledged, that a single man in possession of a good fortune, "
    "must be in want of a wife."
)


def occasion(
    text: str = TRUTH, asked: int = 0, *, held: bool = False, title: str = "A Book"
) -> Occasion:
    """Return one asking of a quotation."""
    digest, part = only(PartKind.QUOTATION, Digest(title, quotations=(Quotation(text, "p. 1"),)))
    return Occasion(digest, part, asked, held)


@pytest.mark.parametrize(
    ("text", "items"),
    [
        ("Reader, I married him at last", 1),
        ("Reader, I married him quietly", 0),
        ("To be or not to be, that is", 0),
        ("Never, never, never, never, never, never", 0),
    ],
)
def test_six_words_and_one_that_can_be_left_out_make_an_item(text, items):
    """One that carries an idea and stands once."""
    digest = kept(Digest("A Book", quotations=(Quotation(text),)))
    assert len(list(COMPLETE.sources(digest))) == items


def test_other_words_are_left_out_the_next_time():
    """And more of them the better it is known."""
    left_out = [COMPLETE.answer(occasion(asked=asked)).blanks for asked in range(6)]
    assert [len(words) for words in left_out] == [3, 3, 4, 4, 7, 7]
    assert left_out[0] != left_out[1]


def test_the_cue_shows_the_book_and_the_words_around_the_blanks():
    """In pieces, one more than there are blanks."""
    asked = occasion()
    cue, answer = COMPLETE.cue(asked), COMPLETE.answer(asked)
    assert cue.words == "A Book"
    assert cue.asked == (Asked.BLANKS,)
    assert len(cue.pieces) == len(answer.blanks) + 1
    assert answer.words == TRUTH
    assert (answer.locator, answer.page) == ("p. 1", 1)


@pytest.mark.parametrize("asked", range(8))
def test_a_word_of_the_title_is_not_left_out(asked):
    """The title is shown."""
    blanks = COMPLETE.answer(occasion(title="Truths and Fortunes", asked=asked)).blanks
    assert {"truth", "fortune"}.isdisjoint(blanks)


def test_half_of_a_hyphened_word_is_not_left_out():
    """A word is left out whole or not at all."""
    text = "The well-read, half-asleep, ill-tempered tutor was often out of them all"
    left_out = {blank for n in range(9) for blank in COMPLETE.answer(occasion(text, n)).blanks}
    assert left_out <= {"tutor", "often"}


def test_once_held_it_is_asked_by_heart_from_its_first_words():
    """Three words begin it; whoever repeats them or goes on from there is right."""
    asked = occasion(held=True, asked=6)
    cue = COMPLETE.cue(asked)
    assert cue.words == "“It is a …”\nA Book"
    assert cue.asked == (Asked.WORDS,)
    assert COMPLETE.answer(asked).blanks == ()
    for words in (TRUTH, TRUTH.removeprefix("It is a "), TRUTH.upper().replace(",", " —")):
        marked = COMPLETE.mark(asked, Attempt(words=words))
        assert marked.grade is Grade.VIVID
        assert marked.reason == "Word for word."


@pytest.mark.parametrize(
    "text",
    [
        " ".join(f"word{number}" for number in range(61)),
        "Truth, fortune, wife: truth, fortune, wife, and truth, fortune, wife of mine",
    ],
    ids=["too long", "its beginning tells the rest"],
)
def test_what_is_too_long_or_told_by_its_beginning_is_not_asked_by_heart(text):
    """It keeps its blanks."""
    assert COMPLETE.cue(occasion(text, 6, held=True)).asked == (Asked.BLANKS,)


def test_the_words_left_out_are_marked_found_or_missed():
    """In the quotation itself; a slip in a long word is let pass."""
    asked = occasion()
    right = COMPLETE.answer(asked).blanks
    marked = COMPLETE.mark(asked, Attempt(blanks=("zebra", *right[1:])))
    assert [TRUTH[s.start : s.end] for s in marked.answer_spans] == list(right)
    assert [s.hit for s in marked.answer_spans] == [False, True, True]
    assert marked.reason == "2 of the 3 words left out are right."


@pytest.mark.parametrize("given", [(), ("",), ("", "  ", "")])
def test_blanks_left_empty_are_blank(given):
    """Nothing was written."""
    assert COMPLETE.mark(occasion(), Attempt(blanks=given)).grade is Grade.BLANK


def test_more_words_than_blanks_count_for_nothing():
    """Doors refuse them; marking does not break on them."""
    asked = occasion()
    blanks = (*COMPLETE.answer(asked).blanks, "and", "more")
    assert COMPLETE.mark(asked, Attempt(blanks=blanks)).grade is Grade.VIVID


def test_the_sense_in_other_words_is_hazy_and_said_to_be_so():
    """Half the content words, but not the wording."""
    words = "Everybody acknowledges universally: a man of good fortune, if single, wants a wife."
    marked = COMPLETE.mark(occasion(held=True), Attempt(words=words))
    assert marked.grade is Grade.HAZY
    assert marked.reason.startswith("Sense, not words: ")


def test_the_words_shown_given_back_alone_are_no_sense():
    """Whoever only repeats how it begins has recalled nothing."""
    manners = "Manners makyth men, as courtesy and patience do"
    marked = COMPLETE.mark(occasion(manners, held=True), Attempt(words="Manners makyth men"))
    assert marked.grade is Grade.BLANK


CONTRARY = "Those who never doubt their own judgement are not to be trusted with the lives of men."


@pytest.mark.parametrize(
    "words",
    [
        CONTRARY.replace("are not to", "are to"),
        CONTRARY.replace("never doubt", "often doubt"),
        CONTRARY.replace("their own", "not their own"),
        CONTRARY.replace("are not to", "aren’t to").replace("never", "always"),
        CONTRARY.replace("lives", "deaths"),
        CONTRARY.replace("trusted", "mistrusted"),
    ],
)
def test_a_recital_turned_round_is_no_better_than_hazy(words):
    """One word in sixteen would be clear; but it says the opposite."""
    marked = COMPLETE.mark(occasion(CONTRARY, held=True), Attempt(words=words))
    assert marked.grade is Grade.HAZY
    assert "turned round" in marked.reason


def test_a_negation_left_out_and_missed_is_no_better_than_hazy():
    """Nine right of ten would be clear."""
    text = " ".join(f"syllable{n} gem{n}" for n in "abcdefghijklmn") + " never ends quite here"
    for asked in range(4, 40):
        each = occasion(text, asked)
        right = COMPLETE.answer(each).blanks
        if "never" in right:
            break
    given = tuple("always" if word == "never" else word for word in right)
    assert len(right) == 10
    assert COMPLETE.mark(each, Attempt(blanks=given)).grade is Grade.HAZY


def test_it_asks_the_quotation_and_shows_its_place():
    """So it is never asked beside what shows the quotation."""
    asked = occasion()
    assert COMPLETE.asks(asked) == {asked.part.id}
    assert COMPLETE.shows(asked) == {asked.part.id, place_of(asked.part)}
    assert COMPLETE.secret(asked) == TRUTH


@pytest.mark.parametrize(
    ("missed", "put_in", "turned"),
    [
        ({"loved"}, {"hated"}, True),
        ({"happy"}, {"unhappy"}, True),
        ({"dishonest"}, {"honest"}, True),
        ({"dont"}, set(), True),
        (set(), {"never"}, True),
        ({"fortune"}, {"luck"}, False),
        ({"fortune"}, set(), False),
        ({"virtue"}, {"vices"}, True),
    ],
)
def test_contraries_negations_and_negative_prefixes_turn_the_sense(missed, put_in, turned):
    """Whichever side has them; another word alone does not."""
    assert opposed(missed, put_in) is turned
    assert opposed(put_in, missed) is turned
