"""Reviews as columns: what they check, and what they tell of each row."""

import pytest

from cards.fitting.reviews import KINDS, Reviews

COLUMNS = {
    "items": [5, 5, 5, 2, 2],
    "kinds": [0, 0, 0, 3, 3],
    "days": [738_000, 738_000, 738_004, 737_000, 737_010],
    "grades": [0, 2, 2, 3, 0],
}


def test_each_row_tells_the_days_since_the_one_before_and_whether_it_counts():
    """Elapsed days stay within an item; the first answer and the same day's count for nothing."""
    reviews = Reviews.of(**COLUMNS)
    assert reviews.elapsed.tolist() == [0, 0, 4, 0, 10]
    assert reviews.first.tolist() == [True, False, False, True, False]
    assert reviews.scored.tolist() == [False, False, True, False, True]
    assert reviews.came_back.tolist() == [False, True, True, True, False]


def test_no_answers_are_reviews_too():
    """Empty columns are reviews without a row."""
    reviews = Reviews.of([], [], [], [])
    assert len(reviews) == 0
    assert reviews.elapsed.tolist() == []
    assert reviews.scored.tolist() == []


@pytest.mark.parametrize(
    ("changed", "saying"),
    [
        ({"grades": [0, 2, 2, 3]}, "one value an answer"),
        ({"grades": [0, 2, 2, 3, 4]}, "outside its range"),
        ({"grades": [0, 2, 2, 3, -1]}, "outside its range"),
        ({"kinds": [0, 0, 0, len(KINDS), len(KINDS)]}, "outside its range"),
        ({"items": [5, 2, 5, 2, 2]}, "stand together"),
        ({"days": [738_000, 737_999, 738_004, 737_000, 737_010]}, "never fall"),
        ({"kinds": [0, 0, 1, 3, 3]}, "one kind"),
    ],
)
def test_columns_that_do_not_fit_together_are_refused(changed, saying):
    """Each column that breaks what the others say is refused, and told."""
    with pytest.raises(ValueError, match=saying):
        Reviews.of(**(COLUMNS | changed))


def test_some_of_the_rows_are_reviews_again():
    """The answers up to some day keep the order they had."""
    reviews = Reviews.of(**COLUMNS)
    some = reviews.only(reviews.days < 738_004)
    assert some.items.tolist() == [5, 5, 2, 2]
    assert some.elapsed.tolist() == [0, 0, 0, 10]
