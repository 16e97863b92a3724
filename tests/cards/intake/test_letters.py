"""A digest sent as a letter: the head of the mail, the greeting and the farewell are no part."""

import pytest

from tests.cards.intake.blocks_of import understood

HEAD = "From: Ines / To: Ravi / Date: Mon, 6 Feb 2017 / Subject: {}"
BODY = """
## Points
- A house costs what life one gives for it.
## Commitments
- Walk to work on Tuesdays.
"""


@pytest.mark.parametrize(
    "subject",
    [
        "Walden, by Henry David Thoreau",
        "Fwd: Digest: Walden by Henry David Thoreau",
        "[circle] Re: Walden by Henry David Thoreau",
    ],
)
def test_the_subject_of_a_mail_is_what_the_digest_is_of(subject: str):
    """Title and author are read off the subject, whatever a mail program put before it."""
    digest = understood(f"{HEAD.format(subject)}\n{BODY}").digest
    assert (digest.title, digest.author) == ("Walden", "Henry David Thoreau")


@pytest.mark.parametrize("greeting", ["Dear Ravi,", "Liebe Ines,", "Chers amis,", "Hola, Ravi!"])
def test_a_greeting_is_told_of_as_left(greeting: str):
    """A greeting under the head of a mail is in no part, and is listed with what was left."""
    found = understood(f"{HEAD.format('Walden by Henry Thoreau')}\n{greeting}\n{BODY}")
    assert greeting in found.left
    assert found.digest.theme is None


@pytest.mark.parametrize(
    "farewell", ["Best wishes,\nInes", "Viele Grüße, / Ines", "Un abrazo,\nInés Prado", "Yours,"]
)
def test_a_farewell_is_no_commitment(farewell: str):
    """What closes a letter is taken off the last part."""
    found = understood(f"# Walden by Henry Thoreau\n{BODY}\n{farewell}")
    assert [one.text for one in found.digest.commitments] == ["Walk to work on Tuesdays."]
    assert any(farewell.split(",", maxsplit=1)[0] in words for words in found.left)


def test_a_line_that_is_no_farewell_stays():
    """A last commitment that opens like a farewell but goes on is kept."""
    digest = understood(f"# Walden\n{BODY}- Best of all, call Ravi on the first of May.").digest
    assert digest.commitments[-1].text == "Best of all, call Ravi on the first of May."


def test_one_label_is_no_mail():
    """A subject alone is no head of a mail: it needs a second line of one."""
    found = understood(f"# Walden\nSubject: solitude\n{BODY}")
    assert found.digest.title == "Walden"
