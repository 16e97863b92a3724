"""What can be measured in a commitment, told in any words: common practice, no published source."""

import pytest

from cards.kinds.amounts import Amount, measurable


@pytest.mark.parametrize(
    ("text", "number", "unit"),
    [
        ("ten pages", 10, "page"),
        ("10 full pages", 10, "page"),
        ("45 minutes", 45, "minutes"),
        ("three quarters of nothing, 2 hours", 120, "minutes"),
        ("an hour each day", 60, "minutes"),
        ("half an hour", 30, "minutes"),
        ("an hour and a half", 90, "minutes"),
        ("for a month", 1, "months"),
        ("for one whole year", 12, "months"),
        ("within a week", 7 * 24 * 60, "minutes"),
        ("a fortnight's walks: 14 days", 14 * 24 * 60, "minutes"),
        ("£50", 50, "pound"),
        ("10,000 pounds", 10_000, "pound"),
        ("ten thousand pounds", 10_000, "pound"),
        ("10 per cent", 10, "percent"),
        ("5 km", 5, "kilometre"),
        ("five kilometers", 5, "kilometre"),
        ("twelve letters", 12, ""),
        ("a dozen letters", 12, ""),
        ("a couple of letters", 2, ""),
        ("twice", 2, ""),
    ],
)
def test_an_amount_is_read_however_it_is_written(text, number, unit):
    """In words or figures, with its unit; spans of time in minutes, or in months."""
    found = [(each.number, each.unit) for each in measurable(text).amounts]
    assert (number, unit) in found or (number, "time") in found


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        (Amount(20, "page"), Amount(20, "chapter"), False),
        (Amount(20, "page"), Amount(20), True),
        (Amount(3, "time"), Amount(3, "", ("walk",)), True),
        (Amount(3, "time"), Amount(2, "time"), False),
        (Amount(1, "months"), Amount(1, "minutes"), False),
    ],
)
def test_amounts_are_the_same_in_number_and_unit(one, other, same):
    """Things may be named in other words, units may not."""
    assert one.same(other) is same
    assert other.same(one) is same


@pytest.mark.parametrize(
    ("text", "periods"),
    [
        ("every day", {"day"}),
        ("daily", {"day"}),
        ("each morning", {"day"}),
        ("twice a week", {"week"}),
        ("2x per week", {"week"}),
        ("two times weekly", {"week"}),
        ("every fortnight", {"2 weeks"}),
        ("every two weeks", {"2 weeks"}),
        ("every other day", {"2 days"}),
        ("every second Saturday", {"2 weeks"}),
        ("on alternate Saturdays", {"2 weeks"}),
        ("once a month", {"month"}),
        ("in each meeting", {"meeting"}),
        ("for a month", set()),
        ("on Sundays", set()),
    ],
)
def test_a_cadence_is_read_however_it_is_written(text, periods):
    """In what span something recurs; a span it lasts is no cadence."""
    assert measurable(text).periods == periods


def test_ordinals_are_read():
    """The first and the last of a month's days."""
    assert measurable("on the first Monday of each month").ordinals == {1}
    assert measurable("the last evening of the month").ordinals == {-1}
