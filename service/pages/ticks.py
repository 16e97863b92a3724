"""The ideas of a digest's words, ticked where they came back, and the reader's word on them."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from cards.kinds.base import Idea, Span
from service.pages.wording import Stretch, stretches

_NUMBER = re.compile(r"\d{1,3}", re.ASCII)
_IDEA = re.compile(r"idea-(?P<number>\d{1,3})", re.ASCII)
_MAIN = 2
"""The weight from which an idea is a main one."""


@dataclass(frozen=True, slots=True)
class Line:
    """One idea as it is shown.

    Attributes:
        number: from 1, as `Attempt.ticked` counts.
        words: its words, in stretches, found in the other text or not.
        after: what stands between it and the next one, "" for nothing but space.
        before: what stands before the first one; "" for the others.
        main: whether it is a main idea among several.
        ticked: whether it came back.
        turned: whether the attempt seems to say its opposite.
    """

    number: int
    words: tuple[Stretch, ...]
    after: str
    before: str
    main: bool
    ticked: bool
    turned: bool


def idea_lines(words: str, ideas: Sequence[Idea], spans: Sequence[Span]) -> list[Line]:
    """Return the digest's words cut at their ideas, in order; together they are all of them."""
    whole = sorted(enumerate(ideas, 1), key=lambda each: each[1].start)
    starts = [idea.start for _, idea in whole]
    lines = []
    for place, (number, idea) in enumerate(whole):
        until = starts[place + 1] if place + 1 < len(starts) else len(words)
        inside = [
            Span(
                max(span.start, idea.start) - idea.start, min(span.end, idea.end) - idea.start, True
            )
            for span in spans
            if span.hit and span.start < idea.end and idea.start < span.end
        ]
        lines.append(
            Line(
                number,
                tuple(stretches(words[idea.start : idea.end], inside)),
                words[idea.end : until].strip(),
                words[: idea.start].strip() if place == 0 else "",
                idea.weight >= _MAIN and len(ideas) > 1,
                idea.found,
                idea.turned,
            )
        )
    return lines


def found_by_comparison(ideas: Sequence[Idea]) -> str:
    """Return the numbers of the ideas that were found, as the form carries them: `1 3`."""
    return " ".join(str(number) for number, idea in enumerate(ideas, 1) if idea.found)


def read_ticks(form: Mapping[str, str]) -> frozenset[int] | None:
    """Return the numbers of the ideas the reader ticked, or None where they corrected nothing.

    `ticks` holds what the comparison found, `idea-1` is there when the first is ticked.
    """
    if "ticks" not in form:
        return None
    found = frozenset(int(number) for number in _NUMBER.findall(form["ticks"][:2_000]))
    ticked = frozenset(int(said["number"]) for said in map(_IDEA.fullmatch, form) if said)
    return None if ticked == found else ticked
