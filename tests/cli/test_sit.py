"""A sitting in the terminal."""

import os
import sys

import pexpect
import pytest

from cards.kinds.base import Asked, Attempt, Cue, Landmark
from service.cli.attempts import placed

THEME = "A betrayed weaver hoards gold\na child takes its place\n\n"


def test_a_whole_sitting_by_typing(terminal, written):
    """Theme, commitment and place are asked, compared, graded, and nothing is left."""
    terminal.json("add", written("one.md"))
    typed = (
        THEME
        + "c\n\n"  # clear; go on
        + "ask Hanne one question\n\nv\n\n"  # vivid
        + "3\nc\n\n"  # the right gap
    )
    result = terminal.run("sit", typed=typed)
    assert result.exit_code == 0
    assert "That is all for today." in result.stdout
    assert result.stdout.count("Asked again on") == 3
    assert terminal.json("due") == {"items": []}


def test_what_came_back_blank_comes_round_again(terminal, written):
    """A blank is asked once more, before the points of its book are shown."""
    terminal.json("add", written("one.md"))
    typed = "\nb\n\n" + "ask Hanne one question\n\nc\n\n" + THEME + "h\n\n" + "3\nc\n\n"
    result = terminal.run("sit", typed=typed)
    assert "Once more before you stop today." in result.stdout
    assert result.stdout.count("Recall the theme") == 2
    assert "That is all for today." in result.stdout


def test_an_answer_is_taken_back(terminal, written):
    """After `t` the same item is asked as before."""
    terminal.json("add", written("one.md"))
    before = terminal.json("due")
    result = terminal.run("sit", typed=THEME + "v\nt\n")
    assert "Taken back" in result.stdout
    assert terminal.json("due") == before


def test_stopping_keeps_what_was_answered(terminal, written):
    """After `s`, or at the end of input, what was answered is kept."""
    terminal.json("add", written("one.md"))
    result = terminal.run("sit", typed=THEME + "c\ns\n")
    assert "What you answered is kept." in result.stdout
    assert [item["kind"] for item in terminal.json("due")["items"]] == ["restate", "place"]
    assert terminal.run("sit", typed="").exit_code == 0


@pytest.mark.parametrize("width", [40, 100])
def test_both_texts_are_shown_at_any_width(terminal, written, width):
    """What was said and what the digest says are printed beside or below each other, in full."""
    terminal.json("add", written("one.md"))
    result = terminal.run("sit", typed="gold\n\nh\ns\n", width=width)
    assert "What your digest says" in result.stdout
    assert all(len(line) <= width for line in result.stdout.splitlines() if ":" not in line)
    for word in ("betrayed", "weaver", "neighbours"):
        assert word in result.stdout


def test_ctrl_c_loses_nothing(terminal, written):
    """An interrupt at the next prompt leaves the answer kept, in a real terminal."""
    terminal.json("add", written("one.md"))
    environment = {
        **os.environ,
        "CATCHWORD_HOME": str(terminal.home),
        "TERM": "dumb",
        "NO_COLOR": "1",
    }
    child = pexpect.spawn(
        sys.executable,
        ["-c", "from service.main import run; run()", "sit"],
        env=environment,
        encoding="utf-8",
        timeout=30,
    )
    child.expect("an empty line ends it")
    child.sendline("a betrayed weaver")
    child.sendline("")
    child.expect("How did it come back")
    child.sendline("c")
    child.expect("Enter goes on")
    child.sendline("")
    child.expect("Say the commitment again")
    child.sendintr()
    child.expect("What you answered is kept")
    child.expect(pexpect.EOF)
    child.close()
    assert child.exitstatus == 0
    assert [item["kind"] for item in terminal.json("due")["items"]] == ["restate", "place"]


MARKS = (Landmark(1, "one"), Landmark(2, "two"))


@pytest.mark.parametrize(
    ("asked", "typed", "read"),
    [
        ((Asked.GAP, Asked.PAGE), "2", Attempt(gap=2)),
        ((Asked.GAP, Asked.PAGE), " p. 54 ", Attempt(page=54)),
        ((Asked.GAP, Asked.PAGE), "3", None),
        ((Asked.GAP,), "p 54", None),
        ((Asked.GAP,), "", Attempt()),
        ((Asked.PAGE,), "54", Attempt(page=54)),
        ((Asked.CHAPTER,), "ch 20", Attempt(chapter=20)),
        ((Asked.CHAPTER,), "20", Attempt(chapter=20)),
        ((Asked.CHAPTER,), "9999999", None),
        ((Asked.PAGE,), "about the middle", None),
    ],
)
def test_a_place_is_read_as_typed(asked, typed, read):
    """A place is a gap, a page or a chapter, each only where it is asked for."""
    assert placed(Cue("h", "w", "q", asked, MARKS), typed) == read
