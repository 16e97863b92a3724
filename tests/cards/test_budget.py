"""What to cut, and by how many lines, when a page is over."""

from hypothesis import given
from hypothesis import strategies as st

from cards.budget import PageUse, PartUse, budget_of

KINDS = st.sampled_from(["points", "commitments"])


def test_a_page_that_fits_needs_no_cut():
    """A full page is not over."""
    page = PageUse(1, 46, 46)
    assert page.over == 0
    assert budget_of([(page, [PartUse("theme", 40)])]).cuts == ()


def test_the_long_theme_is_shortened_first():
    """A theme far longer than a paragraph is where the lines come from."""
    parts = [PartUse("theme", 20), PartUse("points 1", 2), PartUse("points 2", 3)]
    (cut,) = budget_of([(PageUse(1, 51, 46), parts)]).cuts
    assert (cut.part, cut.lines) == ("theme", 5)
    assert cut.message == ("Page one is 5 lines over: take 5 lines out of the theme, which has 20.")


def test_a_long_point_is_named_by_its_number():
    """A point of many lines is shortened by what it has beyond three."""
    parts = [PartUse("theme", 8), PartUse("points 1", 2), PartUse("points 2", 7)]
    (cut,) = budget_of([(PageUse(1, 47, 46), parts)]).cuts
    assert (cut.part, cut.lines) == ("points 2", 1)
    assert "take 1 line out of point 2, which has 7" in cut.message


def test_where_no_part_is_long_some_have_to_go():
    """Many short quotations over the page are told how many of them to leave out."""
    parts = [PartUse(f"quotations {number}", 3) for number in range(1, 21)]
    (cut,) = budget_of([(PageUse(2, 54, 46), parts)]).cuts
    assert (cut.part, cut.lines) == ("quotations", 8)
    assert cut.message == (
        "Page two is 8 lines over: leave out 3 of the 20 quotations, 8 lines in all."
    )


def test_shortening_and_leaving_out_go_together():
    """What shortening does not bring is brought by leaving out."""
    parts = [PartUse("theme", 14), *(PartUse(f"points {number}", 2) for number in range(1, 21))]
    first, second = budget_of([(PageUse(1, 54, 46), parts)]).cuts
    assert (first.part, first.lines) == ("theme", 2)
    assert (second.part, second.lines) == ("points", 6)
    assert "besides, leave out 3 of the 20 points" in second.message


def test_a_single_part_is_shortened_and_never_left_out():
    """The only quotation is shortened by all that is over."""
    cuts = budget_of([(PageUse(2, 60, 46), [PartUse("quotations 1", 58)])]).cuts
    assert [(cut.part, cut.lines) for cut in cuts] == [("quotations 1", 14)]


@given(
    over=st.integers(1, 60),
    theme=st.integers(0, 60),
    parts=st.lists(st.tuples(KINDS, st.integers(1, 12)), max_size=30),
)
def test_the_cuts_come_to_the_lines_that_are_over(
    over: int, theme: int, parts: list[tuple[str, int]]
):
    """Whatever a page holds, its cuts add up to exactly what it is over."""
    uses = [PartUse("theme", theme)] if theme else []
    numbers = {"points": 0, "commitments": 0}
    for kind, lines in parts:
        numbers[kind] += 1
        uses.append(PartUse(f"{kind} {numbers[kind]}", lines))
    cuts = budget_of([(PageUse(1, 46 + over, 46), uses)]).cuts
    assert sum(cut.lines for cut in cuts) == over
    assert all(cut.lines > 0 for cut in cuts)
    assert all(cut.message.endswith(".") for cut in cuts)
