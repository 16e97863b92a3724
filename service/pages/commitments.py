"""`/commitments` and `/commitments/over`: what the books asked, how it stands, what came of it."""

from flask import Blueprint, render_template, request

from cards.commitments import LIVE, Outcome, Pace
from service.pages import fields, shelf_places
from service.use_cases.commitments import HeldCommitment, all_commitments, list_commitments
from service.use_cases.ports import Desk

BOOKS = 25
"""Books on one page of what is over: as many as on one page of the library."""
UNSETTLED = 5
"""Commitments that are over and wait for a word, shown at once; the others wait in their list."""
_WANTING = (Pace.STALLED, Pace.SLIPPING)
_WAITING = (Pace.UNJUDGED, Pace.ENDED, Pace.DONE)


def install(door: Blueprint, desk: Desk) -> None:
    """Add the lists of commitments to the door."""

    @door.get("/commitments")
    def commitments() -> str:
        """Show what is still asked, what wants a word first, and what is over and waits for one."""
        found = all_commitments(desk)
        waiting = [
            each
            for pace in _WAITING
            for each in found.by_pace.get(pace, ())
            if each.stand is not None and not each.stand.settled
        ]
        return render_template(
            "commitments.html",
            day=found.day,
            wanting=[each for pace in _WANTING for each in found.by_pace.get(pace, ())],
            going=found.by_pace.get(Pace.ON_COURSE, ()),
            paused=found.by_pace.get(Pace.PAUSED, ()),
            waiting=waiting[:UNSETTLED],
            waiting_more=max(0, len(waiting) - UNSETTLED),
            over=sum(len(those) for pace, those in found.by_pace.items() if pace not in LIVE),
            any=bool(found.by_pace),
            outcomes=tuple(Outcome),
            new_id=desk.new_id,
            checked=fields.identity(request.args, "checked"),
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


def _over(held: HeldCommitment) -> bool:
    return held.stand is not None and held.stand.pace not in LIVE
