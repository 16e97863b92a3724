"""Words of a document that were not understood, taken in as the part the reader says they are."""

from cards.errors import InvalidDigest, NothingRecognised
from cards.intake import understand
from cards.intake.blocks import Block, Document, Shape
from cards.intake.wording import unquoted
from service.pages.digest_form import Row

_HEADINGS = {"points": "Points", "commitments": "Commitments", "quotations": "Quotations"}


def rows_of(words: str, into: str, source: str) -> tuple[Row, ...]:
    """Return words as rows of a list, read as they would be under its heading.

    So a marker in front of them goes, and a locator or quotation marks are seen for what
    they are. Where nothing can be read so, the words stand as they are.
    """
    heading = Block(Shape.HEADING, _HEADINGS[into], level=2)
    items = [Block(Shape.PARAGRAPH, line) for line in words.split("\n") if line.strip()]
    title = Block(Shape.HEADING, "—", level=1)
    document = Document("words", (title, heading, *items))
    try:
        digest = understand(document).digest
    except (NothingRecognised, InvalidDigest):
        return (Row(0, "", unquoted(words), source=source),)
    parts: dict[str, list[tuple[str, str | None]]] = {
        "points": [(each.text, each.locator) for each in digest.points],
        "commitments": [(each.text, None) for each in digest.commitments],
        "quotations": [(each.text, each.locator) for each in digest.quotations],
    }
    rows = [Row(0, "", text, locator or "", source=source) for text, locator in parts[into]]
    return tuple(rows) or (Row(0, "", unquoted(words), source=source),)
