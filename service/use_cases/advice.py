"""A reader is told what would make a digest worthier of being kept."""

from cards.advice import advice_on
from cards.digest import Digest, Notice
from service.use_cases.ports import Desk


def advise(desk: Desk, digest: Digest) -> tuple[Notice, ...]:
    """Return advice on a digest, read on the day its book was finished, else today."""
    with desk.store.reading() as work:
        reader = work.readers.get(desk.reader)
    return advice_on(digest, digest.finished_on or reader.days.of(desk.now()))
