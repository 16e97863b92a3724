"""Recall in one's own words: which ideas of the digest came back, and the grade they earn."""

from collections.abc import Sequence
from dataclasses import replace

from cards.answers import Grade
from cards.kinds.base import Attempt, Idea, Mark
from cards.kinds.words import compare, spans_of

# Shares of the weighted ideas from which each grade is suggested: reference, part 4,
# "theme, free recall".
_HAZY, _CLEAR, _VIVID = 0.35, 0.60, 0.90
_MAIN_WEIGHT = 2
"""What the main idea weighs, which is the first: the reference weighs main ideas double."""


def mark_recall(text: str, attempt: Attempt) -> Mark:
    """Hold an attempt in one's own words against a text, idea by idea.

    Args:
        text: the digest's words.
        attempt: what the reader wrote; `ticked`, where it is given, takes the place of what
            the comparison finds.
    """
    if not attempt.words.strip() and not attempt.ticked:
        return Mark(Grade.BLANK, "Nothing was written.")
    compared = compare(text, attempt.words)
    found = tuple(
        Idea(
            each.span.start,
            each.span.end,
            _MAIN_WEIGHT if number == 0 else 1,
            each.span.hit,
            each.turned,
        )
        for number, each in enumerate(compared)
    )
    ideas = _corrected(found, attempt.ticked)
    shared = frozenset[str]().union(*(each.shared for each in compared if each.span.hit))
    return Mark(
        grade=_grade(ideas),
        reason=_reason(ideas, corrected=attempt.ticked is not None),
        answer_spans=spans_of(text, shared),
        attempt_spans=spans_of(attempt.words, shared),
        ideas=ideas,
    )


def _corrected(ideas: Sequence[Idea], ticked: frozenset[int] | None) -> tuple[Idea, ...]:
    """Let the reader's ticks stand for what was found; what did not come back is not turned."""
    if ticked is None:
        return tuple(ideas)
    return tuple(
        replace(idea, found=number in ticked, turned=idea.turned and number in ticked)
        for number, idea in enumerate(ideas, 1)
    )


def _share(ideas: Sequence[Idea]) -> float:
    """Return the share of the weight that came back, an idea turned round counting half."""
    earned = sum(idea.weight / (2 if idea.turned else 1) for idea in ideas if idea.found)
    return earned / sum(idea.weight for idea in ideas)


def _grade(ideas: Sequence[Idea]) -> Grade:
    share = _share(ideas)
    if share < _HAZY or not ideas[0].found:
        return Grade.BLANK
    if share < _CLEAR or any(idea.turned for idea in ideas):
        return Grade.HAZY
    return Grade.CLEAR if share < _VIVID else Grade.VIVID


def _reason(ideas: Sequence[Idea], *, corrected: bool) -> str:
    hits = sum(idea.found for idea in ideas)
    main = "the main one among them" if ideas[0].found else "the main one not among them"
    many = f"{len(ideas)} ideas"
    if hits == 0:
        reason = f"None of {many}" if len(ideas) > 1 else "Its one idea"
        reason += " came back." if corrected else " was found in what you wrote."
    elif len(ideas) == 1:
        reason = "Its one idea came back."
    else:
        reason = f"{hits} of {many} came back, {main}."
    turned = [number for number, idea in enumerate(ideas, 1) if idea.turned]
    if turned:
        return f"{reason} {_which(turned, len(ideas))} may be turned round: look at the “not”."
    if hits < len(ideas) and not corrected:
        return reason + " Only words are compared: what you said in others counts too."
    return reason


def _which(turned: Sequence[int], of: int) -> str:
    if of == 1:
        return "It"
    numbers = ", ".join(map(str, turned))
    return f"Idea {numbers}" if len(turned) == 1 else f"Ideas {numbers}"
