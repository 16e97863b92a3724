"""A command line on a library in a folder of its own."""

import json
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from service.cli import catchword
from service.main import tools
from tests.standing import lay_empty_library

DIGEST = """\
# Silas Marner

George Eliot

## Summary

A betrayed weaver hoards gold; a child takes its place and gives him back his neighbours.

## Points

1. The lot falls on Marner. (p. 12)
2. Dunstan takes the gold. (p. 42)
3. The child on the hearth. (p. 110)

## Commitments

- When the tea is poured, I will ask Hanne one question.

## Quotations

> In old days there were angels who came and took men by the hand. (p. 131)
"""


@dataclass
class Terminal:
    """Runs commands on a library in `home`, and reads what they print."""

    home: Path

    def run(self, *words: str, typed: str = "", width: int = 80) -> Result:
        """Run one command with words typed at its prompts."""
        environment = {"CATCHWORD_HOME": str(self.home), "COLUMNS": str(width), "NO_COLOR": "1"}
        return CliRunner().invoke(
            catchword, list(words), input=typed, obj=tools(environment), env=environment
        )

    def json(self, *words: str):
        """Run a command that must succeed, and return what it prints as JSON."""
        result = self.run(*words, "--json")
        assert result.exit_code == 0, result.output
        return json.loads(result.stdout)


@pytest.fixture(autouse=True)
def marks_are_shown(monkeypatch: pytest.MonkeyPatch) -> None:
    """No answer is graded first: which one is depends on ids that are made anew each time."""
    monkeypatch.setattr("service.use_cases.answer.graded_first", lambda *_: False)


@pytest.fixture
def terminal(tmp_path: Path) -> Terminal:
    """A command line on an empty library."""
    home = tmp_path / "home"
    lay_empty_library(home / "library.sqlite3")
    return Terminal(home)


@pytest.fixture
def written(tmp_path: Path) -> Callable[[str, str], str]:
    """A way to write a file and get its path."""

    def write(name: str, text: str = DIGEST) -> str:
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write
