"""`catchword export`: facts written to files."""

import csv
import io
import json
import os
import stat
from pathlib import Path
from threading import Thread

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


def test_a_folder_is_no_file_to_write(kept, tmp_path):
    """A folder named as the file is refused, and nothing is left beside it."""
    refused = kept.run("export", "items", "--out", str(tmp_path))
    assert (refused.exit_code, "Is a directory" in refused.stderr) == (6, True)
    assert not [*tmp_path.glob("*catchword*"), *tmp_path.parent.glob(".catchword-*")]


def test_a_link_is_followed_and_a_pipe_is_kept(kept, tmp_path):
    """What a link leads to is written, for whom it was; a pipe stays what it is and is written to.

    `--out /dev/null` by an administrator would otherwise replace the device.
    """
    (tmp_path / "items.csv").touch(0o640)
    (tmp_path / "link.csv").symlink_to(tmp_path / "items.csv")
    assert kept.run("export", "items", "--out", str(tmp_path / "link.csv")).exit_code == 0
    assert (tmp_path / "link.csv").is_symlink()
    assert stat.S_IMODE((tmp_path / "items.csv").stat().st_mode) == 0o640
    written = (tmp_path / "items.csv").read_bytes()
    pipe, come = tmp_path / "pipe", []
    os.mkfifo(pipe)
    reading = Thread(target=lambda: come.append(pipe.read_bytes()))
    reading.start()
    assert kept.run("export", "items", "--out", str(pipe)).exit_code == 0
    reading.join()
    assert pipe.is_fifo()
    assert come == [written]


@pytest.mark.parametrize(
    "what", [("items", "--as", "xlsx"), ("everything",), ("items", "--as", "parquet")]
)
def test_a_full_disk_is_told(kept, tmp_path, what):
    """What the system refuses while the file is written is said in a line, and no part is left.

    Linux: writing to /dev/full fails as a full disk does (full(4)).
    """
    refused = kept.run("export", *what, "--out", "/dev/full")
    assert (refused.exit_code, refused.stdout) == (6, "")
    assert refused.stderr.endswith(
        "/dev/full cannot be written: No space left on device. Give another with --out.\n"
    )
    assert Path("/dev/full").is_char_device()


def test_the_columns_are_told(terminal):
    """Of all exports, or of one; as JSON for programs; nothing is written."""
    told = terminal.run("export", "--columns").stdout
    assert all(what.value in told for what in What)
    assert "probability, 0 to 1" in told
    assert list(terminal.json("export", "check-ins")) == ["check-ins"]
