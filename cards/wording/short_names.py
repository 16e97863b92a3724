"""Short names written out: "Tues.", "M/W/F", "3x/week", "30 mins"."""

import re

_PER = re.compile(
    r"(?<=[a-z])/(?=(?:day|night|week|wk|month|mth|quarter|year|yr)\b)|(?<=\dx)/(?=[a-z])"
)
_INITIALS = re.compile(
    r"(?<![\w/])(?:(?:M|Tu?|W|Th|F|Sa?|Su)/){1,6}(?:M|Tu?|W|Th|F|Sa?|Su)(?![\w/])"
)
_SHORT_NAMES = {
    "Sat": "Saturday",
    "Sun": "Sunday",
    "Tu": "Tuesday",
    "Th": "Thursday",
    "mar": "march",
    "jun": "june",
    "jul": "july",
}
_INITIAL_OF = {
    "M": "Monday",
    "T": "Tuesday",
    "Tu": "Tuesday",
    "W": "Wednesday",
    "Th": "Thursday",
    "F": "Friday",
    "S": "Saturday",
    "Sa": "Saturday",
    "Su": "Sunday",
}
_SHORT_DAY = re.compile(
    r"(?<!^)(?<!\b[Tt]he )(?<!\d)(?<!\d )\b(Sat|Sun|Tu|Th)(s?)\b(?=\.?(?:\s*[,;.&/-]|\s|$))"
)
"""Short names of days that are words of their own but for the capital."""
_SHORT_MONTH = re.compile(
    r"\b(mar|jun|jul)\b\.?(?=\s\d{1,2}(?!\d))|(?<=\d )(mar|jun|jul)\b|(?<=\d(?:st|nd|rd|th) )"
    r"(mar|jun|jul)\b"
)
_STOPPED = re.compile(
    r"\b(mon|tues?|weds?|thu(?:rs?)?|fri|jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec|mins?|hrs?"
    r"|wks?|yrs?)\.(?=\s*[\w,;&/-])"
)
"""Short names with their full stop, which would else part a list."""
ABBREVIATED = {
    "mon": "monday",
    "mons": "mondays",
    "tue": "tuesday",
    "tues": "tuesday",
    "wed": "wednesday",
    "weds": "wednesday",
    "thu": "thursday",
    "thur": "thursday",
    "thurs": "thursday",
    "fri": "friday",
    "fris": "fridays",
    "jan": "january",
    "feb": "february",
    "apr": "april",
    "aug": "august",
    "sep": "september",
    "sept": "september",
    "oct": "october",
    "nov": "november",
    "dec": "december",
    "xmas": "christmas",
    "hr": "hour",
    "hrs": "hours",
    "min": "minutes",
    "mins": "minutes",
    "secs": "seconds",
    "wk": "week",
    "wks": "weeks",
    "mth": "month",
    "yr": "year",
    "yrs": "years",
    "till": "until",
    "til": "until",
    "'til": "until",
    "thrice": "3 times",
    "twice": "2 times",
    "daybreak": "dawn",
    "noontime": "noon",
    "tonite": "tonight",
    "oneself": "myself",
}
"""Words that stand for others wherever they stand."""


def in_full(text: str) -> str:
    """Return a text in lower case, with what only its capitals or marks tell apart in full."""
    written = _INITIALS.sub(_days_of_initials, text)
    written = _SHORT_DAY.sub(lambda found: _SHORT_NAMES[found[1]] + found[2], written)
    said = _PER.sub(" a ", _STOPPED.sub(r"\1", written.casefold()))
    return _SHORT_MONTH.sub(lambda found: f" {_SHORT_NAMES[found[0].strip('.')]} ", said)


def _days_of_initials(found: re.Match[str]) -> str:
    """Read "M/W/F" as the days it stands for."""
    return " and ".join(_INITIAL_OF[initial] for initial in found[0].split("/"))
