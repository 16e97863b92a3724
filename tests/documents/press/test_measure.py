"""The live measure is the printed page itself."""

import io
from dataclasses import replace
from time import process_time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from cards.budget import Budget
from cards.digest import Digest, Point
from service.documents.press.press import Press
from service.documents.press.sheet import sheet_of
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


@pytest.mark.parametrize("upon", ["\u0301", "\u200d", "\ufe0f", "\U000e0061"])
def test_marks_by_the_thousand_on_one_letter_are_measured_soon(upon: str):
    """Accents, joiners and tags heaped on one letter hold up nobody who measures or prints."""
    heaped = Digest("A", theme=f"a{upon * 19_000} whale")
    PRESS.measure(Digest("A", theme="a"))
    begun = process_time()
    assert PRESS.measure(heaped).pages[0].over == 0
    # Hundredths of a second here; the accents took fifty seconds.
    assert process_time() - begun < 1


def test_a_letter_keeps_the_marks_it_can_bear():
    """Up to thirty marks on a letter are printed as they are (UAX 15, section 13)."""
    borne = "a" + "\u0301" * 30
    assert sheet_of(Digest("A", theme=borne))["theme"][0]["lines"] == [borne]


def test_a_wide_gap_is_written_soon():
    """Spaces by the thousand between two words take no longer in Markdown than letters do."""
    begun = process_time()
    PRESS.write(Digest("A", theme="a" + " " * 19_000 + "b"), Form.MARKDOWN)
    # A thousandth of a second here; it took three and a half.
    assert process_time() - begun < 0.5
