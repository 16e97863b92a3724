"""What a reader gives in the terminal: words, or a place in the plot."""

import re

import click
from rich.console import Console

from cards.kinds.base import Asked, Attempt, Cue
from service.cli.screen import faint

_PLACE = re.compile(r"(?P<unit>ch|p)?\.?\s*(?P<number>\d{1,6})")
_UNITS = {"ch": Asked.CHAPTER, "p": Asked.PAGE}


def ask_attempt(screen: Console, cue: Cue) -> Attempt:
    """Ask for an attempt in one of the ways the cue allows; an empty one is allowed too."""
    if Asked.WORDS in cue.asked:
        screen.print(faint("Write what you remember; an empty line ends it."))
        lines: list[str] = []
        while line := click.prompt("", default="", show_default=False, prompt_suffix="> "):
            lines.append(line)
        return Attempt(words="\n".join(lines))
    while True:
        given = click.prompt(_how(cue), default="", show_default=False, prompt_suffix=": ")
        attempt = placed(cue, given)
        if attempt is not None:
            return attempt
        screen.print("That is not one of the ways to answer.")


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
