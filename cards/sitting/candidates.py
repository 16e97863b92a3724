"""An item that could be asked, and what asking it would show of others."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import ceil
from uuid import UUID

from cards.items import KeptItem
from cards.kinds import KINDS
from cards.kinds.base import Answered, Cue, KindName, Occasion
from cards.kinds.words import stems, substance


@dataclass(frozen=True, slots=True)
class Candidate:
    """An item that could be asked.

    Attributes:
        kept: the item with its memory.
        occasion: its next asking.
        worth: what asking it now keeps of memory for each second it costs, on one scale
            for all (`cards.sitting.worth`).
        seconds: what asking it costs.
    """

    kept: KeptItem
    occasion: Occasion
    worth: float = 0.0
    seconds: float = 30.0

    @property
    def id(self) -> UUID:
        """The item's id."""
        return self.kept.item.id

    @property
    def book(self) -> UUID:
        """The id of its digest."""
        return self.kept.item.digest_id


@dataclass(frozen=True, slots=True)
class Pages:
    """What the two pages of an item ask and show.

    Attributes:
        asks: ids of what is to be recalled: parts, places, orders.
        shows: ids of all that can be read on them.
        secret: stems of the content words to be recalled, those of its own cue left out.
        words: stems of all words on them.
    """

    asks: frozenset[UUID]
    shows: frozenset[UUID]
    secret: frozenset[str]
    words: frozenset[str]

    def give_away(self, later: "Pages") -> bool:
        """Tell whether a reader who has read these pages has read what the later ones ask.

        What counts as showing: the very part, place or order the later item asks; or half of
        the content words it asks for, by stem, two at the least where it has as many.
        """
        if not self.shows.isdisjoint(later.asks):
            return True
        wanted = len(later.secret)
        enough = max(ceil(wanted / 2), min(2, wanted))
        return bool(wanted) and len(self.words & later.secret) >= enough


def pages_of(candidate: Candidate) -> Pages:
    """Return what the pages of an item ask and show, its cue and its answer together."""
    return _pages(candidate.kept.item.kind, candidate.occasion)


# A sitting is composed anew for every page, mostly of the same items.
@lru_cache(maxsize=512)
def _pages(name: KindName, occasion: Occasion) -> Pages:
    kind = KINDS[name]
    cued = stems("\n".join(_shown_by(kind.cue(occasion))))
    secret = kind.secret(occasion)
    wanted = substance(secret) if secret.strip() else frozenset[str]()
    return Pages(
        asks=kind.asks(occasion),
        shows=kind.shows(occasion),
        secret=wanted - cued or wanted,
        words=cued | stems("\n".join(_said_by(kind.answer(occasion)))),
    )


def _shown_by(cue: Cue) -> Sequence[str]:
    choices = [f"{book.title} {book.author or ''}" for book in cue.choices]
    return (cue.words, *cue.pieces, *(mark.text for mark in cue.landmarks), *choices)


def _said_by(answered: Answered) -> Sequence[str]:
    return (answered.words, *answered.blanks)
