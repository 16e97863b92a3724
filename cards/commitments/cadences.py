"""How often: "every other day", "twice a week", "on Monday and Thursday nights"."""

import re
from dataclasses import dataclass, replace

from cards.commitments.dates import DAYS, MONTHS
from cards.commitments.feasts import FEASTS
from cards.commitments.line import Line, words
from cards.commitments.measure import WEEKDAYS, WEEKEND, WORKING_DAYS, Period


@dataclass(frozen=True, slots=True)
class Cadence:
    """How often something is to be done, before terms and counts.

    Attributes:
        period: the span it is told in.
        every: how many spans make a period.
        on: BYDAY values, not yet in order.
        times: deeds in a period when the words say so ("twice", "three evenings"), or None.
        implied: whether nothing but a habit of the day (waking, dinner) says it.
    """

    period: Period
    every: int = 1
    on: frozenset[str] = frozenset()
    times: int | None = None
    implied: bool = False


_WD = "(?:" + "|".join(DAYS) + ")"
_PART = r"(?:morning|evening|night|afternoon|lunchtime|lunch time|noon|teatime|bedtime|midday)"
_DAILY = (
    r"(?:single |blessed |working )?(?:day|night|evening|morning|afternoon"
    r"|bedtime|noon|midday|dawn|sunrise|sunset|dusk"
    r"|breakfast|lunch|lunchtime|dinner|supper|meal|mealtime|teatime|nightfall|midnight)"
)
_UNIT = r"(?:day|week|month|quarter|year|night|evening|morning|afternoon)"
_JOIN = r"(?: ,)?(?: and| or| &)?(?: on)?(?: (?:every|each|the|a))?"
_LIST = rf"{_WD}s?(?: {_PART}s?)?(?:{_JOIN} {_WD}s?(?: {_PART}s?)?)*"
_NTH = r"(?:[1-5]th|last)"
_EACH = r"(?:each|every|a|per|the|any|that|this)"
_MONTHLY = words(
    rf"(?:on )?(?:(?P<lead>each|every) )?(?:the )?(?P<which>{_NTH}(?: {_WD})?(?:"
    rf"(?: ,)?(?: and| or) (?:the )?{_NTH}(?: {_WD})?)*)"
    rf"(?: (?P<day>{_WD})s?)?(?: {_PART}s?)?(?: (?:of|in) (?P<of>{_EACH}|my|our)(?: calendar)?"
    rf"(?: (?P<step>other|[2-9]th|\d+))?(?: calendar)? (?P<unit>month|quarter|year)s?)?"
)
_NAMED_DAY = re.compile(rf"(?P<which>{_NTH})(?: (?P<day>{_WD}))?")
_STEP = r"(?P<step>other|alternate|[2-9]th|1\dth|\d{1,3}(?! \d))"
_SHAPES: tuple[tuple[str, re.Pattern[str]], ...] = (
    (
        "stepped weekday",
        words(
            r"(?:on )?(?:(?:each|every) (?P<step>other|2th|[2-9]th|[2-9]) |"
            rf"(?P<alternate>alternate ))(?P<days>{_LIST})"
        ),
    ),
    (
        "times a unit",
        words(
            r"(?:(?P<n>\d{1,3}) (?:different |separate |other )?(?:times|occasions)|"
            r"(?P<once>once|1 time)"
            rf"|(?P<d>\d{{1,2}}) (?:(?:separate|different) )?(?:{_PART}|day|night|weekday"
            r"|week night)s?(?: out)?)"
            r" (?:(?:in |of |out of |every |each )?(?:a|an|per|each|every|the)|every"
            r"|each|per|in each|in every)"
            r"(?: single| calendar| school| working)? "
            rf"(?:(?P<step>other|[2-9]th|\d{{1,3}}|couple of) )?(?P<unit>{_UNIT}|season"
            r"|term|hour)s?"
        ),
    ),
    (
        "days in days",
        words(rf"(?P<d>\d) (?:{_PART}|day|night)s?(?: out)? (?:of|in) (?:7|the 7|every 7)"),
    ),
    (
        "weekdays",
        words(
            r"(?:(?:on|each|every|all|per|a) )*(?:single )?(?:weekday|school ?day|school "
            r"night)s?(?: mornings?| evenings?| nights?| afternoons?| lunchtimes?)?"
            r"|(?:from )?monday(?: mornings?)? (?:to|through|thru|until) friday(?: "
            r"evenings?)?|(?:from )?mondays (?:to|through) fridays"
        ),
    ),
    (
        "range",
        words(rf"(?:from )?(?P<first>{_WD})s? (?:to|through|thru|until) (?P<last>{_WD})s?"),
    ),
    ("every weekend", words(rf"(?:each|every|a|per) weekend(?: {_PART})?|once a weekend")),
    (
        "weekends",
        words(
            r"(?:(?:at|on|over|during|the) )*weekends(?: and holidays)?|at the weekend"
            rf"|weekend {_PART}s"
        ),
    ),
    (
        "except",
        words(
            rf"(?:every|each) (?:single )?(?:day|{_PART})(?: of the week)? (?:except|but"
            r"|save|bar|apart from|other than)(?: for)?(?: on)?(?: the)? "
            rf"(?P<days>{_LIST}|weekends?|the weekend|weekdays)"
        ),
    ),
    ("weekday list", words(rf"(?P<lead>(?:on )?(?:every|each|a|per) |on |)(?P<days>{_LIST})")),
    (
        "other unit",
        words(
            rf"(?:on )?(?:(?:each|every) {_STEP}|every (?P<couple>couple of|half)"
            rf"|alternate)(?: calendar)? (?P<unit>{_UNIT})s?"
        ),
    ),
    (
        "every daypart",
        words(
            rf"(?:(?:each|every) of (?:my|the) |each |every |per |any given ){_DAILY}s?|"
            r"(?:in the |on |of |at )?(?:mornings|evenings|nights|afternoons|lunchtimes"
            r"|bedtimes|mealtimes)(?: and (?:mornings|evenings|nights|afternoons))?"
            r"|night after night|day after day|day by day|each and all days|(?:a|per) "
            r"(?:day|night)"
        ),
    ),
    ("adverb", words(r"(?P<adverb>daily|weekly|monthly|yearly|hourly)")),
    (
        "every unit",
        words(
            r"(?:each|every|per|any)(?: single| calendar| school| academic| liturgical)? "
            r"(?P<unit>week|month|quarter|year|season|term|summer|winter|spring|autumn"
            rf"|hour|{'|'.join(MONTHS)}|{'|'.join(FEASTS)}|birthday|anniversary)"
        ),
    ),
    ("a unit", words(r"(?:a|an|1) (?P<unit>2 weeks|week|month|quarter|year|hour)")),
)
_YEARLY = frozenset(
    {"summer", "winter", "spring", "autumn", "birthday", "anniversary", *MONTHS, *FEASTS}
)
_NOT_BEFORE_A = frozenset(
    "for within in over after during spend spent take takes have give not of "
    "before into from by be than plan book enjoy make "
    "with is need once about without through throughout keep fill and or like "
    "as on go going".split()
)
_NOT_AFTER_A = frozenset(
    "without off before after from later ago on of alone away long free".split()
)
_PLURAL = re.compile(rf"(?<!\S){_WD}s(?!\S)|(?<!\S){_WD} (?:{_PART})s(?!\S)")


def _byday(name: str) -> str:
    return WEEKDAYS[DAYS.index(name)]


def named_days(text: str) -> frozenset[str]:
    """Return the weekdays a stretch of a line names, as RFC 5545 writes them."""
    found = re.findall(rf"(?<!\S)({_WD})s?(?!\S)", text)
    return frozenset(_byday(name) for name in found)


def take_cadence(line: Line) -> Cadence | None:
    """Take how often from a line, with the weekdays that go with it; None when it is once.

    A weekday that is neither repeated nor in the plural ("on Sunday") is left in the
    line: it is a date, unless a weekly cadence stands beside it.
    """
    cadence = _monthly(line)
    if cadence is not None:
        return cadence
    best: tuple[int, int, str, re.Match[str]] | None = None
    for rank, (name, pattern) in enumerate(_SHAPES):
        for found in pattern.finditer(line.left):
            if _fits(name, found, line.left):
                at = (found.start(), rank, name, found)
                if best is None or at[0] < best[0]:
                    best = at
                break
    if best is None:
        return None
    _, _, name, found = best
    line.left = f"{line.left[: found.start()]}~{line.left[found.end() :]}"
    return _beside(line, _meant(name, found))


def _fits(name: str, found: re.Match[str], left: str) -> bool:
    if name == "weekday list":
        repeated = "every" in found["lead"] or "each" in found["lead"] or _PLURAL.search(found[0])
        several = len(named_days(found["days"]))
        headed = left[found.end() :].startswith(" :")
        return (
            bool(repeated)
            or found["lead"].startswith(("a ", "per "))
            or several > 2
            or (several > 1 and headed)
        )
    if name in {"a unit", "every daypart"} and found[0].startswith(("a ", "an ", "1 ")):
        earlier = left[: found.start()].split()[-4:]
        before = earlier[-1:]
        if (
            len(earlier) > 1
            and before[0].isalpha()
            and before[0] not in _NOT_BEFORE_A
            and any(word.isdigit() for word in earlier[-3:-1])
        ):
            return True
        following = left[found.end() :].split()[:1]
        return bool(
            before
            and before[0] not in _NOT_BEFORE_A
            and before[0] not in set(".,;:(")
            and (
                not following
                or following[0] not in _NOT_AFTER_A
                or before[0] in {"times", "once", "~"}
            )
        )
    return True


def _step(found: re.Match[str]) -> int:
    step = found.groupdict().get("step")
    if step is None:
        return 1
    if step in {"other", "alternate", "couple of"}:
        return 2
    return max(1, int(step.removesuffix("th")))


def _of_unit(unit: str, every: int, times: int | None = None) -> Cadence:
    if unit == "2 weeks":
        return Cadence(Period.WEEK, 2 * every, times=times)
    if unit == "quarter" or unit == "season" or unit == "term":
        return Cadence(Period.MONTH, 3 * every, times=times)
    if unit in _YEARLY:
        return Cadence(Period.YEAR, every, times=times)
    if unit in {"week", "month", "year"}:
        return Cadence(Period(unit), every, times=times)
    return Cadence(Period.DAY, every, times=times)


def _meant(name: str, found: re.Match[str]) -> Cadence:  # noqa: PLR0911 - one a shape
    said = found.groupdict()
    match name:
        case "stepped weekday":
            every = 2 if said["alternate"] else _step(found)
            return Cadence(Period.WEEK, every, named_days(said["days"]))
        case "times a unit":
            count = said["n"] or said["d"]
            return _of_unit(said["unit"], _step(found), int(count) if count else 1)
        case "days in days":
            return Cadence(Period.WEEK, times=int(said["d"]))
        case "weekdays":
            return Cadence(Period.DAY, on=frozenset(WORKING_DAYS))
        case "range":
            first, last = DAYS.index(said["first"]), DAYS.index(said["last"])
            days = {WEEKDAYS[(first + step) % 7] for step in range((last - first) % 7 + 1)}
            return Cadence(Period.DAY, on=frozenset(days))
        case "every weekend":
            return Cadence(Period.WEEK, on=frozenset(WEEKEND), times=1)
        case "weekends":
            return Cadence(Period.WEEK, on=frozenset(WEEKEND))
        case "except":
            out = named_days(said["days"])
            if "weekend" in said["days"]:
                out = frozenset(WEEKEND)
            return Cadence(Period.DAY, on=frozenset(WEEKDAYS) - out)
        case "weekday list":
            chosen = 1 if " or " in said["days"] else None
            return Cadence(Period.WEEK, on=named_days(said["days"]), times=chosen)
        case "other unit":
            every = _step(found) if said["step"] else 2
            return _of_unit(said["unit"], every)
        case "adverb":
            units = {"daily": "day", "weekly": "week", "monthly": "month", "yearly": "year"}
            return _of_unit(units.get(said["adverb"], "day"), 1)
        case "every unit" | "a unit":
            return _of_unit(said["unit"], 1)
        case _:
            return Cadence(Period.DAY)


_LONE_DAYS = words(
    rf"(?:,? ?(?:always )?(?:on|each|every)(?: the| a)? )(?P<days>{_LIST})|"
    rf"(?P<bare>{_LIST})(?= [.,;:]|$)"
)
_DAY_GROUP = words(r"(?:on |every |each )*(?:weekdays|weekends|a weekday|a weekend|the weekend)")
_TIMES = words(r"(?P<n>\d{1,3}) (?:times|occasions)|once")
_NOT_A_START = re.compile(
    r"(?<!\S)(?:from|starting|beginning|since|by|before|until|next|this)(?: on)? $"
)


def _beside(line: Line, cadence: Cadence) -> Cadence:
    """Add what stands elsewhere: weekdays beside a weekly cadence, times beside any."""
    if cadence.period is Period.WEEK and not cadence.on:
        for found in _LONE_DAYS.finditer(line.left):
            if not _NOT_A_START.search(line.left[: found.start()]):
                line.left = f"{line.left[: found.start()]}~{line.left[found.end() :]}"
                days = named_days(found["days"] or found["bare"])
                chosen = " or " in found[0]
                times = cadence.times or (
                    1 if chosen or (cadence.every == 1 and len(days) == 1) else None
                )
                cadence = replace(cadence, on=days, times=times)
                break
        else:
            group = line.take(_DAY_GROUP)
            if group is not None:
                days = frozenset(WEEKEND if "weekend" in group[0] else WORKING_DAYS)
                cadence = replace(cadence, on=days, times=cadence.times or 1)
    elif cadence.period is Period.DAY and not cadence.on and cadence.every == 1:
        group = line.take(_DAY_GROUP)
        if group is not None:
            days = frozenset(WEEKEND if "weekend" in group[0] else WORKING_DAYS)
            cadence = replace(cadence, on=days)
    if cadence.times is None:
        times = line.take(_TIMES)
        if times is not None:
            cadence = replace(cadence, times=int(times["n"] or 1))
    return cadence


def _monthly(line: Line) -> Cadence | None:
    """Read weekdays of the month: "on the first Saturday of each month"."""
    for found in _MONTHLY.finditer(line.left):
        days = [each for each in _NAMED_DAY.finditer(found["which"])]
        named = [each["day"] for each in days if each["day"]]
        common = found["day"] or (named[-1] if named else None)
        following = line.left[found.end() :].split()[:2]
        dated = (
            following[:1] in (["of"], ["in"])
            and following[1:2]
            and following[1] in {*MONTHS, "next", "the", "this"}
        )
        stepped = found["lead"] and not found["unit"] and re.match(r"[2-9]th", found["which"])
        if stepped and _LARGER.search(line.left) is None:
            continue
        if common is None or dated or found["of"] in {"this", "that"}:
            continue
        if (
            found["of"] == "the"
            and not found["lead"]
            and not _HABIT.search(line.left)
            and not found["unit"]
        ):
            continue
        left = f"{line.left[: found.start()]}~{line.left[found.end() :]}"
        unit, every = found["unit"], _step(found)
        line.left = left
        other = _take_larger(line)
        if unit is None:
            unit, every = other or ("month", 1)
        on = frozenset(
            ("-1" if each["which"] == "last" else each["which"][0]) + _byday(each["day"] or common)
            for each in days
        )
        months = 3 if unit == "quarter" else 1
        period = Period.YEAR if unit == "year" else Period.MONTH
        return Cadence(period, every * months, on)
    return None


_HABIT = words(r"each|every|monthly")
_LARGER = words(
    r"(?:once )?(?:(?:each|every|a|per)(?: (?P<step>other|[2-9]th|\d+))? "
    r"(?P<unit>month|quarter|year)s?|(?P<adverb>monthly|yearly))"
)


def _take_larger(line: Line) -> tuple[str, int] | None:
    found = line.take(_LARGER)
    if found is None:
        return None
    if found["adverb"]:
        return found["adverb"].removesuffix("ly"), 1
    return found["unit"], _step(found)
