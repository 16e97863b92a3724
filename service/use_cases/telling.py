"""What is told of a digest, each thing once: a quotation found nowhere is one thing, not two."""

from collections.abc import Iterable

from cards import advice as advised_on
from cards.digest import Notice
from cards.intake import telling as told_of

NOWHERE = (
    "Nothing says where it stands. Add its page or its chapter, or say after which point it stands."
)
"""Told of a quotation without a locator of which nothing says after which point it stands."""


def told_once(
    told: Iterable[Notice], advice: Iterable[Notice] = ()
) -> tuple[tuple[Notice, ...], tuple[Notice, ...]]:
    """Return what the reading of a digest told and what is advised on it, nothing of it twice.

    Order is kept. Only what is shown to a reader is gathered so; programs get every notice.
    """
    told, advice = tuple(told), tuple(advice)
    said = {notice.part for notice in told if notice.message == told_of.NO_LOCATOR}
    advised = {notice.part for notice in advice if notice.message == advised_on.NO_LOCATOR}
    unplaced = {notice.part for notice in told if notice.message == told_of.NO_PLACE}
    nowhere = unplaced & (said | advised)
    gathered = [
        Notice(notice.part, NOWHERE)
        if notice.part in nowhere and notice.message in (told_of.NO_LOCATOR, told_of.NO_PLACE)
        else notice
        for notice in told
    ]
    rest = [
        notice
        for notice in advice
        if notice.message != advised_on.NO_LOCATOR or notice.part not in said | nowhere
    ]
    return tuple(dict.fromkeys(gathered)), tuple(rest)
