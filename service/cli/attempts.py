"""What a reader gives in the terminal, in each of the ways something is asked."""

import re
from collections.abc import Callable

import click
from rich.console import Console

from cards.answers import MAX_ATTEMPT
from cards.kinds.base import Asked, Attempt, Cue
from service.cli.screen import faint, prose

_PLACE = re.compile(r"(?P<unit>ch|p)?\.?\s*(?P<number>\d{1,6})", re.ASCII)
_UNITS = {"ch": Asked.CHAPTER, "p": Asked.PAGE}
_NUMBERS = re.compile(r"\d{1,4}(?:[\s,]+\d{1,4})*", re.ASCII)

LEAVE, STOP, DIGEST = "/leave", "/stop", "/digest"
"""Lines that are no answers: a slash begins none."""
COMMANDS = f"{LEAVE} leaves it out for today, {STOP} stops."


class LeftOutForToday(Exception):
    """The reader leaves the item out for today."""


class Stopped(Exception):
    """The reader stops."""


def ask_attempt(screen: Console, cue: Cue) -> Attempt:
    """Ask for an attempt in one of the ways the cue allows; an empty one is allowed too.

    Raises:
        LeftOutForToday: the reader leaves the item out for today.
        Stopped: the reader stops.
    """
    if Asked.WORDS in cue.asked:
        return Attempt(words=_words(screen))
    if Asked.BLANKS in cue.asked:
        return Attempt(blanks=_blanks(screen, cue))
    if Asked.ORDER in cue.asked:
        numbers = f"their numbers in the book’s order, as in {_example(len(cue.landmarks))}"
        return _until(screen, f"Give {numbers}; Enter when none comes", lambda it: ordered(cue, it))
    if Asked.BOOK in cue.asked:
        many = len(cue.choices)
        return _until(
            screen,
            f"Give a number from 1 to {many}; Enter when you cannot tell",
            lambda it: chosen(cue, it),
        )
    return _until(screen, _how(cue), lambda it: placed(cue, it))


def line(screen: Console, prompt: str) -> str:
    """Ask for one line of an answer; the digest, asked for, is refused and the line asked again.

    Raises:
        LeftOutForToday, Stopped: the line is one of the commands.
    """
    while True:
        given = str(click.prompt("", default="", show_default=False, prompt_suffix=prompt))
        word = given.strip().casefold()
        if word == LEAVE:
            raise LeftOutForToday
        if word == STOP:
            raise Stopped
        if word != DIGEST:
            return given
        prose(screen, "The digest would give it away; it is shown afterwards.")


def _words(screen: Console) -> str:
    prose(screen, faint(f"Write what you remember; an empty line ends it. {COMMANDS}"))
    lines: list[str] = []
    while given := line(screen, "> "):
        lines.append(given)
        if sum(map(len, lines)) + len(lines) > MAX_ATTEMPT:
            lines[-1] = lines[-1][: max(0, MAX_ATTEMPT - sum(map(len, lines[:-1])) - len(lines))]
            screen.print(f"That is as much as can be compared: {MAX_ATTEMPT} characters.")
            break
    return "\n".join(lines)


def _blanks(screen: Console, cue: Cue) -> tuple[str, ...]:
    prose(screen, faint(f"Give each word; Enter when it does not come. {COMMANDS}"))
    return tuple(line(screen, f"{number}: ") for number in range(1, len(cue.pieces)))


def _until(screen: Console, how: str, read: Callable[[str], Attempt | None]) -> Attempt:
    prose(screen, faint(f"{how}. {COMMANDS}"))
    while True:
        attempt = read(line(screen, "> "))
        if attempt is not None:
            return attempt
        screen.print("That is not one of the ways to answer.")


def _example(many: int) -> str:
    return " ".join(map(str, range(many, 0, -1)[:4]))


def _how(cue: Cue) -> str:
    ways = {
        Asked.GAP: f"a place from 0 to {len(cue.landmarks)}",
        Asked.PAGE: "p and a page, as in p 54",
        Asked.CHAPTER: "ch and a chapter, as in ch 20",
    }
    return "Give " + " or ".join(ways[way] for way in cue.asked) + "; Enter when you cannot tell"


def placed(cue: Cue, given: str) -> Attempt | None:
    """Read a place as typed; None when it is none of the ways the cue asks for."""
    written = given.strip().casefold()
    if not written:
        return Attempt()
    found = _PLACE.fullmatch(written)
    way = cue.asked[0] if found is None else _UNITS.get(found["unit"], cue.asked[0])
    if found is None or way not in cue.asked:
        return None
    number = int(found["number"])
    if way is Asked.GAP:
        return Attempt(gap=number) if number <= len(cue.landmarks) else None
    if way is Asked.PAGE:
        return Attempt(page=number, landmarks_seen=bool(cue.landmarks))
    return Attempt(chapter=number)


def ordered(cue: Cue, given: str) -> Attempt | None:
    """Read an order as typed; None when a number is not shown, or stands there twice."""
    written = given.strip()
    if not written:
        return Attempt()
    if not _NUMBERS.fullmatch(written):
        return None
    order = tuple(int(number) for number in re.split(r"[\s,]+", written))
    shown = {mark.number for mark in cue.landmarks}
    return Attempt(order=order) if len(set(order)) == len(order) and set(order) <= shown else None


def chosen(cue: Cue, given: str) -> Attempt | None:
    """Read the number of a book as typed; None when there is no such choice."""
    written = given.strip()
    if not written:
        return Attempt()
    if not (written.isascii() and written.isdigit() and 1 <= int(written[:9]) <= len(cue.choices)):
        return None
    return Attempt(book=cue.choices[int(written) - 1].id)
