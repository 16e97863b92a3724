"""Links from points to other books: made, asked, dropped."""

from dataclasses import replace
from datetime import timedelta
from uuid import uuid4

import pytest

from cards.answers import Grade
from cards.errors import DigestMissing, InvalidLink, LinkMissing
from cards.kinds.base import KindName
from cards.parts import PartKind
from service.use_cases.add_digest import add_digest
from service.use_cases.library import open_digest
from service.use_cases.links import MOST_LINKS, MOST_WHY, GivenLink, drop_link, link, offered_today
from service.use_cases.mend_digest import mend_digest, remove_digest
from service.use_cases.sit import todays_sitting
from service.use_cases.versions import restore_version


@pytest.fixture
def two(house, digest):
    """Two books, and a way to link the first point of the one to the other."""
    one = add_digest(house.desk, "one.docx", house.shelf.put(digest)).kept
    other = add_digest(
        house.desk, "two.docx", house.shelf.put(replace(digest, title="Walden"))
    ).kept
    point = one.held(PartKind.POINT)[0]

    def make(**more):
        given = GivenLink(uuid4(), one.id, point.id, other.id)
        return link(house.desk, replace(given, **more))

    return one, other, make


def across(house):
    """The items that ask for another book."""
    return [k for k in house.items().values() if k.item.kind is KindName.ACROSS]


def test_a_linked_point_is_asked(house, two):
    """From then on the point makes an item, and the link comes with the digest."""
    one, other, make = two
    made = make(why="Both   count\nwhat  they own.")
    assert (made.book_id, made.title, made.why) == (
        other.id,
        "Walden",
        "Both count what they own.",
    )
    assert len(across(house)) == 1
    assert open_digest(house.desk, one.id).kept.links == (made,)


def test_the_same_link_again_is_the_same(house, two):
    """Sent twice it is one; with another why it says that."""
    one, _, make = two
    made = make()
    assert make(id=made.id) == made
    assert make(why="Said better.").id == made.id
    assert open_digest(house.desk, one.id).kept.links[0].why == "Said better."
    assert len(across(house)) == 1


@pytest.mark.parametrize("wrong", ["itself", "a quotation", "no part", "too long"])
def test_what_is_no_link_is_refused(house, two, wrong):
    """A link leads from a point that is held to another book, with a why of bounded length."""
    one, _, make = two
    more = {
        "itself": {"book_id": one.id},
        "a quotation": {"part_id": one.held(PartKind.QUOTATION)[0].id},
        "no part": {"part_id": uuid4()},
        "too long": {"why": "x" * (MOST_WHY + 1)},
    }[wrong]
    with pytest.raises(InvalidLink):
        make(**more)
    assert not across(house)


def test_a_point_has_only_so_many_links(house, two, digest):
    """One more is refused, and one that is there already is not."""
    _, _, make = two
    made = None
    for number in range(MOST_LINKS):
        book = replace(digest, title=f"Book {number}")
        kept = add_digest(house.desk, f"{number}.docx", house.shelf.put(book)).kept
        made = make(book_id=kept.id)
    with pytest.raises(InvalidLink):
        make()
    assert make(book_id=made.book_id) == made


def test_anothers_books_are_missing(house, two):
    """No reader links to, or from, what another keeps."""
    one, other, _ = two
    stranger = house.another_reader()
    point = one.held(PartKind.POINT)[0]
    with pytest.raises(DigestMissing):
        link(stranger.desk, GivenLink(uuid4(), one.id, point.id, other.id))


def test_links_outlive_edits_and_versions(house, two, digest):
    """Mending a digest, or bringing a version back, leaves its links as they are."""
    one, _, make = two
    made = make()
    mend_digest(house.desk, one.id, replace(digest, theme="Another theme."))
    assert open_digest(house.desk, one.id).kept.links == (made,)
    restore_version(house.desk, one.id, 1)
    assert open_digest(house.desk, one.id).kept.links == (made,)
    assert len(across(house)) == 1


def test_a_dropped_link_is_asked_no_more(house, two):
    """Its item retires and keeps its answers; dropping it twice is refused."""
    one, _, make = two
    made = make()
    item = across(house)[0].item.id
    house.answer(item, Grade.CLEAR)
    drop_link(house.desk, one.id, made.id)
    assert not across(house)
    with pytest.raises(LinkMissing):
        drop_link(house.desk, one.id, made.id)
    make()
    assert across(house)[0].memory.answers == 1


def test_a_book_taken_out_is_not_asked_for(house, two, digest):
    """While the other book is out of the library its links rest; with it they come back."""
    one, other, make = two
    make()
    remove_digest(house.desk, other.id)
    assert not across(house)
    assert open_digest(house.desk, one.id).kept.links == ()
    add_digest(house.desk, "two.docx", house.shelf.put(replace(digest, title="Walden")))
    assert len(across(house)) == 1


def test_one_point_a_day_is_offered(house, two):
    """Of a book answered today, the same all day; none before, and none once it is linked."""
    one, other, _ = two
    assert offered_today(house.desk) is None
    house.answer(todays_sitting(house.desk).items[0].kept.item.id, Grade.CLEAR)
    offer = offered_today(house.desk)
    assert offer == offered_today(house.desk)
    assert [book.id for book in offer.books] == [other.id if offer.kept.id == one.id else one.id]
    given = GivenLink(uuid4(), offer.kept.id, offer.point.id, offer.books[0].id)
    link(house.desk, given)
    assert offered_today(house.desk) is None
    house.now += timedelta(days=1)
    assert offered_today(house.desk) is None
