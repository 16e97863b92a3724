"""A reader finds that a point of one book speaks to another book of theirs."""

from dataclasses import dataclass
from datetime import date
from hashlib import blake2b
from uuid import UUID

from cards.errors import InvalidLink, LinkMissing
from cards.kinds.base import Shelved
from cards.parts import KeptDigest, Link, Part, PartKind
from service.use_cases.items import MOST_SHELVED
from service.use_cases.keeping import make_items, opened
from service.use_cases.ports import Desk

MOST_WHY = 500
"""Characters that say why two books speak to each other: a sentence or three."""
_TWO = 2
MOST_LINKS = 20
"""Links of one point at the most."""


@dataclass(frozen=True, slots=True)
class GivenLink:
    """A link as it arrives.

    Attributes:
        id: made by whoever recorded it.
        digest_id, part_id: of the point.
        book_id: of the other book's digest.
        why: what the one says to the other; may be empty.
    """

    id: UUID
    digest_id: UUID
    part_id: UUID
    book_id: UUID
    why: str = ""


@dataclass(frozen=True, slots=True)
class Linkable:
    """A point that may be linked, with the books it may be linked to.

    Attributes:
        books: the reader's other books, newest first.
    """

    kept: KeptDigest
    point: Part
    books: tuple[Shelved, ...]


def link(desk: Desk, given: GivenLink) -> Link:
    """Keep that a point speaks to another book; it is asked from then on.

    The same point and book again keeps the link and what is now said of the why.

    Raises:
        DigestMissing: this reader has no such digest, on either end.
        InvalidLink: it names no point, the book itself, a why too long, or one link too many.
    """
    why = " ".join(given.why.split())
    if len(why) > MOST_WHY:
        raise InvalidLink(
            f"What the one says to the other is {len(why)} characters long; at most {MOST_WHY} "
            "are kept.",
            where="why",
        )
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        kept = opened(desk, work, given.digest_id, None)
        other = opened(desk, work, given.book_id, None)
        if all(given.part_id != point.id for point in kept.held(PartKind.POINT)):
            raise InvalidLink(
                "Only a point that the digest holds can be linked to another book.", where="point"
            )
        if other.id == kept.id:
            raise InvalidLink("Choose another book than the point’s own.", where="book")
        same = [each for each in kept.links if each.part_id == given.part_id]
        if len(same) >= MOST_LINKS and all(each.book_id != other.id for each in same):
            raise InvalidLink(
                f"A point can be linked to at most {MOST_LINKS} books; drop one first.",
                where="book",
            )
        made = Link(given.id, given.part_id, other.id, other.title, other.author, why)
        known = work.links.get(desk.reader, given.id)
        if known is not None and (known.part_id, known.book_id) != (made.part_id, made.book_id):
            raise InvalidLink(
                f"{given.id} already stands for another link. Make this one under an id of its "
                "own.",
                where="id",
            )
        work.links.put(desk.reader, made, desk.now())
        linked = opened(desk, work, given.digest_id, None)
        make_items(desk, work, linked)
        work.commit()
    return next(
        each
        for each in linked.links
        if (each.part_id, each.book_id) == (made.part_id, made.book_id)
    )


def drop_link(desk: Desk, digest_id: UUID, link_id: UUID) -> None:
    """Forget a link. Its item, if no other link is left, retires and keeps its history.

    Raises:
        DigestMissing: this reader has no such digest.
        LinkMissing: the digest has no such link.
    """
    with desk.store.writing() as work:
        work.readers.lock(desk.reader)
        kept = opened(desk, work, digest_id, None)
        if all(each.id != link_id for each in kept.links):
            raise LinkMissing(link_id)
        work.links.drop(desk.reader, link_id)
        make_items(desk, work, opened(desk, work, digest_id, None))
        work.commit()


def offered_today(desk: Desk) -> Linkable | None:
    """Return a point without a link that the reader may link today, of a book answered today.

    One a day, by a hash of the day and the points, so that it stays the same all day; none
    when there is no other book, or a link was made to every point, or to one of them today.
    """
    with desk.store.reading() as work:
        day = work.readers.get(desk.reader).days.of(desk.now())
        answered = {each.item_id for each in work.answers.on(desk.reader, day)}
        items = work.items.many(desk.reader, answered)
        books = work.digests.shelf(desk.reader, MOST_SHELVED)
        digests = work.digests.many(desk.reader, {each.item.digest_id for each in items.values()})
    if len(books) < _TWO:
        return None
    points = [
        (kept, point)
        for kept in digests.values()
        if not kept.removed
        for point in kept.held(PartKind.POINT)
    ]
    if not points:
        return None
    kept, point = min(points, key=lambda each: _lot(day, each[1].id))
    if any(each.part_id == point.id for each in kept.links):
        return None
    return Linkable(kept, point, tuple(book for book in books if book.id != kept.id))


def linkable(desk: Desk, digest_id: UUID) -> tuple[Shelved, ...]:
    """Return the books the points of a digest may be linked to, newest first."""
    with desk.store.reading() as work:
        books = work.digests.shelf(desk.reader, MOST_SHELVED)
    return tuple(book for book in books if book.id != digest_id)


def _lot(day: date, part_id: UUID) -> bytes:
    return blake2b(part_id.bytes + day.isoformat().encode(), digest_size=8).digest()
