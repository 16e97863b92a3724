"""The live measure is the printed page itself."""

import io
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from cards.budget import Budget
from cards.digest import Digest, Point
from service.documents.press.press import Press
from service.use_cases.records import Form
from tests.documents.press.digests import MARNER, long

PRESS = Press()


def pages_of(digest: Digest) -> int:
    """How many pages a digest is printed on."""
    return len(PdfReader(io.BytesIO(PRESS.write(digest, Form.PDF))).pages)


def over(budget: Budget) -> list[int]:
    """How many lines each page is over."""
    return [page.over for page in budget.pages]


@settings(max_examples=25)
@given(lines=st.integers(1, 40))
def test_over_means_more_than_two_pages(lines: int):
    """A digest is over by some lines exactly when it is printed on more than two pages."""
    digest = long(lines)
    assert (pages_of(digest) > 2) == any(over(PRESS.measure(digest)))


def test_one_line_more_is_one_line_more():
    """A point of one line adds its line and its space to page one, and nothing to page two."""
    before = PRESS.measure(MARNER)
    more = replace(MARNER, points=(*MARNER.points, Point("A stone pit is drained.")))
    after = PRESS.measure(more)
    assert 1 <= after.pages[0].lines_used - before.pages[0].lines_used <= 2
    assert after.pages[1] == before.pages[1]


def test_within_its_pages_nothing_is_cut():
    """A digest that fits gets no advice."""
    budget = PRESS.measure(MARNER)
    assert budget.cuts == ()
    assert [page.page for page in budget.pages] == [1, 2]


def test_without_quotations_page_two_is_empty():
    """A digest of a theme alone uses no line of page two."""
    assert PRESS.measure(Digest(title="A", theme="It ends.")).pages[1].lines_used == 0


def test_taking_out_what_is_said_brings_it_back():
    """With the points and quotations left out that the cuts name, both pages fit."""
    digest = long(45)
    budget = PRESS.measure(replace(digest, theme="It ends."))
    assert {cut.part for cut in budget.cuts} == {"points", "quotations"}
    left_out = {cut.part: int(cut.message.split("leave out ")[1].split()[0]) for cut in budget.cuts}
    shorter = replace(
        digest,
        theme="It ends.",
        points=digest.points[left_out["points"] :],
        quotations=digest.quotations[left_out["quotations"] :],
    )
    assert over(PRESS.measure(shorter)) == [0, 0]
    assert pages_of(shorter) == 2
