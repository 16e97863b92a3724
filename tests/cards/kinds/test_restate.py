"""The kind `restate`: its cue, its marking."""

import pytest

from cards.answers import Grade
from cards.digest import Commitment, Digest, Point
from cards.kinds.base import Attempt, Occasion
from cards.kinds.restate import RESTATE
from cards.parts import PartKind
from tests.cards.digests import commitment, kept, only


def grade(text, attempt):
    """Return the grade an attempt at a commitment earns."""
    digest, part = commitment(text)
    return RESTATE.mark(Occasion(digest, part), Attempt(words=attempt)).grade


@pytest.mark.parametrize(
    ("text", "attempt", "expected"),
    [
        ("Write to my sister twice a month", "Write to my sister twice a month", Grade.VIVID),
        ("Write to my sister twice a month", "Write to my sister 2 times a month", Grade.VIVID),
        ("Write to my sister twice a month", "Each month I'll write 2 letters", Grade.VIVID),
        ("Read a psalm aloud before breakfast", "I read some psalm before breakfast", Grade.CLEAR),
        ("Write to my sister twice a month", "Write to my sister every month", Grade.HAZY),
        ("Write to my sister twice a month", "Write to my sister three times a month", Grade.HAZY),
        ("Write to my sister twice a month", "Something about my family", Grade.BLANK),
        ("Write to my sister twice a month", "", Grade.BLANK),
        ("Praise four people a day", "Praise 3 people a day", Grade.HAZY),
        ("Praise four people a day", "praise 4 people each day", Grade.VIVID),
        ("Save 10,000 pounds by December", "save 10000 pounds by December", Grade.VIVID),
        ("Save 10,000 pounds by December", "save ten thousand pounds by december", Grade.VIVID),
        ("Save 10,000 pounds by December", "save 1,000 pounds by December", Grade.HAZY),
        ("Walk one hour a day", "Walk an hour each day", Grade.VIVID),
        ("Walk one hour a day", "Walk 2 hours a day", Grade.HAZY),
        ("Interrupt no one at breakfast", "Never interrupt anyone at breakfast", Grade.VIVID),
        ("Interrupt no one at breakfast", "Interrupt everyone at breakfast", Grade.HAZY),
        ("Read aloud at table", "Do not read aloud at table", Grade.HAZY),
        ("Do it.", "Do it", Grade.VIVID),
        ("Do it.", "Leave things", Grade.BLANK),
    ],
)
def test_the_act_must_be_there_and_its_numbers_exactly(text, attempt, expected):
    """Without the act blank, with a number wrong hazy, else clear, vivid when all of it came."""
    assert grade(text, attempt) is expected


def test_the_reason_names_the_numbers_that_were_missed():
    """The reader is told what the commitment says."""
    digest, part = commitment("Write to my sister twice a month")
    reason = RESTATE.mark(Occasion(digest, part), Attempt(words="Write to my sister")).reason
    assert reason.endswith("it says 2.")


def test_the_cue_gives_the_situation_and_which_of_how_many():
    """A situation in the commitment's own words, the book, and which of its commitments."""
    digest = kept()
    first, second, _ = digest.held(PartKind.COMMITMENT)
    assert RESTATE.cue(Occasion(digest, first)).words.splitlines() == [
        "Concerning my sister",
        "Commitment 1 of 3 of Pride and Prejudice, Jane Austen",
    ]
    assert RESTATE.cue(Occasion(digest, second)).words.splitlines() == [
        "When I catch myself ridiculing a stranger, …",
        "Commitment 2 of 3 of Pride and Prejudice, Jane Austen",
    ]


def test_words_of_the_cue_need_not_be_said_again():
    """What the cue already gave is not asked for."""
    digest = kept()
    part = digest.held(PartKind.COMMITMENT)[1]
    marked = RESTATE.mark(Occasion(digest, part), Attempt(words="name 3 merits of theirs aloud"))
    assert marked.grade is Grade.VIVID


def sourced(point):
    """Return a digest whose commitment comes from a point, and the commitment."""
    text = "Praise a rival in public (point 1)"
    return only(
        PartKind.COMMITMENT,
        Digest("A Book", points=(Point(point),), commitments=(Commitment(text),)),
    )


def test_the_point_it_came_from_is_a_cue():
    """A commitment that names its point is cued by it, and shows it."""
    digest, part = sourced("Vanity hears itself alone")
    assert "From the point: Vanity hears itself alone" in RESTATE.cue(Occasion(digest, part)).words
    assert RESTATE.shows(Occasion(digest, part)) == {part.id, digest.held(PartKind.POINT)[0].id}


@pytest.mark.parametrize("point", ["To praise is to see", "Seven kinds of vanity"])
def test_a_point_that_would_give_it_away_is_no_cue(point):
    """A point with a word of the act, or with a number, is not shown."""
    digest, part = sourced(point)
    assert point not in RESTATE.cue(Occasion(digest, part)).words
    assert RESTATE.shows(Occasion(digest, part)) == {part.id}


def test_a_commitment_that_can_hurt_carries_its_caution_on_both_pages():
    """The caution stands wherever the commitment is shown."""
    digest, part = commitment("Stop taking my medication on Sundays")
    caution = RESTATE.cue(Occasion(digest, part)).caution
    assert "doctor" in caution
    assert RESTATE.answer(Occasion(digest, part)).caution == caution
