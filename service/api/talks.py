"""Talks: telling another person about a book, and what came of it."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from flask import Response

from cards.errors import CannotPrint, Conflict, DigestMissing, Invalid, InvalidDigest, TalkMissing
from cards.talk import length_of
from service.api import examples
from service.api.desk import desk
from service.api.files import attachment
from service.api.operations import BINARY, Content, Gives, Reply, Resource, Takes
from service.api.talk_shapes import (
    AgendaSchema,
    HeldTalkSchema,
    LengthSchema,
    RecordedTalkSchema,
    TalksSchema,
)
from service.use_cases.talking import HeldTalk, record_talk, talk_sheet, talks_of, withdraw_talk
from service.use_cases.writing_out import file_stem

resource = Resource("talks", "/digests", "Telling another person about a book.")

_PATH = {"digest_id": "Id of the digest."}
_TALK_ID = "5b0e7a0c-6c0d-4f55-9b64-0f7a8f3c2d19"
_GIVEN = {
    "id": _TALK_ID,
    "day": "2026-03-01",
    "listener": "Hanne",
    "minutes": 75,
    "note": "She thinks Eppie too good to be true.",
    "resolved": ["When I am wronged, I will say so within a week."],
    "judgement": None,
}
_TALK = {
    "id": _TALK_ID,
    "digest": examples.DIGEST_ID,
    "day": "2026-03-01",
    "reported_at": "2026-03-01T21:40:00+00:00",
    "listener": "Hanne",
    "minutes": 75,
    "note": "She thinks Eppie too good to be true.",
}
_SECTION = {
    "stage": "order",
    "heading": "The order of the argument",
    "minutes": 20,
    "asked": "Number these as they follow one another in the book.",
    "lines": [{"label": "A", "words": "Eppie comes to his hearth.", "beside": ""}],
    "blank": "number",
    "answers": [{"label": "2 A", "words": "Eppie comes to his hearth.", "beside": "p. 94"}],
    "more": 0,
}
_AGENDA = {
    "digest": examples.DIGEST_ID,
    "title": "Silas Marner",
    "author": "George Eliot",
    "minutes": 80,
    "sections": [_SECTION],
}


@resource.operation(
    "GET /<uuid:digest_id>/talk",
    path=_PATH,
    query=LengthSchema(),
    gives=Gives({HTTPStatus.OK: "The sheet."}, AgendaSchema(), example=_AGENDA),
    refuses=(DigestMissing,),
)
def get_talk(query: dict[str, Any], digest_id: UUID) -> Reply:
    """Lay out a talk about a book.

    The minutes are a proposal; those of what the digest lacks are spread over the rest. The sheet
    stays the same until a talk about the book is recorded.
    """
    return talk_sheet(desk(), digest_id, length_of(query["minutes"])), HTTPStatus.OK, {}


@resource.operation(
    "GET /<uuid:digest_id>/talk/pdf",
    path=_PATH,
    query=LengthSchema(),
    gives=Gives(
        {HTTPStatus.OK: "The file."},
        headers={HTTPStatus.OK: ("Content-Disposition",)},
        contents=(Content("application/pdf", BINARY, "(the bytes of talk-silas-marner.pdf)"),),
    ),
    refuses=(DigestMissing, CannotPrint),
)
def get_talk_pdf(query: dict[str, Any], digest_id: UUID) -> Reply:
    """Take the sheet of a talk as a PDF: one page to talk by, one to check by."""
    agenda = talk_sheet(desk(), digest_id, length_of(query["minutes"]))
    return Response(
        desk().press.talk(agenda),
        content_type="application/pdf",
        headers={"Content-Disposition": attachment(f"talk-{file_stem(agenda.title)}.pdf")},
    )


@resource.operation(
    "GET /<uuid:digest_id>/talks",
    path=_PATH,
    gives=Gives({HTTPStatus.OK: "The talks."}, TalksSchema(), example={"talks": [_TALK]}),
    refuses=(DigestMissing,),
)
def get_talks(digest_id: UUID) -> Reply:
    """List the talks about a book."""
    return {"talks": talks_of(desk(), digest_id)}, HTTPStatus.OK, {}


@resource.operation(
    "POST /<uuid:digest_id>/talks",
    path=_PATH,
    takes=Takes(HeldTalkSchema(), "The talk.", example=_GIVEN),
    gives=Gives(
        {HTTPStatus.CREATED: "It is kept; or it was kept already."},
        RecordedTalkSchema(),
        example={"talk": _TALK, "added": 1},
    ),
    refuses=(DigestMissing, Invalid, InvalidDigest, Conflict),
)
def post_talk(sent: dict[str, Any], digest_id: UUID) -> Reply:
    """Record that a book was talked over.

    A talk is a fact and is never changed; the very same again changes nothing. What was resolved
    goes into the digest, and what that said before is among its versions.
    """
    held = HeldTalk(digest_id=digest_id, **{**sent, "resolved": tuple(sent["resolved"])})
    return record_talk(desk(), held), HTTPStatus.CREATED, {}


@resource.operation(
    "DELETE /<uuid:digest_id>/talks/<uuid:talk_id>",
    path={**_PATH, "talk_id": "Id of the talk."},
    gives=Gives({HTTPStatus.NO_CONTENT: "It is taken back."}),
    refuses=(TalkMissing,),
)
def delete_talk(digest_id: UUID, talk_id: UUID) -> Reply:
    """Take a talk back; what was resolved stays in the digest."""
    withdraw_talk(desk(), digest_id, talk_id)
    return Response(status=HTTPStatus.NO_CONTENT)
