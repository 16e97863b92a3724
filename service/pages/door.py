"""How the pages are joined into one door."""

from flask import Blueprint, Flask

from service.pages import (
    annotations,
    answering,
    archive,
    bibliography,
    book,
    books,
    calendar,
    care,
    checking_in,
    commitments,
    comparing,
    deciding,
    drafts,
    exports,
    leaving_out,
    links,
    looking_over,
    mending,
    minutes,
    own_headings,
    places,
    planning,
    proof,
    readings,
    reminders,
    removing,
    rereading,
    retention,
    review,
    settings,
    sheets,
    static,
    taking_out,
    talk,
    today,
    versions,
    wording,
    writing,
)
from service.use_cases.ports import Desk

_PAGES = (
    today,
    comparing,
    answering,
    leaving_out,
    minutes,
    sheets,
    books,
    writing,
    drafts,
    looking_over,
    book,
    mending,
    places,
    versions,
    care,
    links,
    readings,
    proof,
    annotations,
    bibliography,
    taking_out,
    removing,
    talk,
    commitments,
    checking_in,
    deciding,
    review,
    rereading,
    retention,
    planning,
    settings,
    reminders,
    calendar,
    own_headings,
    exports,
    archive,
)


def install(app: Flask, desk: Desk) -> None:
    """Open the pages on an application, all of them over one desk."""
    door = Blueprint("pages", __name__, template_folder="templates")
    for page in _PAGES:
        page.install(door, desk)
    static.install(door)
    app.register_blueprint(door)
    app.jinja_env.globals.update(demo=desk.demo, static_address=static.address)
    app.jinja_env.filters.update(wording.FILTERS)
