"""A reader's settings."""

import pytest

from cards.errors import InvalidPreference
from service.use_cases.preferences import Preferences, set_preferences, show_reader


def test_only_what_is_given_is_changed(house):
    """The other settings stay, and the revision counts the changes."""
    before = show_reader(house.desk)
    after = set_preferences(house.desk, Preferences(target=0.85))
    assert (after.target, after.time_zone) == (0.85, before.time_zone)
    assert after.revision == before.revision + 1
    assert set_preferences(house.desk, Preferences(target=0.85)) == after == show_reader(house.desk)


@pytest.mark.parametrize(
    ("wanted", "where"),
    [
        (Preferences(time_zone="Nowhere"), "time_zone"),
        (Preferences(time_zone="../../etc/passwd"), "time_zone"),
        (Preferences(turns_at=24), "turns_at"),
        (Preferences(target=0.99), "target"),
        (Preferences(unasked_a_day=-1), "unasked_a_day"),
    ],
)
def test_a_setting_outside_its_range_is_refused(house, wanted, where):
    """It is refused by name, and nothing is changed."""
    before = show_reader(house.desk)
    with pytest.raises(InvalidPreference) as refusal:
        set_preferences(house.desk, wanted)
    assert refusal.value.where == where
    assert show_reader(house.desk) == before
