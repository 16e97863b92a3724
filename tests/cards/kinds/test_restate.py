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
        ("Write at 7 a.m.", "Write at 7 p.m.", Grade.HAZY),
        ("Cook at home instead of eating out", "Eat out instead of cooking at home", Grade.HAZY),
        ("Go over each day’s verses aloud", "Look over each day’s verses aloud", Grade.VIVID),
        ("Call my mother every week", "never ever phone my mum, once a week", Grade.HAZY),
        ("Praise four people a day", "stop complimenting 4 people a day", Grade.HAZY),
        ("Praise four people a day", "compliment 4 people a day, never stop", Grade.VIVID),
        ("Read a psalm in quiet each day", "Each day a psalm, not aloud but read", Grade.CLEAR),
        ("Read a psalm in quiet each day", "Do not read a psalm in quiet each day", Grade.HAZY),
        ("Before I judge a man, hear his story", "judge a man before I hear his story", Grade.HAZY),
        ("Before I judge a man, hear his story", "hear a story after I judge the man", Grade.HAZY),
        (
            "Before I judge a man, hear his story",
            "hear his story, and after that judge",
            Grade.VIVID,
        ),
        ("Wash the cups after supper", "wash the cups before supper", Grade.HAZY),
        ("Wash the cups after supper", "after supper, wash the cups", Grade.VIVID),
        ("Write at 7 a.m.", "Write at seven", Grade.VIVID),
        ("Read aloud at table", "Do not read aloud at table", Grade.HAZY),
        ("Do it.", "Do it", Grade.VIVID),
        ("Do it.", "Leave things", Grade.BLANK),
    ],
)
def test_the_act_must_be_there_and_its_numbers_exactly(text, attempt, expected):
    """Without the act blank, with a number wrong hazy, else clear, vivid when all of it came."""
    assert grade(text, attempt) is expected


@pytest.mark.parametrize(
    ("text", "attempt", "expected"),
    [
        (
            "Read ten pages before bed every day",
            "read 10 pages daily before going to bed",
            Grade.VIVID,
        ),
        ("Read ten pages before bed every day", "read 10 pages every week before bed", Grade.HAZY),
        ("Read ten pages before bed every day", "read 10 pages each night before bed", Grade.VIVID),
        (
            "Finish the letter by 3 December",
            "have the letter finished by December 3rd",
            Grade.VIVID,
        ),
        (
            "Finish the letter by 3 December",
            "finish the letter by the third of December",
            Grade.VIVID,
        ),
        ("Finish the letter by 3 December", "finish the letter by 3/12", Grade.VIVID),
        ("Finish the letter by 3 December", "finish the letter by 13 December", Grade.HAZY),
        ("Finish the letter by 3 December", "finish the letter", Grade.HAZY),
        (
            "Call my brother twice a week until Easter",
            "phone my brother 2x per week till Easter",
            Grade.VIVID,
        ),
        (
            "Call my brother twice a week until Easter",
            "call my brother twice a month until Easter",
            Grade.HAZY,
        ),
        (
            "Call my brother twice a week until Easter",
            "call my brother two times weekly up to Easter",
            Grade.VIVID,
        ),
        (
            "Call my brother twice a week until Easter",
            "never call my brother more than twice a week until Easter",
            Grade.HAZY,
        ),
        (
            "Do not look at my phone before noon on Sundays",
            "leave the phone alone until midday every Sunday",
            Grade.CLEAR,
        ),
        (
            "Do not look at my phone before noon on Sundays",
            "look at my phone before noon on Sundays",
            Grade.HAZY,
        ),
        (
            "Walk 5 km every Saturday for three months",
            "on Saturdays walk five kilometres, for a quarter of a year",
            Grade.VIVID,
        ),
        (
            "Walk 5 km every Saturday for three months",
            "walk 5 miles every Saturday for three months",
            Grade.HAZY,
        ),
        ("Walk 5 km every Saturday for three months", "walk 5 km every Saturday", Grade.HAZY),
        (
            "Walk 5 km every Saturday for three months",
            "run 5 km every Saturday for three months",
            Grade.BLANK,
        ),
        (
            "Give ten per cent of my wages to the hospital each month",
            "give 10 pounds to the hospital every month",
            Grade.HAZY,
        ),
        (
            "Give ten per cent of my wages to the hospital each month",
            "take ten per cent of the wages from the hospital each month",
            Grade.HAZY,
        ),
        (
            "When someone criticises me, I will ask one question before I answer.",
            "before I reply to criticism, ask one question first",
            Grade.VIVID,
        ),
        (
            "When someone criticises me, I will ask one question before I answer.",
            "ask a question",
            Grade.CLEAR,
        ),
        (
            "When someone criticises me, I will ask one question before I answer.",
            "answer at once",
            Grade.BLANK,
        ),
        (
            "Meditate for 20 minutes at 6:30 every morning",
            "every morning at half past six, 20 minutes of meditation",
            Grade.VIVID,
        ),
        (
            "Meditate for 20 minutes at 6:30 every morning",
            "meditate twenty minutes every morning at 6",
            Grade.HAZY,
        ),
        (
            "Meditate for 20 minutes at 6:30 every morning",
            "meditate a third of an hour each morning at 6.30 am",
            Grade.HAZY,
        ),
        (
            "Save £50 a month until August 2027",
            "put by 50 pounds monthly until Aug. 2027",
            Grade.VIVID,
        ),
        (
            "Save £50 a month until August 2027",
            "save fifty pounds every month until August 2026",
            Grade.HAZY,
        ),
        ("Learn one poem by heart every fortnight", "every two weeks memorise a poem", Grade.VIVID),
        ("Learn one poem by heart every fortnight", "learn a poem by heart each month", Grade.HAZY),
        (
            "Learn one poem by heart every fortnight",
            "learn two poems by heart every fortnight",
            Grade.HAZY,
        ),
        (
            "Visit my grandmother on the first Sunday of the month",
            "see gran the 1st Sunday every month",
            Grade.VIVID,
        ),
        (
            "Visit my grandmother on the first Sunday of the month",
            "visit my grandmother on the last Sunday of the month",
            Grade.HAZY,
        ),
        (
            "Visit my grandmother on the first Sunday of the month",
            "visit my grandmother on Sundays",
            Grade.HAZY,
        ),
        (
            "Thank three people by name each working day",
            "every weekday thank 3 people, using their names",
            Grade.VIVID,
        ),
        (
            "Thank three people by name each working day",
            "Mon-Fri thank three people by name",
            Grade.VIVID,
        ),
        (
            "Thank three people by name each working day",
            "thank three people by name each day",
            Grade.HAZY,
        ),
        (
            "Write a page in my diary every evening for 100 days",
            "write in my diary every evening",
            Grade.HAZY,
        ),
        (
            "Apologise to Tom in person before the end of May",
            "by May 31st, apologise to Tom in person",
            Grade.VIVID,
        ),
        (
            "Apologise to Tom in person before the end of May",
            "apologise to Tom by letter before the end of May",
            Grade.CLEAR,
        ),
        ("Apologise to Tom in person before the end of May", "Tom", Grade.BLANK),
    ],
)
def test_what_can_be_measured_must_match_in_any_words(text, attempt, expected):
    """Numbers, units, cadences, days, hours and dates exactly, however they are written.

    Graded by the authors by the rubric of `tests/corpus_of_answers/`.
    """
    assert grade(text, attempt) is expected


@pytest.mark.parametrize(
    ("attempt", "reason"),
    [
        ("Something about money", "What you wrote does not hold the act you meant to do."),
        (
            "Read a psalm aloud to the children every week until Easter",
            "The act came back, but not how often.",
        ),
        (
            "Read a psalm aloud to the children on Sundays at Easter for 3 weeks",
            "The act came back, but not how much or how many nor how often nor on which days.",
        ),
        ("Do not read a psalm aloud every day until Easter", "look at the “not”."),
        ("Read a psalm aloud every day until Easter", "but not when or where you do it"),
        ("Before breakfast, every day until Easter: psalms, read aloud", "All of it came back."),
    ],
)
def test_the_reason_names_the_slots_that_are_missing(attempt, reason):
    """What is wrong of what can be measured, else the slots that did not come back."""
    text = "Read a psalm aloud before breakfast every day until Easter"
    digest, part = commitment(text)
    assert reason in RESTATE.mark(Occasion(digest, part), Attempt(words=attempt)).reason


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
