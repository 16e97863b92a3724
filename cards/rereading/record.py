"""What is known of a book when it is asked whether to open it again."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from uuid import UUID

from cards.answers import Answer, Grade, in_order
from cards.commitments import Stand
from cards.items import Item, KeptItem
from cards.kinds.base import KindName
from cards.parts import KeptDigest
from cards.rereading.facts import Rereading

CAME_BACK_BADLY = frozenset({Grade.BLANK, Grade.HAZY})


@dataclass(frozen=True)
class BookRecord:
    """A book's digest with everything a re-reading may follow from.

    Attributes:
        digest: as it is kept now.
        items: all its items; retired ones are left out of account.
        answers: of an item the last answers in any order, at least the last two of those of
            which `answers_tell` is true; others may be missing.
        stands: how its commitments stand, by part.
        rereadings: of this book, in any order; those taken back are left out of account.
    """

    digest: KeptDigest
    items: Sequence[KeptItem] = ()
    answers: Mapping[UUID, Sequence[Answer]] = field(default_factory=dict)
    stands: Mapping[UUID, Stand] = field(default_factory=dict)
    rereadings: Sequence[Rereading] = ()

    @cached_property
    def asked(self) -> list[KeptItem]:
        """The items it makes now, by kind and number."""
        held = (each for each in self.items if not each.item.retired)
        return sorted(held, key=lambda each: (each.item.kind, each.item.number, each.item.id.bytes))

    @cached_property
    def last_reread(self) -> Rereading | None:
        """The re-reading of the latest day, or None."""
        standing = [each for each in self.rereadings if each.withdrawn_on is None]
        return max(standing, key=lambda each: (each.day, each.id.bytes), default=None)

    def since_reread(self, item: Item) -> list[Answer]:
        """Return the answers to an item the book was not read again after, in their order."""
        answers = in_order(self.answers.get(item.id, ()))
        read = self.last_reread
        return [each for each in answers if read is None or read.before(each)]


def answers_tell(kept: KeptItem) -> bool:
    """Tell whether the answers to an item are looked at one by one, not its last grade alone."""
    return (
        not kept.item.retired
        and kept.item.kind in {KindName.THEME, KindName.PLACE}
        and kept.memory is not None
        and kept.memory.last_grade in CAME_BACK_BADLY
    )
