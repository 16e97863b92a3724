"""Filling in the page of a draft as a browser without scripts does."""

import re
from dataclasses import dataclass, field
from html.parser import HTMLParser
from io import BytesIO

from flask.testing import FlaskClient
from werkzeug.test import TestResponse


@dataclass
class DraftForm:
    """The form of a draft as it stands on a page.

    Attributes:
        action: its address.
        fields: what a browser would send but for the button.
        orders: the values of its buttons.
        shown: the page's words, tags left out.
    """

    action: str = ""
    fields: dict[str, str] = field(default_factory=dict)
    orders: list[str] = field(default_factory=list)
    shown: str = ""


class _Reader(HTMLParser):
    """Reads the form off a page."""

    def __init__(self) -> None:
        super().__init__()
        self.form = DraftForm()
        self._inside = False
        self._textarea: str | None = None
        self._select: str | None = None

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        said = dict(attrs)
        name, value = said.get("name"), said.get("value") or ""
        if tag == "form":
            self._inside = "data-draft" in said
            self.form.action = said["action"] if self._inside else self.form.action
        if not self._inside or not name:
            if tag == "option" and self._select and "selected" in said:
                self.form.fields[self._select] = value
            return
        if tag == "input" and (said.get("type") != "radio" or "checked" in said):
            self.form.fields[name] = value
        elif tag == "textarea":
            self._textarea = name
            self.form.fields[name] = ""
        elif tag == "select":
            self._select = name
            self.form.fields[name] = ""
        elif tag == "button":
            self.form.orders.append(value)

    def handle_endtag(self, tag: str) -> None:
        self._textarea = None if tag == "textarea" else self._textarea
        self._select = None if tag == "select" else self._select
        self._inside = self._inside and tag != "form"

    def handle_data(self, data: str) -> None:
        if self._textarea:
            self.form.fields[self._textarea] += data
        self.form.shown += data


def draft_form(page: str) -> DraftForm:
    """Return the form of a draft's page."""
    reader = _Reader()
    reader.feed(page)
    assert reader.form.action, "the page has no form of a draft"
    for name, words in reader.form.fields.items():
        reader.form.fields[name] = words.removeprefix("\n")
    reader.form.shown = " ".join(reader.form.shown.split())
    return reader.form


def press(client: FlaskClient, form: DraftForm, do: str, **changed: str) -> TestResponse:
    """Press a button of the form, some fields changed; the answer as it comes."""
    return client.post(form.action, data={**form.fields, **changed, "do": do})


def pressed(client: FlaskClient, form: DraftForm, do: str, **changed: str) -> DraftForm:
    """Press a button, follow where it leads, and return the form there."""
    answered = press(client, form, do, **changed)
    assert answered.status_code == 303, answered.text
    return draft_form(client.get(answered.location).text)


def hand_in(client: FlaskClient, *files: tuple[str, bytes], do: str = "look") -> TestResponse:
    """Hand files in as the form of the library does, and wait for the whole page."""
    data = {"files": [(BytesIO(content), name) for name, content in files], "do": do}
    answered = client.post("/books", data=data)
    answered.get_data()
    return answered


def looked_over(client: FlaskClient, name: str, content: bytes) -> DraftForm:
    """Hand one file in to look it over, and return its form."""
    answered = hand_in(client, (name, content))
    assert answered.status_code == 303, answered.text
    return draft_form(client.get(answered.location).text)


def listed_as_left(page: str) -> list[str]:
    """Return the words of the file that stand nowhere in the digest, as the page lists them."""
    foot = page.partition('id="left-heading"')[2]
    foot = foot.partition("What announces no part of it")[0]
    return [
        re.sub(r"<[^>]+>", "", found)
        for found in re.findall(r'<li><div class="found lines"[^>]*>(.*?)</div>', foot, re.DOTALL)
    ]
