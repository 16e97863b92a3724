"""`/retention/target`: what each target takes and keeps, and taking one."""

from http import HTTPStatus

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import InvalidPreference, ReaderChanged
from service.pages import fields
from service.pages.fields import MOST_REVISIONS, Fault, Faults
from service.pages.retention import shown
from service.pages.settings import HIGHEST, LOWEST, target_given
from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.retaining import show_retention
from service.use_cases.retention_pictures import PLANNED
from service.use_cases.retention_pictures.targets import proposal_in_words, within_in_words


def install(door: Blueprint, desk: Desk) -> None:
    """Add the planner to the door."""

    @door.get("/retention/target")
    def retention_target() -> str:
        """Show what each target takes and keeps."""
        return _page(desk)

    @door.post("/retention/target")
    def take_target() -> ResponseReturnValue:
        """Aim for another retention from now on."""
        faults: Faults = {}
        target = target_given(faults)
        if not faults:
            try:
                revision = fields.whole(request.form, "revision", "A revision", 1, MOST_REVISIONS)
                set_preferences(desk, Preferences(target=target), revision)
            except (InvalidPreference, ReaderChanged) as refusal:
                faults[refusal.where or "form"] = refusal.message
            except Fault as fault:
                faults["revision"] = fault.message
        if faults:
            return _page(desk, faults), HTTPStatus.UNPROCESSABLE_ENTITY
        return redirect(url_for("pages.retention_target", kept="target"), HTTPStatus.SEE_OTHER)


def _page(desk: Desk, faults: Faults | None = None) -> str:
    retained = show_retention(desk)
    plan, reader = retained.plan, retained.reader
    pictures = {name: made(retained) for name, made in PLANNED.items()}
    return render_template(
        "planning.html",
        retained=retained,
        plan=plan,
        proposed=proposal_in_words(plan.whole, reader.target),
        by_care={
            f"target-{each.care.value}": proposal_in_words(each, reader.target)
            for each in plan.by_care
            if each.care is not None
        },
        within=within_in_words(retained),
        shown={
            name: shown(desk.pictures, picture)
            for name, picture in pictures.items()
            if picture is not None
        },
        revision=reader.revision,
        typed=request.form.get("target") or f"{100 * reader.target:g}",
        lowest=LOWEST,
        highest=HIGHEST,
        faults=faults or {},
        kept_now=request.args.get("kept", ""),
    )
