"""What the commands print on: wrapped text, and JSON for programs."""

import codecs
import io
import json
import os
import sys
from collections.abc import Iterable

import click
from rich.console import Console
from rich.text import Text

from cards.kinds.base import Span

NARROWEST_COLUMNS = 76
"""Columns of a window from which two texts fit beside each other."""
MEASURE = 76
"""Columns beyond which a line of prose is hard to follow."""
_PLAINER = str.maketrans({"’": "'", "‘": "'", "“": '"', "”": '"', "…": "...", "–": "-", "·": "-"})

_COMMANDING = {
    code: "\ufffd" for code in (*range(0x20), *range(0x7F, 0xA0)) if chr(code) not in "\t\n"
}
"""Control characters, which a terminal would obey."""


def _as_far_as_it_can(error: UnicodeError) -> tuple[str, int]:
    if not isinstance(error, UnicodeEncodeError):
        raise error
    lost = error.object[error.start : error.end].translate(_PLAINER)
    return "".join(letter if letter.isascii() else "?" for letter in lost), error.end


codecs.register_error("catchword.plainer", _as_far_as_it_can)


def console(*, stderr: bool = False) -> Console:
    """Return a console that honours NO_COLOR, narrow windows and pipes; no digits are coloured.

    What the terminal’s encoding cannot hold is written plainer, and never ends a sitting.
    """
    written_to = sys.stderr if stderr else sys.stdout
    if isinstance(written_to, io.TextIOWrapper):
        written_to.reconfigure(errors="catchword.plainer")
    return Console(stderr=stderr, highlight=False, markup=False, soft_wrap=False)


def heading(words: str) -> Text:
    """Return a line that begins a part."""
    return Text(words, style="bold")


def faint(words: str) -> Text:
    """Return a line of lesser weight."""
    return Text(words, style="dim")


def prose(screen: Console, words: str | Text, *, indent: int = 0) -> None:
    """Print words at a measure that can be read, however wide the window is."""
    width = max(1, min(screen.width, MEASURE) - indent)
    said = harmless(Text(words) if isinstance(words, str) else words)
    for line in said.wrap(screen, width, overflow="fold"):
        line.rstrip()
        screen.print(Text(" " * indent) + line, soft_wrap=True)


def harmless(words: Text) -> Text:
    """Return words without what a terminal would obey, as long as before."""
    said = words.copy()
    said.plain = words.plain.translate(_COMMANDING)
    return said


def plain() -> bool:
    """Tell whether nothing but letters can be shown: no colour wished, a dumb terminal, a pipe."""
    dumb = os.environ.get("TERM") == "dumb"
    return bool(os.environ.get("NO_COLOR")) or dumb or not sys.stdout.isatty()


def drawn(character: str, otherwise: str) -> str:
    """Return a character for drawing, or another where what is written to cannot hold it."""
    try:
        character.encode(sys.stdout.encoding or "ascii")
    except (UnicodeEncodeError, LookupError):
        return otherwise
    return character


def marked(text: str, spans: Iterable[Span], *, start: int = 0, end: int | None = None) -> Text:
    """Return a stretch of a text with what was found in the other underlined.

    Where nothing but letters can be shown, it stands between low lines instead.
    """
    end = len(text) if end is None else end
    found = [
        (max(span.start, start), min(span.end, end))
        for span in sorted(spans, key=lambda each: each.start)
        if span.hit and span.start < end and span.end > start
    ]
    if not plain():
        whole = Text(text[start:end])
        for one, other in found:
            whole.stylize("underline", one - start, other - start)
        return whole
    pieces, at = [], start
    for one, other in found:
        pieces += [text[at:one], "_", text[one:other], "_"]
        at = other
    return Text("".join([*pieces, text[at:end]]))


def print_json(value: object) -> None:
    """Print a value as JSON, in the reader's own letters where the encoding can hold them."""
    said = json.dumps(value, ensure_ascii=False, indent=2)
    if drawn(said, "") != said:
        said = json.dumps(value, indent=2)
    click.echo(said)
