"""Items: their cues, their answers, and an attempt beside the digest's words."""

from http import HTTPStatus
from typing import Any
from uuid import UUID

from cards.errors import InvalidAnswer, ItemMissing
from service.api import examples
from service.api.answer_shapes import AnswerPageSchema, kept_answer
from service.api.comparison_shapes import ComparedSchema, ComparisonSchema, attempt_of
from service.api.cursors import cursor_of, links
from service.api.desk import desk
from service.api.item_shapes import (
    AnswerQuerySchema,
    ItemPageSchema,
    ItemQuerySchema,
    ItemSchema,
)
from service.api.operations import Gives, Reply, Resource, Takes
from service.use_cases.answer import compare
from service.use_cases.items import item_history, list_items, show_item

resource = Resource("items", "/items", "What there is to recall, made from the digests.")

_PATH = {"item_id": "Id of the item."}


@resource.operation(
    "GET",
    query=ItemQuerySchema(),
    gives=Gives(
        {HTTPStatus.OK: "One page of items."},
        ItemPageSchema(),
        example=examples.ITEMS,
        headers={HTTPStatus.OK: ("Link",)},
    ),
)
def list_all(query: dict[str, Any]) -> Reply:
    """List the items of the library.

    In the order of their ids, without retired ones.
    """
    page = list_items(
        desk(), query["cursor"], query["limit"], digest_id=query["digest"], kind=query["kind"]
    )
    following = None if page.next is None else cursor_of(page.next)
    return {"items": page.items, "next": following}, HTTPStatus.OK, links(following)


@resource.operation(
    "GET /<uuid:item_id>",
    path=_PATH,
    gives=Gives({HTTPStatus.OK: "The item."}, ItemSchema(), example=examples.ITEM),
    refuses=(ItemMissing,),
)
def get_item(item_id: UUID) -> Reply:
    """Look at an item.

    Its cue is given, never its answer. A retired item has no cue.
    """
    return show_item(desk(), item_id), HTTPStatus.OK, {}


@resource.operation(
    "GET /<uuid:item_id>/answers",
    path=_PATH,
    query=AnswerQuerySchema(),
    gives=Gives(
        {HTTPStatus.OK: "One page of its answers."},
        AnswerPageSchema(),
        example=examples.HISTORY,
        headers={HTTPStatus.OK: ("Link",)},
    ),
    refuses=(ItemMissing,),
)
def list_answers(query: dict[str, Any], item_id: UUID) -> Reply:
    """List the answers to an item.

    The newest comes first. Those taken back are among them.
    """
    history = item_history(desk(), item_id, query["cursor"], query["limit"])
    following = None if history.next is None else cursor_of(history.next)
    page = [kept_answer(each) for each in history.answers]
    return {"answers": page, "next": following}, HTTPStatus.OK, links(following)


@resource.operation(
    "POST /<uuid:item_id>/comparison",
    path=_PATH,
    takes=Takes(ComparisonSchema(), "The attempt.", example={"attempt": examples.ATTEMPT}),
    gives=Gives(
        {HTTPStatus.OK: "The attempt beside what the digest says."},
        ComparedSchema(),
        example=examples.COMPARED,
    ),
    refuses=(ItemMissing, InvalidAnswer),
)
def compare_attempt(sent: dict[str, Any], item_id: UUID) -> Reply:
    """Compare an attempt with the digest.

    Nothing is kept. The attempt is given in one of the ways the cue names in `asked`, or is
    empty. The grade is a suggestion: the reader's own decides, and is sent as an answer.
    """
    compared = compare(desk(), item_id, attempt_of(sent["attempt"]))
    return compared, HTTPStatus.OK, {}
