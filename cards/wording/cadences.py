"""How often: "every other day", "twice a week", "on Monday and Thursday nights"."""

import re
from collections.abc import Callable
from dataclasses import replace

from cards.commitments.measure import WEEKDAYS, WEEKEND, WORKING_DAYS, Period
from cards.wording.beside import with_what_stands_beside
from cards.wording.cadence import PART, WEEKDAY, WEEKDAY_LIST, Cadence, named_days, step_of
from cards.wording.feasts import FEASTS
from cards.wording.line import Line, words
from cards.wording.monthly import take_monthly
from cards.wording.parts_of_day import PARTS_OF_A_DAY, parts_in
from cards.wording.spans import DAYS, MONTHS

_DAILY = (
    r"(?:(?:single|blessed|working|clear|dry|fine|sunny|wet|frosty|starry|free|spring|summer|autumn"
    r"|winter) )?(?:day|night|evening|morning|afternoon"
    r"|bedtime|noon|midday|dawn|sunrise|sunset|dusk"
    r"|breakfast|lunch|lunchtime|dinner|supper|meal|mealtime|teatime|nightfall|midnight)"
)
_UNIT = r"(?:hour|day|week|month|quarter|year|night|evening|morning|afternoon)"
_STEP = r"(?P<step>other|alternate|[2-9]th|1\dth|\d{1,3}(?! \d))"
_SHAPES: tuple[tuple[str, re.Pattern[str]], ...] = (
    (
        "weekdays a month",
        words(
            rf"(?:on )?(?P<n>\d{{1,2}}) (?P<day>{WEEKDAY})s?(?: {PART}s?)? (?:(?:in|of|out of) )?"
            r"(?:a|each|every|per) (?P<unit>month|quarter|year)"
        ),
    ),
    (
        "stepped weekday",
        words(
            r"(?:on )?(?:(?:each|every) (?P<step>other|2th|[2-9]th|[2-9]) |"
            rf"(?P<alternate>alternate ))(?P<days>{WEEKDAY_LIST})"
        ),
    ),
    (
        "times a unit",
        words(
            r"(?:(?P<n>\d{1,3}) (?:different |separate |other )?(?:times|occasions)|"
            r"(?P<once>once|1 time)"
            rf"|(?P<d>\d{{1,2}}) (?:(?:separate|different) )?(?:{PART}|day|night|weekday"
            r"|week night)s?(?: out)?)"
            r" (?:(?:in |of |out of |every |each )?(?:a|an|per|each|every|the)|every"
            r"|each|per|in each|in every)"
            r"(?: single| calendar| school| working)? "
            rf"(?:(?P<step>other|[2-9]th|\d{{1,3}}|couple of) )?(?P<unit>{_UNIT}|season"
            r"|term|hour)s?"
        ),
    ),
    (
        "one in so many",
        words(
            rf"(?:on )?(?:1 |an? )(?:(?P<day>{WEEKDAY})"
            rf"|(?P<unit>day|night|evening|morning|week|month))(?: {PART})? "
            r"(?:in|out of) (?:every )?(?P<step>[2-9]|1\d)"
        ),
    ),
    (
        "days in days",
        words(rf"(?P<d>\d) (?:{PART}|day|night)s?(?: out)? (?:of|in) (?:7|the 7|every 7)"),
    ),
    (
        "weekdays",
        words(
            r"(?:(?:on|each|every|all|per|a) ){0,3}(?:single )?(?:weekday|school ?day|school "
            r"night)s?(?: mornings?| evenings?| nights?| afternoons?| lunchtimes?)?"
            r"|(?:from )?monday(?: mornings?)? (?:to|through|thru|until) friday(?: "
            r"evenings?)?|(?:from )?mondays (?:to|through) fridays"
        ),
    ),
    (
        "range",
        words(rf"(?:from )?(?P<first>{WEEKDAY})s? (?:to|through|thru|until) (?P<last>{WEEKDAY})s?"),
    ),
    (
        "every weekend",
        words(
            rf"(?:each|every|per)(?: (?P<step>other|[2-9]th|[2-9]))? weekends?(?: {PART})?"
            r"|once a weekend|(?:on )?(?P<alternate>alternate) weekends?"
        ),
    ),
    (
        "weekends",
        words(
            r"(?:(?:at|on|over|during|the) ){0,3}weekends(?: and holidays)?|at the weekend"
            rf"|weekend {PART}s"
        ),
    ),
    (
        "except",
        words(
            rf"(?:every|each) (?:single )?(?:day|{PART})(?: of the week)? (?:except|but"
            r"|save|bar|apart from|other than)(?: for)?(?: on)?(?: the)? "
            rf"(?P<days>{WEEKDAY_LIST}|weekends?|the weekend|weekdays)"
        ),
    ),
    (
        "weekday list",
        words(rf"(?P<lead>(?:on )?(?:every|each|a|per) |on |)(?P<days>{WEEKDAY_LIST})"),
    ),
    (
        "other unit",
        words(
            rf"(?:on )?(?:(?:each|every) {_STEP}|every (?P<couple>couple of|half)"
            rf"|alternate)(?: calendar)? (?P<unit>{_UNIT})s?"
        ),
    ),
    ("parts of a day", PARTS_OF_A_DAY),
    (
        "every daypart",
        words(
            rf"(?:(?:each|every) of (?:my|the) |each |every |per |any given ){_DAILY}s?|"
            r"(?<!\d )(?:in the |on |of |at )?(?:mornings|evenings|nights|afternoons|lunchtimes"
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
    "before into from by be than make "
    "with is need once about without through throughout keep fill and or like "
    "as on go going".split()
)
_NOT_AFTER_A = frozenset(
    "without off before after from later ago hence on of alone away long free".split()
)
_PLURAL = re.compile(rf"(?<!\S){WEEKDAY}s(?!\S)|(?<!\S){WEEKDAY} (?:{PART})s(?!\S)")


def take_cadence(line: Line) -> Cadence | None:
    """Take how often from a line, with the weekdays that go with it; None when it is once.

    A weekday that is neither repeated nor in the plural ("on Sunday") is left in the
    line: it is a date, unless a weekly cadence stands beside it.
    """
    cadence = take_monthly(line)
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
    return with_what_stands_beside(line, _MEANT[name](found))


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


def _of_unit(unit: str, every: int, times: int | None = None) -> Cadence:
    if unit == "2 weeks":
        return Cadence(Period.WEEK, 2 * every, times=times)
    if unit in {"quarter", "season", "term"}:
        return Cadence(Period.MONTH, 3 * every, times=times)
    if unit in _YEARLY:
        return Cadence(Period.YEAR, every, times=times)
    if unit in {"week", "month", "year"}:
        return Cadence(Period(unit), every, times=times)
    return Cadence(Period.DAY, every, times=times)


def _stepped_weekday(found: re.Match[str]) -> Cadence:
    every = 2 if found["alternate"] else step_of(found)
    return Cadence(Period.WEEK, every, named_days(found["days"]))


def _times_a_unit(found: re.Match[str]) -> Cadence:
    return _of_unit(found["unit"], step_of(found), int(found["n"] or found["d"] or 1))


def _one_in_so_many(found: re.Match[str]) -> Cadence:
    if found["day"]:
        return Cadence(Period.WEEK, step_of(found), named_days(found["day"]))
    return _of_unit(found["unit"], step_of(found), 1)


def _weekdays_a_month(found: re.Match[str]) -> Cadence:
    monthly = _of_unit(found["unit"], 1, int(found["n"]))
    return replace(monthly, on=named_days(found["day"]))


def _range(found: re.Match[str]) -> Cadence:
    first, last = DAYS.index(found["first"]), DAYS.index(found["last"])
    days = {WEEKDAYS[(first + step) % 7] for step in range((last - first) % 7 + 1)}
    return Cadence(Period.DAY, on=frozenset(days))


def _every_weekend(found: re.Match[str]) -> Cadence:
    every = 2 if found["alternate"] else step_of(found)
    return Cadence(Period.WEEK, every, frozenset(WEEKEND), times=1)


def _except(found: re.Match[str]) -> Cadence:
    out = frozenset(WEEKEND) if "weekend" in found["days"] else named_days(found["days"])
    return Cadence(Period.DAY, on=frozenset(WEEKDAYS) - out)


def _weekday_list(found: re.Match[str]) -> Cadence:
    chosen = 1 if " or " in found["days"] else None
    return Cadence(Period.WEEK, on=named_days(found["days"]), times=chosen)


_ADVERBS = {"weekly": "week", "monthly": "month", "yearly": "year"}
_MEANT: dict[str, Callable[[re.Match[str]], Cadence]] = {
    "weekdays a month": _weekdays_a_month,
    "stepped weekday": _stepped_weekday,
    "times a unit": _times_a_unit,
    "one in so many": _one_in_so_many,
    "days in days": lambda found: Cadence(Period.WEEK, times=int(found["d"])),
    "weekdays": lambda _: Cadence(Period.DAY, on=frozenset(WORKING_DAYS)),
    "range": _range,
    "every weekend": _every_weekend,
    "weekends": lambda _: Cadence(Period.WEEK, on=frozenset(WEEKEND)),
    "except": _except,
    "weekday list": _weekday_list,
    "other unit": lambda found: _of_unit(found["unit"], step_of(found) if found["step"] else 2),
    "parts of a day": lambda found: Cadence(Period.DAY, times=parts_in(found[0])),
    "every daypart": lambda _: Cadence(Period.DAY),
    "adverb": lambda found: _of_unit(_ADVERBS.get(found["adverb"], "day"), 1),
    "every unit": lambda found: _of_unit(found["unit"], 1),
    "a unit": lambda found: _of_unit(found["unit"], 1),
}
