"""An attempt beside what the digest says, in the terminal."""

from collections.abc import Iterator

from rich.console import Console
from rich.text import Text

from cards.kinds.base import Asked, Attempt, Cue, Mark
from cards.parts import KeptDigest
from service.cli.plot import show_plot
from service.cli.screen import MEASURE, NARROWEST_COLUMNS, drawn, faint, harmless, marked, prose
from service.use_cases.answer import Compared

_GUTTER = 3
_MAIN = 2
"""The weight from which an idea is the main one."""


def show_comparison(
    screen: Console, attempt: Attempt, compared: Compared, kept: KeptDigest, *, hidden: bool
) -> None:
    """Print the two texts beside each other, or one after the other in a narrow window.

    While the mark is hidden nothing is marked in them.
    """
    mark, answered, cue = compared.mark, compared.answered, compared.item.cue
    spans = () if hidden else mark.answer_spans
    own_spans = () if hidden else mark.attempt_spans
    own = marked(attempt.words, own_spans) if attempt.words else Text(_given(cue, attempt))
    screen.print()
    _beside(
        screen, ("What you said", own), ("What your digest says", marked(answered.words, spans))
    )
    if answered.page is not None:
        show_plot(screen, kept, points=True, here=answered.page, guess=attempt.page)
    if answered.caution:
        prose(screen, Text(answered.caution, style="italic"))
    prose(screen, faint(_source(compared)))
    if mark.ideas and not hidden:
        show_ideas(screen, mark, answered.words)


def show_ideas(screen: Console, mark: Mark, words: str) -> None:
    """Print the ideas of the digest's words, each ticked or not."""
    screen.print()
    for number, idea in enumerate(mark.ideas, 1):
        said = Text(f"{number}. [{'x' if idea.found else ' '}] ")
        said += marked(words, mark.answer_spans, start=idea.start, end=idea.end)
        notes = [
            *(["the main idea"] if idea.weight >= _MAIN and len(mark.ideas) > 1 else []),
            *(["perhaps turned round: look at what it denies"] if idea.turned else []),
        ]
        if notes:
            said += Text(f" ({'; '.join(notes)})", style="dim")
        prose(screen, said)


def show_suggestion(screen: Console, mark: Mark) -> None:
    """Print the suggested grade with its reason."""
    screen.print()
    prose(screen, f"{mark.grade.capitalize()} is suggested. {mark.reason}")


def _given(cue: Cue | None, attempt: Attempt) -> str:
    if attempt.empty or cue is None:
        return "nothing"
    if Asked.BLANKS in cue.asked:
        first, *rest = cue.pieces
        return first + "".join(
            f"[{word.strip() or '…'}]{piece}"
            for word, piece in zip(attempt.blanks, rest, strict=False)
        )
    if Asked.ORDER in cue.asked:
        texts = {mark.number: mark.text for mark in cue.landmarks}
        return "\n".join(texts.get(number, "") for number in attempt.order)
    if attempt.book is not None:
        return next((book.title for book in cue.choices if book.id == attempt.book), "")
    return attempt.as_text()


def _source(compared: Compared) -> str:
    item, locator = compared.item, compared.answered.locator
    return ", ".join(each for each in (item.title, item.author, locator) if each)


def _beside(screen: Console, left: tuple[str, Text], right: tuple[str, Text]) -> None:
    if screen.width < NARROWEST_COLUMNS:
        for name, words in (left, right):
            screen.print(faint(name))
            prose(screen, words)
        return
    width = min(screen.width, 2 * MEASURE) // 2 - _GUTTER
    between = f" {drawn('│', '|')} "
    for one, other in _rows(screen, (left, right), width):
        one.pad_right(max(0, width - one.cell_len))
        screen.print(one + Text(between, style="dim") + other, soft_wrap=True)


def _rows(
    screen: Console, sides: tuple[tuple[str, Text], tuple[str, Text]], width: int
) -> Iterator[tuple[Text, Text]]:
    columns = [
        [faint(name), *harmless(words).wrap(screen, width, overflow="fold")]
        for name, words in sides
    ]
    for number in range(max(map(len, columns))):
        one, other = (side[number] if number < len(side) else Text() for side in columns)
        yield one, other
