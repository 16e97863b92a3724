"""What the invented reader of the demo library says when asked."""

from random import Random

from cards.answers import Grade
from cards.kinds.base import Answered, Asked, Attempt
from service.use_cases.items import ItemView

_SHARE_SAID = {Grade.BLANK: 0.1, Grade.HAZY: 0.5, Grade.CLEAR: 0.85, Grade.VIVID: 1.0}
_OFF = {Grade.BLANK: 3, Grade.HAZY: 1, Grade.CLEAR: 0, Grade.VIVID: 0}


def invented(chance: Random, item: ItemView, answered: Answered, grade: Grade) -> Attempt:
    """Make up an attempt that deserves a grade: the digest's words thinned out, or a place off."""
    way = item.cue.asked[0] if item.cue else Asked.WORDS
    off = _OFF[grade]
    match way:
        case Asked.GAP | Asked.PAGE | Asked.CHAPTER:
            return _placed(way, answered, off)
        case Asked.ORDER:
            return Attempt(order=_turned(answered.order, off))
        case Asked.BLANKS:
            share = _SHARE_SAID[grade]
            said = (word if chance.random() < share else "" for word in answered.blanks)
            return Attempt(blanks=tuple(said))
        case Asked.BOOK if item.cue is not None:
            wrong = [book.id for book in item.cue.choices if book.id != answered.book]
            return Attempt(book=chance.choice(wrong) if off and wrong else answered.book)
        case _:
            said = (w for w in answered.words.split() if chance.random() < _SHARE_SAID[grade])
            return Attempt(words=" ".join(said))


def _placed(way: Asked, answered: Answered, off: int) -> Attempt:
    if way is Asked.GAP:
        return Attempt(gap=abs((answered.gap or 0) - off))
    if way is Asked.PAGE:
        return Attempt(page=max(1, (answered.page or 1) - 15 * off), landmarks_seen=False)
    return Attempt(chapter=max(1, (answered.chapter or 1) - off))


def _turned(order: tuple[int, ...], pairs: int) -> tuple[int, ...]:
    """Turn the first so many neighbouring pairs of an order round."""
    turned = list(order)
    for place in range(0, min(2 * pairs, len(turned) - 1), 2):
        turned[place], turned[place + 1] = turned[place + 1], turned[place]
    return tuple(turned)
