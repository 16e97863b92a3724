"""Commitments of different books that collide or repeat."""

from datetime import date

import pytest

from cards.commitments import Act, Measure, Period
from cards.yearly import Likeness, review_of
from tests.cards.yearly.lives import facts

_LAST = date(2026, 2, 1)
_DAILY = Measure(1, Period.DAY)


def _found(*known) -> list[tuple[str, str, str]]:
    review = review_of(2026, _LAST, known)
    return [(pair.likeness.value, pair.one.text, pair.other.text) for pair in review.pairs]


@pytest.mark.parametrize(
    ("one", "other", "likeness"),
    [
        ("Walk for 30 minutes each morning", "I will take a 20-minute walk every day", "repeats"),
        ("Write to my sister twice a month", "I will write to my sister on Sundays", "repeats"),
        ("Read the news each morning", "Never read the news in the morning", "collides"),
        (
            "When I am angry, I will wait one day before I answer a letter",
            "Answer every letter on the day it comes",
            "collides",
        ),
        ("Call my mother every Sunday", "On Sundays I will ring my mother", "repeats"),
        ("I will go to bed by 10 p.m. on weekdays", "Go to bed at ten every weekday", "repeats"),
        (
            "When the tea is poured, I will ask Hanne one question.",
            "When the tea is poured, never ask Hanne one question about her day.",
            "collides",
        ),
        ("I will read 20 pages aloud to my mother", "Read Book IX aloud once a year", None),
        ("Learn the first 26 lines by heart and say them", "Read Book IX aloud in May", None),
        ("Write ten things that went well", "Before any review I will write 100 words", None),
        ("Write to my sister twice a month", "Write to the council about the drains", None),
        ("Read one poem a day", "Read one chapter of Darwin every week", None),
        ("Do not answer in anger", "Answer the letters on my desk by Friday", None),
        ("Save 100 pounds a month", "Give 100 pounds a month away", None),
        ("Read one poem aloud every evening", "Walk to the river every evening", None),
        ("Keep a diary every night", "Plant one apple tree by April", None),
        ("Rise at 6 a.m. every day", "Pray at 6 a.m. every day", "same hour"),
        ("Rise at 6 a.m. every day", "Dine at 6 p.m. every day", None),
    ],
)
def test_two_meet_as_a_reader_would_say(one: str, other: str, likeness: str | None) -> None:
    """Labelled pairs meet, or do not, as their author says (authors’ labels, no source)."""
    found = _found(
        facts(one, "Walden", measure=_DAILY, last=_LAST),
        facts(other, "Emma", measure=_DAILY, last=_LAST),
    )
    assert [each[0] for each in found] == ([] if likeness is None else [likeness])


def test_two_of_one_book_are_no_pair() -> None:
    """What one book asks twice is the digest's own matter."""
    assert not _found(
        facts("Walk for 30 minutes each morning", last=_LAST),
        facts("I will take a 20-minute walk every day", last=_LAST),
    )


def test_what_was_released_meets_nothing() -> None:
    """Only what is still asked can collide."""
    assert not _found(
        facts(
            "Read the news each morning",
            "Walden",
            decisions=((Act.RELEASE, date(2026, 1, 20), {"words": "It made me sour"}),),
            last=_LAST,
        ),
        facts("Never read the news in the morning", "Emma", last=_LAST),
    )


def test_what_collides_stands_before_what_repeats() -> None:
    """What is to be settled first is told first."""
    kinds = [
        each[0]
        for each in _found(
            facts("Walk for 30 minutes each morning", "Walden", last=_LAST),
            facts("I will take a 20-minute walk every day", "Emma", last=_LAST),
            facts("Read the news each morning", "Ivanhoe", last=_LAST),
            facts("Never read the news in the morning", "Evelina", last=_LAST),
        )
    ]
    assert kinds == [Likeness.COLLIDES, Likeness.REPEATS]


def test_minutes_promised_together_are_told_from_an_hour_on() -> None:
    """Forty minutes to one book and thirty to another are more than an hour of every day."""
    both = [
        facts("Walk", "Walden", measure=Measure(1, Period.DAY, minutes=40), last=_LAST),
        facts("Draw", "Emma", measure=Measure(7, Period.WEEK, minutes=30), last=_LAST),
    ]
    review = review_of(2026, _LAST, both)
    assert (review.minutes, [each.text for each in review.timed]) == (70, ["Draw", "Walk"])
    alone = review_of(2026, _LAST, both[:1])
    assert (alone.minutes, alone.timed) == (40, ())


def test_many_alike_are_told_within_bounds() -> None:
    """A hundred books that ask one thing are told as twenty pairs, and take no quarter hour."""
    many = [facts(f"Walk {n} miles every day", f"Book {n}", last=_LAST) for n in range(1, 101)]
    many += [facts("Walk a mile every day", f"Mile {n}", last=_LAST) for n in range(30)]
    assert len(_found(*many[-30:])) == 20
    assert len(_found(*many)) <= 20
