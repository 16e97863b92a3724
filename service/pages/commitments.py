"""`/commitments` and `/commitments/over`: what the books asked, how it stands, what came of it."""

from collections.abc import Sequence
from uuid import UUID

from flask import Blueprint, render_template, request

from cards.commitments import LIVE, Outcome, Pace
from cards.errors import CheckInMissing
from service.pages import fields, shelf_places
from service.pages.fields import Fault
from service.use_cases.check_in import show_check_in
from service.use_cases.commitments import (
    AllCommitments,
    HeldCommitment,
    all_commitments,
    list_commitments,
    tallied,
)
from service.use_cases.ports import Desk

BOOKS = 25
"""Books on one page of what is over: as many as on one page of the library."""
UNSETTLED = 5
"""Commitments that are over and wait for a word, shown at once; the others wait in their list."""
AT_ONCE = 100
"""Commitments still asked that are shown at once: more than a reader looks through in one go."""
_WANTING = (Pace.STALLED, Pace.SLIPPING)
_ASKED = (*_WANTING, Pace.ON_COURSE, Pace.PAUSED)
_WAITING = (Pace.UNJUDGED, Pace.ENDED, Pace.DONE)


def install(door: Blueprint, desk: Desk) -> None:
    """Add the lists of commitments to the door."""

    @door.get("/commitments")
    def commitments() -> str:
        """Show what is still asked, what wants a word first, and what is over and waits for one.

        Of very many so many at once; one just checked in on is on the page that is shown.
        """
        found = all_commitments(desk)
        checked = fields.identity(request.args, "checked")
        commitment_id = _commitment_of(desk, checked)
        live = [each for pace in _ASKED for each in found.by_pace.get(pace, ())]
        first = _first(live, commitment_id)
        those = tallied(desk, live[first : first + AT_ONCE])
        waiting = [
            each
            for pace in _WAITING
            for each in found.by_pace.get(pace, ())
            if each.stand is not None and not each.stand.settled
        ]
        shown = [] if first else waiting[:UNSETTLED]
        return render_template(
            "commitments.html",
            day=found.day,
            wanting=[each for each in those if _pace(each) in _WANTING],
            going=[each for each in those if _pace(each) is Pace.ON_COURSE],
            paused=[each for each in those if _pace(each) is Pace.PAUSED],
            first=first,
            next=first + AT_ONCE if first + AT_ONCE < len(live) else None,
            waiting=tallied(desk, shown),
            waiting_more=max(0, len(waiting) - UNSETTLED),
            over=sum(len(those) for pace, those in found.by_pace.items() if pace not in LIVE),
            any=bool(found.by_pace),
            outcomes=tuple(Outcome),
            new_id=desk.new_id,
            checked=checked,
            elsewhere=_elsewhere(desk, found, [*those, *shown], commitment_id),
        )

    @door.get("/commitments/over")
    def commitments_over() -> str:
        """Show what is over, of one page of the library, with what came of it."""
        after = request.args.get("after")
        page = list_commitments(desk, shelf_places.read(after), BOOKS)
        return render_template(
            "over.html",
            commitments=[each for each in page.commitments if _over(each)],
            day=page.day,
            after=after,
            next=shelf_places.written(page.next),
        )


def _pace(held: HeldCommitment) -> Pace | None:
    return None if held.stand is None else held.stand.pace


def _commitment_of(desk: Desk, check_in_id: UUID | None) -> UUID | None:
    try:
        return None if check_in_id is None else show_check_in(desk, check_in_id).commitment_id
    except CheckInMissing:
        return None


def _elsewhere(
    desk: Desk, found: AllCommitments, shown: Sequence[HeldCommitment], commitment_id: UUID | None
) -> HeldCommitment | None:
    """Return the commitment just checked in on where the page does not show it: it may be over."""
    if commitment_id is None or any(each.id == commitment_id for each in shown):
        return None
    every = (each for those in found.by_pace.values() for each in those)
    named = [each for each in every if each.id == commitment_id]
    return tallied(desk, named)[0] if named else None


def _first(live: Sequence[HeldCommitment], checked: UUID | None) -> int:
    """Return from which on those still asked are shown: as said, or where one was checked in on."""
    try:
        return fields.whole(request.args, "from", "The first", 0, len(live)) or _of(live, checked)
    except Fault:
        return 0


def _of(live: Sequence[HeldCommitment], checked: UUID | None) -> int:
    for place, each in enumerate(live):
        if each.id == checked:
            return place // AT_ONCE * AT_ONCE
    return 0


def _over(held: HeldCommitment) -> bool:
    return held.stand is not None and held.stand.pace not in LIVE
