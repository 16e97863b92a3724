"""Until when and for how long: "for two weeks", "by Friday", "until the end of June"."""

import re
from datetime import date, timedelta

from cards.wording.bare_days import BARE_DAY
from cards.wording.cadence import WEEKDAY, named_days
from cards.wording.dates import DATE, day_or_span
from cards.wording.lengths import Bound, Term
from cards.wording.line import Line, words
from cards.wording.spans import MONTHS

_UNITS = (
    r"(?P<unit>(?:school )?(?:day|night|evening|morning|afternoon|lunchtime|week"
    r"|weekend|weekday|month|quarter|year|school day"
    rf"|hour|breakfast|dinner|lunch|supper|meal)s?|{WEEKDAY}s?(?: (?:morning|evening"
    r"|afternoon|night)s?)?)(?: 's| ')?"
)
_MUCH = r"(?:at least |about |another |a further |some |up to |a total of |the 1th |1th |all )?"
_ENTIRE = r"(?:full |whole |entire |complete |more |solid |straight |consecutive |successive )?"
_STARTS = (
    words(
        r"(?<!week )(?<!weeks )(?<!month )(?<!months )(?<! day )(?<!days )(?<!year )"
        r"(?:from|starting|beginning|commencing|as of|as from|effective)(?: on| from"
        rf"| with)? (?:{DATE})(?: (?:on(?:wards?)?|forward|forth))?(?! (?:to|through"
        r"|thru|until) )"
    ),
    words(
        r"(?:from now on|henceforth|from this day (?:on|forward)|as from now|from "
        r"here on|starting now|beginning now|from now)"
    ),
)
_FROM_TO = words(
    rf"(?:from|between) (?P<from>{DATE}|(?:the )?\d{{1,2}}(?:th)?) "
    rf"(?:to|and|until|through) (?P<to>{DATE})"
)
_NOW_TO = words(
    rf"(?:between|from) (?:now|today|this day|tomorrow) (?:and|to|until|through) (?P<to>{DATE})"
)
_RUNNING = words(
    rf"(?:for |on )?(?P<n>\d{{1,4}}) (?:(?P<before>consecutive|successive"
    rf"|straight) )?{_UNITS}(?: (?P<after>running|in a row|straight|in succession"
    r"|on end|together))?"
)
_FOR = words(
    rf"for (?:the |these |my )?(?:(?P<next>next|coming|following) )?{_MUCH}(?:"
    rf"(?:a (?=\d))?(?P<n>\d{{1,4}}) |(?P<one>a |an |1 |the )?){_ENTIRE}{_UNITS}"
    r"(?! of (?:rest|work|prayer|reading|silence))"
)
_NEXT = words(
    r"(?:(?P<lead>over|during|in|within|across|throughout|inside|on|at|every 1 "
    r"of|each of) )?(?:(?:each|every 1|all) of )?"
    rf"(?P<the>the |these |my |our )?(?:next|coming|following) (?:(?P<n>\d{{1,4}}) ){_UNITS}"
)
_NEXT_ONE = words(
    r"(?P<lead>over|during|in|within|across|throughout|inside) (?:the|this) "
    rf"(?:next|coming|following) {_UNITS}"
)
_WITHIN = words(
    r"(?:within|inside|in under|in less than|in|in the space of|in no more than"
    r"|not later than|over|during|across|spread over) "
    rf"(?:the space of )?(?:(?:a (?=\d))?(?P<n>\d{{1,4}}) |(?:a|an|1) ){_ENTIRE}"
    r"(?P<unit>(?:hour|day|night|week|month|quarter|year|weekday)s?)(?: 's| ')?"
    r"(?: time)?"
    r"(?! of (?:waking|getting|rising|coming|receiving|reading))"
)
_WITHIN_THE = words(r"within (?:the|this) (?P<unit>hour|day|week|month|quarter|year)")
_IN_THE_COURSE = r"(?:(?:in|over|during|within) the course of )"
_UNTIL = words(
    r"(?:right |up |all the way |every day )?(?:(?:until|through|up to|up until"
    rf"|to)(?: and including)?) (?P<date>{DATE})"
)
_BY = words(
    r"(?:,? ?(?:done |finished |completed |due )?(?P<how>by|no later than|not "
    r"later than|on or before|at the latest by|latest by|at latest by|in time "
    r"for|for)"
    rf"|(?P<before>(?:\d{{1,2}} days? |a day )?(?:before|ahead of|prior to"
    rf"|earlier than|sooner than))) (?P<date>{DATE})(?: at the latest)?"
)
_LATEST = words(rf"(?:on )?(?P<date>{DATE}) (?:at the latest|latest|at latest)")
_ALL = words(
    r"(?:all through|throughout|all|during|over|for all of|(?:for )?the rest of|"
    r"(?:for )?the remainder of|(?:for )?the whole of|for the whole|the whole"
    rf"|for|across|{_IN_THE_COURSE})"
    rf" (?P<date>(?:this |the |of |next )?(?:{DATE}))"
)
_ALL_UNIT = words(
    r"(?:all|the rest of (?:the|this|my)|the remainder of (?:the|this)|the "
    r"whole) (?P<unit>week|month|quarter|year|weekend)(?: long)?"
)
_EVENT_ON = words(
    r"(?P<how>until|by) (?:my|our|the|his|her|their|he|she|they|we|i|it|[^\W\d_]{2,30} 's) "
    r"(?:[^\W\d_]{2,30} ){1,3}"
    rf"(?:on |, (?:on )?|\( )(?P<date>{DATE})"
    rf"|until (?:[^\s,.;~]+ ){{2,8}}on (?P<late>{DATE})"
)
"""An event, and the day it falls on: "until my exam on 22 May"."""
_UNKNOWN = words(
    r"(?:once )?this (?:term|semester|season|school year|holiday|winter term"
    r"|summer term)|by the time [^,.;~]{2,80}|"
    r"(?:by|before|until|in time for) (?:the end of (?:the |my |our |this |next "
    r")?(?:term|holidays?|course|season|semester|book|school year|vacation|visit"
    r"|sabbatical|harvest|trip|apprenticeship|academic year)"
    r"|(?:my|our|his|her|their|the|[^\W\d_]+ 's|[^\W\d_]+ 's next|the next|our "
    r"next|my next|next) (?:[^\W\d_]+ (?:'s )?)?(?:birthday|anniversary|wedding"
    r"|holidays?|exams?|exam|retirement|christening|baptism|funeral|visit|trip"
    r"|harvest|meeting|lesson|rehearsal|reunion|concert|examination|term"
    r"|semester|session|appointment|deadline))"
)
_MONTHS_AND_SEASONS = re.compile(
    rf"(?:next |the )?(?:{'|'.join(MONTHS)}|spring|summer|autumn|winter|lent|advent)"
)
"""What one waits until the beginning of: no clothes until September, none in August."""


_WHOLE = ("all ", "throughout ", "for ", "the whole ")
"""How a span is told that is filled from end to end, rather than one something is done in."""


_FOR_A_DAY = re.compile(
    r"(?:=|the \d|\d|[a-z]+ \d|christmas|easter|newyear|monday|tuesday|wednesday|thursday|friday"
    r"|saturday|sunday)"
)
"""What is ready "for Friday" is done by it."""


def take_length(line: Line, on: date) -> Term:
    """Take what a line says of length and end, but not its bare dates."""
    term = Term()
    _take_spans(line, on, term)
    _take_lengths(line, on, term)
    for pattern in (_EVENT_ON, _UNTIL, _LATEST, _BY):
        if term.deadline is None:
            _take_bound(line, on, term, pattern)
    if line.take(_UNKNOWN) is not None:
        term.unknown = True
    if term.deadline is None:
        _take_whole(line, on, term)
    return term


def _take_spans(line: Line, on: date, term: Term) -> None:
    between = line.take(_NOW_TO) or _take_from_to(line)
    if between is not None:
        span = day_or_span(between["to"], on)
        if span is not None:
            term.deadline = span[1]
            term.bound = Bound.UNTIL if between[0].startswith("from ") else Bound.DURING
    for pattern in _STARTS:
        line.take(pattern)


def _take_from_to(line: Line) -> re.Match[str] | None:
    found = _FROM_TO.search(line.left)
    if found is None or re.search(rf"{WEEKDAY}s?$", found["to"]):
        return None
    return line.take(_FROM_TO)


def _take_lengths(line: Line, on: date, term: Term) -> None:
    for found in _RUNNING.finditer(line.left):
        if found["before"] or found["after"]:
            _measure(line, term, found, int(found["n"]), lead="for")
            return
    for found in _FOR.finditer(line.left):
        counted = found["n"] is not None or found["one"] is not None or found["next"] is not None
        if counted and not (found["one"] == "the " and found["next"] is None):
            _measure(line, term, found, int(found["n"] or 1), lead="for")
            return
    if not _take_next(line, term):
        _take_within(line, on, term)


def _take_next(line: Line, term: Term) -> bool:
    found = _NEXT.search(line.left) or _NEXT_ONE.search(line.left)
    if found is None:
        return False
    count = int(found.groupdict().get("n") or 1)
    _measure(line, term, found, count, lead=found["lead"])
    return True


_STRICT = frozenset({"in", "within", "inside"})
"""Those that bound even evenings and working days, which others count: "over the next ten
evenings" is ten times, "within ten working days" is once."""
_BOUNDING = frozenset({"over", "during", "in", "within", "across", "throughout", "inside", None})
"""Words that lead in a span within which something is done, rather than goes on."""


def _take_within(line: Line, on: date, term: Term) -> None:
    this = line.take(_WITHIN_THE)
    unit = None if this is None else this["unit"].replace("hour", "day")
    span = None if unit is None else day_or_span(f"this {unit}", on)
    if span is not None:
        term.deadline, term.bound = span[1], Bound.BY
        return
    found = line.take(_WITHIN)
    if found is not None:
        _measured(term, found["unit"], int(found["n"] or 1), lead="within")


def _measure(line: Line, term: Term, found: re.Match[str], count: int, *, lead: str | None) -> None:
    if count < 1:
        return
    line.left = f"{line.left[: found.start()]}~{line.left[found.end() :]}"
    _measured(term, found["unit"], count, lead=lead)


def _measured(term: Term, said: str, count: int, *, lead: str | None) -> None:
    unit = said.removesuffix("s")
    days = named_days(said)
    if days:
        term.count, term.unit, term.on = count, "on", days
        return
    if unit == "weekend":
        term.count, term.unit, term.on = count, "on", frozenset({"SA", "SU"})
        return
    if unit == "hour":
        unit, count = "day", max(1, -(-count // 24))
    if unit.startswith("school"):
        unit = "weekday"
    known = {"day", "weekday", "week", "month", "quarter", "year"}
    term.count, term.unit = count, unit if unit in known else "day"
    counted = unit not in known - {"weekday"}
    term.loose = lead in _STRICT if counted else lead in _BOUNDING


def _take_bound(line: Line, on: date, term: Term, pattern: re.Pattern[str]) -> None:
    for found in pattern.finditer(line.left):
        said = found.groupdict()
        phrase = said["date"] or found["late"]
        span = day_or_span(phrase, on)
        if span is None or not _bounds(pattern, found, phrase, line.left[: found.start()]):
            continue
        line.left = f"{line.left[: found.start()]}~{line.left[found.end() :]}"
        first, last = span
        until = pattern is _UNTIL or found[0].startswith("until ")
        term.bound = Bound.UNTIL if until else Bound.BY
        term.weekday = bool(BARE_DAY.fullmatch(phrase))
        before = said.get("before")
        opens = pattern is _UNTIL and found[0].startswith("until")
        if opens and _MONTHS_AND_SEASONS.fullmatch(phrase):
            term.deadline = max(on, first - timedelta(days=1))
        elif before is None:
            term.deadline = last
        else:
            term.deadline = first - timedelta(days=int((re.findall(r"\d+", before) or ["1"])[0]))
            term.deadline = max(term.deadline, on)
        return


def _bounds(pattern: re.Pattern[str], found: re.Match[str], phrase: str, earlier: str) -> bool:
    """Tell whether "to" and "for" before a date set an end, and "until" no range of days."""
    if pattern is _UNTIL:
        if re.search(rf"{WEEKDAY}s? $", earlier) and re.fullmatch(WEEKDAY, phrase):
            return False
        return not found[0].startswith("to ") or re.search(r"from \S+ $", earlier) is not None
    if pattern is _BY and found["how"] == "for":
        return _FOR_A_DAY.match(phrase) is not None
    return True


def _take_whole(line: Line, on: date, term: Term) -> None:
    whole = line.take(_ALL_UNIT)
    span = None if whole is None else day_or_span(f"this {whole['unit']}", on)
    if span is not None:
        term.deadline, term.bound = span[1], Bound.DURING
        return
    for found in _ALL.finditer(line.left):
        phrase = found["date"].removeprefix("of ")
        if (
            found[0].startswith("for ")
            and found[0] == f"for {phrase}"
            and not re.match(
                r"(?:this|the|next|all)? ?(?:week|month|quarter|year|lent|advent|january"
                r"|february|march|april|may|june|july|august|september|october|november"
                r"|december)",
                phrase,
            )
        ):
            continue
        span = day_or_span(phrase, on) or day_or_span(phrase.removeprefix("the "), on)
        if span is not None and (span[0] != span[1] or found[0].startswith(("over ", "during "))):
            line.left = f"{line.left[: found.start()]}~{line.left[found.end() :]}"
            term.deadline = span[1]
            term.bound = Bound.UNTIL if found[0].startswith(_WHOLE) else Bound.DURING
            return
