"""A measure as it is typed: in words, or in the JSON other commands print."""

import json
from datetime import date

from cards.commitments import Measure, Period
from cards.errors import Invalid
from cards.wording import check

_LONGEST = 2_000
_NUMBERS = ("times", "every", "periods", "minutes")
_FIELDS = {*_NUMBERS, "period", "on", "deadline"}


def measure_read(written: str, on: date) -> Measure:
    """Return the measure in words such as “three times a week”, or in JSON, said on a day.

    Raises:
        Invalid: it holds none.
    """
    if len(written) > _LONGEST:
        raise _amiss(f"A measure takes at most {_LONGEST} characters.")
    if written.lstrip().startswith("{"):
        return _from_json(written)
    found = check(written, on).measure
    if found is None:
        raise _amiss(
            "No measure can be read from those words. Say how often, as in “three times a week "
            "until 1 May”."
        )
    return found


def _from_json(written: str) -> Measure:
    try:
        given = json.loads(written)
    except (ValueError, RecursionError):
        raise _amiss("That is no JSON.") from None
    unknown = sorted(set(given) - _FIELDS)
    if unknown:
        raise _amiss(f"A measure has no “{unknown[0][:40]}”.")
    try:
        period = Period(given.get("period"))
    except ValueError:
        raise _amiss("“period” is one of once, day, week, month, year.") from None
    numbers = {name: given[name] for name in _NUMBERS if given.get(name) is not None}
    for name, value in numbers.items():
        if type(value) is not int:
            raise _amiss(f"“{name}” is a whole number.")
    on = given.get("on") or []
    if not isinstance(on, list) or not all(isinstance(each, str) for each in on):
        raise _amiss("“on” is a list of days, as in [“MO”, “TH”].")
    return Measure(period=period, on=tuple(on), deadline=_day(given.get("deadline")), **numbers)


def _day(written: object) -> date | None:
    if written is None:
        return None
    try:
        return date.fromisoformat(str(written))
    except ValueError:
        raise _amiss("“deadline” is a day, as in 2026-05-01.") from None


def _amiss(said: str) -> Invalid:
    return Invalid(said, where="measure")
