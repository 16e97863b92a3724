"""Properties of a sitting: design, rule 4, “nothing gives away what is still to be asked”."""

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from cards.identity import keep
from cards.items import KeptItem, items_of, occasion_of
from cards.kinds import KINDS
from cards.kinds.base import KindName, Shelved
from cards.kinds.words import content_words, stems
from cards.parts import Link, PartKind
from cards.schedule import Memory
from cards.sitting import Candidate, Waiting, compose, let_in, pages_of
from tests.cards.digests import new_ids
from tests.property.strategies import digests, grades

DAY = date(2026, 3, 10)


@st.composite
def memories(draw, days_ago):
    """A memory of an item last answered some days ago."""
    last = DAY - timedelta(days=draw(days_ago))
    answers, stability = draw(st.integers(1, 9)), draw(st.floats(0.01, 5_000))
    return Memory(stability, 5.0, last, last, draw(grades), answers, DAY)


@st.composite
def shelves(draw):
    """One to three books of a reader, their points linked to one another here and there."""
    kept = [
        keep(draw(digests()), None, new_ids(number * 1_000 + 1))
        for number in range(draw(st.integers(1, 3)))
    ]
    linked = []
    for number, book in enumerate(kept):
        other = kept[(number + 1) % len(kept)]
        points = book.held(PartKind.POINT) if other is not book else ()
        links = tuple(
            Link(new_ids(9_000 + number * 100)(), point.id, other.id, other.title, other.author)
            for point in points[: draw(st.integers(0, 2))]
        )
        linked.append(replace(book, links=links))
    return linked


@st.composite
def libraries(draw):
    """What a sitting may be composed from: every item due, unasked, asked today, or not at all."""
    books = draw(shelves())
    shelf = tuple(Shelved(book.id, book.title, book.author) for book in books)
    states = {"due": [], "unasked": [], "returning": [], "seen": [], "none": []}
    for book in books:
        for item in items_of(book):
            state = draw(st.sampled_from(sorted(states)))
            today = state in ("returning", "seen")
            days_ago = st.just(0) if today else st.integers(1, 2_000)
            remembered = None if state == "unasked" else draw(memories(days_ago))
            kept = KeptItem(item, remembered)
            worth = draw(st.floats(0, 1))
            states[state].append(Candidate(kept, occasion_of(kept, book, shelf), worth, 20.0))
    return Waiting(
        due=states["due"],
        unasked=states["unasked"],
        returning=states["returning"],
        seen=states["seen"] + states["returning"],
        last_book=draw(st.sampled_from([None, books[0].id])),
    )


SITTINGS = settings(max_examples=100)
"""Drawing a library of up to three books and composing from it takes some hundredth of a second."""
minutes = st.integers(0, 30).map(lambda count: count * 60.0)


def half_shown(words, shown):
    """Tell whether at least half of some content words, and two where there are as many, show."""
    wanted = stems(words)
    found = len(wanted & shown)
    return bool(wanted) and 2 * found >= len(wanted) and found >= min(2, len(wanted))


@SITTINGS
@given(libraries(), minutes)
def test_no_page_shows_what_a_later_item_asks(waiting, seconds):
    """“Comes after it in the same sitting, or not at all”, what comes round again included.

    Showing is half of the content words, by stem, of what a theme, a point or a commitment
    asks, its own cue's words aside; or the very part, place or order that is asked.
    """
    ordered = compose(waiting, seconds)
    pages = [pages_of(each) for each in ordered]
    for index, (each, read) in enumerate(zip(ordered, pages, strict=True)):
        kind = KINDS[each.kept.item.kind]
        cue, answer = kind.cue(each.occasion), kind.answer(each.occasion)
        landmarks = (mark.text for mark in cue.landmarks)
        shown = stems("\n".join([cue.words, *cue.pieces, *landmarks, answer.words]))
        for later, theirs in zip(ordered[index + 1 :], pages[index + 1 :], strict=True):
            assert read.shows.isdisjoint(theirs.asks)
            if later.kept.item.kind in (KindName.THEME, KindName.NEXT, KindName.RESTATE):
                own = KINDS[later.kept.item.kind]
                cued = stems(own.cue(later.occasion).words)
                secret = own.secret(later.occasion)
                words = [secret[t.start : t.end] for t in content_words(secret)]
                asked = " ".join(word for word in words if stems(word).isdisjoint(cued))
                assert not half_shown(asked, shown)


@SITTINGS
@given(libraries(), minutes)
def test_what_was_read_today_is_not_asked_again_today(waiting, seconds):
    """A sitting composed anew after every answer keeps to what was seen before."""
    again = {each.id for each in waiting.returning}
    seen = [pages_of(each) for each in waiting.seen if each.id not in again]
    for each in compose(waiting, seconds):
        if each.id not in again:
            assert not any(pages.give_away(pages_of(each)) for pages in seen)


@SITTINGS
@given(libraries(), minutes)
def test_no_item_is_asked_twice_and_the_minutes_hold(waiting, seconds):
    """The time is filled and not overdrawn but by what is owed and what comes round again."""
    ordered = compose(waiting, seconds)
    assert len({each.id for each in ordered}) == len(ordered)
    again = {each.id for each in waiting.returning}
    taken = [each for each in ordered if each.id not in again]
    left = seconds - sum(each.seconds for each in waiting.returning)
    owed = 2 * 20.0
    assert sum(each.seconds for each in taken) <= max(0.0, left) + owed


@SITTINGS
@given(libraries(), minutes)
def test_what_comes_round_again_comes_last(waiting, seconds):
    """What came back blank stands at the end, after all that is asked for the first time today."""
    ordered = [each.id for each in compose(waiting, seconds)]
    again = {each.id for each in waiting.returning}
    places = [place for place, identity in enumerate(ordered) if identity in again]
    assert places == list(range(len(ordered) - len(places), len(ordered)))


@SITTINGS
@given(libraries())
def test_a_commitment_and_something_unasked_are_among_them_where_any_can_be(waiting):
    """With time left and nothing read today, one of each is asked where there is one.

    Unless it and what is asked would each show the other.
    """
    ordered = compose(replace(waiting, seen=[], returning=[]), 600.0)
    everything = [*waiting.due, *waiting.unasked]
    if any(each.kept.item.kind is KindName.RESTATE for each in everything):
        assert any(each.kept.item.kind is KindName.RESTATE for each in ordered)
    if not any(each.kept.memory is None for each in ordered):
        asked = [pages_of(each) for each in ordered]
        for pages in map(pages_of, waiting.unasked):
            assert any(pages.give_away(other) for other in asked)
            assert any(other.give_away(pages) for other in asked)


@settings(max_examples=60)
@given(libraries(), minutes, st.randoms(use_true_random=False))
def test_the_order_things_are_listed_in_changes_nothing(waiting, seconds, random):
    """The sitting depends on what waits, not on how the store listed it."""
    shuffled = {}
    for name in ("due", "unasked", "returning", "seen"):
        listed = list(getattr(waiting, name))
        random.shuffle(listed)
        shuffled[name] = listed
    once, again = compose(waiting, seconds), compose(replace(waiting, **shuffled), seconds)
    assert [each.id for each in once] == [each.id for each in again]


@SITTINGS
@given(libraries(), minutes)
def test_books_take_turns_where_they_can(waiting, seconds):
    """Two of one book follow each other only where nothing of another book could come between."""
    ordered = compose(waiting, seconds)
    again = {each.id for each in waiting.returning}
    front = [each for each in ordered if each.id not in again]
    pages = {each.id: pages_of(each) for each in front}
    for place, (one, other) in enumerate(pairwise(front)):
        if one.book == other.book:
            for later in front[place + 2 :]:
                if later.book != one.book:
                    between = front[place + 1 : front.index(later)]
                    assert any(pages[later.id].give_away(pages[each.id]) for each in between)


@given(digests(), st.integers(-2, 30))
def test_all_kinds_are_let_in_in_turn(digest, places):
    """“All kinds among them”: no kind gets a second more than another with some waiting."""
    unasked = [KeptItem(item, None) for item in items_of(keep(digest, None, new_ids()))]
    chosen = let_in(unasked, places, {})
    assert len(chosen) == max(0, min(places, len(unasked)))
    assert len({each.item.id for each in chosen}) == len(chosen)
    for kind in KINDS:
        mine = [each for each in chosen if each.item.kind is kind]
        waiting = [each for each in unasked if each.item.kind is kind]
        if len(mine) < len(waiting):
            others = [sum(c.item.kind is other for c in chosen) for other in KINDS]
            assert len(mine) >= max(others) - 1
