"""What stands elsewhere beside a cadence: its weekdays, its times, its days of the month."""

import re
from dataclasses import replace

from cards.commitments.measure import WEEKEND, WORKING_DAYS, Period
from cards.wording.cadence import PART, WEEKDAY, WEEKDAY_LIST, Cadence, named_days
from cards.wording.line import Line, words

_LONE_DAYS = words(
    rf"(?:,? ?(?:always )?(?:on|each|every)(?: the| a)? )(?P<days>{WEEKDAY_LIST})|"
    rf"(?P<bare>{WEEKDAY_LIST})(?= [.,;:]|$)|"
    rf"(?:at|in|during) (?:the|our|my) (?P<of>{WEEKDAY})(?= [^\W\d_])"
)
_ANY_DAYS = words(rf"(?:always )?on (?:(?:a|any) {WEEKDAY}|{WEEKDAY}s)(?: {PART}s?)?")
_DAY_GROUP = words(
    r"(?:on |every |each ){0,3}(?:weekdays|weekends|a weekday|a weekend|the weekend)"
)
_TIMES = words(r"(?P<n>\d{1,3}) (?:times|occasions)|once")
_DAYS_OF_MONTH = words(r"(?:the )?\d{1,2}th(?: ?(?:,|and|, and) (?:on )?(?:the )?\d{1,2}th){1,5}")
_NOT_A_START = re.compile(
    r"(?<!\S)(?:from|starting|beginning|since|by|before|until|next|this)(?: on)? $"
)


def with_what_stands_beside(line: Line, cadence: Cadence) -> Cadence:
    """Add what stands elsewhere: weekdays beside a weekly cadence, times beside any."""
    if cadence.period is Period.WEEK and not cadence.on:
        cadence = _with_lone_days(line, cadence) or _with_group(line, cadence, times=1)
    elif cadence.period is Period.DAY and not cadence.on and cadence.every == 1:
        cadence = _with_group(line, cadence, times=None)
    elif cadence.period is Period.MONTH and not cadence.on:
        cadence = _with_days_of_months(line, cadence)
    return cadence if cadence.times is not None else _with_times(line, cadence)


def _with_lone_days(line: Line, cadence: Cadence) -> Cadence | None:
    for found in _LONE_DAYS.finditer(line.left):
        if _NOT_A_START.search(line.left[: found.start()]):
            continue
        line.left = f"{line.left[: found.start()]}~{line.left[found.end() :]}"
        days = named_days(found["days"] or found["bare"] or found["of"])
        single = " or " in found[0] or (cadence.every == 1 and len(days) == 1)
        return replace(cadence, on=days, times=cadence.times or (1 if single else None))
    return None


def _with_days_of_months(line: Line, cadence: Cadence) -> Cadence:
    found = line.take(_ANY_DAYS)
    if found is None:
        return cadence
    return replace(cadence, on=named_days(found[0]), times=cadence.times or 1)


def _with_group(line: Line, cadence: Cadence, *, times: int | None) -> Cadence:
    group = line.take(_DAY_GROUP)
    if group is None:
        return cadence
    days = frozenset(WEEKEND if "weekend" in group[0] else WORKING_DAYS)
    return replace(cadence, on=days, times=cadence.times or times)


def _with_times(line: Line, cadence: Cadence) -> Cadence:
    if cadence.period is Period.MONTH:
        dated = line.take(_DAYS_OF_MONTH)
        if dated is not None:
            return replace(cadence, times=len(re.findall(r"\d+th", dated[0])))
    said = line.take(_TIMES)
    return cadence if said is None else replace(cadence, times=int(said["n"] or 1))
