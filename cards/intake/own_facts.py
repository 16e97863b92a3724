"""The lines of facts in our own written form: `Pages: 184`."""

from dataclasses import dataclass, field
from datetime import date

from cards.intake.dates import last_day_in
from cards.intake.isbn import compact, is_isbn
from cards.intake.labels import Fact, fact_label, is_detail_label
from cards.intake.own_words import OWN_WORDS
from cards.intake.values import pages_off

_FACT_OF = {
    getattr(words, label).casefold(): fact
    for words in OWN_WORDS.values()
    for label, fact in (
        ("edition", "edition"),
        ("isbn", "isbn"),
        ("pages", "pages"),
        ("finished", "finished_on"),
    )
}
_KNOWN = frozenset({Fact.ISBN, Fact.PAGES, Fact.FINISHED})


@dataclass(slots=True)
class OwnFacts:
    """The facts of the book read so far, each as it was written.

    Attributes:
        typed: whether a reader typed them, as in a template; an ISBN is tidied then.
        lines: which fact each line gave, named as in `Notice`, and the line.
    """

    typed: bool = False
    edition: str | None = None
    isbn: str | None = None
    pages: int | None = None
    finished_on: date | None = None
    lines: list[tuple[str, str]] = field(default_factory=list)

    def take(self, line: str) -> bool:
        """Take a line `label: value`; tell whether its label and its value were understood.

        A label without a value is understood, and says nothing.
        """
        label, sign, value = line.partition(": ")
        if not sign:
            label, value = line.removesuffix(":"), ""
        fact = _named(label)
        if fact is None:
            return not line.strip()
        if not value.strip():
            return True
        match fact:
            case "edition":
                self.edition = value.strip() if self.typed else value
            case "isbn":
                self.isbn = compact(value) if self.typed and is_isbn(value) else value
            case "pages":
                self.pages = _pages(value)
            case _:
                self.finished_on = _day(value)
        self.lines.append((fact, line))
        return getattr(self, fact) is not None


def _named(label: str) -> str | None:
    own = _FACT_OF.get(label.strip().casefold())
    if own is not None:
        return own
    fact = fact_label(label)
    if fact in _KNOWN:
        return str(fact)
    return "edition" if is_detail_label(label) else None


def _pages(value: str) -> int | None:
    digits = value.strip()
    if digits.isascii() and digits.isdecimal() and len(digits) <= 6:
        return int(digits)
    found = pages_off(value, labelled=True)
    return None if found is None else found.number


def _day(value: str) -> date | None:
    try:
        return date.fromisoformat(value.strip())
    except ValueError:
        written = last_day_in(value)
        return None if written is None else written.day
