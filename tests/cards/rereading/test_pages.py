"""Which pages a locator names, which the reader says they read, and how long they take."""

from datetime import timedelta

import pytest

from cards.rereading import minutes_a_page
from cards.rereading.pages import LONGEST, count_of, pages_of
from cards.rereading.reading_pace import MINUTES_A_PAGE, minutes_for
from tests.cards.digests import kept
from tests.cards.rereading.records import DAY, reread


@pytest.mark.parametrize(
    ("locator", "pages"),
    [
        ("p. 54", (54, 54)),
        ("pp. 34-35", (34, 35)),
        ("pp. 134–5", (134, 135)),
        ("pp. 198-203, ch. 4", (198, 203)),
        ("ch. 20, p. 7", (7, 7)),
        ("p. 60-12", (60, 60)),
        ("p. 4, lines 10-14", (4, 4)),
        ("pp. 1-50000", (1, LONGEST)),
        ("p. ix", None),
        ("Finale", None),
        (None, None),
    ],
)
def test_a_locator_names_its_pages(locator, pages) -> None:
    """First and last as cited; short ends filled up (common practice, no published source)."""
    assert pages_of(locator) == pages


@pytest.mark.parametrize(
    ("written", "count"),
    [
        ("10-24", 15),
        ("pp. 10–24, 30", 16),
        ("p. 7", 1),
        ("10 to 12 and 11-14", 5),
        ("134-5", 2),
        ("chapter 3", None),
        ("", None),
        ("10-24, the end", None),
        ("1-" * 100, None),
    ],
)
def test_what_a_reader_says_they_read_is_counted_or_left(written, count) -> None:
    """Plain pages are counted, each once; of anything else nothing is taken."""
    assert count_of(written) == count


def test_the_readers_own_pace_is_the_median_of_their_rereadings() -> None:
    """Those that say both pages and minutes, no mistakes among them; without any, two minutes.

    A page of 500 words at 238 words a minute takes 2.1 minutes (Brysbaert 2019, from memory).
    """
    digest = kept()
    told = [("10-19", 30), ("1-10", 15), ("1-10", 50), ("1-100", 1), ("the end", 40), ("", None)]
    read = [
        reread(digest, DAY - timedelta(days=days), pages=pages, minutes=minutes)
        for days, (pages, minutes) in enumerate(told)
    ]
    assert minutes_a_page(read) == pytest.approx(3.0)
    assert minutes_a_page([reread(digest, DAY, pages="1-2", minutes=9, withdrawn_on=DAY)]) == 2.0
    assert minutes_a_page([]) == MINUTES_A_PAGE == pytest.approx(500 / 238, rel=0.05)


def test_minutes_are_whole_and_never_none() -> None:
    """Part of a minute is a minute more."""
    assert [minutes_for(pages, 2.1) for pages in (0, 1, 10)] == [1, 3, 21]
