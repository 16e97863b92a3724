"""Everything out of one library and into another, from the command line."""

from pathlib import Path

import pytest

from service.cli import archives
from service.main import open_desk
from service.settings import from_environment
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
    with open_desk(from_environment({"CATCHWORD_HOME": str(terminal.home)})) as desk:
        path = archives.write_archive(desk, target)
    assert path == target
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
    monkeypatch.setattr(archives, "LARGEST_ARCHIVE", 10)
    result = terminal.run("restore", written("silas.md"))
    assert result.exit_code == 6
    assert "at most 10 are read back" in result.output


def test_a_file_stands_there_whole_or_not_at_all(terminal, tmp_path, monkeypatch):
    """What fails on the way leaves nothing behind, and never what stood there half written over."""
    target = tmp_path / "all.zip"
    taken_out(terminal, target)
    before = target.read_bytes()

    def fail(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(archives, "archive_everything", fail)
    with pytest.raises(archives.CannotWrite, match="No space left on device"):
        taken_out(terminal, target)
    assert target.read_bytes() == before
    assert [path.name for path in tmp_path.iterdir() if path.is_file()] == ["all.zip"]


def test_what_stands_there_is_not_written_over_unasked(terminal, tmp_path, monkeypatch):
    """Without a name for it the file is catchword.zip, and one that is there stays."""
    monkeypatch.chdir(tmp_path)
    with open_desk(from_environment({"CATCHWORD_HOME": str(terminal.home)})) as desk:
        assert archives.write_archive(desk) == Path("catchword.zip")
        with pytest.raises(archives.CannotWrite, match="stands there already"):
            archives.write_archive(desk)


def test_it_goes_to_standard_output_too(terminal, tmp_path, capfdbinary):
    """Called `-`, it is written there, the same bytes."""
    archive = taken_out(terminal, tmp_path / "all.zip")
    with open_desk(from_environment({"CATCHWORD_HOME": str(terminal.home)})) as desk:
        assert archives.write_archive(desk, Path("-")) is None
    assert capfdbinary.readouterr().out == archive.read_bytes()
