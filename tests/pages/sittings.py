"""Walking a sitting as a browser without scripts does: by the forms a page holds."""

import re
from dataclasses import dataclass
from html import unescape

from flask.testing import FlaskClient
from werkzeug.test import TestResponse


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
    """Give an attempt at the item asked now."""
    asked = form(client.get("/").text, "/compare")
    return client.post(asked.action, data={**asked.hidden, **given})


def answer(client: FlaskClient, grade: str, **given: str) -> TestResponse:
    """Compare and grade the item asked now."""
    compared = form(compare(client, **given).text, "/answers")
    return client.post(compared.action, data={**compared.hidden, **given, "grade": grade})
