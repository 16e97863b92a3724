"""A reader's own weights, by kind: each item is foreseen by those of its kind."""

from dataclasses import dataclass
from datetime import date, timedelta

import pytest

from cards.kinds.base import KindName
from cards.schedule import DEFAULT_WEIGHTS
from cards.sitting import best_due, early, first_early, level_on, price, unasked_worth
from cards.sitting.pace import USUAL
from cards.weighting import Weighting

DAY = date(2026, 3, 10)
STEEP = (*DEFAULT_WEIGHTS[:20], 0.4)
"""As the published ones, but recall falls otherwise before and after the stability."""
SLOW = (*DEFAULT_WEIGHTS[:8], 1.2, *DEFAULT_WEIGHTS[9:])
"""As the published ones, but stability grows half as much."""
BY_KIND = Weighting(by_kind=((KindName.PLACE, STEEP), (KindName.SOURCE, SLOW)))
MIXED = (KindName.PLACE, KindName.THEME, KindName.SOURCE, KindName.PLACE, KindName.NEXT) * 6


@dataclass
class Library:
    """Items of some kinds, each of its own memory."""

    kinds: tuple[KindName, ...]
    least: float = 1.0

    @property
    def stability(self):
        """Return what each holds for, in days."""
        return [self.least + 3.0 * number for number in range(len(self.kinds))]

    @property
    def difficulty(self):
        """Return how hard each is."""
        return [1.0 + number % 9 for number in range(len(self.kinds))]

    @property
    def last_days(self):
        """Return the days of the last answers, up to a year ago."""
        return [DAY - timedelta(1 + 12 * number) for number in range(len(self.kinds))]

    @property
    def due_on(self):
        """Return the days each is due: today."""
        return [DAY] * len(self.kinds)

    @property
    def close(self):
        """Return that none is kept close."""
        return [False] * len(self.kinds)


def alone(kind: KindName) -> Weighting:
    """Return the weights of a kind, as those of every kind."""
    return Weighting(BY_KIND.of(kind))


def test_each_item_is_worth_what_the_weights_of_its_kind_tell():
    """Weighed among other kinds, an item is worth what it is among its own weights alone."""
    library = Library(MIXED)
    mixed = dict(best_due(library, DAY, USUAL, 99, BY_KIND))
    for kind in set(MIXED):
        lone = dict(best_due(library, DAY, USUAL, 99, alone(kind)))
        for place in (n for n, each in enumerate(MIXED) if each is kind):
            assert mixed[place] == pytest.approx(lone[place])


def test_each_item_may_be_asked_early_as_the_weights_of_its_kind_tell():
    """Early is by the curve of the kind."""
    library = Library(MIXED)
    mixed = early(library, DAY, 0.9, BY_KIND)
    for kind in set(MIXED):
        lone = early(library, DAY, 0.9, alone(kind))
        assert {n for n in mixed if MIXED[n] is kind} == {n for n in lone if MIXED[n] is kind}
    place = Library((KindName.PLACE,), least=300.0)
    # Recall of 0.85 lies beyond the stability, where the steeper curve is there sooner.
    assert DAY < first_early(place, DAY, 0.7, BY_KIND) < first_early(place, DAY, 0.7)


def test_an_unasked_item_is_worth_what_the_weights_of_its_kind_tell():
    """And one of another kind what the general ones tell."""
    for kind in KindName:
        assert unasked_worth(kind, USUAL, BY_KIND) == unasked_worth(kind, USUAL, alone(kind))
    assert unasked_worth(KindName.SOURCE, USUAL, BY_KIND) != unasked_worth(KindName.SOURCE, USUAL)


def test_a_price_adds_up_over_kinds_each_by_its_own_weights():
    """A book of three kinds costs what its kinds cost, each with the weights of its own."""
    book = {KindName.PLACE: 4, KindName.SOURCE: 3, KindName.THEME: 1}
    whole = price(book, USUAL, 0.9, BY_KIND).minutes_a_day
    apart = [price({kind: n}, USUAL, 0.9, alone(kind)).minutes_a_day for kind, n in book.items()]
    assert whole == pytest.approx([sum(year) for year in zip(*apart, strict=True)])
    assert whole != pytest.approx(price(book, USUAL, 0.9).minutes_a_day)


def test_weights_written_out_for_every_kind_are_those_written_once():
    """The same weights, whichever way they are given, bring the same day and the same choice."""
    library = Library(MIXED)
    written = Weighting(by_kind=tuple((kind, SLOW) for kind in KindName))
    once = Weighting(SLOW)
    assert level_on(library, DAY, USUAL, 240, 0.9, written) == level_on(
        library, DAY, USUAL, 240, 0.9, once
    )
    assert best_due(library, DAY, USUAL, 9, written) == best_due(library, DAY, USUAL, 9, once)


def test_the_day_all_is_level_is_reckoned_item_by_item():
    """Weights go with their items, in whichever order they are asked.

    Of nine short items and nine that take a minute it matters which hardly grow any longer:
    those of a minute keep coming back for weeks.
    """
    stuck = (*DEFAULT_WEIGHTS[:8], -9.0, *DEFAULT_WEIGHTS[9:])
    library = Library((KindName.NEXT,) * 9 + (KindName.THEME,) * 9)
    held = {
        kind: level_on(library, DAY, USUAL, 240, 0.97, Weighting(by_kind=((kind, stuck),)))
        for kind in (KindName.NEXT, KindName.THEME)
    }
    assert held[KindName.THEME] > held[KindName.NEXT] + timedelta(days=7)
    assert level_on(library, DAY, USUAL, 240, 0.97) <= held[KindName.NEXT]
