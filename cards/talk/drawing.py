"""What of a digest is drawn for a talk, and in which order it stands on the sheet."""

from collections.abc import Sequence
from hashlib import blake2b
from math import ceil
from typing import TypeVar

from cards.kinds.words import held, substance
from cards.parts import KeptDigest, Part, PartKind

_T = TypeVar("_T")


def shows(words: str, theme: str | None) -> bool:
    """Tell whether words show a theme that is to be told with the digest closed.

    As everywhere here: half of its content words, by stem, two at the least where it has as
    many (`cards.sitting.candidates`).
    """
    if theme is None:
        return False
    wanted = substance(theme)
    return len(held(wanted, words)) >= max(ceil(len(wanted) / 2), min(2, len(wanted)))


def on_the_sheet(kept: KeptDigest, kind: PartKind) -> tuple[Part, ...]:
    """Return the parts of one kind that may be read while the theme is still to be told."""
    theme = theme_of(kept)
    return tuple(part for part in kept.held(kind) if not shows(part.text, theme))


def theme_of(kept: KeptDigest) -> str | None:
    """Return the words of the theme, or None when the digest has none."""
    return next((part.text for part in kept.held(PartKind.THEME)), None)


def drawn(among: Sequence[_T], count: int, seed: str) -> tuple[_T, ...]:
    """Return `count` of a sequence, in its order, one drawn from each of as many stretches."""
    size = len(among)
    if size <= count:
        return tuple(among)
    bounds = [(part * size // count, (part + 1) * size // count) for part in range(count)]
    return tuple(among[a + _lot(seed, a) % (b - a)] for a, b in bounds)


def shuffled(among: Sequence[_T], seed: str) -> tuple[_T, ...]:
    """Return a sequence in an order the seed draws, never its own where it has two or more."""
    order = sorted(range(len(among)), key=lambda place: _lot(seed, place))
    if len(order) > 1 and order == sorted(order):
        order = [*order[1:], order[0]]
    return tuple(among[place] for place in order)


def _lot(seed: str, what: int) -> int:
    """Return a number up to 2**64 hashed from the seed, so that every device draws the same."""
    person = b"lots of a talk"
    return int.from_bytes(
        blake2b(f"{seed} {what}".encode(), digest_size=8, person=person).digest(), "big"
    )
