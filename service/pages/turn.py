"""Where in a sitting the reader is: what is left of it, and what came of what was done last."""

from dataclasses import dataclass
from datetime import date
from uuid import UUID

from flask import request

from cards.commitments import CheckIn
from cards.errors import (
    AnswerMissing,
    CheckInMissing,
    CommitmentMissing,
    DigestMissing,
    ItemMissing,
)
from service.pages import fields
from service.use_cases.answer import ShownAnswer, show_answer
from service.use_cases.check_in import show_check_in
from service.use_cases.commitments import HeldCommitment, open_commitment
from service.use_cases.items import ItemView, show_item
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from service.use_cases.sit import Away, Sitting


@dataclass(frozen=True, slots=True)
class Turn:
    """Where in the sitting the reader is, and what its first line tells.

    Attributes:
        items: how many are still to be asked; 0 when nothing is left.
        seconds: what they are expected to take.
        minutes: the day's sitting takes at the most.
        today: the reader's day.
        last: the answer given just before, or None.
        elsewhere: the item whose answer was not kept, as it had changed meanwhile; or None.
        changed: the item whose cue is another since it was shown; or None.
        gone: the item whose source the digest no longer holds; or None.
        left_out: the item just left out for today; or None.
        mended: the digest just mended; or None.
        checked: the commitment just reported on, with the report; or None.
        decided: the commitment just decided about; or None.
        away: what is said to a reader who comes back after weeks; or None.
    """

    items: int
    seconds: int
    minutes: int
    today: date
    last: ShownAnswer | None = None
    elsewhere: ItemView | None = None
    changed: ItemView | None = None
    gone: ItemView | None = None
    left_out: ItemView | None = None
    mended: UUID | None = None
    checked: tuple[HeldCommitment, CheckIn] | None = None
    decided: HeldCommitment | None = None
    away: Away | None = None


def turn_of(desk: Desk, sitting: Sitting) -> Turn:
    """Return where in a sitting the reader is, by the address and the sitting."""
    out = _item(desk, "left_out")
    return Turn(
        items=len(sitting.items),
        seconds=sitting.seconds,
        minutes=sitting.minutes,
        today=sitting.day,
        last=_answer(desk),
        elsewhere=_item(desk, "elsewhere"),
        changed=_item(desk, "changed"),
        gone=_item(desk, "gone"),
        left_out=out if out and out.kept.item.id in sitting.left_out else None,
        mended=_digest(desk),
        checked=_checked(desk),
        decided=_decided(desk),
        away=sitting.away,
    )


def _answer(desk: Desk) -> ShownAnswer | None:
    answer_id = fields.identity(request.args, "answered")
    if answer_id is None:
        return None
    try:
        return show_answer(desk, answer_id)
    except AnswerMissing:
        return None


def _item(desk: Desk, name: str) -> ItemView | None:
    item_id = fields.identity(request.args, name)
    if item_id is None:
        return None
    try:
        return show_item(desk, item_id)
    except ItemMissing:
        return None


def _digest(desk: Desk) -> UUID | None:
    digest_id = fields.identity(request.args, "mended")
    if digest_id is None:
        return None
    try:
        return open_digest(desk, digest_id).kept.id
    except DigestMissing:
        return None


def _checked(desk: Desk) -> tuple[HeldCommitment, CheckIn] | None:
    check_in_id = fields.identity(request.args, "checked")
    if check_in_id is None:
        return None
    try:
        fact = show_check_in(desk, check_in_id)
        return open_commitment(desk, fact.commitment_id).held, fact
    except (CheckInMissing, CommitmentMissing):
        return None


def _decided(desk: Desk) -> HeldCommitment | None:
    commitment_id = fields.identity(request.args, "decided")
    if commitment_id is None:
        return None
    try:
        return open_commitment(desk, commitment_id).held
    except CommitmentMissing:
        return None
