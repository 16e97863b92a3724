"""`/reader/headings`: the reader's own heading words, added and taken out on the settings page."""

from http import HTTPStatus

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import Invalid
from cards.intake.heading_words import Part
from service.pages import fields
from service.pages.fields import Faults
from service.pages.settings import as_form, page
from service.use_cases.headings import set_headings, show_headings
from service.use_cases.ports import Desk


def install(door: Blueprint, desk: Desk) -> None:
    """Add the headings to the door."""

    @door.post("/reader/headings")
    def add_heading() -> ResponseReturnValue:
        """Keep one more heading of the reader's own."""
        fault = _added(desk)
        if fault:
            return page(desk, as_form(desk), fault), HTTPStatus.UNPROCESSABLE_ENTITY
        return _back()

    @door.post("/reader/headings/out")
    def take_heading_out() -> ResponseReturnValue:
        """Take one of the reader's own headings out."""
        word = request.form.get("heading", "")
        words = {each: part for each, part in show_headings(desk).items() if each != word}
        set_headings(desk, words)
        return _back()


def _added(desk: Desk) -> Faults:
    """Keep the heading that was sent, and return what is wrong with it instead."""
    word = fields.text(request.form, "heading").strip()
    part = request.form.get("part", "")
    if not word:
        return {"heading": "Write the heading as it stands in your digests."}
    if part not in set(Part):
        return {"part": "Choose the part of a digest that this heading announces."}
    try:
        set_headings(desk, {**show_headings(desk), word: Part(part)})
    except Invalid as refusal:
        return {"heading": refusal.message}
    return {}


def _back() -> ResponseReturnValue:
    address = url_for("pages.reader", kept="headings", _anchor="headings")
    return redirect(address, HTTPStatus.SEE_OTHER)
