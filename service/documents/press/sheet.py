"""What is printed of a digest, as the data the typesetter takes: words, never code."""

import re
import unicodedata
from collections.abc import Iterable
from datetime import date
from itertools import groupby, islice
from typing import Any

from cards.cautions import caution
from cards.digest import Digest
from cards.intake.own_blocks import PARAGRAPHS, place_line, whole_text
from cards.intake.own_words import OwnWords, language_of, words_for
from service.documents.press.direction import runs_to_the_left

_RUNNING = 90
"""Characters of the line at the foot of each page; more do not fit beside the number."""
_CAREFUL = 12_000
"""Characters up to which lines are broken with an eye on the whole paragraph: twice what fits
on two pages. Beyond, each line is filled in its turn, which takes a tenth of the time."""
_LONG = 48
"""Letters of one word that surely fit on a line; a third of them in the size of the title."""
_STACKED = 30
"""Marks in a row that any program has to bear (UAX 15, section 13, Stream-Safe Text Format)."""
_UPON_LETTERS = frozenset({"Mn", "Me", "Cf"})
"""Categories of what stands on a letter or joins it to the next, and takes no room by itself."""
_FOREIGN = 40
"""Characters a quotation has to have before it is taken to be in another language."""


def sheet_of(digest: Digest) -> dict[str, Any]:
    """Return a digest as the JSON data of `digest.typ`."""
    language = language_of(whole_text(digest))
    words = words_for(language)
    running = " · ".join(filter(None, (digest.title, digest.author))).replace("\n", " ")
    return {
        "title": " ".join(digest.title.split()),
        "heading": broken(digest.title.replace("\n", " "), _LONG // 3),
        "author": _one_line(digest.author),
        "running": running if len(running) <= _RUNNING else running[: _RUNNING - 1] + "…",
        "lang": language,
        "facts": _facts(digest, words, language),
        "plot": _plot(digest),
        "linebreaks": "optimized" if _letters(digest) <= _CAREFUL else "simple",
        "words": {
            part: getattr(words, part)
            for part in ("theme", "points", "commitments", "judgement", "quotations")
        },
        "theme": None if digest.theme is None else paragraphs_of(digest.theme, language),
        "judgement": None
        if digest.judgement is None
        else paragraphs_of(digest.judgement, language),
        "points": [
            {"paragraphs": paragraphs_of(point.text, language), "place": _one_line(point.locator)}
            for point in digest.points
        ],
        "commitments": [
            {
                "paragraphs": paragraphs_of(commitment.text, language),
                "caution": caution(commitment.text),
            }
            for commitment in digest.commitments
        ],
        "quotations": [
            {
                "paragraphs": paragraphs_of(one.text, _language_of_quotation(one.text, language)),
                "place": None
                if one.locator is None and one.after is None
                else _one_line(place_line(one.locator, one.after, words)),
            }
            for one in digest.quotations
        ],
    }


def _letters(digest: Digest) -> int:
    texts = [digest.theme or "", digest.judgement or ""]
    texts += [point.text for point in digest.points]
    texts += [commitment.text for commitment in digest.commitments]
    texts += [quotation.text for quotation in digest.quotations]
    return sum(map(len, texts))


def _facts(digest: Digest, words: OwnWords, language: str) -> str | None:
    facts = [digest.edition, digest.isbn and f"{words.isbn} {digest.isbn}"]
    if digest.pages is not None:
        facts.append(f"{digest.pages} {words.pages if language == 'de' else words.pages.lower()}")
    if digest.finished_on is not None:
        facts.append(f"{words.finished.lower()} {day_in_words(digest.finished_on, language)}")
    return _one_line(" · ".join(filter(None, facts))) or None


def _plot(digest: Digest) -> dict[str, Any] | None:
    """Return where points and quotations of a known page stand, as shares of the book.

    None where nothing is known to draw: places are never invented.
    """
    if digest.pages is None:
        return None
    points = _shares((point.page for point in digest.points), digest.pages)
    quotations = _shares((one.page for one in digest.quotations), digest.pages)
    if not points and not quotations:
        return None
    return {"first": "1", "last": str(digest.pages), "points": points, "quotations": quotations}


def _shares(pages: Iterable[int | None], last: int) -> list[float]:
    return [
        round((page - 1) / max(1, last - 1), 5)
        for page in pages
        if page is not None and 1 <= page <= last
    ]


def day_in_words(day: date, language: str) -> str:
    """Return a day in words in English, and as ISO 8601 writes it, read the same anywhere, else."""
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}" if language == "en" else str(day)


_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


def _language_of_quotation(text: str, language: str) -> str:
    """Return the language of a quotation: of a short one in the same letters, the digest's."""
    found = language_of(text, language)
    known = words_for(found) is not words_for("en") or found == "en"
    return language if known and len(text) < _FOREIGN else found


def _one_line(text: str | None) -> str | None:
    return None if text is None else broken(text.replace("\n", " "))


def broken(text: str, length: int = _LONG) -> str:
    """Return a text in which words too long for a line may break, without a sign, as addresses."""
    return re.sub(rf"\S{{{length}}}(?=\S)", "\\g<0>\u200b", stacked(text))


def stacked(text: str) -> str:
    """Return a text with no more marks or joiners in a row than a letter can bear.

    Setting thousands on one letter takes a minute.
    """
    if text.isascii():
        return text
    runs = groupby(text, lambda letter: unicodedata.category(letter) in _UPON_LETTERS)
    return "".join("".join(islice(run, _STACKED) if upon else run) for upon, run in runs)


def paragraphs_of(text: str, language: str) -> list[dict[str, Any]]:
    """Return a text as paragraphs of lines, each with its language and its direction."""
    return [
        {
            "lines": broken(paragraph.strip("\n")).split("\n"),
            "lang": language,
            "rtl": runs_to_the_left(paragraph),
        }
        for paragraph in text.split(PARAGRAPHS)
        if paragraph.strip()
    ]
