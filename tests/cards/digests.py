"""Digests for the tests of the core: one realistic, others as short as their test needs."""

from collections.abc import Callable
from itertools import count
from uuid import UUID

from cards.digest import Commitment, Digest, Point, Quotation
from cards.identity import keep
from cards.parts import KeptDigest, Part, PartKind

THEME = (
    "A proud man and a quick-witted woman misjudge each other from the first evening. Each must "
    "learn how far vanity has shaped that judgement. Only when both have been humbled can they "
    "marry as equals."
)
POINTS = (
    Point(
        "Darcy slights Elizabeth at the assembly, and she takes pleasure in disliking him", "ch. 3"
    ),
    Point("Wickham's tale of an old injustice confirms everything she wishes to believe", "p. 80"),
    Point("Darcy proposes without courtesy and is refused without mercy", "p. 189"),
    Point("His letter makes her read her own conduct with shame", "p. 196"),
    Point("Lydia's elopement is mended in secret at his expense", "p. 321"),
)
COMMITMENTS = (
    Commitment("Write to my sister twice a month until Christmas"),
    Commitment("When I catch myself ridiculing a stranger, name 3 merits of theirs aloud"),
    Commitment("Save 10,000 pounds for the house by December"),
)
QUOTATIONS = (
    Quotation("Till this moment I never knew myself", "p. 208", after=4),
    Quotation("It is a truth universally acknowledged", "p. 1", after=0),
    Quotation("You must allow me to tell you how ardently I admire and love you", "ch. 34"),
)
WHOLE = Digest(
    title="Pride and Prejudice",
    author="Jane Austen",
    pages=400,
    theme=THEME,
    points=POINTS,
    commitments=COMMITMENTS,
    quotations=QUOTATIONS,
)


def new_ids(start: int = 1) -> Callable[[], UUID]:
    """Return a maker of ids that counts from `start`."""
    numbers = count(start)
    return lambda: UUID(int=next(numbers))


def kept(digest: Digest = WHOLE, start: int = 1) -> KeptDigest:
    """Return a digest as it is kept the first time."""
    return keep(digest, None, new_ids(start))


def only(kind: PartKind, digest: Digest, number: int = 1) -> tuple[KeptDigest, Part]:
    """Return a kept digest and one of its parts, by its number among its kind."""
    whole = kept(digest)
    return whole, whole.held(kind)[number - 1]


def theme(text: str, **more: object) -> tuple[KeptDigest, Part]:
    """Return a digest whose theme is a text, kept, and the theme."""
    return only(PartKind.THEME, Digest(title="A Book", theme=text, **more))


def commitment(text: str, **more: object) -> tuple[KeptDigest, Part]:
    """Return a digest whose one commitment is a text, kept, and the commitment."""
    return only(PartKind.COMMITMENT, Digest("A Book", commitments=(Commitment(text),), **more))


def quotation(locator: str | None, after: int | None = None, **more: object):
    """Return a digest whose one quotation stands somewhere, kept, and the quotation."""
    placed = Quotation("Words worth keeping for a while", locator, after)
    return only(PartKind.QUOTATION, Digest("A Book", quotations=(placed,), **more))
