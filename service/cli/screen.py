"""What the commands print on: wrapped text, and JSON for programs."""

import json

import click
from rich.console import Console
from rich.text import Text

NARROWEST_COLUMNS = 76
"""Columns of a window from which two texts fit beside each other."""


def console(*, stderr: bool = False) -> Console:
    """Return a console that honours NO_COLOR, narrow windows and pipes; no digits are coloured."""
    return Console(stderr=stderr, highlight=False, markup=False, soft_wrap=False)


def heading(words: str) -> Text:
    """Return a line that begins a part."""
    return Text(words, style="bold")


def faint(words: str) -> Text:
    """Return a line of lesser weight."""
    return Text(words, style="dim")


def print_json(value: object) -> None:
    """Print a value as JSON, readable and in the reader's own letters."""
    click.echo(json.dumps(value, ensure_ascii=False, indent=2))
