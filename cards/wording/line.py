"""The line of plain words the measure is read from, and what of it is still unread.

A commitment is written out as lower-case words and marks parted by single spaces: numbers in
figures, ordinals as "1th", dates as "=20260301=", times of the clock as "@", fortnights as
two weeks. Readers of one subject each take from it what they understand, so that "by ten each
night" cannot be read as ten of anything once the clock has been taken.
"""

import re
import unicodedata
from datetime import date
from functools import lru_cache

from cards.wording.numbers import in_figures
from cards.wording.short_names import ABBREVIATED, in_full

MAX_READ = 2_000
"""Characters that are read of a commitment: three hundred words, ten times a long one."""
GAP = "~"
"""Stands where words were taken."""

_ISO = re.compile(r"(?<![\w-])(\d{4})-(\d{1,2})-(\d{1,2})(?![\w-])", re.ASCII)
_FIGURES = re.compile(r"(?<![\w/.])(\d{1,2})([/.])(\d{1,2})\2(\d{4}|\d{2})(?![\w/])", re.ASCII)
_CLOCK = re.compile(
    r"(?<![\w:.])\d{1,2}(?:[:.]\d{2}\s?(?:[ap]\.?m\b\.?)|:\d{2}|\s?(?:[ap]\.m\.|[ap]m\b|h\d{2}\b))",
    re.ASCII,
)
_HALF_DAY = re.compile(r"(?<=\d)\s?(?:o'?clock)\b")
_SUFFIXED = re.compile(r"(?<!\w)(\d{1,4})(?:st|nd|rd|th)\b")
_HOURS_MINUTES = re.compile(r"(?<!\w)(\d{1,2})\s?h(?:ours?|rs?)?\s?(\d{1,2})\s?(?:m|mins?)?\b")
_GLUED = re.compile(r"(?<!\w)(\d{1,4})(min|mins|minutes|hrs?|h|km|x|days?|weeks?|pages?)\b")
_MONTH_NAMES = (
    "january february march april may june july august september october november december".split()
)
_DAY_MONTH = re.compile(
    r"(?<=\b(?:by|on) )(\d{1,2})[/.](\d{1,2})(?=\s*(?:[,;!?]|\.(?!\d)|$|[a-z]))(?! of)", re.ASCII
)
"""A day and a month in figures, only after "by" or "on": "1/2 a page" is none."""
_TOKEN = re.compile(r"=\d{8}=|@|\d+(?:[.,]\d+)?|[^\W\d_]+(?:'[^\W\d_]+)?|[.,;:!?()\[\]]")
_CONTRACTED = {
    "i'll": "i will",
    "we'll": "we will",
    "i'd": "i would",
    "i'm": "i am",
    "don't": "do not",
    "doesn't": "does not",
    "won't": "will not",
    "can't": "can not",
    "cannot": "can not",
    "shan't": "shall not",
    "isn't": "is not",
    "didn't": "did not",
    "haven't": "have not",
    "wouldn't": "would not",
    "shouldn't": "should not",
    "it's": "it is",
    "that's": "that is",
    "let's": "let us",
    "o'clock": "oclock",
    "someone's": "someone 's",
    "whatever's": "whatever is",
}
_FOLDS = tuple(
    (re.compile(rf"(?<!\S){pattern}(?!\S)"), words)
    for pattern, words in (
        (r"as (?:if|though) [^,.;:]{2,80}", ""),
        (r"no 1", "nobody"),
        (r"1 another", "eachother"),
        (r"each other", "eachother"),
        (r"(?:1 by 1|at a time|for once|once and for all|at once|all at once)", ""),
        (r"1 (?:or|to) 2", "1"),
        (r"(?<!from )(\d+) (?:or|to) \d+(?= )", r"\1"),
        (r"1 (?:day|of these days|fine day)(?= (?:i|we) (?:will|shall))", ""),
        (r"(?:2th|second) hand", "used"),
        (r"(within|inside) (?:the|this) fortnight", r"\1 2 weeks"),
        (
            r"(?:a|each|every|1|per|the|this|this coming|that|whole|next|another) fortnight",
            lambda found: _fortnight(found[0]),
        ),
        (r"(?:coming|following) fortnight", "next 2 weeks"),
        (r"fortnightly|biweekly|bi weekly", "every 2 weeks"),
        (r"fortnight", "2 weeks"),
        (r"(\d+) fortnights", lambda found: f"{2 * int(found[1])} weeks"),
        (r"quarterly", "every quarter"),
        (r"bimonthly|bi monthly", "every 2 months"),
        (r"half yearly|semi annually|semiannually|biannually|every half year", "every 6 months"),
        (r"biennially", "every 2 years"),
        (r"(?:nightly|each and every night)", "every night"),
        (r"each and every", "every"),
        (r"everyday(?= [.,;]|$)", "daily"),
        (r"annually", "yearly"),
        (r"week end(s?)", r"weekend\1"),
        (r"week day(s?)", r"weekday\1"),
        (r"work(?:ing)? ?day(s?)|workday(s?)|business day(s?)", r"weekday\1\2\3"),
        (r"week nights?|weeknights?|work ?nights?|weekday nights?", "weekdays"),
        (r"half (?:a|1) year", "6 months"),
        (r"half an? month", "2 weeks"),
        (r"new year(?: 's)? eve", "newyearseve"),
        (r"new year(?: 's)? day|the new year|new year", "newyear"),
    )
)


def _fortnight(said: str) -> str:
    first = said.split(maxsplit=1)[0]
    if first in {"each", "every"}:
        return "every 2 weeks"
    return "a 2 weeks" if first in {"a", "1", "per"} else f"{said.removesuffix('fortnight')}2 weeks"


def plain(text: str) -> str:
    """Return the first characters of a text composed, in one line, with straight quotes."""
    composed = unicodedata.normalize("NFKC", text[:MAX_READ])
    for mark in "’‘ʼ`´":
        composed = composed.replace(mark, "'")
    for mark in "“”„«»":
        composed = composed.replace(mark, '"')
    return " ".join(composed.split())


# What is read of a commitment is read of the same words several times.
@lru_cache(maxsize=64)
def line_of(text: str) -> str:
    """Return a commitment as a line of plain words; see the module."""
    said = in_full(plain(text))
    said = _ISO.sub(lambda found: _dated(found[1], found[2], found[3], found[0]), said)
    said = _FIGURES.sub(_figures, said)
    said = _DAY_MONTH.sub(_day_and_month, said)
    said = _HALF_DAY.sub(" oclock", said)
    said = _CLOCK.sub(" @ ", said)
    said = _SUFFIXED.sub(r" \1 th ", said)
    said = _HOURS_MINUTES.sub(lambda found: f" {int(found[1]) * 60 + int(found[2])} minutes ", said)
    said = _GLUED.sub(r"\1 \2", said)
    said = re.sub(r"[—–]| - ", " , ", said).replace("-", " ").replace("&", " and ")
    said = said.replace("%", " percent ")
    words: list[str] = []
    for token in _TOKEN.findall(said):
        word = _CONTRACTED.get(token, ABBREVIATED.get(token, token))
        if word.endswith("'s") and len(word) > 2:
            word = f"{word[:-2]} 's"
        words.extend(word.split())
    words = _joined(in_figures(words))
    return _folded(" ".join(words))


def _joined(words: list[str]) -> list[str]:
    """Write "30" and "th" as one word."""
    said: list[str] = []
    for word in words:
        if word == "th" and said and said[-1].isdigit():
            said[-1] += "th"
        else:
            said.append(word)
    return said


def _folded(line: str) -> str:
    for pattern, words in _FOLDS:
        line = pattern.sub(words, line)
    return " ".join(line.split())


def _figures(found: re.Match[str]) -> str:
    day, month, year = int(found[1]), int(found[3]), int(found[4])
    if month > 12 >= day:
        day, month = month, day
    return _dated(str(year + 2000 if year < 100 else year), str(month), str(day), found[0])


def _day_and_month(found: re.Match[str]) -> str:
    """Read "31/12" the British way, and the American where only that can be."""
    day, month = int(found[1]), int(found[2])
    if month > 12 >= day:
        day, month = month, day
    if not (1 <= day <= 31 and 1 <= month <= 12):
        return found[0]
    return f"{day} {_MONTH_NAMES[month - 1]}"


def _dated(year: str, month: str, day: str, written: str) -> str:
    try:
        return f" ={date(int(year), int(month), int(day)):%Y%m%d}= "
    except ValueError:
        return written


class Line:
    """What is still unread of a commitment.

    Attributes:
        whole: the line as it was.
        left: the same with a gap wherever words were taken.
    """

    def __init__(self, text: str) -> None:
        self.whole = line_of(text)
        self.left = self.whole

    def take(self, pattern: re.Pattern[str]) -> re.Match[str] | None:
        """Find a pattern in what is left, and leave a gap in its place."""
        found = pattern.search(self.left)
        if found is not None:
            self.left = f"{self.left[: found.start()]}{GAP}{self.left[found.end() :]}"
        return found

    def forget(self, said: str) -> None:
        """Leave a gap in the place of words that say something else."""
        if said:
            self.left = self.left.replace(said, GAP, 1)


def words(pattern: str) -> re.Pattern[str]:
    """Compile a pattern of whole words of a line."""
    return re.compile(rf"(?<!\S)(?:{pattern})(?!\S)")
