"""An attempt beside what the digest says, in the terminal."""

from rich.columns import Columns
from rich.console import Console, Group
from rich.text import Text

from cards.kinds.base import Attempt, Span
from service.cli.screen import NARROWEST_COLUMNS, faint
from service.use_cases.answer import Compared


def show_comparison(screen: Console, attempt: Attempt, compared: Compared) -> None:
    """Print the two texts beside each other, or one after the other in a narrow window."""
    mark, answered = compared.mark, compared.answered
    own = _marked(attempt.as_text() or "nothing", mark.attempt_spans)
    said = _marked(answered.words, mark.answer_spans)
    left = Group(faint("What you said"), own)
    right = Group(faint("What your digest says"), said)
    screen.print()
    if screen.width >= NARROWEST_COLUMNS:
        half = screen.width // 2 - 2
        screen.print(Columns([left, right], width=half, padding=(0, 2)))
    else:
        screen.print(left)
        screen.print(right)
    if answered.caution:
        screen.print(Text(answered.caution, style="italic"))
    screen.print()
    screen.print(f"{mark.grade.capitalize()} is suggested. {mark.reason}")


def _marked(text: str, spans: tuple[Span, ...]) -> Text:
    """Underline what was found in the other text; what was missed stays plain."""
    marked = Text(text)
    for span in spans:
        if span.hit:
            marked.stylize("underline", span.start, span.end)
    return marked
