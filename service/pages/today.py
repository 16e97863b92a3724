"""`/`: today's sitting, one item at a time."""

from flask import Blueprint, render_template, request

from service.pages.asking import ask, turn_of
from service.pages.books import FORMATS
from service.use_cases.drafts import count_drafts
from service.use_cases.library import list_digests
from service.use_cases.ports import Desk
from service.use_cases.sit import todays_sitting


def install(door: Blueprint, desk: Desk) -> None:
    """Add Today to the door."""

    @door.get("/")
    def today() -> str:
        """Ask the first item of today's sitting, or say that nothing is left to ask."""
        sitting = todays_sitting(desk)
        turn = turn_of(desk, sitting)
        if sitting.items:
            return ask(sitting.items[0], turn, {"plot": request.args.get("plot", "")})
        if turn.last is None and not list_digests(desk, limit=1).entries:
            return render_template("no_books.html", formats=FORMATS, drafts=count_drafts(desk))
        return render_template("done.html", turn=turn, next_on=sitting.next_on)
