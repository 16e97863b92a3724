"""Properties of the reader's day, over every time zone of the tz database.

The rule: a day of the reader's is the date on the wall, less the hours of the turn. So an
evening at 23:50 and the next morning at 07:00 are two days whenever the turn is later than
00:00 and no later than 07:00: for a turn of 4 in every zone, on every night. With a turn at 8
the morning still belongs to the evening before; at 0 the two are calendar days.
"""

from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from hypothesis import given, settings
from hypothesis import strategies as st

from cards.days import Days
from tests.property.strategies import zones

dates = st.dates(date(1970, 1, 2), date(2037, 12, 30))
instants = st.datetimes(datetime(1970, 1, 2), datetime(2037, 12, 30), timezones=st.just(UTC))  # noqa: DTZ001 - hypothesis adds the zone
folds = st.sampled_from([0, 1])


def changes(zone, day):
    """Return the dates within three years of one on whose noons the clock has another offset."""
    noons = [datetime.combine(day + timedelta(days=n), time(12), zone) for n in range(-550, 550)]
    offsets = [noon.utcoffset() for noon in noons]
    return [
        noon.date()
        for noon, before, after in zip(noons, offsets, offsets[1:], strict=False)
        if before != after
    ]


@st.composite
def nights(draw):
    """A zone and an evening, often that before the clocks change there."""
    name = draw(zones)
    day = draw(dates)
    near = changes(ZoneInfo(name), day)
    evenings = [st.just(day)]
    if near:
        evenings.append(st.sampled_from(near))
    return name, draw(st.one_of(*evenings))


@settings(max_examples=1_000)
@given(nights(), folds)
def test_an_evening_and_the_next_morning_are_two_days(night, fold):
    """“Answering at 23:50 and next morning at 07:00 is two days of the reader”, turning at 4."""
    name, day = night
    zone, days = ZoneInfo(name), Days(name, 4)
    evening = datetime.combine(day, time(23, 50, fold=fold), zone)
    morning = datetime.combine(day + timedelta(days=1), time(7, fold=fold), zone)
    one, other = days.of(evening.astimezone(UTC)), days.of(morning.astimezone(UTC))
    # Where hours were skipped (Apia all of 30 December 2011; Casey, first lived in on 1 January
    # 1969, from 00:00 to 08:00), 23:50 or 07:00 may never have been.
    if was(evening):
        assert one == day
    if was(morning):
        assert other == day + timedelta(days=1)
    if was(evening) and was(morning):
        assert other > one


def was(wall):
    """Tell whether the clock on the wall ever showed a time."""
    shown = wall.astimezone(UTC).astimezone(wall.tzinfo)
    return shown.replace(tzinfo=None, fold=0) == wall.replace(tzinfo=None, fold=0)


@settings(max_examples=300)
@given(nights(), st.integers(1, 7))
def test_so_it_is_for_every_turn_up_to_seven(night, turns_at):
    """07:00 is no earlier than the turn, and the turn no earlier than 01:00."""
    name, day = night
    zone, days = ZoneInfo(name), Days(name, turns_at)
    evening = datetime.combine(day, time(23, 50), zone)
    morning = datetime.combine(day + timedelta(days=1), time(7), zone)
    if was(evening) and was(morning):
        assert days.of(morning.astimezone(UTC)) > days.of(evening.astimezone(UTC))


@given(zones, dates)
def test_with_a_turn_at_eight_the_morning_belongs_to_the_evening(name, day):
    """The edge of the rule: 07:00 before the turn is still the day of 23:50."""
    zone, days = ZoneInfo(name), Days(name, 8)
    evening = datetime.combine(day, time(23, 50), zone).astimezone(UTC)
    morning = datetime.combine(day + timedelta(days=1), time(7), zone).astimezone(UTC)
    walls = [at.astimezone(zone).replace(tzinfo=None) for at in (evening, morning)]
    if walls[1] - walls[0] == timedelta(hours=7, minutes=10):
        assert days.of(morning) == days.of(evening)


@settings(max_examples=500)
@given(nights(), st.integers(0, 72 * 60), st.integers(0, 72 * 60))
def test_days_never_go_backwards_when_they_turn_at_four(night, start, wait):
    """A later instant is never an earlier day in one zone, around the changes of clocks too."""
    name, day = night
    days = Days(name, 4)
    first = datetime.combine(day - timedelta(days=1), time(), UTC) + timedelta(minutes=start)
    assert days.of(first) <= days.of(first + timedelta(minutes=wait))


@settings(max_examples=500)
@given(nights(), st.integers(0, 23), st.integers(0, 72 * 60), st.integers(0, 72 * 60))
def test_at_any_other_hour_only_a_time_lived_twice_goes_back(night, turns_at, start, wait):
    """Where clocks go back over the turn itself, what is lived twice belongs to the day before."""
    name, day = night
    days = Days(name, turns_at)
    first = datetime.combine(day - timedelta(days=1), time(), UTC) + timedelta(minutes=start)
    second = first + timedelta(minutes=wait)
    if days.of(second) < days.of(first):
        zone = ZoneInfo(name)
        assert second.astimezone(zone).utcoffset() < first.astimezone(zone).utcoffset()
        assert days.of(second) == days.of(first) - timedelta(days=1)


@given(zones, instants, st.integers(0, 23))
def test_a_day_is_the_date_on_the_wall_or_the_one_before(name, instant, turns_at):
    """Never another: the turn moves the small hours alone."""
    wall = instant.astimezone(ZoneInfo(name))
    back = wall.date() - Days(name, turns_at).of(instant)
    assert back == timedelta(days=1 if wall.hour < turns_at else 0)
