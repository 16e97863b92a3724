"""Properties of a sitting: design, rule 4, “nothing gives away what is still to be asked”."""

from datetime import date, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from cards.identity import keep
from cards.items import KeptItem, items_of
from cards.kinds import KINDS
from cards.kinds.base import Occasion
from cards.schedule import Memory, Schedule
from cards.sitting import Candidate, compose, let_in
from tests.cards.digests import new_ids
from tests.property.strategies import digests, grades

DAY = date(2026, 3, 10)
SCHEDULE = Schedule()


@st.composite
def memories(draw):
    """A memory of an item that is called today: due, or blank earlier today."""
    stability = draw(st.floats(0.01, 5_000))
    last = DAY - timedelta(days=draw(st.one_of(st.just(0), st.integers(1, 2_000))))
    grade = draw(grades)
    return Memory(stability, 5.0, last, last, grade, draw(st.integers(1, 9)), DAY)


@st.composite
def libraries(draw):
    """What is called and what is let in today, from one to three books."""
    called, unasked = [], []
    for number in range(draw(st.integers(1, 3))):
        digest = keep(draw(digests()), None, new_ids(number * 1_000 + 1))
        for item in items_of(digest):
            state = draw(st.sampled_from(["called", "unasked", "resting"]))
            if state == "called":
                called.append(Candidate(KeptItem(item, draw(memories())), digest))
            elif state == "unasked":
                unasked.append(Candidate(KeptItem(item, None), digest))
    return draw(st.permutations(called)), unasked


def asks(candidate):
    """Return the parts an item asks."""
    item = candidate.kept.item
    return KINDS[item.kind].asks(Occasion(candidate.digest, candidate.digest.part(item.part_id)))


def shows(candidate):
    """Return the parts an item's pages show."""
    item = candidate.kept.item
    return KINDS[item.kind].shows(Occasion(candidate.digest, candidate.digest.part(item.part_id)))


def returned(candidate):
    """Tell whether an item was asked earlier today."""
    memory = candidate.kept.memory
    return memory is not None and memory.last_day >= DAY


@given(libraries())
def test_nothing_is_shown_before_what_still_asks_it(library):
    """“Comes after it in the same sitting, or not at all”, what comes round again included."""
    ordered = compose(*library, DAY, SCHEDULE)
    for index, each in enumerate(ordered):
        for later in ordered[index + 1 :]:
            assert shows(each).isdisjoint(asks(later))


@given(libraries())
def test_only_what_would_give_something_away_is_left_out(library):
    """Every item is there once, but for those that show what is still asked for."""
    called, unasked = library
    ordered = compose(called, unasked, DAY, SCHEDULE)
    present = [each.kept.item.id for each in ordered]
    assert len(set(present)) == len(present)
    still_asked = frozenset().union(*(asks(each) for each in ordered))
    for each in (*called, *unasked):
        if each.kept.item.id not in present:
            assert not shows(each).isdisjoint(still_asked)


@given(libraries())
def test_what_comes_round_again_comes_last_and_always(library):
    """“Comes round again at the end of the same sitting until it has come back once”."""
    called, unasked = library
    ordered = compose(called, unasked, DAY, SCHEDULE)
    again = [each for each in called if returned(each)]
    assert {each.kept.item.id for each in ordered[len(ordered) - len(again) :]} == {
        each.kept.item.id for each in again
    }


def place_in(library):
    """Return the place each due item has by its risk alone, the unasked after them."""
    called, unasked = library
    due = [each for each in called if not returned(each)]
    due.sort(key=lambda each: SCHEDULE.recall(each.kept.memory, DAY))
    return [each.kept.item.id for each in (*due, *unasked)]


@settings(max_examples=400)
@given(libraries())
def test_risk_decides_where_nothing_is_given_away(library):
    """“Most at risk first”: an item goes before a riskier one only for an item that waits for it.

    Unless it asks what a riskier item shows (or stands in for one that does), it keeps to
    the order of recall.
    """
    called, unasked = library
    ordered = [each for each in compose(called, unasked, DAY, SCHEDULE) if not returned(each)]
    at_risk = {each.kept.item.id: each for each in ordered}
    wanted = [at_risk[identity] for identity in place_in(library) if identity in at_risk]
    rank = {each.kept.item.id: number for number, each in enumerate(wanted)}
    for index, each in enumerate(ordered):
        riskier = [
            later
            for later in ordered[index + 1 :]
            if rank[later.kept.item.id] < rank[each.kept.item.id] and differs(later, each)
        ]
        if riskier:
            assert any(not asks(each).isdisjoint(shows(later)) for later in ordered[index + 1 :])


def differs(one, other):
    """Tell whether two items are at different risk; at the same either order will do."""
    memories = (one.kept.memory, other.kept.memory)
    if None in memories:
        return True
    return SCHEDULE.recall(memories[0], DAY) != SCHEDULE.recall(memories[1], DAY)


@given(libraries(), st.randoms(use_true_random=False))
def test_the_order_things_are_called_in_changes_nothing(library, random):
    """The sitting depends on what is called, not on how the store listed it."""
    called, unasked = library
    shuffled = list(called)
    random.shuffle(shuffled)
    assert compose(shuffled, unasked, DAY, SCHEDULE) == compose(called, unasked, DAY, SCHEDULE)


@given(digests(), st.integers(-2, 12))
def test_all_kinds_are_let_in_in_turn(digest, places):
    """“All kinds among them”: no kind gets a second more than another with some waiting."""
    unasked = [KeptItem(item, None) for item in items_of(keep(digest, None, new_ids()))]
    chosen = let_in(unasked, places, {})
    assert len(chosen) == max(0, min(places, len(unasked)))
    assert len({each.item.id for each in chosen}) == len(chosen)
    for kind in KINDS:
        waiting = [each for each in unasked if each.item.kind is kind]
        taken = [each for each in chosen if each.item.kind is kind]
        assert taken == waiting[: len(taken)]
        for other in KINDS:
            others = sum(each.item.kind is other for each in chosen)
            if len(taken) < len(waiting):
                assert others <= len(taken) + 1
