"""What a reader copied otherwise than the book has it, word by word, and how to mend it."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import groupby

from rapidfuzz.distance import Indel, Levenshtein

from cards.proving.words import Word, marks, plain_words

ALIKE = 0.6
"""Likeness from which two words are one word, spelt otherwise: `whale` and `whalle`, not `ship`."""
_QUOTES_AND_SPACE = " \t\n\"'“”„‘’«»‹›_*"


class SlipKind(StrEnum):
    """What sort of slip it is."""

    SPELLING = "spelling"
    OTHER = "other word"
    MISSING = "missing"
    ADDED = "added"
    MARKS = "marks"


_IN_PLACE = frozenset({SlipKind.SPELLING, SlipKind.OTHER})


@dataclass(frozen=True, slots=True)
class Slip:
    """One place where a quotation differs from its book in more than folding ignores.

    Attributes:
        kind: what sort.
        quoted: the reader's words there; "" where the book has words they left out.
        book: the book's words; "" where the reader added some.
        start, end: offsets in the quotation of what `mend` replaces.
    """

    kind: SlipKind
    quoted: str
    book: str
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Compared:
    """Words of a quotation beside those of the book, each with the text they stand in.

    `masked` is the quotation without what is not the book's, offsets unchanged.
    """

    quotation: str
    masked: str
    quoted: Sequence[Word]
    text: str
    found: Sequence[Word]

    def slips(self) -> list[Slip]:
        """Return the slips between the first word and the last, in order."""
        made: list[Slip] = []
        codes = Levenshtein.opcodes(
            [word.folded for word in self.quoted], [word.folded for word in self.found]
        )
        previous: tuple[int, int] | None = None
        for differs, group in groupby(codes, key=lambda code: code.tag != "equal"):
            run = list(group)
            a, b = run[0].src_start, run[-1].src_end
            c, d = run[0].dest_start, run[-1].dest_end
            pairs = self._pairs(a, b, c, d, differs=differs)
            if pairs is None:
                if previous == (a - 1, c - 1) and b > a and d > c:
                    self._between(a - 1, c - 1, made)
                made.append(self._block(a, b, c, d))
                previous = (b - 1, d - 1) if b > a and d > c else None
                continue
            for one, other in pairs:
                if previous == (one - 1, other - 1):
                    self._between(one - 1, other - 1, made)
                if differs:
                    made.append(self._block(one, one + 1, other, other + 1))
                previous = (one, other)
        return made

    def _pairs(
        self, a: int, b: int, c: int, d: int, *, differs: bool
    ) -> list[tuple[int, int]] | None:
        """Return words that differ one by one, or None where they differ as a whole."""
        pairs = list(zip(range(a, b), range(c, d), strict=False))
        if not differs:
            return pairs
        if b - a != d - c or not all(
            _alike(self.quoted[one].folded, self.found[other].folded) for one, other in pairs
        ):
            return None
        return pairs

    def _block(self, a: int, b: int, c: int, d: int) -> Slip:
        quoted, found = self.quoted[a:b], self.found[c:d]
        book = plain_words(self.text[found[0].start : found[-1].end]) if found else ""
        if quoted and found:
            one, other = ("".join(word.folded for word in words) for words in (quoted, found))
            kind = SlipKind.SPELLING if _alike(one, other) else SlipKind.OTHER
            return self._slip(kind, book, quoted[0].start, quoted[-1].end)
        if quoted:
            # What was added goes with the space before it, or else with the one after.
            start = self.quoted[a - 1].end if a else quoted[0].start
            end = quoted[-1].end if a or b == len(self.quoted) else self.quoted[b].start
            slip = self._slip(SlipKind.ADDED, "", start, end)
            return Slip(slip.kind, slip.quoted.strip(), slip.book, start, end)
        at = self.quoted[a - 1].end if a else self.quoted[0].start
        return Slip(SlipKind.MISSING, "", book, at, at)

    def _between(self, one: int, other: int, made: list[Slip]) -> None:
        """Compare the marks after a pair of words with those in the book."""
        before, after = self.quoted[one], self.quoted[one + 1]
        quoted = self.masked[before.end : after.start]
        book = self.text[self.found[other].end : self.found[other + 1].start]
        written = marks(quoted)
        # The reader's own ellipsis stands for whatever it stands for.
        if written == marks(book) or "…" in written:
            return
        # Quotation marks stay as the reader has them: only what stands inside them is replaced.
        start = before.end
        end = start + len(quoted.rstrip(_QUOTES_AND_SPACE))
        put = plain_words(book).strip(_QUOTES_AND_SPACE)
        if made and made[-1].end == before.end and made[-1].kind in _IN_PLACE:
            last = made.pop()
            made.append(self._slip(last.kind, last.book + put, last.start, end))
        else:
            word = self.quotation[before.start : before.end]
            made.append(self._slip(SlipKind.MARKS, word + put, before.start, end))

    def _slip(self, kind: SlipKind, book: str, start: int, end: int) -> Slip:
        return Slip(kind, self.quotation[start:end], book, start, end)


def _alike(one: str, other: str) -> bool:
    return Indel.normalized_similarity(one, other) >= ALIKE


def mend(quotation: str, slips: Sequence[Slip]) -> str:
    """Return a quotation with the book's words in place of its slips, the rest as written."""
    for slip in sorted(slips, key=lambda slip: slip.start, reverse=True):
        book = slip.book
        if slip.kind is SlipKind.MISSING:
            before, after = quotation[: slip.start], quotation[slip.end :]
            book = f" {book}" if before and not before.endswith(" ") else f"{book} "
            quotation = before + book + after
        else:
            quotation = quotation[: slip.start] + book + quotation[slip.end :]
    return quotation
