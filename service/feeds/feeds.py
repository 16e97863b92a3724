"""Behind the port of that name: bibliographies and annotations, in and out."""

from collections.abc import Generator, Mapping
from typing import IO
from uuid import UUID

from cards.digest import Digest
from cards.parts import KeptDigest
from cards.proving import Anchor
from service.feeds import bibliography, calendar, web_annotations
from service.feeds.archive.reading import OpenArchive
from service.feeds.archive.writing import write_archive
from service.feeds.exports.writing import write_export
from service.use_cases.archiving_records import Contents
from service.use_cases.calendar_records import CalendarFacts
from service.use_cases.exporting_records import ExportForm, Table
from service.use_cases.records import AnnotatedQuotation, BookFacts


class Feeds:
    """What other programs take and give."""

    def to_bibtex(self, digest: Digest) -> str:
        """Return the book of a digest as a BibTeX entry."""
        return bibliography.to_bibtex(digest)

    def to_csl_json(self, digest: Digest) -> str:
        """Return the book of a digest as CSL-JSON, an array of one item."""
        return bibliography.to_csl_json(digest)

    def facts_in(self, text: str) -> tuple[BookFacts, ...]:
        """Return the books that a text in BibTeX or CSL-JSON describes.

        Raises:
            InvalidBibliography: it is neither, or beyond its bounds.
        """
        if text.lstrip()[:1] in {"[", "{"}:
            return bibliography.from_csl_json(text)
        return bibliography.from_bibtex(text)

    def to_annotations(self, kept: KeptDigest, anchors: Mapping[UUID, Anchor]) -> str:
        """Return the quotations of a digest as Web Annotations, JSON-LD."""
        return web_annotations.to_annotations(kept, anchors)

    def annotations_in(self, text: str) -> tuple[AnnotatedQuotation, ...]:
        """Return the quotations that Web Annotations in JSON-LD hold.

        Raises:
            InvalidAnnotations: it is no such document, or beyond its bounds.
        """
        return web_annotations.annotations_in(text)

    def to_calendar(self, facts: CalendarFacts) -> bytes:
        """Return what a reader's calendar shows, `text/calendar` in UTF-8."""
        return calendar.to_calendar(facts)

    def write_archive(self, target: IO[bytes], contents: Contents) -> None:
        """Write everything a reader has into a file, the same bytes for the same facts.

        Raises:
            CannotWrite: there is more than an archive holds.
        """
        write_archive(target, contents)

    def open_archive(self, source: IO[bytes]) -> OpenArchive:
        """Return an archive, held against its manifest, to be closed by whoever opened it.

        Raises:
            InvalidArchive: it is damaged, beyond its bounds, or of a later Catchword.
        """
        return OpenArchive(source)

    def write_export(self, table: Table, form: ExportForm) -> Generator[bytes]:
        """Yield an export piece by piece, never holding more than a few batches of it."""
        return write_export(table, form)
