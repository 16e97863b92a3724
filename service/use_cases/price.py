"""A reader sees what keeping a book costs before they take it up."""

from collections import Counter
from collections.abc import Mapping
from uuid import UUID

from cards.digest import Digest
from cards.identity import keep
from cards.items import items_of
from cards.kinds.base import KindName
from cards.parts import Care
from cards.schedule import aimed
from cards.sitting import LATEST, Price, pace, price
from service.use_cases.keeping import opened
from service.use_cases.ports import Desk, UnitOfWork


def price_of(desk: Desk, digest: Digest) -> dict[Care, Price]:
    """Return what the book of a digest would cost at each care, at the reader's own pace.

    Put to rest at once it costs nothing: none of its items is let in.
    """
    every = Counter(item.kind for item in items_of(keep(digest, None, desk.new_id)))
    with desk.store.reading() as work:
        return _priced(desk, work, every, Counter())


def price_of_kept(desk: Desk, digest_id: UUID) -> dict[Care, Price]:
    """Return what a book of the library costs at each care, at the reader's own pace.

    Every item is counted from its first asking on, as if none had come yet; at rest, only
    those that were asked before.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.reading() as work:
        every = Counter(item.kind for item in items_of(opened(desk, work, digest_id, None)))
        asked = Counter(
            each.item.kind
            for each in work.items.of_digest(desk.reader, digest_id)
            if each.memory is not None and not each.item.retired
        )
        return _priced(desk, work, every, asked)


def _priced(
    desk: Desk, work: UnitOfWork, every: Counter[KindName], asked: Counter[KindName]
) -> dict[Care, Price]:
    """Return the prices of all items, and at rest of those asked: the rest are not let in."""
    reader = work.readers.get(desk.reader)
    seconds = pace(work.answers.seconds(desk.reader, LATEST))
    return {
        care: price(
            asked if care is Care.RESTING else every,
            seconds,
            aimed(reader.target, care),
            reader.weighting,
        )
        for care in Care
    }


def prices_in_words(prices: Mapping[Care, Price]) -> dict[Care, str]:
    """Return what keeping a book costs at each care, in words; nothing where it costs nothing."""
    if not any(minutes for price in prices.values() for minutes in price.minutes_a_day):
        return {}
    return {care: price_in_words(price) for care, price in prices.items()}


_MINUTE = 60
_HALF_MINUTES_UP_TO = 10


def price_in_words(price: Price) -> str:
    """Return what keeping a book costs, in the first of five years and in the last."""
    first, last = _a_day(price.first_year), _a_day(price.last_year)
    if first == last:
        return f"{first} a day"
    return f"{first} a day in the first year, {last} in the fifth"


def _a_day(minutes: float) -> str:
    seconds = round(minutes * _MINUTE)
    if seconds == 0:
        return "less than a second" if minutes > 0 else "nothing"
    if seconds < _MINUTE:
        return f"{seconds} seconds" if seconds > 1 else "a second"
    rounded = round(minutes * 2) / 2 if minutes < _HALF_MINUTES_UP_TO else round(minutes)
    return f"{rounded:g} minutes" if rounded != 1 else "a minute"
