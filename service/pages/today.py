"""`/`: today's sitting, one item at a time."""

from http import HTTPStatus

from flask import Blueprint, render_template, request
from flask.typing import ResponseReturnValue

from cards.commitments import Outcome
from service.pages.asking import ask
from service.pages.books import FORMATS
from service.pages.fields import Faults
from service.pages.turn import Turn, turn_of
from service.use_cases.bringing_up import brought_up
from service.use_cases.drafts import count_drafts
from service.use_cases.items import show_item
from service.use_cases.library import list_digests
from service.use_cases.links import MOST_WHY, offered_today
from service.use_cases.ports import Desk
from service.use_cases.records import MOST_MINUTES
from service.use_cases.sit import Sitting, todays_sitting

MORE = 5
"""Minutes that can be added to a sitting that is done."""
_MOST_LEFT_OUT = 20
"""Items left out for today that are named, the latest ones."""


def install(door: Blueprint, desk: Desk) -> None:
    """Add Today to the door."""

    @door.get("/")
    def today() -> str:
        """Ask the first item of today's sitting, or say that nothing is left to ask."""
        return today_page(desk, {})


def refused(desk: Desk, faults: Faults) -> ResponseReturnValue:
    """Return Today with what is wrong about the minutes that were wanted."""
    return today_page(desk, faults), HTTPStatus.UNPROCESSABLE_ENTITY


def today_page(desk: Desk, faults: Faults) -> str:
    """Return Today: an item asked, the end of the sitting, or how to add a first book."""
    sitting = todays_sitting(desk)
    turn = turn_of(desk, sitting)
    if sitting.items:
        shown = {name: request.args[name] for name in ("plot", "begun") if name in request.args}
        typed = {**shown, **request.form}
        return ask(sitting.items[0], turn, typed, desk.now(), faults)
    if turn.last is None and not list_digests(desk, limit=1).entries:
        return render_template("no_books.html", formats=FORMATS, drafts=count_drafts(desk))
    return _done(desk, sitting, turn, faults)


def _done(desk: Desk, sitting: Sitting, turn: Turn, faults: Faults) -> str:
    more = min(more_minutes(sitting), MOST_MINUTES)
    waits = more > sitting.minutes and bool(todays_sitting(desk, more).items)
    return render_template(
        "done.html",
        turn=turn,
        sitting=sitting,
        more=MORE if waits else 0,
        left_out=[show_item(desk, each) for each in sitting.left_out[-_MOST_LEFT_OUT:]],
        offer=offered_today(desk),
        promise=brought_up(desk),
        outcomes=tuple(Outcome),
        new_id=desk.new_id,
        link_id=desk.new_id(),
        most_why=MOST_WHY,
        linked="linked" in request.args,
        faults=faults,
    )


def more_minutes(sitting: Sitting) -> int:
    """Return the minutes of a day that leave some more for a sitting that is done."""
    return max(sitting.minutes, -(-sitting.spent // 60)) + MORE
