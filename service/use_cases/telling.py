"""What is told of a digest, each thing once: a quotation found nowhere is one thing, not two."""

from collections.abc import Iterable
from datetime import date

from cards.advice import advice_on
from cards.digest import Digest, Notice, Point, Quotation
from cards.intake.telling import asked

_BARE = Digest("—", points=(Point("—"),), quotations=(Quotation("—"),))
_NO_LOCATOR, _NO_PLACE = (notice.message for notice in asked(_BARE))
_ADVISED = next(
    notice.message for notice in advice_on(_BARE, date.min) if notice.part == "quotations 1"
)
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
    said = {notice.part for notice in told if notice.message == _NO_LOCATOR}
    advised = {notice.part for notice in advice if notice.message == _ADVISED}
    unplaced = {notice.part for notice in told if notice.message == _NO_PLACE}
    nowhere = unplaced & (said | advised)
    gathered = [
        Notice(notice.part, NOWHERE)
        if notice.part in nowhere and notice.message in (_NO_LOCATOR, _NO_PLACE)
        else notice
        for notice in told
    ]
    rest = [
        notice
        for notice in advice
        if notice.message != _ADVISED or notice.part not in said | nowhere
    ]
    return tuple(dict.fromkeys(gathered)), tuple(rest)
