"""Advice on a digest, never a wall: what would make it worthier of being kept.

The facts of the trade behind it (two pages, at most one of quotations; every quotation with
its page; points in the book's order; commitments concrete, specific and measurable) are
common practice with no published source.
"""

import re
from collections.abc import Iterator
from datetime import date
from itertools import pairwise

from cards.digest import Digest, Notice
from cards.locators import Place, Unit, chapter_of, page_of, steps_of
from cards.wording import check

WORDS_A_PAGE = 500
"""Words on one page of a digest: an assumption, stated in the reference of the trade, not a
measurement; 12 pt with generous margins holds about so many."""
FEWEST_WORDS_OF_A_THEME = 20
"""A theme under this many words is a line: about 12 words stand on one, and what a book comes
to and by what stages does not fit one sentence of one line and a half."""
MOST_WORDS_OF_A_THEME = 250
"""A theme over this many words fills half a page of `WORDS_A_PAGE`, and leaves the points and
the commitments the other half of the page they share."""

NO_LOCATOR = "This quotation has no locator: add the page, or the chapter, where its words stand."
"""Advised of each quotation without one."""

_WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*")
_SENTENCE_END = re.compile(r"[.!?…][”\"'’»)\]]*$")
_FINITE = frozenset(
    """is are was were am be been has have had does do did can could will would shall should may
    might must cannot can't won't isn't aren't wasn't weren't doesn't don't didn't hasn't
    becomes became comes came goes went gives gave takes took makes made says said finds found
    loses lost sees saw tells told knows knew begins began ends keeps kept leaves left brings
    brought falls fell stands stood holds held turns turned learns learned learnt lives lived dies
    died shows showed thinks thought means meant meets met lets let puts put gets got runs ran
    asks asked calls called wins won buys bought sells sold teaches taught fights fought sends
    sent writes wrote reads speaks spoke breaks broke draws drew grows grew leads led feels felt
    pays paid rises rose chooses chose forgets forgot hides hid drives drove flies flew sings
    sang sits sat sleeps slept swears swore throws threw wakes woke wears wore bears bore beats
    bends bent binds bound bites bit builds built catches caught costs cuts deals dealt digs dug
    drinks drank eats ate feeds fed flees fled forgives forgave freezes froze hangs hung hears
    heard hits hurts kneels knelt lays laid lends lent lies lay lights lit rides rode rings rang
    seeks sought shakes shook shines shone shoots shot shuts sinks sank slides slid spends spent
    splits spreads springs sprang steals stole sticks stuck strikes struck swims swam tears tore
    understands understood weeps wept winds wound need needs want wants seem seems depend
    ist sind waren haben hatte wird werden wurde kann muss soll est sont était ont avait
    devient peut doit es eran está están tiene puede debe è sono hanno viene può
    deve é são foi tem pode deve zijn heeft had wordt kan moet""".split()
)
"""Forms that end the doubt whether a point is a sentence: common verbs of the languages of the
headings."""
_ENDING = re.compile(r"[^\W\d_]{2,}(?:ed|s)$|[^\W\d_]{3,}(?:te|en|t|ó|ò|ou)$")
_TITLE_OF_A_PART = 6
"""A point of at most so many words that ends without a full stop is a heading of one."""


def advice_on(digest: Digest, on: date) -> tuple[Notice, ...]:
    """Return what would make a digest worthier of being kept, in the order of its parts.

    Args:
        digest: the digest.
        on: the day its commitments are read relative to, where it does not say on which
            day the book was finished: the reader's day.
    """
    return (
        *_on_theme(digest),
        *_on_points(digest),
        *_on_commitments(digest, digest.finished_on or on),
        *_on_quotations(digest),
    )


def words_in(text: str) -> int:
    """Return the number of words in a text."""
    return len(_WORD.findall(text))


def _on_theme(digest: Digest) -> Iterator[Notice]:
    if digest.theme is None:
        return
    words = words_in(digest.theme)
    if words < FEWEST_WORDS_OF_A_THEME:
        yield Notice(
            "theme",
            f"The theme has {words} word{'' if words == 1 else 's'}, about a line: say what the "
            "book comes to, and by what stages.",
        )
    if words > MOST_WORDS_OF_A_THEME:
        yield Notice(
            "theme",
            f"The theme has {words} words, more than half a page: keep what the book comes to and "
            "its stages, and move the rest to the points.",
        )


def _on_points(digest: Digest) -> Iterator[Notice]:
    for number, point in enumerate(digest.points, 1):
        if not is_sentence(point.text):
            yield Notice(
                f"points {number}",
                "This point is a heading rather than a sentence: say what happens or what is "
                "claimed, so that it can be recalled.",
            )
    yield from _out_of_order("points", [point.locator for point in digest.points])


def is_sentence(text: str) -> bool:
    """Tell whether a point can be a sentence.

    A heuristic with few false alarms: only what has no form that is a verb for certain and
    no word that ends like one, or is a few words without a full stop and without a verb
    for certain, is held to be none.
    """
    said = text.strip()
    words = [word.casefold() for word in _WORD.findall(said)]
    if not words or not any(character < "\u0250" for character in said if character.isalpha()):
        return bool(words)
    if any(word in _FINITE or word.endswith(("n't", "n’t")) for word in words):
        return True
    if len(words) <= _TITLE_OF_A_PART and not _SENTENCE_END.search(said):
        return False
    return any(_ENDING.search(word) for word in words[1:]) or len(words) > 2 * _TITLE_OF_A_PART


def _on_commitments(digest: Digest, on: date) -> Iterator[Notice]:
    for number, commitment in enumerate(digest.commitments, 1):
        wording = check(commitment.text, on)
        said = [line for line in wording.advice if line != wording.caution]
        for sentence in said:
            yield Notice(f"commitments {number}", sentence)


def _on_quotations(digest: Digest) -> Iterator[Notice]:
    for number, quotation in enumerate(digest.quotations, 1):
        if quotation.locator is None:
            yield Notice(f"quotations {number}", NO_LOCATOR)
    yield from _out_of_order("quotations", [quotation.locator for quotation in digest.quotations])
    words = sum(words_in(quotation.text) for quotation in digest.quotations)
    if words > WORDS_A_PAGE:
        yield Notice(
            "quotations",
            f"The quotations have {words} words, and a page holds about {WORDS_A_PAGE}: keep those "
            "that carry the theme or are worth having by heart, and let the others go.",
        )


def _out_of_order(part: str, locators: list[str | None]) -> Iterator[Notice]:
    """Tell of each part that stands in the book before the one above it that has a place."""
    placed = [
        (number, locator, place)
        for number, locator in enumerate(locators, 1)
        if locator is not None and (place := _place(locator))
    ]
    singular = part.removesuffix("s")
    for (_, above, before), (number, here, after) in pairwise(placed):
        if _is_before(after, before):
            yield Notice(
                f"{part} {number}",
                f"This {singular} stands at {here} but comes after one at {above}: move it up, so "
                f"that the {part} keep the book's order, or mend the locator.",
            )


def _place(locator: str) -> tuple[Place, ...]:
    page = page_of(locator)
    if page is not None:
        return (Place(Unit.PAGE, page),)
    steps = steps_of(locator)
    if steps:
        return steps
    chapter = chapter_of(locator)
    return () if chapter is None else (Place(Unit.CHAPTER, chapter),)


def _is_before(one: tuple[Place, ...], other: tuple[Place, ...]) -> bool:
    """Tell whether a place is before another, where they count the same from the outermost in."""
    for mine, theirs in zip(one, other, strict=False):
        if mine.unit is not theirs.unit:
            return False
        if mine.number != theirs.number:
            return mine.number < theirs.number
    return False
