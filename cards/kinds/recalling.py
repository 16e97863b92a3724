"""A text recalled in one's own words, marked idea by idea."""

from bisect import bisect_left
from collections import Counter
from collections.abc import Sequence

from cards.answers import Grade
from cards.kinds.base import Attempt, Idea, Mark, Span
from cards.kinds.comparing import Comparison, compare
from cards.kinds.stages import told_by_stages
from cards.kinds.words import content_words

# Shares of the weighted ideas from which each grade is suggested: reference, part 4,
# "theme, free recall"; the main idea, which weighs double there, is the first.
_HAZY, _CLEAR, _VIVID = 0.35, 0.60, 0.90
_MAIN_WEIGHT = 2
_TURNED_COUNTS = 0.5
"""What an idea said the wrong way round counts of its weight: it was not forgotten."""
_UNSAID_AT_MOST = {Grade.VIVID: 0.15, Grade.CLEAR: 0.5}
"""Share of a text that may be left unsaid, in any words, where each grade is suggested."""
_SAID_IN_OTHERS = 0.35
"""Share of an idea's words from which it counts whole although too few came back to tick it.

Readers say most of an idea in words that nothing here knows to mean the same: of answers
graded by hands that had not seen this code, it brings the marks nearest to their grades."""
_ONE_LESS = {Grade.VIVID: Grade.CLEAR, Grade.CLEAR: Grade.HAZY}
_LONGEST_NAMED = 60
"""Characters of an idea that a reason names."""


def recalled(source: str, attempt: Attempt, stages: Sequence[str] = ()) -> Mark:
    """Mark an attempt at saying a text again by the share of its ideas that came back.

    An idea comes back in words of its own, or by one of the stages it stands for
    (`told_by_stages`). Where the reader ticked the ideas, their ticks take the place of what
    was found, and an idea they tick is not taken to be turned round.
    """
    if not attempt.words.strip() and not attempt.ticked:
        return Mark(Grade.BLANK, "Nothing was written.")
    compared = compare(source, attempt.words)
    told = told_by_stages(source, stages, attempt.words)
    units = tuple(
        _idea(number, each, attempt, told=number in told)
        for number, each in enumerate(compared.ideas, 1)
    )
    counts = [
        _credit(unit, each, compared.sure) for unit, each in zip(units, compared.ideas, strict=True)
    ]
    grade = _grade(units, counts, [each.sentence for each in compared.ideas])
    by_reader = attempt.ticked is not None
    if not by_reader:
        for best, most in _UNSAID_AT_MOST.items():
            if grade is best and compared.unsaid > most:
                grade = _ONE_LESS[best]
    met = [each for each in compared.ideas if each.part]
    return Mark(
        grade=grade,
        reason=_reason(source, units, ticked=by_reader),
        answer_spans=_joined(source, [place for each in met for place in each.shared]),
        attempt_spans=_joined(attempt.words, [place for each in met for place in each.given]),
        ideas=units,
    )


def _idea(number: int, compared: Comparison, attempt: Attempt, *, told: bool) -> Idea:
    by_reader = attempt.ticked is not None and number in attempt.ticked
    turned = compared.turned and not by_reader
    came = (compared.span.hit or told) and not turned
    found = came if attempt.ticked is None else by_reader
    weight = _MAIN_WEIGHT if compared.main else 1
    return Idea(compared.span.start, compared.span.end, weight, found, turned)


def _credit(unit: Idea, compared: Comparison, sure: float) -> float:
    """Return what an idea counts of its weight.

    One that came back counts whole; one of which less came back than a hit needs counts in
    part, unless the reader took away its tick; one turned round by half. The surer it is that
    the attempt tells of the text, the more is added for what may have been said otherwise.
    """
    if unit.found:
        return 1.0
    in_part = compared.part
    if not compared.alone:
        in_part += sure * (min(1.0, compared.part / _SAID_IN_OTHERS) - compared.part)
    if unit.turned:
        return _TURNED_COUNTS * (1.0 if compared.span.hit else in_part)
    if compared.span.hit:
        return 0.0
    return in_part + (1.0 - in_part) * sure * compared.otherwise


def _grade(units: tuple[Idea, ...], counts: list[float], sentences: list[int]) -> Grade:
    """Return the grade for what each idea counts; the limbs of a sentence share its weight."""
    limbs = Counter(sentences)
    shares = [unit.weight / limbs[number] for unit, number in zip(units, sentences, strict=True)]
    came = sum(share * credit for share, credit in zip(shares, counts, strict=True))
    share = came / sum(shares)
    main = any(
        credit for unit, credit in zip(units, counts, strict=True) if unit.weight == _MAIN_WEIGHT
    )
    if share < _HAZY or not main:
        return Grade.BLANK
    if share < _CLEAR or any(unit.turned for unit in units):
        return Grade.HAZY
    return Grade.CLEAR if share < _VIVID else Grade.VIVID


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


def _joined(text: str, places: list[tuple[int, int]]) -> tuple[Span, ...]:
    """Return stretches in order, those between which no word of substance stands joined."""
    substance = [token.start for token in content_words(text)]
    spans: list[Span] = []
    for start, end in sorted(set(places)):
        if spans and bisect_left(substance, spans[-1].end) == bisect_left(substance, start):
            spans[-1] = Span(spans[-1].start, end, hit=True)
        else:
            spans.append(Span(start, end, hit=True))
    return tuple(spans)


def _named(idea: str) -> str:
    words = " ".join(idea.split()).rstrip(".;:,")
    if len(words) <= _LONGEST_NAMED:
        return words
    return words[:_LONGEST_NAMED].rsplit(" ", 1)[0] + " …"
