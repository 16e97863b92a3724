"""What a commitment does and what it leaves for it: common practice, no published source."""

import pytest

from cards.kinds.instead import is_exchanged


@pytest.mark.parametrize(
    ("commitment", "attempt", "exchanged"),
    [
        ("cook at home instead of eating out", "eat out instead of cooking at home", True),
        ("cook at home instead of eating out", "rather than cook at home eat out", True),
        ("cook at home instead of eating out", "cook at home instead of eating out", False),
        ("cook at home instead of eating out", "rather than eat out , cook at home", False),
        ("cook at home instead of eating out", "eat out on fridays", True),
        ("cook at home instead of eating out", "do not eat out", False),
        ("cook at home instead of eating out", "cook at home", False),
        ("cook at home", "eat out instead of cooking at home", False),
        ("cook instead of", "", False),
    ],
)
def test_what_is_left_and_what_is_done_may_not_change_places(commitment, attempt, exchanged):
    """In whichever order they stand; what alone is done must not be what was to be left."""
    assert is_exchanged(commitment, attempt) is exchanged
