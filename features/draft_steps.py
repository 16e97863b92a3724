"""What the steps of writing and of looking over share: Mira before the pages, without a script."""

from dataclasses import dataclass, field

from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from service.main import create_app
from tests.pages.draft_pages import DraftForm, draft_form, press, pressed


@dataclass
class Desktop:
    """Mira's browser.

    Attributes:
        client: what sends for her.
        form: the draft she has before her.
        windows: forms of the same draft in other windows.
        answer: what came back last.
    """

    client: FlaskClient
    form: DraftForm = field(default_factory=DraftForm)
    windows: list[DraftForm] = field(default_factory=list)
    answer: TestResponse | None = None

    @classmethod
    def of(cls, mira) -> "Desktop":
        """Open a browser on her library."""
        return cls(create_app(mira.desk).test_client())

    def opens(self, address: str) -> None:
        """Open a draft."""
        self.answer = self.client.get(address)
        self.form = draft_form(self.answer.text)

    def presses(self, do: str, **changed: str) -> None:
        """Press a button, some fields changed, and go where it leads."""
        self.form = pressed(self.client, self.form, do, **changed)

    def keeps(self, **changed: str) -> None:
        """Keep the draft in the library."""
        self.answer = press(self.client, self.form, "keep", **changed)
        assert self.answer.status_code == 303, self.answer.text

    def page(self) -> str:
        """Return the page of the draft as it is now."""
        return self.client.get(self.form.action).text
