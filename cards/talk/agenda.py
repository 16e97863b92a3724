"""The agenda of a talk about one book: its sections, their minutes, what is asked and checked."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from uuid import UUID

from cards.commitments import Stand
from cards.parts import KeptDigest
from cards.talk.lengths import Length, spread
from cards.talk.section import Section
from cards.talk.sections import sections_of


@dataclass(frozen=True, slots=True)
class Agenda:
    """A talk as it is laid out, for paper and screen.

    Attributes:
        digest_id, title, author: of the book.
        length: the minutes it is laid out for.
        sections: in the order they are gone through, each of one minute or more; together they
            take the length.
    """

    digest_id: UUID
    title: str
    author: str | None
    length: Length
    sections: tuple[Section, ...]


def agenda_for(kept: KeptDigest, stands: Mapping[UUID, Stand], length: Length, seed: str) -> Agenda:
    """Lay out a talk about a book.

    Args:
        kept: the digest.
        stands: how its commitments stand, by the ids of their parts; may lack any.
        length: with someone who read the book, or with someone who did not.
        seed: draws which points and quotations stand on the sheet, and in which order.
    """
    sections = sections_of(kept, stands, length, seed)
    minutes = spread(length, {each.stage for each in sections})
    return Agenda(
        kept.id,
        kept.title,
        kept.author,
        length,
        tuple(replace(each, minutes=minutes[each.stage]) for each in sections),
    )
