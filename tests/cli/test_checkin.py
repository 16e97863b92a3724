"""Checking in, listing commitments and deciding about them, in the terminal."""

import os
import sys
from datetime import date, timedelta

import pexpect
import pytest

from cards.commitments import Measure, Period
from cards.errors import Invalid
from service.cli.measures import measure_read
from tests.cli.conftest import DIGEST

SILENT = DIGEST.replace(
    "- When the tea is poured, I will ask Hanne one question.",
    "- Every evening I will ask Hanne one question.\n"
    "- Once a week I will take half the dose of my pills.",
)
OLD = DIGEST.replace("George Eliot\n", "George Eliot\n\nFinished: 4 May 2011\n").replace(
    "When the tea is poured, I will ask Hanne one question.",
    "For two weeks I will ask Hanne one question every evening.",
)


def only(terminal):
    """Return the commitments as they are listed."""
    return terminal.json("commitments")["commitments"]


def test_nothing_asked_says_so(terminal):
    """An empty library wants no word and lists nothing."""
    assert "Nothing wants a word today." in terminal.run("checkin").stdout
    assert "the library asks nothing" in terminal.run("commitments").stdout


def test_one_key_checks_in(terminal, written):
    """It is shown with its book and how it stands; what is done for the day is asked no more."""
    terminal.json("add", written("one.md", SILENT))
    result = terminal.run("checkin", typed="n\nAt supper.\nk\n\n")
    assert result.exit_code == 0, result.output
    assert "Every evening I will ask Hanne one question." in result.stdout
    assert "Silas Marner, George Eliot" in result.stdout
    assert "0 of 1 today" in result.stdout
    assert "Talk to a doctor" in " ".join(result.stdout.split())
    assert [each["progress"] for each in only(terminal)] == ["1 of 1 today", "0 of 1 this week"]
    assert "Every evening" not in terminal.run("checkin", typed="s\n").stdout


def test_stopping_keeps_what_was_said(terminal, written):
    """`s`, and the end of input, stop; an unknown key is told the keys; a count is kept."""
    terminal.json("add", written("one.md", SILENT))
    stopped = terminal.run("checkin", typed="x\nc\n2\nk\ns\n").stdout
    assert "Choose k, p or m" in stopped
    assert "Stopped. What you said is kept." in stopped
    assert only(terminal)[0]["progress"].startswith("2 ")
    assert terminal.run("checkin", typed="").exit_code == 0


def test_one_line_reports_and_takes_back(terminal, written):
    """Words of the commitment, or of its book where it has one, name it; the id takes it back."""
    terminal.json("add", written("one.md", SILENT))
    kept = terminal.run("checkin", "hanne", "kept", "--note", "Late.", "--witness", "Hanne")
    assert kept.exit_code == 0, kept.output
    assert only(terminal)[0]["progress"] == "1 of 1 today"
    taken = kept.stdout.split("--take-back ")[1].split()[0]
    assert "Taken back: kept" in terminal.run("checkin", "--take-back", taken).stdout
    assert only(terminal)[0]["progress"] == "0 of 1 today"
    other = str(only(terminal)[1]["id"])
    assert terminal.run("checkin", other, "partly").exit_code == 0


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("silas", "kept"), 4, "Several commitments could be meant"),
        (("emma", "kept"), 4, "No commitment is called"),
        (("", "kept"), 4, "No commitment is called"),
        (("hanne", "kept", "--day", "2020-01-01"), 3, "The commitment was made on"),
        (("hanne", "missed", "--count", "2"), 3, "missed counts no deeds"),
        (("hanne", "kept", "--count", "1001"), 2, "1001"),
        (("hanne", "kept", "--note", "n" * 2_001), 3, "at most 2000"),
        (("hanne",), 2, "Say what came of it"),
        (("--note", "Late."), 2, "Say which commitment"),
        (("--take-back", "00000000-0000-0000-0000-000000000001"), 4, "check-in"),
    ],
)
def test_what_cannot_be_a_report_is_refused(terminal, written, words, code, said):
    """Ambiguous names are listed; what contradicts itself is said in one line."""
    terminal.json("add", written("one.md", SILENT))
    refused = terminal.run("checkin", *words)
    assert (refused.exit_code, said in refused.stderr) == (code, True), refused.output
    assert [each["progress"] for each in only(terminal)] == ["0 of 1 today", "0 of 1 this week"]


def test_commitments_are_listed_for_a_day(terminal, written):
    """By pace, with measure, rule and figures; the JSON has the documented keys."""
    terminal.json("add", written("one.md", SILENT))
    ahead = (date.today() + timedelta(days=40)).isoformat()  # noqa: DTZ011 - far from a turn of day
    shown = terminal.run("commitments", "--on", ahead).stdout
    assert "Stalled" in shown
    assert "Nothing was said about the last two weeks" in " ".join(shown.split())
    (first, second) = terminal.json("commitments", "--on", ahead)["commitments"]
    assert list(first) == "id digest title text pace rule said progress ends_on acts".split()
    assert (first["pace"], first["rule"]) == ("stalled", "two without")
    assert first["acts"] == ["reword", "halve", "pause", "release"]
    assert "halve" not in second["acts"], "it touches health"
    far = (date.today() + timedelta(days=400)).isoformat()  # noqa: DTZ011 - as above
    assert terminal.run("commitments", "--on", far).exit_code == 3


@pytest.mark.parametrize("width", [20, 40, 100])
def test_it_fits_any_window(terminal, written, width):
    """No line of the list is wider than the window."""
    terminal.json("add", written("one.md", SILENT))
    shown = terminal.run("commitments", width=width).stdout
    assert all(len(line) <= width for line in shown.splitlines())


def test_what_was_over_before_it_came_in_is_brought_up(terminal, written):
    """It is asked what came of it, with the offers as keys, and decided in the terminal."""
    terminal.json("add", written("one.md", OLD))
    (one,) = only(terminal)
    assert one["pace"] == "unjudged"
    result = terminal.run("checkin", typed="c\nk\n")
    assert "What came of it?" in result.stdout
    assert "c(lose), re(n)ew, re(w)ord, re(l)ease" in result.stdout
    assert only(terminal)[0]["pace"] == "done"
    assert "Nothing wants a word" in terminal.run("checkin").stdout


def test_a_decision_that_lacks_something_is_asked_again(terminal, written):
    """Without a reason nothing is released; Enter leaves it as it was."""
    terminal.json("add", written("one.md", OLD))
    result = terminal.run("checkin", typed="l\n\nl\nIt was another life.\n")
    assert "Say in a few words why you release it." in result.stdout
    assert only(terminal)[0]["pace"] == "released"


def test_decisions_are_taken_in_one_line(terminal, written):
    """A measure in words or JSON, a pause, a release; each is taken back by its id."""
    terminal.json("add", written("one.md", SILENT))
    measured = terminal.run("decide", "hanne", "measure", "--measure", "three times a week")
    assert measured.exit_code == 0, measured.output
    assert only(terminal)[0]["progress"] == "0 of 3 this week"
    given = '{"times": 2, "period": "month"}'
    assert terminal.run("decide", "hanne", "measure", "--measure", given).exit_code == 0
    assert only(terminal)[0]["progress"] == "0 of 2 this month"
    paused = terminal.run("decide", "hanne", "pause", "--words", "Away.")
    assert only(terminal)[0]["pace"] == "on course"
    assert {each["pace"] for each in only(terminal)} == {"on course", "paused"}
    taken = paused.stdout.split("--take-back ")[1].split()[0]
    assert terminal.run("decide", "--take-back", taken).exit_code == 0
    assert {each["pace"] for each in only(terminal)} == {"on course"}


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("hanne", "release"), 3, "why you release it"),
        (("hanne", "resume"), 3, "not paused"),
        (("hanne", "measure", "--measure", "more often"), 3, "No measure can be read"),
        (("hanne", "measure", "--measure", '{"period": "day", "every": 10000}'), 3, "10000"),
        (("pills", "halve"), 3, "talk to a professional"),
        (("hanne",), 2, "what is decided"),
        (("hanne", "forget"), 2, "forget"),
        (("silas", "pause"), 4, "Several commitments"),
    ],
)
def test_what_cannot_be_decided_is_refused(terminal, written, words, code, said):
    """One line, and the exit code the README names."""
    terminal.json("add", written("one.md", SILENT))
    refused = terminal.run("decide", *words)
    assert (refused.exit_code, said in refused.stderr) == (code, True), refused.output


ON = date(2026, 3, 1)


@pytest.mark.parametrize(
    ("typed", "read"),
    [
        ("three times a week", Measure(3, Period.WEEK)),
        ("every evening", Measure(1, Period.DAY)),
        (
            '{"times": 2, "period": "week", "on": ["MO", "TH"], "deadline": "2026-05-01"}',
            Measure(2, Period.WEEK, on=("MO", "TH"), deadline=date(2026, 5, 1)),
        ),
        ('{"period": "day", "minutes": null, "every": 2}', Measure(1, Period.DAY, 2)),
    ],
)
def test_a_measure_is_read_as_typed(typed, read):
    """Words, or the JSON that `wording --json` prints."""
    assert measure_read(typed, ON) == read


@pytest.mark.parametrize(
    "typed",
    [
        "",
        "more often",
        "{",
        "{" * 1_999,
        "x" * 2_001,
        "{}",
        '{"period": "fortnight"}',
        '{"period": []}',
        '{"period": "day", "times": true}',
        '{"period": "day", "times": 1.5}',
        '{"period": "week", "on": "MO"}',
        '{"period": "week", "on": [1]}',
        '{"period": "week", "deadline": "soon"}',
        '{"period": "week", "colour": 1}',
    ],
)
def test_what_is_no_measure_is_refused(typed):
    """In a sentence, never as a failure."""
    with pytest.raises(Invalid):
        measure_read(typed, ON)


def test_ctrl_c_loses_nothing(terminal, written):
    """An interrupt at the next commitment leaves the first check-in kept, in a real terminal."""
    terminal.json("add", written("one.md", SILENT))
    child = pexpect.spawn(
        sys.executable,
        ["-c", "from service.main import run; run()", "checkin"],
        env={**os.environ, "CATCHWORD_HOME": str(terminal.home), "TERM": "dumb", "NO_COLOR": "1"},
        encoding="utf-8",
        timeout=30,
    )
    child.expect("Was it kept")
    child.sendline("k")
    child.expect("Kept")
    child.expect("Was it kept")
    child.sendintr()
    child.expect("What you said is kept")
    child.expect(pexpect.EOF)
    child.close()
    assert child.exitstatus == 0
    assert only(terminal)[0]["progress"] == "1 of 1 today"
