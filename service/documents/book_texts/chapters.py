"""From the headings of a book, or the entries of its contents, to its chapters."""

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from enum import IntEnum
from itertools import pairwise

from cards.digest import folded
from cards.locators import roman
from cards.proving.text import Chapter
from service.documents.book_texts.flow import Heading

_ONES = (
    "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen "
    "sixteen seventeen eighteen nineteen"
).split()
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
_ORDINALS = (
    "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth"
).split()
_IN_WORDS = {
    **{word: number for number, word in enumerate(_ONES, 1)},
    **{word: 10 * number for number, word in enumerate(_TENS, 2)},
    **{
        f"{ten}-{one}": 10 * number + unit
        for number, ten in enumerate(_TENS, 2)
        for unit, one in enumerate(_ONES[:9], 1)
    },
    **{word: number for number, word in enumerate(_ORDINALS, 1)},
    "the last": 999,
}
_NUMBER = (
    r"(?P<number>\d{1,4}|[ivxlcdm]{1,9}(?![^\W_])|(?:"
    + "|".join(sorted(_IN_WORDS, key=len, reverse=True)).replace("-", r"[-\s]")
    + r")(?![^\W_]))"
)
_INNER = (
    r"chapter|chap\.?|kapitel|chapitre|cap[ií]tulo|capitolo|hoofdstuk|letter|canto|stave|lecture"
)
_OUTER = r"volume|vol\.?|book|part|band|buch|teil|tome|livre|partie|libro|parte|deel|boek|act"
_CHAPTER = re.compile(rf"\s*(?:{_INNER})\s+(?:the\s+)?{_NUMBER}\b", re.IGNORECASE)
_VOLUME = re.compile(
    rf"\s*(?:(?:the\s+)?(?:{_OUTER})\s+(?:the\s+)?{_NUMBER}\b"
    rf"|(?:the\s+)?(?P<ordinal>{'|'.join(_ORDINALS)})\s+(?:{_OUTER})\b)",
    re.IGNORECASE,
)
_BARE_NUMBER = _NUMBER.replace("?P<number>", "?:")
_BOTH = re.compile(
    rf"\s*(?:{_OUTER})\s+(?:the\s+)?{_BARE_NUMBER}[\s.,:;—–-]+"
    rf"(?:{_INNER})\s+(?:the\s+)?{_BARE_NUMBER}\b",
    re.IGNORECASE,
)
_LEADING = re.compile(r"\s*(?P<number>\d{1,4}(?=[.:)\s]|\s*$)|[IVXLCDM]{1,9}(?=\s*[.:)—–]|\s*$))")
_NOT_CHAPTERS = frozenset(
    [
        *("cover", "title", "title page", "titlepage", "half title", "contents", "the contents"),
        *("table of contents", "copyright", "copyright page", "dedication", "acknowledgements"),
        *("acknowledgments", "acknowledgement", "index", "notes", "endnotes", "footnotes"),
        *("bibliography", "about the author", "colophon", "imprint", "frontispiece", "epigraph"),
        *("list of illustrations", "illustrations", "foreword", "preface", "introduction", "toc"),
        *("introductory", "afterword", "glossary", "appendix", "also by", "transcriber's note"),
        *("advertisement", "inhalt", "vorwort", "nachwort", "impressum", "table des matières"),
        *("préface", "sommaire", "índice", "indice", "prefazione", "prólogo", "inhoud"),
    ]
)


class _Sort(IntEnum):
    """What a heading announces."""

    VOLUME = 1
    CHAPTER = 2
    NUMBERED = 3
    PLAIN = 4
    FRONT = 5


@dataclass(frozen=True, slots=True)
class _Sorted:
    heading: Heading
    sort: _Sort


def number_in(written: str) -> int | None:
    """Return the number a chapter's heading is written with: `12`, `XII`, `Twelve`."""
    lowered = re.sub(r"\s+", "-", written.lower().strip())
    if lowered.isdecimal():
        return int(lowered)
    return _IN_WORDS.get(lowered) or _IN_WORDS.get(written.lower()) or roman(lowered)


def opens_chapter(line: str) -> bool:
    """Tell whether a line is worded as the heading of a chapter: `CHAPTER XII. The Ship`."""
    return _CHAPTER.match(line) is not None or _BOTH.match(line) is not None


def opens_volume(line: str) -> bool:
    """Tell whether a line is worded as the heading of a volume, a book, a part or an act."""
    return _VOLUME.match(line) is not None


def chapters_of(
    headings: Sequence[Heading], length: int, book: str | None = None
) -> tuple[Chapter, ...]:
    """Return the chapters that headings divide a text into.

    Headings worded as chapters are the chapters; failing them those that begin with a
    number; failing them those of the level that has most, front and back matter left
    out. Headings of volumes, books and parts go before those of their chapters. A
    chapter ends where the next heading of its own level or an outer one begins.

    Args:
        headings: in the order of the text.
        length: of the text, in characters.
        book: the title of the book, which heads no chapter of it.
    """
    ordered = sorted(headings, key=lambda heading: heading.start)
    known = [
        _Sorted(
            heading, _Sort.FRONT if folded(heading.title) == folded(book) else _sort(heading.title)
        )
        for heading in ordered
    ]
    for wanted in (_Sort.CHAPTER, _Sort.NUMBERED, _Sort.PLAIN):
        level = _level(known, wanted)
        if level is not None:
            return _divided(known, wanted, level, length)
    return ()


def _sort(title: str) -> _Sort:
    if _CHAPTER.match(title) or _BOTH.match(title):
        return _Sort.CHAPTER
    if _VOLUME.match(title):
        return _Sort.VOLUME
    plain = re.sub(r"[^\w\s'’]", " ", title).replace("’", "'").lower()
    if " ".join(plain.split()) in _NOT_CHAPTERS:
        return _Sort.FRONT
    leading = _LEADING.match(title)
    if leading is not None and number_in(leading["number"]) is not None:
        return _Sort.NUMBERED
    return _Sort.PLAIN


def _level(known: Sequence[_Sorted], wanted: _Sort) -> int | None:
    """Return the level most headings of a sort stand at, the outer one of equals, or None."""
    counted = Counter(each.heading.level for each in known if each.sort is wanted)
    if not counted:
        return None
    level = min(counted, key=lambda level: (-counted[level], level))
    fewest = {_Sort.CHAPTER: 1, _Sort.NUMBERED: 2, _Sort.PLAIN: 2}[wanted]
    return level if counted[level] >= fewest else None


def _divided(
    known: Sequence[_Sorted], wanted: _Sort, level: int, length: int
) -> tuple[Chapter, ...]:
    starts: list[tuple[int, str | None]] = []
    outer = ""
    for each in known:
        title, start = each.heading.title, each.heading.start
        if each.sort is _Sort.VOLUME:
            outer = title.strip().rstrip(".:,")
            starts.append((start, None))
        elif each.sort is wanted and each.heading.level == level:
            shown = title if not outer or _BOTH.match(title) else f"{outer}, {title}"
            starts.append((start, shown))
        elif each.heading.level <= level and each.sort in {_Sort.FRONT, _Sort.PLAIN}:
            starts.append((start, None))
    ends = [*(following for (_, _), (following, _) in pairwise(starts)), length]
    divided = [
        (start, end, title)
        for (start, title), end in zip(starts, ends, strict=True)
        if title is not None and end > start
    ]
    return tuple(
        Chapter(number, title, start, end) for number, (start, end, title) in enumerate(divided, 1)
    )
