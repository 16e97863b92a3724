"""The yearly review, on a page and on paper."""

from uuid import uuid4

import pytest
from flask.testing import FlaskClient

from cards.commitments import Act, Outcome
from cards.parts import PartKind
from service.use_cases.add_digest import Added, add_digest
from service.use_cases.check_in import Report, check_in
from service.use_cases.decide import Ruling, decide
from service.use_cases.ports import Desk
from tests.pages.house import DIGEST, Clock


def test_a_year_is_looked_back_on(
    client: FlaskClient, desk: Desk, added: Added, clock: Clock
) -> None:
    """What was kept, what was released and why, and what collides stand on one page."""
    first, second = added.kept.held(PartKind.COMMITMENT)
    check_in(desk, Report(uuid4(), first.id, Outcome.KEPT))
    decide(desk, Ruling(uuid4(), second.id, Act.RELEASE, words="It is <all> spent"))
    other = DIGEST.replace("Silas Marner", "Walden").replace("ask Hanne", "never ask Hanne")
    add_digest(desk, "walden.md", other.encode())
    clock.next_day()
    page = client.get("/review/2026").text
    for said in (
        "As it stands today: 4 commitments of 2 books; check-ins: 1 kept; 1 released.",
        "Released: It is &lt;all&gt; spent",
        "One asks to do what the other asks not to: which is to hold?",
        "/review/2026.pdf",
        'href="/review/2025"',
    ):
        assert said in page
    assert 'href="/review/2027"' not in page


def test_a_review_is_printed(client: FlaskClient, added: Added) -> None:
    """The sheet to print is a PDF named after the year."""
    pdf = client.get("/review/2026.pdf")
    assert pdf.mimetype == "application/pdf"
    assert "review-2026.pdf" in pdf.headers["Content-Disposition"]


def test_an_empty_year_says_so(client: FlaskClient) -> None:
    """A year in which no book asked for anything is a page, not a fault."""
    assert "No book of the library asked for anything in it." in client.get("/review/2020").text


def test_the_latest_year_is_found(client: FlaskClient) -> None:
    """Without a year named it is the one that runs."""
    assert "What the books asked in 2026" in client.get("/review").text


@pytest.mark.parametrize("year", ["2027", "1899", "0", "9" * 30])
def test_another_year_is_refused(client: FlaskClient, year: str) -> None:
    """One sentence says which years can be looked back on."""
    answered = client.get(f"/review/{year}")
    assert answered.status_code == 422
    assert "A year from 1900 to 2026 can be looked back on" in answered.text
