"""A reader gives a book's facts to other programs, and takes them from a bibliography."""

from uuid import UUID

from service.use_cases.keeping import opened
from service.use_cases.ports import Desk
from service.use_cases.records import BookFacts


def cite_bibtex(desk: Desk, digest_id: UUID) -> str:
    """Return the book of a digest as a BibTeX entry.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.reading() as work:
        return desk.feeds.to_bibtex(opened(desk, work, digest_id, None).digest())


def cite_csl_json(desk: Desk, digest_id: UUID) -> str:
    """Return the book of a digest as CSL-JSON.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.reading() as work:
        return desk.feeds.to_csl_json(opened(desk, work, digest_id, None).digest())


def facts_in(desk: Desk, text: str) -> tuple[BookFacts, ...]:
    """Return the books that a text in BibTeX or CSL-JSON describes, and keep nothing.

    Raises:
        InvalidBibliography: it is neither, or beyond its bounds.
    """
    return desk.feeds.facts_in(text)
