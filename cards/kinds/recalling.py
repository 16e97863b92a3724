"""A text recalled in one's own words, marked idea by idea."""

from cards.answers import Grade
from cards.kinds.base import Attempt, Idea, Mark
from cards.kinds.words import Comparison, compare, spans_of

# Shares of the weighted ideas from which each grade is suggested: reference, part 4,
# "theme, free recall"; the main idea, which weighs double there, is the first.
_HAZY, _CLEAR, _VIVID = 0.35, 0.60, 0.90
_MAIN_WEIGHT = 2
_TURNED_COUNTS = 0.5
"""What an idea said the wrong way round counts of its weight: it was not forgotten."""
_LONGEST_NAMED = 60
"""Characters of an idea that a reason names."""


def recalled(source: str, attempt: Attempt) -> Mark:
    """Mark an attempt at saying a text again by the share of its ideas that came back.

    Where the reader ticked the ideas, their ticks take the place of what was found, and an
    idea they tick is not taken to be turned round.
    """
    if not attempt.words.strip() and not attempt.ticked:
        return Mark(Grade.BLANK, "Nothing was written.")
    compared = compare(source, attempt.words)
    units = tuple(_idea(number, each, attempt) for number, each in enumerate(compared, 1))
    shared = frozenset[str]().union(*(each.shared for each in compared if each.span.hit))
    return Mark(
        grade=_grade(units),
        reason=_reason(source, units, ticked=attempt.ticked is not None),
        answer_spans=tuple(each.span for each in compared),
        attempt_spans=spans_of(attempt.words, shared),
        ideas=units,
    )


def _idea(number: int, compared: Comparison, attempt: Attempt) -> Idea:
    by_reader = attempt.ticked is not None and number in attempt.ticked
    turned = compared.turned and not by_reader
    found = by_reader if attempt.ticked is not None else compared.span.hit and not turned
    weight = _MAIN_WEIGHT if number == 1 else 1
    return Idea(compared.span.start, compared.span.end, weight, found, turned)


def _grade(units: tuple[Idea, ...]) -> Grade:
    came = sum(unit.weight * _counts(unit) for unit in units)
    share = came / sum(unit.weight for unit in units)
    if share < _HAZY or not _counts(units[0]):
        return Grade.BLANK
    if share < _CLEAR or any(unit.turned for unit in units):
        return Grade.HAZY
    return Grade.CLEAR if share < _VIVID else Grade.VIVID


def _counts(unit: Idea) -> float:
    return _TURNED_COUNTS if unit.turned else float(unit.found)


def _reason(source: str, units: tuple[Idea, ...], *, ticked: bool) -> str:
    hits = sum(unit.found for unit in units)
    turned = [unit for unit in units if unit.turned]
    ideas = "idea" if len(units) == 1 else "ideas"
    if hits == 0 and not turned:
        where = "ticked" if ticked else "found in what you wrote"
        reason = f"None of {len(units)} {ideas} was {where}."
    elif len(units) == 1:
        reason = "Its one idea came back." if hits else "Its one idea is there."
    else:
        main = "the main one among them" if units[0].found else "the main one not among them"
        reason = f"{hits} of {len(units)} ideas came back, {main}."
    if turned:
        named = _named(source[turned[0].start : turned[0].end])
        reason += f" This one may be turned round: “{named}”."
    elif hits < len(units) and not ticked:
        reason += " Only words are compared: what you said in others counts too."
    return reason


def _named(idea: str) -> str:
    words = " ".join(idea.split()).rstrip(".;:,")
    if len(words) <= _LONGEST_NAMED:
        return words
    return words[:_LONGEST_NAMED].rsplit(" ", 1)[0] + " …"
