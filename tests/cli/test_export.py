"""`catchword export`: facts written to files."""

import csv
import io
import json

import pytest

from service.use_cases.exporting_columns import What


@pytest.fixture
def kept(terminal, written):
    """A library of one book."""
    terminal.json("add", written("silas.md"))
    return terminal


def test_a_table_is_written_under_a_name_of_its_own(kept, tmp_path, monkeypatch):
    """CSV unless another form is asked for, in the folder one stands in, never over a file."""
    monkeypatch.chdir(tmp_path)
    result = kept.run("export", "items")
    assert result.exit_code == 0, result.output
    (first, *_) = csv.DictReader(io.StringIO((tmp_path / "items.csv").read_text()))
    assert first["title"] == "Silas Marner"
    refused = kept.run("export", "items")
    assert (refused.exit_code, "stands there already" in refused.stderr) == (6, True)
    assert [path.name for path in tmp_path.glob("*items*")] == ["items.csv"]


def test_it_can_be_piped(kept):
    """`--out -` writes the bytes and nothing else to standard output."""
    (digest,) = json.loads(kept.run("export", "digests", "--as", "json", "--out", "-").stdout)
    assert digest["points"][0]["locator"] == "p. 12"


def test_everything_is_an_archive(kept, tmp_path):
    """`export everything` writes what `restore` reads."""
    path = tmp_path / "all.zip"
    assert kept.run("export", "everything", "--out", str(path)).exit_code == 0
    assert path.read_bytes().startswith(b"PK")
    assert kept.run("export", "everything", "--as", "csv").exit_code == 2


def test_what_cannot_be_written_is_said(kept, tmp_path):
    """One line, exit code 6, and nothing left behind; statements of items, exit code 3."""
    refused = kept.run("export", "items", "--out", str(tmp_path / "nowhere" / "x.csv"))
    assert (refused.exit_code, "cannot be written" in refused.stderr) == (6, True)
    stated = kept.run("export", "items", "--as", "xapi", "--out", str(tmp_path / "x.json"))
    assert (stated.exit_code, "answers and of check-ins" in stated.stderr) == (3, True)
    assert not (tmp_path / "x.json").exists()
    assert kept.run("export").exit_code == 2


def test_the_columns_are_told(terminal):
    """Of all exports, or of one; as JSON for programs; nothing is written."""
    told = terminal.run("export", "--columns").stdout
    assert all(what.value in told for what in What)
    assert "probability, 0 to 1" in told
    assert list(terminal.json("export", "check-ins")) == ["check-ins"]
