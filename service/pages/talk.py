"""`/books/<id>/talk`: telling another person about a book, and what came of it."""

from http import HTTPStatus
from io import BytesIO
from uuid import UUID

from flask import Blueprint, Response, redirect, render_template, request, send_file, url_for
from flask.typing import ResponseReturnValue

from cards.errors import Conflict, Invalid
from cards.talk import Length, length_of
from cards.talk.facts import MAX_LISTENER, MAX_NOTE, MOST_MINUTES
from service.pages import fields
from service.pages.fields import Faults
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from service.use_cases.preferences import show_reader
from service.use_cases.talking import HeldTalk, record_talk, talk_sheet, talks_of, withdraw_talk
from service.use_cases.writing_out import file_stem

_FIELDS = {"listener", "day", "minutes", "note", "resolved", "judgement"}
_OF_A_PART = {"commitments": "resolved"}
"""The field that holds what a digest refuses of a part."""
_KEPT = {"talk": "The talk is kept.", "withdrawn": "The talk is taken back."}


def install(door: Blueprint, desk: Desk) -> None:
    """Add the talks to the door."""

    @door.get("/books/<uuid:digest_id>/talk")
    def talk(digest_id: UUID) -> str:
        """Show the sheet of a talk, and take what came of one."""
        return _page(desk, digest_id, {})

    @door.get("/books/<uuid:digest_id>/talk.pdf")
    def talk_pdf(digest_id: UUID) -> Response:
        """Hand out the sheet to print; it opens in the browser."""
        agenda = talk_sheet(desk, digest_id, _length())
        return send_file(
            BytesIO(desk.press.talk(agenda)),
            mimetype="application/pdf",
            download_name=f"talk-{file_stem(agenda.title)}.pdf",
        )

    @door.post("/books/<uuid:digest_id>/talks")
    def keep_talk(digest_id: UUID) -> ResponseReturnValue:
        """Keep that the book was talked over, and take what was resolved into the digest."""
        faults: Faults = {}
        held = _held(desk, digest_id, faults)
        if not faults:
            try:
                record_talk(desk, held)
            except (Invalid, Conflict) as refusal:
                part = (refusal.where or "").split(" ")[0]
                field = _OF_A_PART.get(part, part)
                faults[field if field in _FIELDS else "form"] = refusal.message
            else:
                return _back(digest_id, "talk")
        return _page(desk, digest_id, faults), HTTPStatus.UNPROCESSABLE_ENTITY

    @door.post("/books/<uuid:digest_id>/talks/<uuid:talk_id>/withdrawal")
    def take_talk_back(digest_id: UUID, talk_id: UUID) -> ResponseReturnValue:
        """Take a talk back."""
        withdraw_talk(desk, digest_id, talk_id)
        return _back(digest_id, "withdrawn")


def _length() -> Length:
    written = request.args.get("minutes", str(int(Length.READ_IT)))
    return length_of(int(written) if written in {str(int(each)) for each in Length} else 0)


def _held(desk: Desk, digest_id: UUID, faults: Faults) -> HeldTalk:
    form = request.form
    day = fields.taken(faults, lambda: fields.day(form, "day"))
    minutes = fields.taken(
        faults,
        lambda: fields.whole(form, "minutes", "The number of minutes", 1, MOST_MINUTES),
    )
    return HeldTalk(
        id=fields.identity(form, "talk") or desk.new_id(),
        digest_id=digest_id,
        day=day,
        listener=fields.text(form, "listener").strip(),
        minutes=minutes,
        note=fields.text(form, "note").strip(),
        resolved=tuple(fields.text(form, "resolved").split("\n")),
        judgement=fields.optional(form, "judgement"),
        revision=fields.revision(form) or None,
    )


def _back(digest_id: UUID, kept: str) -> ResponseReturnValue:
    return redirect(url_for("pages.talk", digest_id=digest_id, kept=kept), HTTPStatus.SEE_OTHER)


def _page(desk: Desk, digest_id: UUID, faults: Faults) -> str:
    kept = open_digest(desk, digest_id).kept
    return render_template(
        "talk.html",
        kept=kept,
        agenda=talk_sheet(desk, digest_id, _length()),
        read_it=Length.READ_IT,
        lengths={Length.READ_IT: "who read the book", Length.DID_NOT: "who did not"},
        talks=talks_of(desk, digest_id),
        today=show_reader(desk).days.of(desk.now()),
        form=request.form,
        faults=faults,
        talk_id=request.form.get("talk") or desk.new_id(),
        said=_KEPT.get(request.args.get("kept", "")),
        most_listener=MAX_LISTENER,
        most_note=MAX_NOTE,
    )
