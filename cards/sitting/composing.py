"""Today's sitting: which items, and in which order, for the seconds that are left."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass, field
from uuid import UUID

from cards.kinds.base import KindName
from cards.sitting.candidates import Candidate, Pages, pages_of


@dataclass(frozen=True, slots=True)
class Waiting:
    """What a sitting is composed from.

    Attributes:
        due: items asked before and due, not asked today.
        unasked: items that may be let in today.
        commitments: `restate` items asked before, due or not, of which one is always asked.
        pressing: of such items by id how much what they ask wants a word of the reader, where
            it does; what wants it most is the one that is asked.
        returning: what came back blank today and comes round again.
        seen: items whose pages were read today.
        unasked_owed: whether nothing unasked was let in today yet.
        commitment_owed: whether no commitment was asked today yet.
        last_book: of the item asked last, so that the next is of another.
    """

    due: Sequence[Candidate]
    unasked: Sequence[Candidate] = ()
    commitments: Sequence[Candidate] = ()
    pressing: Mapping[UUID, int] = field(default_factory=dict)
    returning: Sequence[Candidate] = ()
    seen: Sequence[Candidate] = ()
    unasked_owed: bool = True
    commitment_owed: bool = True
    last_book: UUID | None = None


def compose(waiting: Waiting, seconds: float) -> list[Candidate]:
    """Return what is asked today, in order, for the seconds that are left of it.

    One unasked item and one commitment come first into the sitting, of the commitments the one
    that wants a word most, then whatever is worth most for the seconds it costs, until they are
    filled. No page shows what a later item asks:
    an item that would show it comes after that item, or not at all today; what was seen
    earlier today is not asked any more. Books take turns. What came back blank today comes
    round again at the end, and until it has come back nothing shows it.

    The first item is taken however long it takes; a sitting without time left asks only
    what comes round again.
    """
    returning = sorted(waiting.returning, key=_best_first)
    chosen = _Chosen(waiting, returning, seconds)
    chosen.take_in()
    ordered = list(_in_order(chosen.taken, chosen.pages, waiting.last_book, chosen.owed))
    last = ordered[-1].book if ordered else waiting.last_book
    return [*ordered, *_in_order(returning, chosen.pages, last)]


class _Chosen:
    """The items taken into a sitting, one by one."""

    def __init__(self, waiting: Waiting, returning: Sequence[Candidate], seconds: float) -> None:
        self._waiting = waiting
        self._left = seconds - sum(each.seconds for each in returning)
        self.pages: dict[UUID, Pages] = {each.id: pages_of(each) for each in returning}
        self._asked_again = [self.pages[each.id] for each in returning]
        again = {each.id for each in returning}
        self._seen = [pages_of(each) for each in waiting.seen if each.id not in again]
        self.taken: list[Candidate] = []
        self.owed: set[UUID] = set()

    def take_in(self) -> None:
        """Take one commitment and one unasked item, then the best until the time is filled."""
        if self._left <= 0:
            return
        due = sorted(self._waiting.due, key=_best_first)
        unasked = sorted(self._waiting.unasked, key=_best_first)
        if self._waiting.commitment_owed:
            due_ones = [each for each in due if each.kept.item.kind is KindName.RESTATE]
            new_ones = [each for each in unasked if each.kept.item.kind is KindName.RESTATE]
            wanted = self._waiting.pressing
            self._first(
                sorted(
                    (*due_ones, *self._waiting.commitments, *new_ones),
                    key=lambda each: -wanted.get(each.id, 0),
                )
            )
        if self._waiting.unasked_owed and not any(each.kept.memory is None for each in self.taken):
            self._first(unasked)
        for each in sorted((*due, *unasked), key=_best_first):
            if self._left <= 0:
                return
            if each.seconds <= self._left:
                self._take(each)

    def _first(self, candidates: Iterable[Candidate]) -> None:
        """Take the first that can be; an owed item fits as long as any time is left."""
        if self._left > 0 and any(self._take(each) for each in candidates):
            self.owed.add(self.taken[-1].id)

    def _take(self, candidate: Candidate) -> bool:
        """Take an item in, unless something read today gives it away, or it and another cannot."""
        if any(candidate.id == each.id for each in self.taken) or candidate.id in self.pages:
            return False
        pages = pages_of(candidate)
        if any(seen.give_away(pages) for seen in self._seen):
            return False
        if any(pages.give_away(again) for again in self._asked_again):
            return False
        for other in self.taken:
            theirs = self.pages[other.id]
            if pages.give_away(theirs) and theirs.give_away(pages):
                return False
        self.taken.append(candidate)
        self.pages[candidate.id] = pages
        self._left -= candidate.seconds
        return True


def _best_first(candidate: Candidate) -> tuple[float, UUID]:
    return -candidate.worth, candidate.id


def _in_order(
    candidates: Sequence[Candidate],
    pages: dict[UUID, Pages],
    last: UUID | None,
    owed: AbstractSet[UUID] = frozenset(),
) -> Iterator[Candidate]:
    """Yield items so that none shows what a later one asks, and books take turns.

    Of what may come now, one of another book than the last is taken, from the book with
    most still to come, so that none is left over to follow itself. Where some would all
    show what others of them ask, the one worth least is left out for the day, one that is
    owed last of all.
    """
    left = {each.id: each for each in candidates}
    waits_for = {
        each.id: {
            other.id
            for other in candidates
            if other.id != each.id and pages[each.id].give_away(pages[other.id])
        }
        for each in candidates
    }

    def worst(each: Candidate) -> tuple[bool, tuple[float, UUID]]:
        return each.id not in owed, _best_first(each)

    while left:
        free = [each for each in left.values() if waits_for[each.id].isdisjoint(left)]
        if not free:
            del left[max(left.values(), key=worst).id]
            continue
        waiting = Counter(each.book for each in left.values())

        def turn(
            each: Candidate, last: UUID | None = last, waiting: Counter[UUID] = waiting
        ) -> tuple[bool, int, tuple[float, UUID]]:
            return each.book == last, -waiting[each.book], _best_first(each)

        chosen = min(free, key=turn)
        last = chosen.book
        del left[chosen.id]
        yield chosen
