"""From the fields of the sitting's form to an attempt."""

from collections.abc import Mapping

from cards.answers import MAX_ATTEMPT
from cards.digest import MAX_PAGES
from cards.kinds.base import Asked, Attempt, Cue
from service.pages import fields
from service.pages.fields import Fault

MOST_CHAPTERS = 10_000
"""Beyond the chapters of any book."""


def read_attempt(form: Mapping[str, str], cue: Cue) -> Attempt:
    """Return what the reader gave, by any of the ways the cue asks for.

    Raises:
        Fault: a field cannot be taken, or a place was asked for and none was given.
    """
    hidden = form.get("plot") == "hidden"
    seen = Asked.GAP in cue.asked and not hidden
    if form.get("nothing"):
        return Attempt(landmarks_seen=seen)
    if Asked.WORDS in cue.asked:
        return Attempt(words=_words(form), landmarks_seen=seen)
    attempt = Attempt(
        gap=fields.whole(form, "gap", "A place on the line", 0, len(cue.landmarks))
        if seen
        else None,
        page=fields.whole(form, "page", "A page", 1, MAX_PAGES)
        if Asked.PAGE in cue.asked
        else None,
        chapter=fields.whole(form, "chapter", "A chapter", 1, MOST_CHAPTERS)
        if Asked.CHAPTER in cue.asked
        else None,
        landmarks_seen=seen,
    )
    if attempt.gap is None and attempt.page is None and attempt.chapter is None:
        raise _nothing_given(cue, seen=seen)
    return attempt


def _words(form: Mapping[str, str]) -> str:
    words = fields.text(form, "words")
    if len(words) > MAX_ATTEMPT:
        raise Fault(
            "words",
            f"This is {len(words)} characters long; at most {MAX_ATTEMPT} can be compared.",
        )
    return words


def _nothing_given(cue: Cue, *, seen: bool) -> Fault:
    if seen:
        what = "Choose a place on the line" + (
            " or give the page" if Asked.PAGE in cue.asked else ""
        )
        return Fault("gap", f"{what}; or say that you can’t tell.")
    if Asked.PAGE in cue.asked:
        return Fault("page", "Give a page; or say that you can’t tell.")
    return Fault("chapter", "Give a chapter; or say that you can’t tell.")
