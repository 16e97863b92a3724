"""Answers: recorded, looked at, taken back."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from cards.errors import (
    AnswerConflict,
    AnswerInFuture,
    AnswerMissing,
    InvalidAnswer,
    ItemMissing,
)
from cards.items import KeptItem
from service.api import examples
from service.api.answer_shapes import (
    GivenAnswerSchema,
    RecordedAnswerSchema,
    ShownAnswerSchema,
    TakenBackSchema,
    kept_answer,
)
from service.api.comparison_shapes import attempt_of
from service.api.desk import desk
from service.api.operations import Gives, Reply, Resource, Takes
from service.use_cases.answer import record_answer, show_answer, take_back
from service.use_cases.recording import GivenAnswer
from service.use_cases.records import KeptAnswer

resource = Resource("answers", "/answers", "How well items came back, each a fact.")

_PATH = {"answer_id": "Id of the answer."}


@resource.operation(
    "POST",
    takes=Takes(GivenAnswerSchema(), "The answer.", example=examples.GIVEN),
    gives=Gives(
        {
            HTTPStatus.CREATED: "The answer is kept.",
            HTTPStatus.OK: "The very same answer was kept already; nothing was changed.",
        },
        RecordedAnswerSchema(),
        example=examples.RECORDED,
        headers={HTTPStatus.CREATED: ("Location",), HTTPStatus.OK: ("Location",)},
    ),
    refuses=(ItemMissing, AnswerInFuture, InvalidAnswer, AnswerConflict),
)
def post_answer(sent: dict[str, Any]) -> Reply:
    """Record an answer to an item.

    An answer dated before earlier ones is a late arrival, and takes its own place among them.
    """
    given = GivenAnswer(
        id=sent["id"],
        item_id=sent["item"],
        grade=sent["grade"],
        answered_at=sent["answered_at"],
        attempt=None if sent["attempt"] is None else attempt_of(sent["attempt"]),
        seconds=sent["seconds"],
        graded_first=sent["graded_first"],
    )
    recorded = record_answer(desk(), given)
    return (
        _with_item(recorded.answer, recorded.item),
        HTTPStatus.CREATED if recorded.fresh else HTTPStatus.OK,
        {"Location": f"/api/answers/{given.id}"},
    )


@resource.operation(
    "GET /<uuid:answer_id>",
    path=_PATH,
    gives=Gives({HTTPStatus.OK: "The answer."}, ShownAnswerSchema(), example=examples.SHOWN),
    refuses=(AnswerMissing,),
)
def get_answer(answer_id: UUID) -> Reply:
    """Look at an answer beside what the digest says."""
    shown = show_answer(desk(), answer_id)
    return (
        {**_with_item(shown.answer, shown.item.kept), "says": shown.answered},
        HTTPStatus.OK,
        {},
    )


@resource.operation(
    "POST /<uuid:answer_id>/taken-back",
    path=_PATH,
    takes=Takes(
        TakenBackSchema(),
        "The fact that it is taken back; may be left out.",
        example={"id": "d0b3a1c6-5b0a-4c7e-8f55-6e1c2b7a9d08"},
        required=False,
    ),
    gives=Gives(
        {HTTPStatus.OK: "The answer is taken back; or it was already."},
        RecordedAnswerSchema(),
        example=examples.TAKEN_BACK,
    ),
    refuses=(AnswerMissing,),
)
def post_taken_back(sent: dict[str, Any], answer_id: UUID) -> Reply:
    """Take an answer back.

    Its item stands as if it had not been given. The answer and its being taken back are kept.
    """
    taken = take_back(desk(), answer_id, sent["id"] or desk().new_id())
    return _with_item(taken.answer, taken.item), HTTPStatus.OK, {}


def _with_item(kept: KeptAnswer, item: KeptItem) -> dict[str, object]:
    """Return what `RecordedAnswerSchema` dumps."""
    memory = item.memory
    return {
        **kept_answer(kept),
        "due_on": None if memory is None else memory.due_on,
        "standing": item.standing,
        "stability": None if memory is None else memory.stability,
    }
