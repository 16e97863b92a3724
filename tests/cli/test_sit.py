"""A sitting in the terminal."""

import os
import subprocess
import sys

import pexpect
import pytest

from cards.kinds.base import Asked, Attempt, Cue, KindName, Landmark
from service.cli.attempts import placed
from tests.cli.conftest import DIGEST


def kinds(terminal):
    """Return the kinds of what is asked, in order."""
    return [item["kind"] for item in terminal.json("due")["items"]]


def ask_only(monkeypatch, kind):
    """Compose a sitting of one kind alone, in the order of its items."""

    def only(waiting, seconds):
        waiting_ones = [*waiting.due, *waiting.unasked]
        ones = [each for each in waiting_ones if each.kept.item.kind is kind]
        return sorted(ones, key=lambda each: each.kept.item.number) if seconds > 0 else []

    monkeypatch.setattr("service.use_cases.sit.compose", only)
    monkeypatch.setattr("service.use_cases.sit.let_in", lambda unasked, *_: list(unasked))


def test_the_theme_is_recalled_in_words(terminal, written, monkeypatch):
    """Ideas are listed, ticked or not; numbers toggle them, and the suggestion follows."""
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, KindName.THEME)
    result = terminal.run("sit", typed="a betrayed weaver hoards gold\n\n2\nv\n\n")
    assert "1. [x]" in result.stdout
    assert "2. [ ]" in result.stdout
    assert "2. [x]" in result.stdout
    assert "the main idea" in result.stdout
    assert "_betrayed weaver hoards gold_" in result.stdout
    assert "Vivid is suggested." in result.stdout
    assert "Asked again on" in result.stdout


def test_a_commitment_restated_is_asked_whether_it_was_kept(terminal, written, monkeypatch):
    """After its answer one key checks in; the day done, the next time it is not asked."""
    terminal.json("add", written("one.md", DIGEST.replace("When the tea is poured,", "Daily")))
    ask_only(monkeypatch, KindName.RESTATE)
    result = terminal.run("sit", typed="ask hanne\n\nc\nk\nt\nask hanne\n\nc\n\n")
    assert result.stdout.count("Was it kept?") == 1, result.stdout
    (one,) = terminal.json("commitments")["commitments"]
    assert one["progress"] == "1 of 1 today"


def test_the_end_brings_up_one_commitment(terminal, written, monkeypatch):
    """What was over before it came in is asked at the end of a sitting; Enter passes it over."""
    old = DIGEST.replace("George Eliot\n", "George Eliot\n\nFinished: 4 May 2011\n").replace(
        "When the tea is poured, I will", "For two weeks I will daily"
    )
    terminal.json("add", written("one.md", old))
    ask_only(monkeypatch, KindName.THEME)
    result = terminal.run("sit", typed="gold\n\nc\n\n\n")
    assert "That is all for today" in result.stdout
    assert "What came of it?" in result.stdout
    assert result.exit_code == 0


def test_points_are_put_in_order_by_their_numbers(terminal, written, monkeypatch):
    """A number twice is refused in a sentence; what is given is told beside the right order."""
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, KindName.ORDER)
    result = terminal.run("sit", typed="1 1\n3 2 1\nh\n\n")
    assert "That is not one of the ways to answer." in result.stdout
    assert "Hazy" in result.stdout or "Blank" in result.stdout
    assert "The lot falls on Marner." in result.stdout


def test_words_left_out_are_asked_one_by_one(terminal, written, monkeypatch):
    """Every gap is as wide as every other, numbered, and asked by its number."""
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, KindName.COMPLETE)
    result = terminal.run("sit", typed="hands\nhands\nhands\nhands\nb\n\n")
    assert "____(1)" in result.stdout
    assert "1: " in result.stdout
    assert "[hands]" in result.stdout


def test_a_book_is_chosen_by_its_number(terminal, written, monkeypatch):
    """With other books on the shelf the choices are numbered."""
    terminal.json("add", written("one.md"))
    for name, title in (("two.md", "Walden"), ("three.md", "Emma")):
        terminal.json("add", written(name, DIGEST.replace("Silas Marner", title)))
    ask_only(monkeypatch, KindName.SOURCE)
    result = terminal.run("sit", typed="9\n1\nc\n\n" + "/stop\n")
    assert "1. " in result.stdout
    assert "That is not one of the ways to answer." in result.stdout
    assert "Asked again on" in result.stdout


def test_a_quotation_is_placed_in_a_gap(terminal, written, monkeypatch):
    """The gaps are numbered, and the plot line shows where it stands."""
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, KindName.PLACE)
    result = terminal.run("sit", typed="3\nc\n\n")
    assert "0 ┬ before all of these" in result.stdout or "0 + before all of these" in result.stdout
    assert "where it stands, page 131" in result.stdout
    assert "Clear is suggested." in result.stdout


def test_a_page_shows_where_it_was_placed(terminal, written, monkeypatch):
    """Two marks stand under the strip: where it stands, and where the reader placed it."""
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, KindName.PLACE)
    result = terminal.run("sit", typed="p 20\nb\n\n")
    assert "where you placed it, page 20" in result.stdout


def test_what_came_back_blank_comes_round_again(terminal, written):
    """A blank is asked once more before the sitting is over."""
    terminal.json("add", written("one.md"))
    before = kinds(terminal)
    terminal.run("reader", "--unasked-a-day", "1")
    result = terminal.run("sit", typed="\n" * 6 + "/stop\n")
    assert before
    assert "Once more before you stop today." in result.stdout


def test_one_answer_in_ten_is_graded_before_its_mark(terminal, written, monkeypatch):
    """No suggestion is shown and none is taken by Enter; the mark is told after the grade."""
    monkeypatch.setattr("service.use_cases.answer.graded_first", lambda *_: True)
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, KindName.THEME)
    result = terminal.run("sit", typed="a betrayed weaver hoards gold\n\n\nh\n\n")
    assert "Grade this one before the mark is shown" in result.stdout
    before, _, after = result.stdout.partition("How did it come back")
    assert "[x]" not in before
    assert "is suggested" not in result.stdout
    assert "The mark would have been" in after


def test_an_item_is_left_out_for_today(terminal, written):
    """`/leave` is no answer: the item waits for another day."""
    terminal.json("add", written("one.md"))
    first = terminal.json("due")["items"][0]["id"]
    result = terminal.run("sit", typed="/leave\n/stop\n")
    assert "Left out for today" in result.stdout
    assert first not in {item["id"] for item in terminal.json("due")["items"]}


def test_the_digest_is_shown_only_after_the_attempt(terminal, written, monkeypatch):
    """Before, it would give the answer away; after, it is one key away."""
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, KindName.THEME)
    result = terminal.run("sit", typed="/digest\ngold\n\nh\nd\ns\n")
    assert "it is shown afterwards" in result.stdout
    before, _, after = result.stdout.partition("Asked again on")
    assert "angels" not in before
    assert "angels" in after


def test_more_minutes_are_set_for_today(terminal, written):
    """`--minutes` holds for the day, and what is listed says so."""
    terminal.json("add", written("one.md"))
    terminal.run("sit", "--minutes", "25", typed="/stop\n")
    due = terminal.json("due")
    assert due["minutes"] == 25
    assert due["seconds"] > 0
    assert terminal.run("sit", "--minutes", "0").exit_code == 2


def test_an_answer_is_taken_back(terminal, written, monkeypatch):
    """After `t` the same item is asked as before."""
    terminal.json("add", written("one.md"))
    before = terminal.json("due")
    ask_only(monkeypatch, KindName.THEME)
    result = terminal.run("sit", typed="gold\n\nv\nt\n/stop\n")
    assert "Taken back" in result.stdout
    monkeypatch.undo()
    assert terminal.json("due") == before


def test_stopping_keeps_what_was_answered(terminal, written, monkeypatch):
    """After `s`, or at the end of input, what was answered is kept."""
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, KindName.THEME)
    result = terminal.run("sit", typed="gold\n\nc\ns\n")
    assert "What you answered is kept." in result.stdout
    monkeypatch.undo()
    assert "theme" not in kinds(terminal)
    assert terminal.run("sit", typed="").exit_code == 0


def test_markup_and_control_characters_print_literally(terminal, written, monkeypatch):
    """What a reader types is never taken for an instruction to the terminal."""
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, KindName.THEME)
    result = terminal.run("sit", typed="[bold red]gold[/] \x1b[31mweaver \x9b2J\n\nb\ns\n")
    assert "[bold red]" in result.stdout
    _, _, told = result.stdout.partition("What you said")
    assert "\ufffd[31m" in told
    assert not {"\x1b", "\x9b"} & set(told)
    assert result.exit_code == 0


@pytest.mark.parametrize("width", [20, 40, 100])
@pytest.mark.parametrize("kind", [KindName.THEME, KindName.PLACE, KindName.ORDER])
def test_both_texts_are_shown_at_any_width(terminal, written, monkeypatch, width, kind):
    """What was said and what the digest says are printed in full, within the window."""
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, kind)
    result = terminal.run("sit", typed="\nb\ns\n", width=width)
    shown = [row for row in result.stdout.splitlines() if not row.endswith(": ")]
    typed = ("> ", "How did", "Enter goes")
    assert all(len(row) <= width for row in shown if not row.startswith(typed))
    words = " ".join(result.stdout.replace("_", "").split())
    for word in ("Marner", "digest"):
        assert word in words


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
    before = kinds(terminal)
    child.expect("/stop stops")
    child.expect("> |1: ")
    child.sendline("")
    while child.expect(["How did it come back", r"\d+: "]):
        child.sendline("")
    child.sendline("c")
    child.expect("Enter goes on")
    child.sendline("")
    child.expect("/stop stops")
    child.sendintr()
    child.expect("What you answered is kept")
    child.expect(pexpect.EOF)
    child.close()
    assert child.exitstatus == 0
    assert kinds(terminal) != before


ONLY = """
import service.use_cases.answer as answer
import service.use_cases.sit as sit
from service.main import run

def only(waiting, seconds):
    ones = [*waiting.due, *waiting.unasked]
    return [each for each in ones if each.kept.item.kind == KIND] if seconds > 0 else []

sit.compose, sit.let_in = only, lambda unasked, *_: list(unasked)
answer.graded_first = lambda *_: False
run()
"""
"""A sitting of one kind alone, in a process of its own."""


def in_a_terminal(terminal, kind, width, **more):
    """Begin a sitting of one kind in a real terminal of some columns."""
    kept = {name: value for name, value in os.environ.items() if name not in {"NO_COLOR", "TERM"}}
    return pexpect.spawn(
        sys.executable,
        ["-c", f"KIND = {kind.value!r}\n{ONLY}", "sit"],
        env={**kept, "CATCHWORD_HOME": str(terminal.home), "TERM": "xterm", **more},
        encoding="utf-8",
        timeout=30,
        dimensions=(24, width),
    )


@pytest.mark.parametrize(
    ("kind", "width"),
    [
        (KindName.THEME, 20),
        (KindName.PLACE, 40),
        (KindName.ORDER, 20),
        (KindName.COMPLETE, 40),
        (KindName.SOURCE, 20),
    ],
)
def test_ctrl_c_amid_a_question_keeps_nothing_of_it(terminal, written, kind, width):
    """However something is asked and however narrow the window, the item is asked as before."""
    terminal.json("add", written("one.md"))
    before = terminal.json("due")
    child = in_a_terminal(terminal, kind, width)
    child.expect("> |1: ")
    child.send("half an ans")
    child.sendintr()
    child.expect("Stopped")
    child.expect(pexpect.EOF)
    child.close()
    assert child.exitstatus == 0
    assert terminal.json("due") == before


@pytest.mark.parametrize(("more", "sign"), [({}, "\x1b[4m"), ({"NO_COLOR": "1"}, "_weaver")])
def test_what_matched_is_marked_with_colour_and_without(terminal, written, more, sign):
    """Words found in both are underlined, or stand between low lines where nothing else can be."""
    terminal.json("add", written("one.md"))
    child = in_a_terminal(terminal, KindName.THEME, 80, **more)
    child.expect("> ")
    child.sendline("the weaver")
    child.expect("> ")
    child.sendline("")
    child.expect(r"1\. \[")
    child.expect_exact(sign)
    child.expect("How did it come back")
    child.sendintr()
    child.expect(pexpect.EOF)
    child.close()
    assert child.exitstatus == 0


def test_an_encoding_that_holds_little_ends_nothing(terminal, written):
    """Where typographic quotes and box drawing cannot be written, plain letters are."""
    terminal.json("add", written("one.md", DIGEST.replace("hoards", "h\u00f6rts")))
    done = subprocess.run(
        [sys.executable, "-c", f"KIND = 'place'\n{ONLY}", "sit"],
        env={**os.environ, "CATCHWORD_HOME": str(terminal.home), "PYTHONIOENCODING": "ascii"},
        input=b"p 20\nb\ns\n",
        capture_output=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert b'"In old days' in done.stdout
    assert b"^ where it stands, page 131" in done.stdout


def test_the_minutes_spent_are_said_at_the_end(terminal, written, monkeypatch):
    """When nothing is left for today, what it took is told beside the next day."""
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, KindName.THEME)
    result = terminal.run("sit", typed="gold\n\nc\n\n")
    assert "That is all for today. About 1 minute today. Something is asked" in " ".join(
        result.stdout.split()
    )


def test_the_digest_asked_for_amid_blanks_is_no_answer(terminal, written, monkeypatch):
    """The word left out is asked again; `/digest` does not stand for it."""
    terminal.json("add", written("one.md"))
    ask_only(monkeypatch, KindName.COMPLETE)
    result = terminal.run("sit", typed="/digest\n" + "hands\n" * 4 + "b\ns\n")
    assert "it is shown afterwards" in result.stdout
    assert "[/digest]" not in result.stdout


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
