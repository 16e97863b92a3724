"""What a digest said before, back to it, and the reader's word on an edit."""

import re
from dataclasses import replace

import pytest
from flask.testing import FlaskClient

from cards.digest import Commitment
from cards.parts import PartKind
from service.use_cases.add_digest import Added
from service.use_cases.library import open_digest
from service.use_cases.mend_digest import mend_digest
from service.use_cases.ports import Desk


def reworded(desk: Desk, added: Added, words: str) -> None:
    """Have the first commitment say something else."""
    digest = open_digest(desk, added.kept.id).kept.digest()
    mend_digest(
        desk,
        added.kept.id,
        replace(digest, commitments=(Commitment(words), *digest.commitments[1:])),
    )


def hidden(page: str, form: str) -> dict[str, str]:
    """Return the hidden fields of the form that posts to an address."""
    body = re.search(rf'<form[^>]*action="{re.escape(form)}".*?</form>', page, re.DOTALL)
    assert body is not None
    return dict(re.findall(r'type="hidden" name="([^"]+)" value="([^"]*)"', body[0]))


SLIGHTLY = "When the tea is poured, I will ask Hanne one question first."
QUITE = "Walk to the mill and back without speaking, every Sunday in March."


def test_the_page_after_mending_says_what_happened(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """A rewording keeps its history and says so; another claim is asked afresh and says so."""
    reworded(desk, added, SLIGHTLY)
    page = client.get(f"/books/{added.kept.id}?kept=digest").text
    assert "Commitment 1:\nreworded. What you answered stays with it." in page
    reworded(desk, added, QUITE)
    page = client.get(f"/books/{added.kept.id}?kept=digest").text
    assert "something else stands here now" in page


@pytest.mark.parametrize("words", [SLIGHTLY, QUITE])
def test_the_reader_overrules_what_an_edit_did(
    client: FlaskClient, desk: Desk, added: Added, words: str
) -> None:
    """One button each way, and the versions page says that it is so kept."""
    before = added.kept.held(PartKind.COMMITMENT)[0].id
    reworded(desk, added, words)
    kept_it = open_digest(desk, added.kept.id).kept.held(PartKind.COMMITMENT)[0].id == before
    page = client.get(f"/books/{added.kept.id}/versions").text
    fields = hidden(page, f"/books/{added.kept.id}/identity")
    answered = client.post(f"/books/{added.kept.id}/identity", data=fields)
    assert answered.status_code == 303
    assert "So it is kept." in client.get(answered.location).text
    now = open_digest(desk, added.kept.id).kept.held(PartKind.COMMITMENT)[0].id == before
    assert now is not kept_it


def test_each_part_of_one_edit_is_overruled_and_back(
    client: FlaskClient, desk: Desk, added: Added
) -> None:
    """A word on one part leaves the others to be overruled, and each can be taken back."""
    digest = open_digest(desk, added.kept.id).kept.digest()
    both = (Commitment(SLIGHTLY), Commitment(QUITE))
    mend_digest(desk, added.kept.id, replace(digest, commitments=both))
    was = [part.id for part in added.kept.held(PartKind.COMMITMENT)]
    address, page = f"/books/{added.kept.id}/identity", f"/books/{added.kept.id}/versions"
    seen = []
    for word in ("ask it afresh", "Commitment 2", "Commitment 1"):
        shown = client.get(page).text
        assert shown.count("Commitment 1:") == shown.count("Commitment 2:") == 1
        entry = next(part for part in shown.split("<li>")[1:] if word in part)
        assert client.post(address, data=hidden(entry, address)).status_code == 303
        held = open_digest(desk, added.kept.id).kept.held(PartKind.COMMITMENT)
        seen.append([part.id == before for part, before in zip(held, was, strict=True)])
    assert seen == [[False, False], [False, True], [True, True]]
    assert "no longer in the digest" not in client.get(page).text


def test_another_care_hides_no_edit(client: FlaskClient, desk: Desk, added: Added) -> None:
    """What the last edit did is told after the book was given another care."""
    reworded(desk, added, QUITE)
    client.post(f"/books/{added.kept.id}/care", data={"care": "close"})
    assert "something else stands here now" in client.get(f"/books/{added.kept.id}/versions").text


def test_a_stale_word_on_an_edit_is_refused(client: FlaskClient, desk: Desk, added: Added) -> None:
    """Changed meanwhile, the page is shown again and nothing is overruled."""
    reworded(desk, added, SLIGHTLY)
    page = client.get(f"/books/{added.kept.id}/versions").text
    fields = hidden(page, f"/books/{added.kept.id}/identity")
    reworded(desk, added, QUITE)
    answered = client.post(f"/books/{added.kept.id}/identity", data=fields)
    assert answered.status_code == 409
    assert "Look at it as it is now" in answered.text


def test_a_version_is_shown_and_brought_back(client: FlaskClient, desk: Desk, added: Added) -> None:
    """What it said then stands on two pages, with what changed since, and one button."""
    reworded(desk, added, QUITE)
    address = f"/books/{added.kept.id}/versions/1"
    page = client.get(address).text
    assert "What changed since" in page
    answered = client.post(address, data=hidden(page, address))
    assert answered.status_code == 303
    assert "That version is back" in client.get(answered.location).text
    assert open_digest(desk, added.kept.id).kept.digest() == added.kept.digest()


@pytest.mark.parametrize("revision", ["9", "99999999999999999999"])
def test_a_version_that_never_was_is_refused(
    client: FlaskClient, desk: Desk, added: Added, revision: str
) -> None:
    """A number nobody kept, or that no store can count."""
    assert client.get(f"/books/{added.kept.id}/versions/{revision}").status_code == 404
    answered = client.post(f"/books/{added.kept.id}/versions/{revision}", data={"revision": "1"})
    assert answered.status_code == 404
    assert open_digest(desk, added.kept.id).kept.revision == 1
