"""What the wording check says of a commitment."""

from dataclasses import dataclass

from cards.commitments.measure import Measure


@dataclass(frozen=True, slots=True)
class Wording:
    """How a commitment is worded, and what may be made of it.

    Attributes:
        concrete: an act someone could see done, in the imperative or with "I will"; None
            where the language is not checked.
        specific: to whom, to what, where or when; or None.
        measurable: on a given day one can say whether it was done: by a count, a cadence or
            a day by which; or None. True exactly when there is a measure.
        measure: what is asked, or None.
        cue: the words of the situation it is tied to, or None.
        advice: sentences to the reader: what is missing and why, a rewording where there is
            one, and the caution it carries. Empty when there is nothing to say.
        rewording: the commitment in the shape "When ..., I will ...", or None.
        caution: the caution it carries where it touches health, money or the law, or None.
    """

    concrete: bool | None
    specific: bool | None
    measurable: bool | None
    measure: Measure | None
    cue: str | None
    advice: tuple[str, ...]
    rewording: str | None = None
    caution: str | None = None
