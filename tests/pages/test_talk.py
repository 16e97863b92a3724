"""A talk about a book, on the pages."""

from datetime import date

import pytest
from flask.testing import FlaskClient

from service.use_cases.add_digest import Added
from service.use_cases.library import open_digest
from service.use_cases.ports import Desk
from service.use_cases.talking import talks_of


@pytest.fixture
def page(added: Added) -> str:
    """The address of the talk about Silas Marner."""
    return f"/books/{added.kept.id}/talk"


def test_the_theme_stands_folded_away_on_the_other_page(client: FlaskClient, page: str) -> None:
    """What is asked stands on the left; theme, order and places only where they are unfolded."""
    whole = client.get(page).text
    left, _, right = whole.partition("To check by</summary>")
    for said in ("What was promised: 12 min", "The order of the argument: 25 min", "From now on"):
        assert said in left
    assert "hoards" not in left
    assert "p. 140" not in left
    assert "hoards" in right
    assert "p. 140" in right


def test_a_quarter_of_an_hour_is_one_link_away(client: FlaskClient, page: str) -> None:
    """Both lengths lead to each other, and each to its own sheet."""
    assert f"{page}?minutes=15" in client.get(page).text
    short = client.get(f"{page}?minutes=15").text
    assert "One question back" in short
    assert f"{page}.pdf?minutes=15" in short
    pdf = client.get(f"{page}.pdf?minutes=15")
    assert pdf.mimetype == "application/pdf"
    assert "talk-silas-marner.pdf" in pdf.headers["Content-Disposition"]


@pytest.mark.parametrize("minutes", ["", "16", "-1", "eighty", "80.0", "９"])
def test_another_length_is_refused(client: FlaskClient, page: str, minutes: str) -> None:
    """One sentence says which there are."""
    answered = client.get(page, query_string={"minutes": minutes})
    assert answered.status_code == 422
    assert "80 minutes with someone who read the book" in answered.text


def test_a_talk_is_kept_and_what_was_resolved_is_in_the_digest(
    client: FlaskClient, desk: Desk, added: Added, page: str
) -> None:
    """With whom, when and what came of it are told; the commitment and the judgement are kept."""
    kept = client.post(
        f"{page}s",
        data={
            "talk": "00000000-0000-4000-8000-000000000001",
            "revision": "1",
            "listener": "Hanne <b>",
            "day": "2026-03-01",
            "minutes": "75",
            "note": "She thinks Eppie too good.",
            "resolved": "When I am wronged, I will say so within a week.\r\n\r\n",
            "judgement": "Agreed, but for the ending",
        },
    )
    assert kept.status_code == 303
    told = client.get(kept.location).text
    assert "The talk is kept." in told
    assert "Hanne &lt;b&gt;" in told
    assert "75 minutes" in told
    (talk,) = talks_of(desk, added.kept.id)
    assert (talk.day, talk.note) == (date(2026, 3, 1), "She thinks Eppie too good.")
    digest = open_digest(desk, added.kept.id).kept.digest()
    assert digest.commitments[-1].text == "When I am wronged, I will say so within a week."
    assert digest.judgement == "Agreed, but for the ending"


@pytest.mark.parametrize(
    ("field", "value", "said"),
    [
        ("day", "2026-03-03", "has not come yet"),
        ("day", "yesterday", "This day does not exist."),
        ("minutes", "0", "The number of minutes is a whole number from 1 to 1440."),
        ("note", "x" * 2_001, "At most 2000 characters are kept here"),
        ("listener", "x" * 201, "At most 200 characters are kept here"),
        ("resolved", "\n".join(f"Sing {n} songs" for n in range(21)), "At most 20 commitments"),
        ("resolved", "x" * 20_001, "at most 20000 are kept"),
        ("judgement", "a\x01b", "holds a character that is no text"),
    ],
)
def test_what_cannot_be_kept_is_named_at_its_field(
    client: FlaskClient, desk: Desk, added: Added, page: str, field: str, value: str, said: str
) -> None:
    """The fault stands beside the field, the rest is as typed, and nothing is kept."""
    answered = client.post(f"{page}s", data={"listener": "Piet", field: value})
    assert answered.status_code == 422
    assert f'id="{field}-fault"' in answered.text
    assert said in answered.text
    if field != "listener":
        assert 'value="Piet"' in answered.text
    assert not talks_of(desk, added.kept.id)


def test_a_digest_changed_meanwhile_keeps_what_was_typed(client: FlaskClient, page: str) -> None:
    """Nothing is kept on what the digest no longer says; the form can be sent once more."""
    answered = client.post(f"{page}s", data={"revision": "7", "listener": "Piet"})
    assert answered.status_code == 422
    assert "was changed since you opened it" in answered.text
    assert 'name="revision" value="1"' in answered.text
    assert 'value="Piet"' in answered.text


def test_a_talk_is_taken_back(client: FlaskClient, desk: Desk, added: Added, page: str) -> None:
    """It is listed no longer; one that never was is missing."""
    client.post(f"{page}s", data={"listener": "Hanne"})
    (talk,) = talks_of(desk, added.kept.id)
    back = client.post(f"{page}s/{talk.id}/withdrawal")
    assert back.status_code == 303
    assert "The talk is taken back." in client.get(back.location).text
    assert not talks_of(desk, added.kept.id)
    assert client.post(f"{page}s/{added.kept.id}/withdrawal").status_code == 404


def test_the_book_leads_to_its_talk(client: FlaskClient, added: Added, page: str) -> None:
    """From the digest it is one link away; of a book of nobody's there is none."""
    assert page in client.get(f"/books/{added.kept.id}").text
    assert client.get("/books/00000000-0000-4000-8000-000000000001/talk").status_code == 404
