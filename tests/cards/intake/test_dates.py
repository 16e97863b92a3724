"""Dates as readers write them. Forms are common practice, no published source."""

from datetime import date

import pytest

from cards.intake.dates import date_in
from cards.intake.language import writes_day_first
from tests.cards.intake.blocks_of import understood

DAY = date(2021, 4, 3)


@pytest.mark.parametrize(
    "written",
    [
        *("2021-04-03", "2021/4/3", "2021.04.03", "2021年4月3日", "3.4.2021", "03. 04. 2021"),
        *("3 April 2021", "3rd April 2021", "April 3rd, 2021", "April 3, 2021", "Apr. 3 2021"),
        *("the third of April, 2021", "April the third, 2021", "Saturday, 3 April 2021"),
        *("3. April 2021", "am 3. April 2021", "Samstag, den 3. April 2021"),
        *("3 avril 2021", "le 3 avril 2021", "samedi 3 avril 2021", "3 de abril de 2021"),
        *("el 3 de abril de 2021", "3 aprile 2021", "il 3 aprile 2021", "3 de abril, 2021"),
        *("em 3 de abril de 2021", "3 april 2021", "op 3 april 2021", "zaterdag 3 april 2021"),
    ],
)
def test_one_day_in_many_forms(written: str):
    """Words and figures of seven languages give the same day."""
    found = date_in(written)
    assert found is not None
    assert found.day == DAY


@pytest.mark.parametrize(
    ("written", "day"),
    [
        ("1er mars 2019", date(2019, 3, 1)),
        ("1º de março de 2019", date(2019, 3, 1)),
        ("twenty-first of May 2020", date(2020, 5, 21)),
        ("31. Dezember 2020", date(2020, 12, 31)),
        ("15 août 2020", date(2020, 8, 15)),
        ("2 Mär 2020", date(2020, 3, 2)),
        ("28/02/2020", date(2020, 2, 28)),
        ("2/28/2020", date(2020, 2, 28)),
        ("30 February 2020", None),
        ("May 2020", None),
        ("3/4/2020", None),
    ],
)
def test_other_days(written: str, day: date | None):
    """First days, accents and figures with one reading give their day; others leave it open."""
    found = date_in(written)
    assert found is not None
    assert found.day == day


def test_figures_are_read_by_the_language_of_the_document():
    """Where the language writes the day first, so do figures; in English they stay open."""
    french = "# Bel-Ami\nFini le : 03/04/2021\n## Résumé\nIl monte par les femmes et par la presse."
    english = "# Emma\nFinished: 03/04/2021\n## Summary\nShe is wrong, and the last to know of it."
    assert understood(french).digest.finished_on == DAY
    assert understood(english).digest.finished_on is None
    assert writes_day_first(["Der Deich hält nicht, und die Leute wissen es nicht."])
    assert not writes_day_first(["The dike does not hold, and they know it."])
