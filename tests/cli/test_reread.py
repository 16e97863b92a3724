"""The re-reading list, from the command line."""

import pytest

from cards.parts import Care
from tests.cli.conftest import DIGEST

CLOSE = DIGEST.replace("George Eliot\n", "George Eliot\n\nFinished: 4 May 2021\n")


@pytest.fixture
def listed(terminal, written):
    """Silas Marner is kept close, and was finished years ago."""
    terminal.json("add", written("one.md", CLOSE))
    assert terminal.run("care", "silas", Care.CLOSE.value).exit_code == 0


def test_an_empty_list_says_so(terminal):
    """Nothing is to be opened."""
    assert "No book needs opening again." in terminal.run("reread").stdout


@pytest.mark.usefixtures("listed")
def test_a_book_is_listed_with_why_where_and_how_long(terminal):
    """Title, minutes, the reason, pages with what stands there."""
    shown = terminal.run("reread").stdout
    assert "Silas Marner, by George Eliot, 24 min" in shown
    assert "It is kept close" in shown
    assert "4 May 2021" in shown
    assert "  pp. 130-132\n    “In old days" in shown


@pytest.mark.usefixtures("listed")
def test_json_has_exactly_the_documented_keys(terminal):
    """`reread --json` prints what the README names, in its order."""
    terminal.run("reread", "--done", "silas", "--on", "2022-01-01", "--note", "Again.")
    found = terminal.json("reread")
    assert list(found) == ["books", "more", "earlier"]
    (book,), (earlier,) = found["books"], found["earlier"]
    assert list(book) == "digest title author reasons stretches minutes".split()
    assert list(book["reasons"][0]) == ["reason", "sentence"]
    assert list(book["stretches"][0]) == "place first last points quotations".split()
    assert list(earlier) == "id digest day pages minutes note helped".split()
    assert (book["reasons"][0]["reason"], earlier["note"]) == ("year", "Again.")


@pytest.mark.usefixtures("listed")
def test_a_rereading_is_kept_told_of_and_taken_back(terminal):
    """Recorded it leaves the list and stands below; taken back the book is listed again."""
    done = terminal.run("reread", "--done", "silas", "--pages", "10-24", "--minutes", "30")
    assert done.exit_code == 0, done.output
    assert "Silas Marner: the re-reading of" in done.stdout
    (earlier,) = terminal.json("reread")["earlier"]
    shown = terminal.run("reread").stdout
    assert "No book needs opening again." in shown
    assert "Silas Marner, 10-24" in shown
    assert "there is nothing to compare" in shown
    assert "is taken back." in terminal.run("reread", "--take-back", earlier["id"]).stdout
    assert terminal.json("reread")["books"]


@pytest.mark.usefixtures("listed")
@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("--pages", "10-24"), 2, "--done"),
        (("--done", "walden"), 4, "walden"),
        (("--done", "silas", "--minutes", "0"), 2, "1"),
        (("--done", "silas", "--on", "9998-01-01"), 3, "has not come yet"),
        (("--done", "silas", "--pages", "1" * 201), 3, "At most 200 characters"),
        (("--take-back", "00000000-0000-4000-8000-000000000001"), 4, "no re-reading"),
        (("--take-back", "first"), 2, "UUID"),
    ],
)
def test_what_cannot_be_kept_is_refused(terminal, words, code, said):
    """One line says what is wrong, and nothing is kept."""
    result = terminal.run("reread", *words)
    assert result.exit_code == code
    assert said in result.output
    assert "Traceback" not in result.output
    assert terminal.json("reread")["earlier"] == []
