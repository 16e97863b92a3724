"""Advice and the two-page budget through the API."""

from uuid import UUID

from tests.api.conftest import WALKS, Door

LONG = "He walks on, and the water is on both sides of him, grey and patient as before. "


def test_a_digest_that_fits_has_nothing_to_cut(door: Door, walks: UUID) -> None:
    """Both pages are measured in lines; where neither is over there are no cuts."""
    budget = door.client.get(f"/api/digests/{walks}/budget").json
    assert [page["page"] for page in budget["pages"]] == [1, 2]
    assert all(0 < page["lines_used"] <= page["lines_allowed"] for page in budget["pages"])
    assert [page["over"] for page in budget["pages"]] == [0, 0]
    assert budget["cuts"] == []


def test_over_budget_is_said_with_what_to_cut_and_by_how_many_lines(
    door: Door, walks: UUID
) -> None:
    """The cuts of a theme far too long name it, and come to the lines page one is over."""
    where = f"/api/digests/{walks}"
    assert door.change(where, theme=LONG * 60).status_code == 200
    budget = door.client.get(f"{where}/budget").json
    over = budget["pages"][0]["over"]
    assert over == budget["pages"][0]["lines_used"] - budget["pages"][0]["lines_allowed"] > 0
    assert budget["cuts"][0]["part"] == "theme"
    assert sum(cut["lines"] for cut in budget["cuts"]) == over
    assert f"{over} lines over" in budget["cuts"][0]["message"]


def test_advice_names_the_parts_it_is_about(door: Door) -> None:
    """A bare locator, a point out of order and a vague commitment are each told, one by one."""
    text = (
        WALKS.replace(" (p. 97)", "")
        .replace("(p. 150)", "(p. 15)")
        .replace("When the tea is poured, ask Hanne one question about her day.", "Be kinder.")
    )
    where = door.add(text).headers["Location"]
    advice = door.client.get(f"{where}/advice").json["advice"]
    assert {"points 3", "commitments 1", "quotations 2"} <= {each["part"] for each in advice}
    assert all(len(each["message"]) > 20 for each in advice)


def test_a_digest_worth_keeping_gets_no_advice(door: Door, walks: UUID) -> None:
    """Where there is nothing to say, nothing is said."""
    where = f"/api/digests/{walks}"
    theme = (
        "A clerk leaves his desk to walk the drains of the fens, loses the path and his fear of "
        "losing it, and learns to wait for weather."
    )
    door.change(where, theme=theme, commitments=[])
    assert door.client.get(f"{where}/advice").json == {"advice": []}
