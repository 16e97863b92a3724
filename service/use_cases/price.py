"""A reader sees what keeping a book costs before they take it up."""

from collections import Counter
from uuid import UUID

from cards.digest import Digest
from cards.identity import keep
from cards.items import items_of
from cards.kinds.base import KindName
from cards.parts import Care
from cards.schedule import aimed
from cards.sitting import LATEST, Price, pace, price
from service.use_cases.keeping import opened
from service.use_cases.ports import Desk


def price_of(desk: Desk, digest: Digest) -> dict[Care, Price]:
    """Return what the book of a digest would cost at each care, at the reader's own pace."""
    return _priced(desk, Counter(item.kind for item in items_of(keep(digest, None, desk.new_id))))


def price_of_kept(desk: Desk, digest_id: UUID) -> dict[Care, Price]:
    """Return what a book of the library costs at each care, at the reader's own pace.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.reading() as work:
        kept = opened(desk, work, digest_id, None)
    return _priced(desk, Counter(item.kind for item in items_of(kept)))


def _priced(desk: Desk, kinds: Counter[KindName]) -> dict[Care, Price]:
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
        seconds = pace(work.answers.seconds(desk.reader, LATEST))
    return {care: price(kinds, seconds, aimed(reader.target, care)) for care in Care}
