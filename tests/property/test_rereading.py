"""The re-reading list over random books: nothing invented, no reason without cause, one order."""

from dataclasses import replace
from datetime import timedelta
from itertools import pairwise
from uuid import UUID

from hypothesis import given, settings
from hypothesis import strategies as st

from cards.answers import Grade
from cards.digest import Commitment, Digest, Point, Quotation
from cards.items import items_of
from cards.kinds.base import KindName
from cards.parts import Care, PartKind
from cards.rereading import BookRecord, Reason, book_to_reread, list_of, may_have_reasons
from cards.rereading.pages import LONGEST, pages_of
from cards.rereading.reasons import reasons_of
from cards.rereading.stretches import MARGIN
from tests.cards.digests import kept
from tests.cards.rereading.records import DAY, answered, record, reread, weekly

locators = st.one_of(
    st.none(),
    st.integers(1, 400).map(lambda page: f"p. {page}"),
    st.tuples(st.integers(1, 400), st.integers(0, 40)).map(lambda r: f"pp. {r[0]}-{r[0] + r[1]}"),
    st.integers(1, 40).map(lambda chapter: f"ch. {chapter}"),
    st.sampled_from(["Finale", "p. xii", "§5"]),
)
attempts = st.one_of(
    st.just(""),
    st.tuples(st.sampled_from(["after", "page", "chapter"]), st.integers(0, 12)).map(
        lambda guess: f"{guess[0]} {guess[1]}"
    ),
)
answers = st.lists(st.tuples(st.sampled_from(list(Grade)), attempts), max_size=3)


@st.composite
def books(draw: st.DrawFn) -> BookRecord:
    """Draw a book with its answers, its commitments and what was read again of it."""
    points = tuple(Point(f"Point {n}", draw(locators)) for n in range(draw(st.integers(0, 6))))
    quotations = tuple(
        Quotation(
            f"Words {n}",
            draw(locators),
            draw(st.one_of(st.none(), st.integers(0, len(points)))) if points else None,
        )
        for n in range(draw(st.integers(0, 5)))
    )
    digest = kept(
        Digest(
            draw(st.sampled_from(["Emma", "Middlemarch", "Walden"])),
            pages=draw(st.one_of(st.none(), st.integers(100, 450))),
            theme="What the book comes to",
            points=points,
            quotations=quotations,
            commitments=(Commitment("Walk every week"),),
        ),
        draw(st.integers(0, 1_000)) * 100 + 1,
    )
    digest = replace(
        digest,
        care=draw(st.sampled_from(list(Care))),
        finished_on=DAY - timedelta(days=draw(st.integers(0, 800))),
    )
    given_ = {(item.kind, item.number): draw(answers) for item in items_of(digest)}
    made = record(
        digest,
        {key: each for key, each in given_.items() if each},
        last=DAY - timedelta(days=draw(st.integers(0, 60))),
        stands=weekly(digest, days_ago=draw(st.sampled_from([3, 60]))),
    )
    read = [reread(digest, DAY - timedelta(days=draw(st.integers(0, 90))))]
    return replace(made, rereadings=read if draw(st.booleans()) else ())


@settings(max_examples=60)
@given(st.lists(books(), max_size=5, unique_by=lambda each: each.digest.id), st.randoms())
def test_the_list_is_the_same_in_whatever_order_things_arrive(known, random) -> None:
    """Books, items, parts, answers and re-readings may come in any order."""

    def shuffled(each: BookRecord) -> BookRecord:
        parts, items = list(each.digest.parts), list(each.items)
        random.shuffle(parts)
        random.shuffle(items)
        return replace(
            each,
            digest=replace(each.digest, parts=tuple(parts)),
            items=items,
            answers={item: list(reversed(given_)) for item, given_ in each.answers.items()},
            rereadings=list(reversed(each.rereadings)),
        )

    again = [shuffled(each) for each in known]
    random.shuffle(again)
    assert list_of(again, DAY, 0.9, 2.0) == list_of(known, DAY, 0.9, 2.0)


@given(books())
def test_every_page_named_stands_in_a_locator_or_within_the_margin(known) -> None:
    """A page comes from a locator, its margin, or from between two neighbouring points' pages."""
    book = book_to_reread(known, DAY, 0.9, 2.0)
    if book is None:
        return
    allowed: set[int] = set()
    points = known.digest.held(PartKind.POINT)
    for part in (*points, *known.digest.held(PartKind.QUOTATION)):
        if (pages := pages_of(part.locator)) is not None:
            allowed |= set(range(pages[0] - MARGIN, pages[1] + MARGIN + 1))
    for here, following in pairwise(points):
        ends = pages_of(here.locator), pages_of(following.locator)
        if ends[0] and ends[1]:
            between = range(ends[0][0], ends[1][1] + 1)
            allowed |= set(between) if len(between) <= LONGEST else set()
    read: list[int] = []
    for each in book.stretches:
        if each.first is not None and each.last is not None:
            read += range(each.first, each.last + 1)
            assert each.last - each.first < LONGEST
        standing = {part.id: part for part in known.digest.parts}
        assert all(standing[part.id] == part for part in (*each.points, *each.quotations))
    assert set(read) <= allowed
    assert len(read) == len(set(read))
    assert (book.minutes is None) is (not read)
    assert book.minutes is None or book.minutes == 2 * len(read)


@given(books())
def test_no_reason_no_book_and_every_reason_names_what_it_concerns(known) -> None:
    """A listed book has a reason; its parts and items are the book's, and it is worth something."""
    book = book_to_reread(known, DAY, 0.9, 2.0)
    reasons = reasons_of(known, DAY, 0.9)
    assert (book is None) is (not reasons)
    asked_for = known.rereadings or Reason.STALLED in {each.reason for each in reasons}
    assert not reasons or asked_for or may_have_reasons(known.items, 0.9)
    parts = {part.id for part in known.digest.parts}
    items = {each.item.id for each in known.items}
    for each in reasons:
        assert each.worth > 0
        assert set(each.parts) | set(each.around) | set(each.threads) <= parts
        assert set(each.items) <= items
    assert len({each.reason for each in reasons}) == len(reasons)


@settings(max_examples=60)
@given(books(), st.sampled_from([KindName.THEME, KindName.PLACE, KindName.NEXT]))
def test_a_vivid_answer_never_adds_a_reason(known, kind) -> None:
    """Whatever comes back well takes reasons away, or leaves them; it never brings one."""
    vivid = [(Grade.VIVID, "")]
    better = {
        each.item.id: [*known.answers.get(each.item.id, ()), *answered(each.item.id, vivid, DAY)]
        for each in known.items
        if each.item.kind is kind
    }
    given_ = {
        (each.item.kind, each.item.number): [(a.grade, a.attempt) for a in answers_]
        for each in known.items
        if (answers_ := (known.answers | better).get(each.item.id))
    }
    after = record(known.digest, given_, last=DAY, stands=known.stands)
    before = replace(known, rereadings=())
    brought = {each.reason for each in reasons_of(after, DAY, 0.9)}
    assert brought <= {each.reason for each in reasons_of(before, DAY, 0.9)}


def test_ids_of_other_books_never_enter() -> None:
    """An answer to an item the book does not make changes nothing."""
    digest = kept()
    strange = answered(UUID(int=5_000), [(Grade.BLANK, "")] * 3, DAY)
    known = replace(record(digest), answers={UUID(int=5_000): strange})
    assert reasons_of(known, DAY, 0.9) == reasons_of(record(digest), DAY, 0.9)
