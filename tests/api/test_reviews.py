"""The yearly review through the API."""

from uuid import UUID, uuid4

import pytest

from cards.commitments import Act, Outcome
from service.use_cases.check_in import Report, check_in
from service.use_cases.decide import Ruling, decide
from service.use_cases.ports import Desk
from tests.api.conftest import Clock, Door


def test_a_year_is_looked_back_on(door: Door, desk: Desk, clock: Clock) -> None:
    """Check-ins are counted, decisions told, and what is still asked has its pace."""
    first, second = [UUID(each["id"]) for each in door.add().json["digest"]["commitments"]]
    check_in(desk, Report(uuid4(), first, Outcome.KEPT))
    decide(desk, Ruling(uuid4(), second, Act.RELEASE, words="The knee is worse"))
    clock.move(days=1)
    review = door.client.get("/api/reviews/2026").json
    assert review["counts"] == {"kept": 1, "partly": 0, "missed": 0}
    (book,) = review["books"]
    one, other = book["promises"]
    assert (one["pace"], one["new"], one["deeds"]) == ("on course", True, 1)
    assert other["changes"] == [
        {"act": "release", "day": "2026-03-01", "told": "Released: The knee is worse"}
    ]
    assert other["caution"].startswith("This touches your health.")
    assert review["pairs"] == []


def test_a_review_is_taken_as_a_pdf(door: Door) -> None:
    """A file named after the year, of an empty library too."""
    taken = door.client.get("/api/reviews/2026/pdf")
    assert taken.data.startswith(b"%PDF")
    assert "review-2026.pdf" in taken.headers["Content-Disposition"]


@pytest.mark.parametrize(
    ("year", "status"), [("2027", 422), ("9998", 422), ("1899", 404), ("99999", 404), ("x", 404)]
)
def test_another_year_is_refused(door: Door, year: str, status: int) -> None:
    """A year that has not begun is refused; what is no year is no address."""
    for address in (f"/api/reviews/{year}", f"/api/reviews/{year}/pdf"):
        assert door.client.get(address).status_code == status
