"""`/drafts/<id>`: a digest that is being written, or looked over before it is kept."""

from dataclasses import replace
from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from cards.errors import CatchwordError, DocumentRefused, DraftChanged, DraftMissing, Invalid
from cards.intake.heading_words import Part
from cards.parts import Care
from service.pages import fields
from service.pages.digest_form import DigestForm, form_from, lay, typed
from service.pages.draft_orders import carried_out
from service.pages.draft_view import DraftView, headings_of, view_of, words_left
from service.pages.fields import MOST_REVISIONS, Fault, Faults
from service.pages.form_digest import FormFaults, digest_from
from service.pages.mending import LARGEST_FORM, MOST
from service.pages.reshaping import CannotReshape
from service.use_cases.add_digest import Kept
from service.use_cases.drafts import begin_draft, change_draft, keep_draft, open_draft
from service.use_cases.headings import set_headings, show_headings
from service.use_cases.looking_over import already_kept, read_again
from service.use_cases.ports import Desk
from service.use_cases.records import Draft

_CHANGED = (
    "This draft was changed elsewhere, in another window or on another device, since it was opened "
    "here. Nothing of either is lost: choose which of the two goes on."
)
_GONE = (
    "This draft was kept or put away elsewhere since it was opened here. What is typed here is "
    "not lost: keep it as a draft anew, or leave it."
)

_KNOWN = (
    "This book is in your library already. Say at the foot of the page whether this corrects it "
    "or is another reading, and keep it once more."
)


def install(door: Blueprint, desk: Desk) -> None:
    """Add the draft's page to the door."""

    @door.get("/drafts/<uuid:draft_id>")
    def draft(draft_id: UUID) -> str:
        """Lay a draft out as a form."""
        kept = open_draft(desk, draft_id)
        form = form_from(kept.typed)
        return page(view_of(desk, draft_id, kept, form, _checked(form)))

    @door.post("/drafts/<uuid:draft_id>")
    def change(draft_id: UUID) -> ResponseReturnValue:
        """Keep what is typed, and do with it what the button asks for."""
        request.max_form_memory_size = LARGEST_FORM
        form = form_from(request.form)
        try:
            kept = _save(desk, draft_id, form)
        except DraftChanged:
            return _conflict(desk, draft_id, form)
        except DraftMissing:
            return _gone(desk, draft_id, form)
        except Invalid as refusal:
            return _faulty(desk, draft_id, _known(desk, draft_id), form, {"form": refusal.message})
        return _done(desk, kept, form)


def _checked(form: DigestForm) -> Faults:
    """Return what keeps a draft from being kept, where the address asks to have it checked."""
    if "check" in request.args:
        try:
            digest_from(form)
        except FormFaults as wrong:
            return wrong.faults
    return {}


def _done(desk: Desk, kept: Draft, form: DigestForm) -> ResponseReturnValue:
    """Do what the button asks for with a draft just saved."""
    order = request.form.get("do", "save")
    match order.partition(" ")[0]:
        case "live":
            return page(view_of(desk, kept.id, kept, form))
        case "keep":
            return _keep(desk, kept, form)
        case "heading":
            return _announce(desk, kept, form, order)
        case _:
            return _reshape(desk, kept, form, order)


def _reshape(desk: Desk, kept: Draft, form: DigestForm, order: str) -> ResponseReturnValue:
    """Reshape a draft, and lead back to the part that was; any other order leads back alone."""
    try:
        reshaped = carried_out(form, order, words_left(form, kept), _cursor())
    except CannotReshape as cannot:
        return _faulty(desk, kept.id, kept, form, {cannot.field: cannot.message})
    if reshaped is None:
        return _back(kept.id)
    change_draft(desk, kept.id, typed(reshaped.form), kept.revision)
    return _back(kept.id, reshaped.at)


def _save(desk: Desk, draft_id: UUID, form: DigestForm) -> Draft:
    """Keep what is typed now, beginning the draft where there is none yet.

    A page that is being closed sends what it has while its last sending is still under
    way, so a revision ahead of the one kept is of the same page, and goes on from it.
    """
    revision = _whole("over")
    if revision is None:
        revision = _whole("revision") or 0
    said = typed(form)
    try:
        known = open_draft(desk, draft_id)
    except DraftMissing:
        if revision == 0:
            return begin_draft(desk, said, draft_id)
        raise
    if dict(known.typed) == said:
        return known
    return change_draft(desk, draft_id, said, min(revision, known.revision))


def _keep(desk: Desk, kept: Draft, form: DigestForm) -> ResponseReturnValue:
    try:
        digest = digest_from(form)
        if "as" not in request.form and already_kept(desk, digest):
            return _faulty(desk, kept.id, kept, form, {"form": _KNOWN})
        added = keep_draft(desk, kept.id, digest, kept_as(), _care())
    except FormFaults as wrong:
        return _faulty(desk, kept.id, kept, form, wrong.faults)
    except Invalid as refusal:
        return _faulty(desk, kept.id, kept, form, {refusal.where or "form": refusal.message})
    address = url_for("pages.book", digest_id=added.kept.id, kept="draft")
    return redirect(address, HTTPStatus.SEE_OTHER)


def kept_as() -> Kept:
    """Return as what the reader keeps a digest of a book already kept."""
    try:
        return Kept(request.form.get("as", Kept.AS_FOUND))
    except ValueError:
        return Kept.AS_FOUND


def _care() -> Care | None:
    try:
        return Care(request.form.get("care", ""))
    except ValueError:
        return None


def _announce(desk: Desk, kept: Draft, form: DigestForm, order: str) -> ResponseReturnValue:
    """Keep a heading of the reader's own, and read the file again with it."""
    source = order.removeprefix("heading ").replace("-", " ")
    words = {**headings_of(kept), **words_left(form, kept)}.get(source, "").strip()
    part = request.form.get(f"{order.removeprefix('heading ')}-part", "")
    if part not in set(Part) or not words:
        field = f"{order.removeprefix('heading ')}-part"
        fault = {field: "Choose the part of a digest that this heading announces."}
        return _faulty(desk, kept.id, kept, form, fault)
    try:
        set_headings(desk, {**show_headings(desk), words: Part(part)})
        read_again(desk, kept.id, lay)
    except (Invalid, DocumentRefused) as refusal:
        return _faulty(desk, kept.id, kept, form, {"form": refusal.message})
    return redirect(url_for("pages.draft", draft_id=kept.id, heading=words), HTTPStatus.SEE_OTHER)


def page(view: DraftView, *, conflict: str = "") -> str:
    """Return the page of a draft: facing pages, or each part beside the words it came from."""
    looked_over = view.draft is not None and view.draft.file is not None
    return render_template(
        "look_over.html" if looked_over else "write.html",
        view=view,
        form=view.form,
        faults=view.faults,
        most=MOST,
        parts=tuple(Part),
        at=request.args.get("at", ""),
        heading=request.args.get("heading", ""),
        chosen_as=request.form.get("as", ""),
        chosen_care=request.form.get("care", ""),
        conflict=conflict,
    )


def _back(draft_id: UUID, at: str | None = None) -> ResponseReturnValue:
    return redirect(url_for("pages.draft", draft_id=draft_id, at=at), HTTPStatus.SEE_OTHER)


def _faulty(
    desk: Desk, draft_id: UUID, kept: Draft | None, form: DigestForm, faults: Faults
) -> ResponseReturnValue:
    view = view_of(desk, draft_id, kept, form, faults)
    return page(view), HTTPStatus.UNPROCESSABLE_ENTITY


def _conflict(desk: Desk, draft_id: UUID, form: DigestForm) -> ResponseReturnValue:
    view = view_of(desk, draft_id, open_draft(desk, draft_id), form)
    return page(view, conflict=_CHANGED), HTTPStatus.CONFLICT


def _gone(desk: Desk, draft_id: UUID, form: DigestForm) -> ResponseReturnValue:
    view = replace(view_of(desk, draft_id, None, form), revision=0)
    return page(view, conflict=_GONE), HTTPStatus.CONFLICT


def _known(desk: Desk, draft_id: UUID) -> Draft | None:
    try:
        return open_draft(desk, draft_id)
    except CatchwordError:
        return None


def _whole(name: str) -> int | None:
    try:
        return fields.whole(request.form, name, "A number", 0, MOST_REVISIONS)
    except Fault:
        return None


def _cursor() -> int | None:
    return _whole("cursor")
