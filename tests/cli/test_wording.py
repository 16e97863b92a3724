"""`catchword wording`: what it prints, and what it refuses."""

from dataclasses import replace

import pytest


def test_json_has_exactly_the_documented_keys(terminal):
    """`wording --json` prints the six keys, and a measure its seven, in the README's order."""
    shown = terminal.json(
        "wording", "On the first Saturday of each month write to two friends", "--on", "2026-03-04"
    )
    assert list(shown) == ["concrete", "specific", "measurable", "measure", "cue", "advice"]
    assert shown["measure"] == {
        "times": 2,
        "period": "month",
        "every": 1,
        "on": ["1SA"],
        "periods": None,
        "deadline": None,
        "minutes": None,
    }
    assert list(shown["measure"]) == [
        "times",
        "period",
        "every",
        "on",
        "periods",
        "deadline",
        "minutes",
    ]


def test_given_a_day_no_library_is_opened(terminal):
    """With `--on` the command founds no library; without it the reader's day is asked for."""
    elsewhere = replace(terminal, home=terminal.home.parent / "elsewhere")
    elsewhere.json("wording", "Call my sister by Friday.", "--on", "2026-03-04")
    assert not elsewhere.home.exists()
    assert elsewhere.json("wording", "Call my sister.")["measure"] is None
    assert elsewhere.home.exists()


def test_the_page_says_what_is_missing_and_offers_a_rewording(terminal):
    """Without `--json`: each property, the sentence on what is missing, and a rewording."""
    shown = terminal.run("wording", "Call my mother more often", "--on", "2026-03-04").output
    assert "concrete: yes" in shown
    assert "measurable: not yet" in shown
    assert "“More” has no number" in shown
    assert "I will call my mother more often" in " ".join(shown.split())


def test_a_good_commitment_is_left_alone(terminal):
    """With nothing missing the page shows the measure in words, and that nothing is to mend."""
    said = "Each Sunday until Easter I will read to Hanne for half an hour."
    shown = terminal.run("wording", said, "--on", "2026-03-04").output
    assert "measure: once a week, on Sunday, 30 minutes each time, until 5 April 2026" in shown
    assert "There is nothing to mend" in shown


def test_what_touches_health_carries_its_caution(terminal):
    """The caution stands in the advice, whatever else is said."""
    shown = terminal.json("wording", "Halve the dose of my pills.", "--on", "2026-03-04")
    assert "Talk to a doctor" in shown["advice"][-1]


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("", "--on", "2026-03-04"), "no words"),
        (("Read.", "--on", "4 March"), "is not a date"),
        (("Read.", "--on", "20260304"), "is not a date"),
        (("x" * 20_001, "--on", "2026-03-04"), "at most 20000"),
    ],
)
def test_what_cannot_be_checked_is_refused(terminal, words, said):
    """One line and exit code 3."""
    refused = terminal.run("wording", *words)
    assert refused.exit_code == 3
    assert said in refused.stderr
    assert refused.stderr.count("\n") == 1
