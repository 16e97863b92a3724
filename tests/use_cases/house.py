"""A desk on a real store, with a clock a test can set, and files made of digests."""

from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from uuid import UUID, uuid4

from cards.answers import Grade
from cards.digest import Commitment, Digest, Point, Quotation
from cards.intake.blocks import Block, Document, Shape
from service.documents.book_texts import BookTexts
from service.documents.press.press import Press
from service.feeds.feeds import Feeds
from service.feeds.pictures.pictures import Pictures
from service.store.sql_store import SqlStore
from service.use_cases.answer import record_answer
from service.use_cases.items import list_items
from service.use_cases.ports import Desk
from service.use_cases.recording import GivenAnswer, Recorded
from service.use_cases.records import ReaderId

START = datetime(2026, 1, 5, 19, 0, tzinfo=UTC)

DIGEST = Digest(
    title="Silas Marner",
    author="George Eliot",
    pages=186,
    theme="A betrayed weaver hoards gold. A child takes its place and gives him back his village.",
    points=(
        Point("The lot falls on Marner.", "p. 12"),
        Point("Dunstan takes the gold.", "p. 42"),
        Point("The child on the hearth.", "p. 110"),
    ),
    commitments=(
        Commitment("When the tea is poured, I will ask Hanne one question."),
        Commitment("I will write to one old friend on the first Saturday of the month."),
    ),
    quotations=(Quotation("There were angels who came and took men by the hand.", "p. 131", 3),),
)


def blocks_of(digest: Digest) -> tuple[Block, ...]:
    """Lay a digest out as the blocks its document would have."""

    def part(name: str, entries: list[str], shape: Shape) -> list[Block]:
        heading = [Block(Shape.HEADING, name, level=2)] if entries else []
        return [*heading, *(Block(shape, entry, level=1) for entry in entries)]

    def located(text: str, locator: str | None) -> str:
        return f"{text} ({locator})" if locator else text

    by = [Block(Shape.PARAGRAPH, f"By {digest.author}")] if digest.author else []
    return (
        Block(Shape.HEADING, digest.title, level=1),
        *by,
        *([Block(Shape.PARAGRAPH, f"ISBN {digest.isbn}")] if digest.isbn else []),
        *part("Summary", [digest.theme] if digest.theme else [], Shape.PARAGRAPH),
        *part("Points", [located(p.text, p.locator) for p in digest.points], Shape.ITEM),
        *part("Commitments", [c.text for c in digest.commitments], Shape.ITEM),
        *part("Quotations", [located(q.text, q.locator) for q in digest.quotations], Shape.QUOTE),
    )


@dataclass
class Shelf:
    """Documents by the bytes they would be read from; satisfies `ports.Documents`."""

    documents: dict[bytes, tuple[Block, ...]] = field(default_factory=dict)

    def put(self, digest: Digest) -> bytes:
        """Make a file of a digest and return its bytes."""
        content = repr(digest).encode()
        self.documents[content] = blocks_of(digest)
        return content

    def read(self, name: str, content: bytes) -> Document:
        """Read a file that was put here."""
        return Document(name, self.documents[content])

    def unpack(self, name: str, content: bytes) -> None:
        """Take every file for a single one."""


@dataclass
class House:
    """A reader's desk with the clock and the files behind it."""

    store: SqlStore
    now: datetime = START
    shelf: Shelf = field(default_factory=Shelf)
    reader: ReaderId = field(default_factory=lambda: ReaderId(uuid4()))

    @property
    def desk(self) -> Desk:
        """What a door would hand to the use cases."""
        return Desk(
            self.store,
            self.shelf,
            BookTexts(),
            Press(),
            Feeds(),
            Pictures(),
            lambda: self.now,
            uuid4,
            self.reader,
        )

    def another_reader(self) -> "House":
        """Another reader's desk on the same store."""
        return House(self.store, self.now, self.shelf)

    def answer(self, item: UUID, grade: Grade, at: datetime | None = None) -> Recorded:
        """Answer an item, now or at another time."""
        recorded = record_answer(self.desk, GivenAnswer(uuid4(), item, grade, at))
        self.now += timedelta(seconds=30)
        return recorded

    def items(self):
        """All items by id."""
        return {view.kept.item.id: view.kept for view in list_items(self.desk).items}
