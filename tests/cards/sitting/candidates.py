"""Candidates for the tests of a sitting: items of digests, remembered or not."""

from datetime import date, timedelta

from cards.answers import Grade
from cards.items import KeptItem, items_of, occasion_of
from cards.schedule import Memory
from cards.sitting import Candidate
from tests.cards.digests import kept

DAY = date(2026, 3, 10)
DIGEST = kept()


def memory(stability=10.0, *, days_ago=10, grade=Grade.CLEAR):
    """Return a memory last answered some days ago."""
    last = DAY - timedelta(days=days_ago)
    return Memory(stability, 5.0, last, last, grade, 1, DAY)


def candidate(kind, number=1, remembered=None, *, digest=DIGEST, worth=1.0, seconds=30.0):
    """Return the item of a kind and number, with its memory and its worth."""
    item = next(i for i in items_of(digest) if i.kind is kind and i.number == number)
    found = KeptItem(item, remembered)
    return Candidate(found, occasion_of(found, digest), worth, seconds)


def names(candidates):
    """Return kinds and numbers, for comparison."""
    return [(each.kept.item.kind.value, each.kept.item.number) for each in candidates]
