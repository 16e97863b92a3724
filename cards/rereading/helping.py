"""Whether reading again helped: what came back before, and since."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from uuid import UUID

from cards.answers import Answer, Grade, in_order
from cards.commitments.day_words import in_letters
from cards.rereading.facts import Rereading


@dataclass(frozen=True, slots=True)
class Share:
    """How many items came back of those asked; back is any grade but `blank`."""

    recalled: int
    asked: int


@dataclass(frozen=True, slots=True)
class Helped:
    """What a re-reading came to.

    Only items asked both before and after it are counted, so that the two compare. They were
    chosen because they had not come back, and some would have without it.

    Attributes:
        before: by the last answer before it.
        after: by the first answer after it.
        waiting: items asked before it and not yet after.
        sentence: that, said to the reader.
    """

    before: Share
    after: Share
    waiting: int
    sentence: str


def helped(rereading: Rereading, answers: Mapping[UUID, Sequence[Answer]]) -> Helped:
    """Return what a re-reading came to, from the answers to the items it was for.

    Args:
        rereading: the fact.
        answers: by item, in any order, as many as are known; items it was not for are ignored.
    """
    before = after = both = waiting = 0
    for item in dict.fromkeys(rereading.items):
        ordered = in_order(answers.get(item, ()))
        earlier = [each for each in ordered if not rereading.before(each)]
        later = [each for each in ordered if rereading.before(each)]
        if earlier and later:
            both += 1
            before += earlier[-1].grade is not Grade.BLANK
            after += later[0].grade is not Grade.BLANK
        elif earlier:
            waiting += 1
    sentence = _sentence(both, before, after, waiting)
    return Helped(Share(before, both), Share(after, both), waiting, sentence)


def _sentence(both: int, before: int, after: int, waiting: int) -> str:
    if not both:
        if not waiting:
            return "Nothing asked before it was concerned, so there is nothing to compare."
        still = f"{in_letters(waiting)} {'item is' if waiting == 1 else 'items are'}"
        return f"Too soon to say: {still} still to be asked."
    asked = "the one item asked again" if both == 1 else f"the {in_letters(both)} items asked again"
    told = f"Of {asked}, {_some(before)} came back before and {_some(after)} since"
    return told + (f"; {in_letters(waiting)} still to be asked." if waiting else ".")


def _some(number: int) -> str:
    return in_letters(number) if number else "none"
