"""A point, commitment or quotation of our own written form whose paragraphs are being gathered."""

from dataclasses import dataclass

from cards.digest import MAX_PARTS, Point, Quotation
from cards.intake.locating import locator_in
from cards.intake.own_blocks import (
    PARAGRAPHS,
    Role,
    natural_point,
    natural_quotation,
    place_said,
)
from cards.intake.wording import unquoted


@dataclass(slots=True)
class Opened:
    """What has been read of it so far.

    Attributes:
        role: of its first paragraph.
        paragraphs: as they were written.
        place: the line under it that says where it stands, or None.
    """

    role: Role
    paragraphs: list[str]
    place: str | None = None

    @property
    def text(self) -> str:
        """Its paragraphs as one text."""
        return PARAGRAPHS.join(self.paragraphs)

    @property
    def words(self) -> str:
        """All of its words, those of its place too."""
        return "\n".join([*self.paragraphs, *([] if self.place is None else [self.place])])

    def settle(self) -> None:
        """Take a last paragraph that is nothing but a locator for the line of its place.

        Only for what a reader typed, who may not have kept the line's own style.
        """
        last = self.paragraphs[-1]
        if self.place is None and len(self.paragraphs) > 1 and locator_in(last) is not None:
            self.place = self.paragraphs.pop()

    def as_point(self, before: int, *, typed: bool) -> Point:
        """Return the point it is, given how many stand before it.

        What has a line of its place is taken letter for letter, unless it was `typed` in
        a template: then the place is read as in any document. Beyond the points a digest
        keeps nothing is looked for: it will be refused.
        """
        if self.place is not None:
            return Point(self.text, _said(self.place, typed=typed)[0])
        return natural_point(self.text) if before < MAX_PARTS else Point(self.text)

    def as_quotation(self, before: int, *, typed: bool) -> Quotation:
        """Return the quotation it is, likewise; marks around one `typed` in a template go."""
        if self.place is not None:
            text = unquoted(self.text) if typed else self.text
            return Quotation(text, *_said(self.place, typed=typed))
        return natural_quotation(self.text) if before < MAX_PARTS else Quotation(self.text)


def _said(place: str, *, typed: bool) -> tuple[str | None, int | None]:
    locator, after = place_said(place)
    found = locator_in(place) if typed and after is None else None
    return (locator, after) if found is None else (found.locator, found.after)
