"""A whole digest held against the text of its book."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from enum import StrEnum

from cards.digest import Digest, Quotation
from cards.proving.folding import Folded
from cards.proving.locate import Found, locate
from cards.proving.places import point_after, says, suggested_locator


class Mend(StrEnum):
    """What the text of a book can mend in a quotation."""

    WORDS = "words"
    LOCATOR = "locator"
    PLACE = "place"


@dataclass(frozen=True, slots=True)
class Proof:
    """One quotation held against the text of its book.

    Attributes:
        number: of the quotation, from 1.
        quotation: as the digest has it.
        found: where it stands, with its slips; None where it does not.
        contradiction: a sentence where its locator is contradicted by the text, or None.
        locator: the locator the text gives it, or None where it gives none.
        after: the number of the point it stands after, by the text; None where that
            does not say.
    """

    number: int
    quotation: Quotation
    found: Found | None
    contradiction: str | None
    locator: str | None
    after: int | None

    @property
    def mends(self) -> tuple[Mend, ...]:
        """What the text can mend: slips, a locator that lacks or is wrong, a place that lacks.

        Nothing where the words stand in several places and none is known to be meant.
        """
        return tuple(self._mends())

    def _mends(self) -> Iterator[Mend]:
        if self.found is None or self.found.ambiguous:
            return
        if self.found.mended != self.quotation.text:
            yield Mend.WORDS
        if self.locator is not None and (
            self.quotation.locator is None or self.contradiction is not None
        ):
            yield Mend.LOCATOR
        if self.after is not None and self.quotation.after is None:
            yield Mend.PLACE

    def mended(self, wanted: Iterable[Mend]) -> Quotation:
        """Return the quotation as the text mends it, in what is wanted and can be mended."""
        now = set(wanted) & set(self.mends)
        quotation = self.quotation
        if self.found is not None and Mend.WORDS in now:
            quotation = replace(quotation, text=self.found.mended)
        if Mend.LOCATOR in now:
            quotation = replace(quotation, locator=self.locator)
        if Mend.PLACE in now:
            quotation = replace(quotation, after=self.after)
        return quotation


def prove(digest: Digest, book: Folded) -> tuple[Proof, ...]:
    """Hold every quotation of a digest against the text of its book."""
    locators = [point.locator for point in digest.points]
    return tuple(
        _proof(number, quotation, book, locators)
        for number, quotation in enumerate(digest.quotations, 1)
    )


def _proof(number: int, quotation: Quotation, book: Folded, points: list[str | None]) -> Proof:
    found = locate(quotation.text, book, quotation.locator)
    if found is None:
        return Proof(number, quotation, None, None, None, None)
    contradiction = says(quotation.locator, found.spot, book.book)
    surely = not found.ambiguous
    return Proof(
        number=number,
        quotation=quotation,
        found=found,
        contradiction=contradiction,
        locator=suggested_locator(found.spot) if surely else None,
        after=point_after(found.start, points, book.book) if surely and points else None,
    )
