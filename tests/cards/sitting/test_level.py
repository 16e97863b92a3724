"""The day on which all is level again."""

from dataclasses import dataclass, field
from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st

from cards.kinds.base import KindName
from cards.sitting import level_on

DAY = date(2026, 6, 1)
SECONDS = dict.fromkeys(KindName, 30.0) | {KindName.THEME: 60.0}
KINDS = tuple(KindName)


@dataclass
class Library:
    """Items that were asked before, column by column."""

    kinds: list[KindName] = field(default_factory=list)
    stability: list[float] = field(default_factory=list)
    difficulty: list[float] = field(default_factory=list)
    last_days: list[date] = field(default_factory=list)
    due_on: list[date] = field(default_factory=list)
    close: list[bool] = field(default_factory=list)

    def hold(
        self,
        count: int = 1,
        stability: float = 20_000.0,
        last: int = -1,
        due: int = 0,
        kind: KindName = KindName.PLACE,
        difficulty: float = 5.0,
    ) -> "Library":
        """Take in items alike, with days counted from the first; as they are, never forgotten."""
        self.kinds += [kind] * count
        self.stability += [stability] * count
        self.difficulty += [difficulty] * count
        self.last_days += [DAY + timedelta(last)] * count
        self.due_on += [DAY + timedelta(due)] * count
        self.close += [False] * count
        return self


def days_until(library: Library, seconds_a_day: float, target: float = 0.9) -> int | None:
    """Return after how many days all is level."""
    found = level_on(library, DAY, SECONDS, seconds_a_day, target)
    return None if found is None else (found - DAY).days


def test_where_nothing_is_due_all_is_level_today():
    """A library with nothing due, and one with nothing in it, are level on the day itself."""
    assert days_until(Library(), 600) == 0
    assert days_until(Library().hold(5, due=1), 600) == 0


def test_what_fits_today_is_level_today():
    """Twenty items of half a minute fit into eleven minutes."""
    assert days_until(Library().hold(20), 660) == 0


def test_what_is_remembered_is_worked_off_day_by_day():
    """Ten items at two a day take five days, the last of them the day of the answer."""
    assert days_until(Library().hold(10), 65) == 4


def test_what_falls_due_meanwhile_waits_as_well():
    """Two more, due on the last of the five days, take a sixth."""
    assert days_until(Library().hold(10).hold(2, due=4), 65) == 5


def test_what_was_forgotten_takes_longer():
    """The same number of items, half forgotten, is level later: what is blank is asked again."""
    known = days_until(Library().hold(40), 300)
    forgotten = days_until(Library().hold(40, stability=2.0, last=-400), 300)
    assert known is not None
    assert forgotten is not None
    assert forgotten > known


def test_a_day_too_short_for_one_item_still_takes_one():
    """Three themes of a minute are asked one a day by who has half a minute."""
    assert days_until(Library().hold(3, kind=KindName.THEME), 30) == 2


def test_what_is_kept_close_keeps_coming_back():
    """Sixty items of a book kept close are level later than sixty kept steadily, or never."""
    steady = Library().hold(60, stability=4.0, last=-30)
    close = Library().hold(60, stability=4.0, last=-30)
    close.close = [True] * 60
    steadily, closely = days_until(steady, 300), days_until(close, 300)
    assert steadily is not None
    assert closely is None or closely > steadily


def test_the_order_the_items_come_in_does_not_matter():
    """What is worth most is asked first, whichever way round the store hands it over."""
    some = [(3.0 + number, -40 + number, -number % 9) for number in range(30)]
    one, other = Library(), Library()
    for stability, last, due in some:
        one.hold(1, stability, last, due)
    for stability, last, due in reversed(some):
        other.hold(1, stability, last, due)
    assert days_until(one, 120) == days_until(other, 120) > 0


def test_beyond_a_year_no_day_is_told():
    """A thousand items at two a day would take five hundred days."""
    assert days_until(Library().hold(1000), 65) is None


ITEMS = st.tuples(
    st.floats(0.05, 300),  # stability, days
    st.floats(1, 10),  # difficulty
    st.integers(-90, -1),  # last answer
    st.integers(-60, 20),  # due
    st.sampled_from(KINDS),
)


@given(items=st.lists(ITEMS, min_size=1, max_size=60), target=st.sampled_from([0.7, 0.9, 0.97]))
def test_more_minutes_never_make_it_later(items, target):
    """From one minute a day to eight, each more brings the day no later, and a year stays out."""
    library = Library()
    for stability, difficulty, last, due, kind in items:
        library.hold(1, stability, last, max(due, last + 1), kind, difficulty)
    told = [days_until(library, 60.0 * minutes, target) for minutes in range(1, 9)]
    days = [365 if each is None else each for each in told]
    assert days == sorted(days, reverse=True)
    assert all(each is None or 0 <= each < 365 for each in told)
