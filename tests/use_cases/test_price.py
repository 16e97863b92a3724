"""What keeping a book costs, told before it is taken up and after."""

import pytest

from cards.answers import Grade
from cards.digest import Digest
from cards.kinds.base import KindName
from cards.parts import Care
from cards.sitting import Price
from cards.sitting.pace import USUAL
from service.use_cases.add_digest import add_digest
from service.use_cases.preferences import Preferences, set_preferences
from service.use_cases.price import price_of, price_of_kept, prices_in_words
from service.use_cases.sit import todays_sitting


def test_a_book_costs_before_it_is_taken_up_what_it_costs_after(house, digest):
    """Nobody is told one price and charged another."""
    before = price_of(house.desk, digest)
    kept = add_digest(house.desk, "silas.docx", house.shelf.put(digest)).kept
    assert price_of_kept(house.desk, kept.id) == before


def test_a_book_put_to_rest_at_once_costs_nothing(house, digest):
    """Nothing of it is let in; close it costs more than steadily, in every door's words too."""
    prices = price_of(house.desk, digest)
    assert set(prices[Care.RESTING].minutes_a_day) == {0.0}
    assert prices[Care.CLOSE].first_year > prices[Care.STEADY].first_year > 0
    words = prices_in_words(prices)
    assert words[Care.RESTING] == "nothing a day"
    assert "in the first year" in words[Care.STEADY]


def test_a_book_put_to_rest_costs_only_what_was_asked_of_it(house, added):
    """What was asked before is still sampled, so it costs something, but less than all would."""
    book = added()
    asked = todays_sitting(house.desk).items[0].kept.item
    house.answer(asked.id, Grade.CLEAR)
    rest = price_of_kept(house.desk, book)[Care.RESTING]
    for each in house.items().values():
        if each.item.id != asked.id:
            house.answer(each.item.id, Grade.CLEAR)
    assert 0 < rest.first_year < price_of_kept(house.desk, book)[Care.RESTING].first_year


def test_the_readers_own_target_and_pace_make_the_price(house, digest):
    """A reader who aims lower pays less."""
    usual = price_of(house.desk, digest)[Care.STEADY]
    set_preferences(house.desk, Preferences(target=0.75))
    assert price_of(house.desk, digest)[Care.STEADY].first_year < usual.first_year


def test_what_costs_nothing_at_any_care_is_not_put_into_words():
    """A book that nothing can be asked of has no price to tell."""
    assert prices_in_words(dict.fromkeys(Care, Price((0.0,) * 5))) == {}


def test_a_theme_alone_costs_its_askings_at_its_own_seconds(house):
    """The usual minute of a theme, asked some nine times in the first year, is 1.5 s a day."""
    told = price_of(house.desk, Digest("A Book", theme="It ends well."))[Care.STEADY].first_year
    askings = told * 60 * 365 / USUAL[KindName.THEME]
    assert askings == pytest.approx(9, abs=0.5)
