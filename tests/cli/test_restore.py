"""Everything out of one library and into another, from the command line."""

import os
from pathlib import Path

import pytest

from tests.cli.conftest import Terminal
from tests.standing import lay_empty_library


@pytest.fixture
def another(tmp_path: Path) -> Terminal:
    """A command line on another empty library."""
    home = tmp_path / "another"
    lay_empty_library(home / "library.sqlite3")
    return Terminal(home)


def taken_out(terminal: Terminal, target: Path) -> Path:
    """Write everything of a library into a file."""
    result = terminal.run("export", "everything", "--out", str(target))
    assert result.exit_code == 0, result.output
    return target


def test_everything_is_brought_back(terminal, another, written, tmp_path):
    """Said in a line or in JSON; the library lists the same, and gives the same file again."""
    assert terminal.run("add", written("silas.md")).exit_code == 0
    archive = taken_out(terminal, tmp_path / "all.zip")
    result = another.run("restore", str(archive))
    assert result.exit_code == 0, result.output
    assert result.output == "Everything is back: digests 1, items 9, answers 0, files 1.\n"
    assert another.json("due") == terminal.json("due")
    assert taken_out(another, tmp_path / "again.zip").read_bytes() == archive.read_bytes()
    again = Terminal(tmp_path / "third")
    lay_empty_library(again.home / "library.sqlite3")
    assert again.json("restore", str(archive)) == {
        "digests": 1,
        "items": 9,
        "answers": 0,
        "originals": 1,
    }


def test_into_a_library_with_books_nothing_is_brought(terminal, written, tmp_path):
    """Exit code 5 and a sentence that says how to make an empty one."""
    assert terminal.run("add", written("silas.md")).exit_code == 0
    archive = taken_out(terminal, tmp_path / "all.zip")
    result = terminal.run("restore", str(archive))
    assert result.exit_code == 5
    assert "CATCHWORD_HOME" in result.output
    assert "Traceback" not in result.output


def test_what_is_no_archive_is_refused(terminal, written, tmp_path, monkeypatch):
    """No such file, a folder, a digest, one that is too large: each in a line with its code."""
    for path, code, said in (
        (str(tmp_path / "gone.zip"), 6, "cannot be opened"),
        (str(tmp_path), 6, "cannot be opened"),
        (written("silas.md"), 3, "no archive of Catchword’s"),
    ):
        result = terminal.run("restore", path)
        assert (result.exit_code, said in result.output) == (code, True), result.output
    monkeypatch.setattr("service.cli.restore.LARGEST_ARCHIVE", 10)
    result = terminal.run("restore", written("silas.md"))
    assert result.exit_code == 6
    assert "at most 10 are read back" in result.output


def test_the_archive_goes_to_standard_output_too(terminal, tmp_path):
    """The same bytes as in a file, though nothing can be sought in there."""
    archive = taken_out(terminal, tmp_path / "all.zip")
    assert terminal.run("export", "everything", "--out", "-").stdout_bytes == archive.read_bytes()


def test_a_pipe_is_refused_as_one(terminal):
    """A zip is read from its end, which a pipe does not come back to; nothing is called damaged."""
    reading, writing = os.pipe()
    os.close(writing)
    try:
        result = terminal.run("restore", f"/dev/fd/{reading}")
    finally:
        os.close(reading)
    assert (result.exit_code, "is a pipe" in result.output) == (6, True)
