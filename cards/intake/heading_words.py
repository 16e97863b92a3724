"""The parts of a digest that headings announce, and the reader's own words for them."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from cards.errors import Invalid
from cards.intake.wording import excerpt, folded

MAX_HEADING = 80
"""Characters in a line that may be a heading."""
MAX_WORDS = 200
"""Headings of a reader's own: seven languages of them, and room for whims."""


class Part(StrEnum):
    """A part of a digest that a heading can announce."""

    THEME = "theme"
    POINTS = "points"
    COMMITMENTS = "commitments"
    QUOTATIONS = "quotations"
    JUDGEMENT = "judgement"


@dataclass(frozen=True, slots=True)
class HeadingWords:
    """A reader's own headings, each with the part it announces. They win over the built-in ones.

    Made by `heading_words`.
    """

    _parts: tuple[tuple[str, Part], ...] = ()
    _by_words: dict[str, Part] = field(init=False, compare=False, repr=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_by_words", dict(self._parts))

    def part(self, words: str) -> Part | None:
        """Return the part a heading announces, given by its folded words, or None."""
        return self._by_words.get(words)

    def and_also(self, parts: Mapping[str, Part]) -> "HeadingWords":
        """Return these words with more, given folded; where both have one, these stand."""
        return HeadingWords(tuple(sorted({**parts, **self._by_words}.items())))


BUILT_IN = HeadingWords()
"""No words beyond the built-in ones."""


def heading_words(words: Mapping[str, Part | str]) -> HeadingWords:
    """Return a reader's own heading words, checked.

    Args:
        words: headings as the reader writes them, with the part each announces. Case,
            accents and punctuation do not tell two of them apart.

    Raises:
        Invalid: there are too many, one has no letters or is too long, one announces
            something that is no part, or two that are the same announce different parts.
    """
    if len(words) > MAX_WORDS:
        raise Invalid(
            f"At most {MAX_WORDS} heading words are kept; these are {len(words)}. Take out those "
            "you do not use.",
            where="heading_words",
        )
    parts: dict[str, Part] = {}
    for written, announced in words.items():
        key = folded(written)
        if not any(letter.isalpha() for letter in key):
            raise Invalid(
                f"“{excerpt(written, 40)}” has no letters, so it can not be a heading. Write the "
                "heading as it stands in your digests.",
                where="heading_words",
            )
        if len(written) > MAX_HEADING or "\n" in written.strip():
            raise Invalid(
                f"“{excerpt(written, 40)}” is too long for a heading. Write one line of at most "
                f"{MAX_HEADING} characters.",
                where="heading_words",
            )
        part = _part(written, announced)
        if parts.setdefault(key, part) is not part:
            raise Invalid(
                f"“{excerpt(written, 40)}” is given for {parts[key].value} and for {part.value}. "
                "Keep one of the two.",
                where="heading_words",
            )
    return HeadingWords(tuple(sorted(parts.items())))


def _part(written: str, announced: Part | str) -> Part:
    try:
        return Part(announced)
    except ValueError:
        known = ", ".join(Part)
        raise Invalid(
            f"“{excerpt(written, 40)}” is to announce “{excerpt(announced, 40)}”, which is no part "
            f"of a digest. Choose one of {known}.",
            where="heading_words",
        ) from None
