"""The two-page budget as it is drawn and said."""

from cards.budget import Budget, PageUse
from service.pages.budget_words import bars, over_in_words


def test_a_page_that_fits_is_drawn_to_its_brim() -> None:
    """The bar is as long as the page, filled as far as it is used."""
    one, two = bars(Budget((PageUse(1, 23, 46), PageUse(2, 0, 46))))
    assert (one.used, one.brim, one.over) == (50.0, 100.0, 0)
    assert f"{one.name}: {one.words}" == "Page one: 23 of 46 lines"
    assert (two.used, two.words) == (0.0, "0 of 46 lines")
    assert over_in_words((one, two)) == ""


def test_a_page_that_is_over_is_drawn_beyond_it() -> None:
    """The bar is as long as what is used, and the page's brim is marked on it."""
    one, two = bars(Budget((PageUse(1, 50, 40), PageUse(2, 41, 40))))
    assert (one.used, one.brim, one.over) == (100.0, 80.0, 10)
    assert one.words == "50 of 40 lines, 10 too many"
    assert over_in_words((one, two)) == "Page one is ten lines over and page two is one line over."
