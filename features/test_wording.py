"""Steps of `wording.feature`."""

from datetime import datetime

from pytest_bdd import given, parsers, scenarios, then, when

from service.use_cases.wording import check_wording, readers_day

scenarios("wording.feature")


@given(parsers.parse("it is {day:d} {month} 2026"))
def today(mira, day, month):
    mira.at(day, month)


@when(parsers.parse('Mira asks how "{text}" is worded'))
def asks(mira, text):
    mira.noted = check_wording(text, readers_day(mira.desk))


@then("it is concrete, specific and measurable")
def all_three(mira):
    assert mira.noted.concrete
    assert mira.noted.specific
    assert mira.noted.measurable
    assert mira.noted.advice == ()


@then(
    parsers.re(r'it asks (?P<times>\d+) a (?P<period>\w+) on "(?P<days>[^"]*)" until (?P<end>.+)')
)
def asks_for(mira, times, period, days, end):
    measure = mira.noted.measure
    assert (measure.times, measure.period.value) == (int(times), period)
    assert measure.on == tuple(days.split(",") if days else ())
    if end.endswith("periods"):
        assert (measure.periods, measure.deadline) == (int(end.split()[0]), None)
    elif end == "nothing":
        assert (measure.periods, measure.deadline) == (None, None)
    else:
        day = datetime.strptime(f"{end} 2026", "%d %B %Y").date()  # noqa: DTZ007 - a day, no time
        assert (measure.periods, measure.deadline) == (None, day)


@then("it is not measurable, and the advice says why")
def not_measurable(mira):
    assert mira.noted.measurable is False
    assert any(line.startswith("It is not measurable yet") for line in mira.noted.advice)


@then(parsers.parse('it offers "{rewording}"'))
def offers(mira, rewording):
    assert any(rewording in line for line in mira.noted.advice)


@then("the advice says to talk to a doctor")
def says_doctor(mira):
    assert "Talk to a doctor" in mira.noted.advice[-1]


@then(parsers.parse('no rewording leaves out "{words}"'))
def leaves_out_nothing(mira, words):
    assert words in mira.noted.rewording
