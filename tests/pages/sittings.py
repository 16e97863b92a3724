"""Walking a sitting as a browser without scripts does: by the forms a page holds."""

import re
from dataclasses import dataclass
from html import unescape
from uuid import UUID

from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from cards.kinds.base import KindName
from service.use_cases.items import ItemView, list_items
from service.use_cases.leave_out import leave_out, take_in
from service.use_cases.ports import Desk
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.records import MOST_UNASKED_A_DAY


@dataclass(frozen=True)
class Form:
    """The address and the hidden fields of a form."""

    action: str
    hidden: dict[str, str]


def form(page: str, ending: str) -> Form:
    """Return the form of a page whose address holds `ending`."""
    for found in re.finditer(r"<form[^>]*action=\"([^\"]+)\"[^>]*>(.*?)</form>", page, re.DOTALL):
        if ending in found[1]:
            inputs = re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)">', found[2])
            return Form(unescape(found[1]), {name: unescape(value) for name, value in inputs})
    raise AssertionError(f"no form leads to {ending}")


def compare(client: FlaskClient, **given: str) -> TestResponse:
    """Give an attempt at the item asked now; `place_1` is the field `place-1`."""
    asked = form(client.get("/").text, "/compare")
    return client.post(asked.action, data={**asked.hidden, **_fields(given)})


def asked(client: FlaskClient) -> str:
    """Return the address to which the item asked now is sent for comparison."""
    return form(client.get("/").text, "/compare").action.partition("?")[0]


def answer(client: FlaskClient, grade: str, **given: str) -> TestResponse:
    """Compare and grade the item asked now."""
    compared = form(compare(client, **given).text, "/answers")
    data = {**compared.hidden, **_fields(given), "grade": grade}
    return client.post(compared.action, data=data)


def only(desk: Desk, kind: KindName, number: int = 1, book: str = "Silas Marner") -> ItemView:
    """Leave out for today all but one item, of a book's of one kind, and return that one."""
    set_preferences(desk, Preferences(unasked_a_day=MOST_UNASKED_A_DAY))
    everything = list_items(desk, limit=200).items
    of_kind = [e for e in everything if e.kept.item.kind is kind and e.title == book]
    wanted = sorted(of_kind, key=lambda each: each.kept.item.number)[number - 1]
    return alone(desk, wanted)


def alone(desk: Desk, wanted: ItemView) -> ItemView:
    """Leave out for today all items but one, and return it."""
    for each in list_items(desk, limit=200).items:
        this = each.kept.item.id == wanted.kept.item.id
        (take_in if this else leave_out)(desk, each.kept.item.id)
    return wanted


def these(desk: Desk, *kinds: KindName) -> int:
    """Leave out for today all items but those of some kinds, and return how many these are."""
    set_preferences(desk, Preferences(unasked_a_day=MOST_UNASKED_A_DAY))
    kept = 0
    for each in list_items(desk, limit=200).items:
        wanted = each.kept.item.kind in kinds
        (take_in if wanted else leave_out)(desk, each.kept.item.id)
        kept += wanted
    return kept


def answer_id(location: str) -> UUID:
    """Return the id of the answer that an address names as the last one."""
    return UUID(location.partition("answered=")[2])


def _fields(given: dict[str, str]) -> dict[str, str]:
    return {name.replace("_", "-"): value for name, value in given.items()}
