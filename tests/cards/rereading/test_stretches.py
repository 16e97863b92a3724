"""What is to be read: pages around what stands in the digest, and the rest by its own locator."""

from dataclasses import replace
from uuid import UUID

from cards.digest import Digest, Point, Quotation
from cards.parts import KeptDigest, PartKind
from cards.rereading import Because, Reason
from cards.rereading.stretches import Stretch, stretches_of
from tests.cards.digests import kept


def laid(digest: KeptDigest, *, threads: tuple[int, ...] = (), named=()) -> tuple[Stretch, ...]:
    """Return the stretches of a reason that concerns all that stands, or some threads alone."""
    points = digest.held(PartKind.POINT)
    broken = tuple(part.id for part in points if part.number in threads)
    around: tuple[UUID, ...] = ()
    if not threads and not named:
        around = tuple(part.id for part in (*points, *digest.held(PartKind.QUOTATION)))
    why = Because(Reason.THEME, "", around=around, threads=broken, named=named)
    return stretches_of(digest, [why])


def book(points: tuple[str | None, ...] = (), quotations=(), pages: int | None = None):
    """Return a digest whose points and quotations stand somewhere, kept."""
    return kept(
        Digest(
            "A Book",
            pages=pages,
            points=tuple(Point(f"Point {n}", each) for n, each in enumerate(points, 1)),
            quotations=tuple(Quotation(f"Words {n}", e) for n, e in enumerate(quotations, 1)),
        )
    )


def test_a_page_is_read_with_its_neighbours_and_neighbours_are_merged() -> None:
    """±1 page around each, one stretch where they touch, in the book's order."""
    found = laid(book(("p. 20",), ("p. 54", "pp. 57-58", "p. 10")))
    assert [each.place for each in found] == ["pp. 9-11", "pp. 19-21", "pp. 53-59"]
    assert [[part.text for part in each.quotations] for each in found] == [
        ["Words 3"],
        [],
        ["Words 1", "Words 2"],
    ]
    assert [part.text for part in found[1].points] == ["Point 1"]
    assert [each.pages for each in found] == [3, 3, 7]


def test_no_page_lies_outside_the_book() -> None:
    """Neither before the first nor after the last; a locator beyond the last is believed."""
    found = laid(book(quotations=("p. 1", "p. 100", "p. 120"), pages=100))
    assert [each.place for each in found] == ["pp. 1-2", "pp. 99-100", "pp. 119-120"]


def test_what_has_no_page_is_listed_by_its_locator_or_its_words() -> None:
    """Chapters, Roman pages and the rest as written, once each; never a page for them."""
    found = laid(book(("ch. 3", None), ("ch. 3", "p. ix", None)))
    assert [(each.place, each.pages) for each in found] == [
        ("ch. 3", None),
        ("where point 2 stands: Point 2", None),
        ("p. ix", None),
        ("where it says “Words 3”", None),
    ]
    assert (len(found[0].points), len(found[0].quotations)) == (1, 1)


def test_a_broken_thread_is_read_from_the_point_before() -> None:
    """From one point to the next where both have pages, no further than thirty pages apart."""
    digest = book(("p. 10", "p. 39", "p. 69", "ch. 9", "p. 90"))
    assert [each.place for each in laid(digest, threads=(2,))] == ["pp. 10-39"]
    assert [each.place for each in laid(digest, threads=(3,))] == ["pp. 38-40", "pp. 68-70"]
    assert not laid(digest, threads=(1, 4, 5))


def test_no_stretch_is_longer_than_thirty_pages() -> None:
    """What runs on is parted; together nothing is lost and nothing read twice."""
    digest = book(("p. 10", "p. 39", "p. 60"))
    found = laid(digest, threads=(2, 3))
    assert [each.place for each in found] == ["pp. 10-39", "pp. 40-60"]


def test_pages_a_commitment_names_are_read() -> None:
    """With their neighbours, like any other."""
    assert [each.place for each in laid(book(("p. 90",)), named=((54, 55),))] == ["pp. 53-56"]


def test_what_was_removed_from_the_digest_is_not_looked_for() -> None:
    """A retired quotation names no page."""
    digest = book(quotations=("p. 54",))
    gone = replace(digest, parts=tuple(replace(part, retired=True) for part in digest.parts))
    why = Because(Reason.PLACES, "", around=(digest.parts[0].id,))
    assert not stretches_of(gone, [why])
