"""A point, commitment or quotation of our own written form whose paragraphs are being gathered."""

from dataclasses import dataclass

from cards.digest import MAX_PARTS, Point, Quotation
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

    def as_point(self, before: int) -> Point:
        """Return the point it is, given how many stand before it.

        What has a line of its place is taken letter for letter. Beyond the points a
        digest keeps nothing is looked for: it will be refused.
        """
        if self.place is not None:
            return Point(self.text, place_said(self.place)[0])
        return natural_point(self.text) if before < MAX_PARTS else Point(self.text)

    def as_quotation(self, before: int, *, typed: bool) -> Quotation:
        """Return the quotation it is, likewise; marks around one `typed` in a template go."""
        if self.place is not None:
            text = unquoted(self.text) if typed else self.text
            return Quotation(text, *place_said(self.place))
        return natural_quotation(self.text) if before < MAX_PARTS else Quotation(self.text)
