"""The wording check against tables of labelled commitments, and what holds of any text."""

import time
from datetime import date
from pathlib import Path

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from cards.commitments import Period
from cards.commitments.measure import WEEKDAYS
from cards.wording import check
from cards.wording.line import MAX_READ
from tests.cards.wording.tables import Labelled, rows

HERE = Path(__file__).parent
DAY = date(2026, 3, 4)
CONVENTIONS = tuple(rows(HERE / "conventions.txt"))
READERS = tuple(f"readers_{n}" for n in ("one", "two", "three", "four", "five", "six", "seven"))
LEAST_SHARE = 0.9
"""Of held-out commitments that must be right, by each property: what the check is asked for."""


@pytest.mark.parametrize("row", CONVENTIONS, ids=lambda row: row.text[:50])
def test_every_convention_holds(row: Labelled) -> None:
    """Each commitment of the table of conventions has its three properties and its measure."""
    said = check(row.text, row.on)
    assert (said.concrete, said.specific, said.measurable, said.measure) == (
        row.concrete,
        row.specific,
        row.measurable,
        row.measure,
    )


@pytest.mark.parametrize("table", READERS)
@pytest.mark.parametrize("named", ["concrete", "specific", "measurable", "measure"])
def test_commitments_of_other_readers_are_read(table: str, named: str) -> None:
    """Of commitments labelled before the check was run on them, at least 90% are right."""
    labelled = list(rows(HERE / f"{table}.txt"))
    right = sum(getattr(check(row.text, row.on), named) == getattr(row, named) for row in labelled)
    assert len(labelled) >= 115
    assert right / len(labelled) >= LEAST_SHARE


def test_a_measure_is_there_exactly_when_it_is_measurable() -> None:
    """In every table, labels and check alike: measurable and a measure go together."""
    for name in ("conventions", *READERS):
        for row in rows(HERE / f"{name}.txt"):
            assert row.measurable is (row.measure is not None), row.text
            said = check(row.text, row.on)
            assert said.measurable is (said.measure is not None), row.text


@pytest.mark.parametrize(
    ("text", "cue"),
    [
        ("When the bell rings, I will put down the pen.", "When the bell rings"),
        ("I will put down the pen when the bell rings.", "when the bell rings"),
        ("After breakfast, read one page of Montaigne.", "After breakfast"),
        ("On Sunday evenings I will write to my son.", "On Sunday evenings"),
        (
            "Call my mother on the first Saturday of each month.",
            "on the first Saturday of each month",
        ),
        ("If my chief shouts, I will leave the room.", "If my chief shouts"),
        ("Every morning I will make the bed.", "Every morning"),
        ("Before I answer my son I will count to ten.", "Before I answer my son"),
        ("Pay two invoices by the 30th.", None),
        ("Own one misjudgement before the month is out.", None),
        ("Call my sister.", None),
    ],
)
def test_the_cue_is_the_readers_own_words(text: str, cue: str | None) -> None:
    """The situation is given as written; a day by which is none."""
    assert check(text, DAY).cue == cue


def test_the_advice_names_what_is_missing_and_why() -> None:
    """One sentence for each property that is missing, in order; none where nothing is."""
    said = check("Be more patient.", DAY).advice
    assert [line.partition(":")[0] for line in said[:3]] == [
        "It is not concrete yet",
        "It is not specific yet",
        "It is not measurable yet",
    ]
    assert check("Call my mother every Sunday.", DAY).advice == ()


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("Read more history at the library.", "More"),
        ("Write to my aunt often.", "Often"),
        ("Eat less bread at home.", "Less"),
    ],
)
def test_words_of_degree_without_a_number_are_flagged(text: str, word: str) -> None:
    """Words such as "more" and "often" measure nothing, and the advice says so."""
    assert any(line.startswith(f"“{word}” has no number") for line in check(text, DAY).advice)


def test_an_attempt_without_a_measure_is_no_act() -> None:
    """A mere "try" is an attempt; with a count and a cadence the act itself is taken."""
    assert check("I will try to write to Anna.", DAY).concrete is False
    assert check("I will try to write to Anna once a week.", DAY).concrete is True


@pytest.mark.parametrize(
    ("text", "rewording"),
    [
        (
            "Call my sister.",
            "When [a moment of your day], I will call my sister [how often, or by when].",
        ),
        (
            "Whenever Jonas shouts I will leave the room.",
            "When Jonas shouts, I will leave the room [how often, or by when].",
        ),
        (
            "I want to visit Athens.",
            "When [a moment of your day], I will visit Athens [how often, or by when].",
        ),
        (
            "I will leave the table if my uncle begins on politics.",
            "When my uncle begins on politics, I will leave the table [how often, or by when].",
        ),
        (
            "When I am tired, I will be patient.",
            "When I am tired, I will [what someone would see you do] [how often, or by when].",
        ),
    ],
)
def test_a_rewording_keeps_the_readers_words(text: str, rewording: str) -> None:
    """It is offered as "When ..., I will ...", with what is missing in brackets."""
    said = check(text, DAY)
    assert said.rewording == rewording
    assert f"You could word it so: “{rewording}”" in said.advice


@pytest.mark.parametrize(
    "text",
    [
        "Take both tablets with water.",
        "I will halve the dose of my sleeping pills.",
        "Walk until the pain stops.",
        "I should see the doctor about my knee.",
        "Do not stop the treatment.",
    ],
)
def test_nothing_that_touches_health_is_weakened(text: str) -> None:
    """Each word stands in the rewording, no amount is asked for, and the caution is said."""
    said = check(text, DAY)
    assert said.caution is not None
    assert said.advice[-1] == said.caution
    if said.rewording is not None:
        kept = said.rewording.casefold()
        dropped = {"i", "should", "will"}
        words = {word for word in text.casefold().rstrip(".").split() if word not in dropped}
        assert all(word in kept for word in words)
        assert "how often" not in kept


def test_health_that_is_no_act_gets_no_rewording() -> None:
    """Where the act would be left out, nothing is offered, but the caution is."""
    said = check("Be easier about my medicine.", DAY)
    assert said.rewording is None
    assert said.caution in said.advice


@pytest.mark.parametrize(
    ("text", "language"),
    [
        ("Ich werde jeden Abend eine Seite lesen.", "German"),
        ("J'appellerai ma mère chaque dimanche et je lui écrirai une lettre.", "French"),
        ("Voy a llamar a mi madre cada domingo por la noche.", "Spanish"),
        ("Ogni sera scriverò una riga nel diario.", "Italian"),
        ("Vou escrever uma carta por semana ao meu irmão, todas as noites.", "Portuguese"),
        ("Ik zal elke avond een bladzijde lezen met mijn dochter.", "Dutch"),
        ("每天晚上读一页书", "another language"),
        ("Каждый вечер читать одну страницу", "another language"),
    ],
)
def test_another_language_is_said_not_to_be_checked(text: str, language: str) -> None:
    """Nothing is judged, and the first sentence of the advice says why."""
    said = check(text, DAY)
    assert (said.concrete, said.specific, said.measurable, said.measure) == (None,) * 4
    assert language in said.advice[0]


def test_a_caution_is_carried_in_any_language() -> None:
    """What touches medicine in German carries its caution all the same."""
    said = check("Ich werde jeden Abend mein Medikament nehmen.", DAY)
    assert "Talk to a doctor" in said.advice[-1]


def test_no_english_commitment_is_taken_for_another_language() -> None:
    """Every commitment of every table is checked."""
    for name in ("conventions", *READERS):
        for row in rows(HERE / f"{name}.txt"):
            assert check(row.text, row.on).concrete is not None, row.text


_WORDS = st.sampled_from(
    """every each other second 3rd 31st two twice once a an the on by before until for within next
    last day week month quarter year fortnight Monday Sunday weekdays weekend June May Easter Lent
    tomorrow 2026-03-31 9999-12-31 0 00 1000000 9999 half hour minutes minute dozen hundred and ,
    . ; I will not never write Anna my letter letters people times
    when if of in from to end""".split()
)


@given(
    text=st.lists(_WORDS, max_size=14).map(" ".join) | st.text(max_size=200),
    on=st.dates(),
)
@example(text="By Easter call Anna.", on=date.max)
@example(text="Before tomorrow call Anna on Monday.", on=date.min)
@example(text="for 999999999 years every 31st of February", on=date(2000, 2, 29))
def test_any_words_give_a_well_formed_measure(text: str, on: date) -> None:
    """Whatever is written, whenever: no failure, and a measure check-ins can be counted by."""
    said = check(text, on)
    measure = said.measure
    if measure is None:
        return
    assert measure.times >= 1
    assert measure.every >= 1
    assert measure.periods is None or measure.periods >= 1
    assert measure.minutes is None or measure.minutes >= 1
    assert not (measure.periods is not None and measure.deadline is not None)
    assert all(day[-2:] in WEEKDAYS for day in measure.on)
    assert list(measure.on) == sorted(
        set(measure.on), key=lambda day: (WEEKDAYS.index(day[-2:]), int(day[:-2] or 0))
    )
    if measure.period is Period.ONCE:
        assert (measure.every, measure.on, measure.periods) == (1, (), None)


_HOSTILE = (
    "a ", "A ", "every ", "when ", "1 ", "monday and ", "by the end of ", "for 2 weeks ", "( ",
    ". ", ", ", "-", "i'll ", "not ", "and ", "twenty ", "one hundred and ", "the next ", "first ",
    "10:30 ", " ", "in the ", "try to ", "on ", "by ", "before I ", "’", "2026-", "half an ",
    "at 9 and ", "Tu/", "Sat and ", "by 1/2 ", "morning and ", "when i see every ", "on friday ",
    "each of my ", "to the ", "until my exam on ",
    "for the rest of the ", "every other ", "the first and ", "remember to ", "x" * 100,
)  # fmt: skip
_SLOWEST = 0.5
"""Seconds for a text of the greatest length; it takes a tenth of that, and a pattern that
backtracks would take minutes."""


@pytest.mark.parametrize("piece", _HOSTILE)
def test_hostile_text_takes_no_longer_than_its_length(piece: str) -> None:
    """Any piece repeated to the greatest length a commitment can have is read at once."""
    text = (piece * 20_000)[:20_000]
    check("Call Anna.", DAY)
    begun = time.process_time()
    check(text, DAY)
    assert time.process_time() - begun < _SLOWEST


def test_only_the_first_words_of_a_very_long_text_are_read() -> None:
    """What stands beyond the bound changes no judgement; the caution is of the whole."""
    filler = "and again " * (MAX_READ // 10)
    short = check(f"Call my mother {filler}", DAY)
    long = check(f"Call my mother {filler} every Sunday, and take the pills", DAY)
    assert (short.concrete, short.measure) == (long.concrete, long.measure)
    assert long.caution is not None
