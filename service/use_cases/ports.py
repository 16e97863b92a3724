"""What the use cases need from the world: a store, a reader of documents, ids, the time.

Doors hand a `Desk` to a use case; `service.main` sets it up. The store and the
document reader satisfy the protocols below without importing them being necessary.
"""

from collections.abc import Callable, Generator, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from secrets import token_urlsafe
from typing import IO, Protocol
from uuid import UUID

from cards.budget import Budget
from cards.digest import Digest
from cards.errors import CatchwordError
from cards.intake.blocks import Document
from cards.parts import KeptDigest
from cards.proving import Anchor, BookText
from cards.talk import Agenda
from cards.yearly import Review
from service.use_cases.archiving_records import Archive, Contents
from service.use_cases.calendar_records import CalendarFacts
from service.use_cases.exporting_records import ExportForm, Table
from service.use_cases.letter_records import Letter
from service.use_cases.picture_records import Drawer
from service.use_cases.records import (
    AnnotatedQuotation,
    BookFacts,
    BundledFile,
    Form,
    ReaderId,
)
from service.use_cases.sitting_records import PrintedSheet
from service.use_cases.unit_of_work import Store, UnitOfWork

__all__ = [
    "LARGEST_BOOK",
    "LARGEST_BUNDLE",
    "LARGEST_FILE",
    "BookTexts",
    "Desk",
    "Documents",
    "Feeds",
    "MailNotSent",
    "Post",
    "Press",
    "Store",
    "UnitOfWork",
    "random_secret",
]


LARGEST_FILE = 20 * 1024 * 1024
"""Bytes of one file: two pages of words, and room for the pictures some paste in."""


LARGEST_BUNDLE = 200 * 1024 * 1024
"""Bytes of a zip of digests: ten years of them, with the pictures some paste in."""


class Documents(Protocol):
    """What turns the bytes of a file into a document."""

    def unpack(self, name: str, content: bytes) -> Iterator[BundledFile] | None:
        """Return the files in a zip, one by one, or None when it is no bundle of files.

        One that cannot be taken out comes with its refusal, and the rest go on; a bundle
        that cannot be opened comes, alone and under its own name, with its refusal.
        """
        ...

    def read(self, name: str, content: bytes) -> Document:
        """Read a file.

        Raises:
            DocumentRefused: it is empty, too large, locked, broken or of no known format.
        """
        ...


LARGEST_BOOK = 64 * 1024 * 1024
"""Bytes of the file of one whole book: an EPUB with its pictures."""


class BookTexts(Protocol):
    """What reads the text of a whole book."""

    def read(self, name: str, content: bytes) -> BookText:
        """Read an EPUB, a text file or a web page.

        Raises:
            DocumentRefused: it is empty, too large, locked, broken or of no known format.
        """
        ...


class Press(Protocol):
    """What writes a digest out, and measures it on its two pages."""

    def write(self, digest: Digest, form: Form) -> bytes:
        """Return a digest as a file of one form."""
        ...

    def template(self, form: Form) -> bytes:
        """Return a blank digest to fill in, as DOCX, ODT or Markdown."""
        ...

    def sheet(self, printed: PrintedSheet) -> bytes:
        """Return a sitting on paper as a PDF: cues on one side, answers on the other."""
        ...

    def talk(self, agenda: Agenda) -> bytes:
        """Return the sheet of a talk as a PDF: to talk by, and to check by."""
        ...

    def review(self, review: Review) -> bytes:
        """Return a yearly review as a PDF."""
        ...

    def measure(self, digest: Digest) -> Budget:
        """Return how much of its two pages a digest takes, as it is set for printing."""
        ...


class Feeds(Protocol):
    """What other programs take and give: bibliographies and annotations."""

    def to_bibtex(self, digest: Digest) -> str:
        """Return the book of a digest as a BibTeX entry."""
        ...

    def to_csl_json(self, digest: Digest) -> str:
        """Return the book of a digest as CSL-JSON, an array of one item."""
        ...

    def facts_in(self, text: str) -> tuple[BookFacts, ...]:
        """Return the books that a text in BibTeX or CSL-JSON describes.

        Raises:
            InvalidBibliography: it is neither, or beyond its bounds.
        """
        ...

    def to_calendar(self, facts: CalendarFacts) -> bytes:
        """Return what a reader's calendar shows, `text/calendar` in UTF-8."""
        ...

    def to_annotations(self, kept: KeptDigest, anchors: Mapping[UUID, Anchor]) -> str:
        """Return the quotations of a digest as Web Annotations, JSON-LD."""
        ...

    def annotations_in(self, text: str) -> tuple[AnnotatedQuotation, ...]:
        """Return the quotations that Web Annotations in JSON-LD hold.

        Raises:
            InvalidAnnotations: it is no such document, or beyond its bounds.
        """
        ...

    def write_export(self, table: Table, form: ExportForm) -> Generator[bytes]:
        """Yield an export piece by piece, never holding more than a few batches of it.

        Closing it leaves nothing behind.
        """
        ...

    def write_archive(self, target: IO[bytes], contents: Contents) -> None:
        """Write everything a reader has into a file, the same bytes for the same facts.

        Raises:
            CannotWrite: there is more than an archive holds.
        """
        ...

    def open_archive(self, source: IO[bytes]) -> Archive:
        """Return an archive, held against its manifest, to be closed by whoever opened it.

        Raises:
            InvalidArchive: it is damaged, beyond its bounds, or of a later Catchword.
        """
        ...


class MailNotSent(CatchwordError):
    """A mail that no server took."""

    def __init__(self, why: str) -> None:
        super().__init__(f"The mail could not be sent: {why} It is tried again the next time.")


class Post(Protocol):
    """What hands a mail to a mail server."""

    def send(self, letter: Letter) -> None:
        """Send a mail.

        Raises:
            MailNotSent: the server cannot be reached, or refuses it.
        """
        ...


def random_secret() -> str:
    """Return 256 random bits as 43 characters of an address."""
    return token_urlsafe(32)


@dataclass(frozen=True)
class Desk:
    """Everything a door hands to a use case, set up once in `service.main`.

    Attributes:
        store: where everything is kept.
        documents: what reads files.
        books: what reads whole books.
        press: what writes digests out.
        feeds: what other programs take and give.
        pictures: what draws pictures.
        now: the time, aware, in UTC. Only doors call it.
        new_id: makes a fresh id.
        reader: whose library this is.
        demo: whether this is the demo library.
        new_secret: makes a secret of an address nobody can guess.
        post: what sends mail, or None while no server is known.
        address: where the reader reaches the pages, ending with a slash; None while nothing
            says so.
    """

    store: Store
    documents: Documents
    books: BookTexts
    press: Press
    feeds: Feeds
    pictures: Drawer
    now: Callable[[], datetime]
    new_id: Callable[[], UUID]
    reader: ReaderId
    demo: bool = False
    new_secret: Callable[[], str] = random_secret
    post: Post | None = None
    address: str | None = None
