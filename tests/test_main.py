"""The whole of Catchword as a reader starts it."""

import json
import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.request import urlopen

import pexpect
import pytest
from click.testing import CliRunner

from service.cli import catchword
from service.main import tools

CATCHWORD = ["-c", "from service.main import run; run()"]
SHORT_YEAR = "from service.use_cases import found_demo; found_demo.YEAR = 60; "
"""Two months for the demo's year: what is looked at here is there after them."""


@contextmanager
def started(home: Path, *words: str) -> Iterator[str]:
    """Start a command that listens, and give the address it prints."""
    environment = {**os.environ, "CATCHWORD_HOME": str(home)}
    child = pexpect.spawn(
        sys.executable,
        ["-c", SHORT_YEAR + CATCHWORD[1], *words],
        env=environment,
        encoding="utf-8",
        timeout=90,
    )
    try:
        child.expect(r"Catchword is open at (http://\S+)")
        yield child.match.group(1)
    finally:
        child.sendintr()
        child.expect(pexpect.EOF)
        child.close()


def fetch(address: str) -> str:
    """Get a page."""
    with urlopen(address, timeout=30) as reply:
        return reply.read().decode()


def test_serve_prints_the_address_to_open_and_answers_there(tmp_path):
    """`catchword serve` listens on this machine and shows an empty library."""
    with started(tmp_path, "serve", "--port", "0") as address:
        assert address.startswith("http://127.0.0.1:")
        assert json.loads(fetch(f"{address}api/sitting"))["items"] == []
        assert "Catchword" in fetch(address)


def test_an_address_that_is_taken_is_said_so(tmp_path):
    """A second Catchword on the same port is told so in one line, with exit code 3."""
    with started(tmp_path, "serve", "--port", "0") as address:
        port = address.rstrip("/").rpartition(":")[2]
        child = pexpect.spawn(
            sys.executable,
            [*CATCHWORD, "serve", "--port", port],
            env={**os.environ, "CATCHWORD_HOME": str(tmp_path)},
            encoding="utf-8",
            timeout=30,
        )
        said = child.read()
        child.close()
        assert child.exitstatus == 3
        assert f"port {port}: it is taken" in said


def test_the_demo_is_labelled_on_its_pages_and_apart_from_the_readers_own(tmp_path):
    """`catchword demo` has a year of its invented reader's, and the own library stays empty."""
    with started(tmp_path, "demo", "--port", "0") as address:
        assert len(json.loads(fetch(f"{address}api/digests"))["digests"]) >= 6
        kinds = {item["kind"] for item in json.loads(fetch(f"{address}api/sitting"))["items"]}
        assert kinds >= {"theme", "next", "restate", "source"}
        for page in ("", "books", "commitments", "reader"):
            assert "demo library" in fetch(f"{address}{page}")
    with started(tmp_path, "serve", "--port", "0") as address:
        assert json.loads(fetch(f"{address}api/digests"))["digests"] == []
        assert "demo library" not in fetch(address)
    with started(tmp_path, "demo", "--port", "0") as address:
        assert len(json.loads(fetch(f"{address}api/digests"))["digests"]) >= 6


def test_a_failure_of_its_own_is_told_in_one_line(tmp_path):
    """What nobody foresaw goes to a log, with one line and exit code 1 on the screen."""
    (tmp_path / "library.sqlite3").mkdir()
    child = pexpect.spawn(
        sys.executable,
        [*CATCHWORD, "due"],
        env={**os.environ, "CATCHWORD_HOME": str(tmp_path)},
        encoding="utf-8",
        timeout=30,
    )
    said = child.read()
    child.close()
    assert child.exitstatus in {1, 7}
    assert "Traceback" not in said
    assert said.strip().startswith("catchword: ")


def test_a_data_folder_that_can_not_be_is_told_in_one_line(tmp_path):
    """A file in its place is named, with what to do, and exit code 7; no trace is shown."""
    taken = tmp_path / "taken"
    taken.write_text("a letter")
    for home in (taken, taken / "inside"):
        environment = {"CATCHWORD_HOME": str(home)}
        result = CliRunner().invoke(catchword, ["due"], obj=tools(environment))
        assert result.exit_code == 7
        assert result.stderr.startswith(f"catchword: The data folder {home} cannot be used")
        assert len(result.stderr.splitlines()) == 1


@pytest.mark.parametrize("module", ["service.cli", "service.use_cases.ports"])
def test_what_every_command_loads_brings_no_heavy_library(module: str) -> None:
    """Arrays, fits, tables for other programs and the web are loaded where they are used alone."""
    heavy = ("numpy", "scipy", "pyarrow", "xlsxwriter", "flask", "sqlalchemy")
    code = f"import sys, {module}; print(*(set({heavy}) & set(sys.modules)))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == []
