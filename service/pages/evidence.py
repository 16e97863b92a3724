"""What shows how an attempt stands to the digest's words, in the way it was asked."""

from collections.abc import Sequence
from dataclasses import dataclass

from cards.kinds.base import Answered, Asked, Attempt, Cue, Mark, Shelved
from service.pages.gaps import Step, told
from service.pages.orders import ordered
from service.pages.ticks import Line, idea_lines
from service.pages.wording import Stretch, stretches


@dataclass(frozen=True, slots=True)
class Evidence:
    """An attempt and the digest's words, side by side.

    Attributes:
        mark: the suggestion; None where it is not to be seen yet.
        said: the digest's words, found in the attempt or not.
        own: the reader's words, likewise.
        ideas: the digest's words cut at their ideas; empty where no ideas are compared.
        plot: where a gap was asked: the plot around the right one and the reader's.
        order: where an order was asked: what is shown, as the reader put it.
        blanks: where blanks were asked: the text with the reader's words in it, what is
            around the blanks as None, the right ones as True, the others as False.
        book: where a book was to be chosen: the reader's choice.
        by_gap: whether a gap was asked, so that the points may have been in sight.
    """

    mark: Mark | None
    said: tuple[Stretch, ...]
    own: tuple[Stretch, ...]
    ideas: tuple[Line, ...]
    plot: tuple[Step, ...]
    order: tuple[str, ...]
    blanks: tuple[Stretch, ...]
    book: Shelved | None
    by_gap: bool

    @property
    def found(self) -> bool:
        """Whether anything of the digest's words is marked as found."""
        return any(each.hit for each in self.said) or any(
            piece.hit for line in self.ideas for piece in line.words
        )

    @property
    def missed(self) -> bool:
        """Whether anything of the digest's words is marked as missed."""
        return any(each.hit is False for each in self.said)


def evidence(cue: Cue, answered: Answered, attempt: Attempt, mark: Mark | None) -> Evidence:
    """Return an attempt beside the digest's words; without marks when there is no mark."""
    marks = () if mark is None else mark.answer_spans
    return Evidence(
        mark=mark,
        said=tuple(stretches(answered.words, marks)),
        own=tuple(stretches(attempt.words, () if mark is None else mark.attempt_spans)),
        ideas=tuple(idea_lines(answered.words, mark.ideas, marks)) if mark and mark.ideas else (),
        plot=() if answered.gap is None else tuple(told(cue.landmarks, answered.gap, attempt.gap)),
        order=tuple(ordered(cue, attempt.order)),
        blanks=tuple(_filled(cue, attempt.blanks, [span.hit for span in marks])),
        book=next((each for each in cue.choices if each.id == attempt.book), None),
        by_gap=Asked.GAP in cue.asked,
    )


def _filled(cue: Cue, given: Sequence[str], hits: Sequence[bool]) -> list[Stretch]:
    if Asked.BLANKS not in cue.asked:
        return []
    filled = [Stretch(cue.pieces[0])]
    for number, piece in enumerate(cue.pieces[1:]):
        word = given[number] if number < len(given) else ""
        right = number < len(hits) and hits[number]
        filled += [Stretch(word.strip(), right if hits else False), Stretch(piece)]
    return filled
