"""The `catchword` command, and how a refusal becomes one line and an exit code."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractContextManager
from dataclasses import dataclass
from importlib import import_module
from typing import TYPE_CHECKING

import click

from cards.errors import (
    CannotWrite,
    CatchwordError,
    Conflict,
    DocumentRefused,
    Invalid,
    Missing,
)

if TYPE_CHECKING:
    from service.use_cases.ports import Desk

EXIT_CODES: tuple[tuple[type[CatchwordError], int], ...] = (
    (DocumentRefused, 6),
    (CannotWrite, 6),
    (Conflict, 5),
    (Missing, 4),
    (Invalid, 3),
    (CatchwordError, 7),
)
"""Exit codes of refusals, as the README lists them; 7 when the library cannot be used. 1 is a
failure of Catchword's own, 2 wrong usage."""

COMMANDS = (
    "read",
    "add",
    "due",
    "sit",
    "sheet",
    "checkin",
    "commitments",
    "decide",
    "wording",
    "prove",
    "versions",
    "care",
    "talk",
    "review",
    "reread",
    "retention",
    "out",
    "export",
    "restore",
    "blank",
    "cite",
    "headings",
    "reader",
    "reminders",
    "tidy",
    "serve",
    "demo",
)


@dataclass(frozen=True)
class Tools:
    """What the commands get from the composition.

    Attributes:
        desk: opens the reader's own library.
        serve: listens: host and port, None for the settings' own, and whether for the
            demo library.
        has_demo: whether the demo library was founded before.
        found_demo: founds it anew; tells which share of it, 0 to 1, is done.
    """

    desk: Callable[[], AbstractContextManager[Desk]]
    serve: Callable[[str | None, int | None, bool], None]
    has_demo: Callable[[], bool]
    found_demo: Callable[[Callable[[float], None]], None]


def exit_code(error: CatchwordError) -> int:
    """Return the exit code of a refusal."""
    return next(code for kind, code in EXIT_CODES if isinstance(error, kind))


class Commands(click.Group):
    """A group that imports a command when it is called, and turns refusals into lines."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002
        """Return the names of the commands in the order a reader meets them."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        """Return a command by name."""
        if cmd_name not in COMMANDS:
            return None
        command = getattr(import_module(f"service.cli.{cmd_name}"), cmd_name)
        if not isinstance(command, click.Command):
            raise TypeError(cmd_name)
        return command

    def invoke(self, ctx: click.Context) -> object:
        """Run a command; a refusal becomes one line and an exit code."""
        try:
            return super().invoke(ctx)
        except CatchwordError as error:
            click.echo(f"catchword: {error.message}", err=True)
            raise click.exceptions.Exit(exit_code(error)) from error


@click.group(cls=Commands)
@click.version_option(package_name="catchword")
def catchword() -> None:
    """Keep finished books alive.

    Hand over the digest you wrote of a book; be asked about it, a few minutes a day,
    when it is about to be forgotten.
    """
