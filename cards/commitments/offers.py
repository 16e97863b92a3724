"""What is asked and offered where a commitment does not go by itself; never with blame."""

from dataclasses import dataclass, replace
from enum import StrEnum

from cards.cautions import Matter, matters
from cards.commitments.decisions import Act
from cards.commitments.measure import Measure, Period
from cards.commitments.stand import Pace, Rule, Stand


class Question(StrEnum):
    """The first useful question (design): it differs by what was said."""

    DID_YOU = "Did you do it?"
    WHAT_STOPPED_YOU = "What stopped you?"
    WHAT_CAME_OF_IT = "What came of it?"
    WHAT_NEXT = "What next?"


@dataclass(frozen=True, slots=True)
class Offer:
    """What a commitment is met with.

    Attributes:
        question: what is asked first.
        acts: the decisions offered, the gentlest first.
        halved: the measure half of what it asks, where `halve` is among them.
    """

    question: Question
    acts: tuple[Act, ...]
    halved: Measure | None = None


def offer_for(stand: Stand, text: str = "") -> Offer | None:
    """Return what a commitment is met with as it stands, or None where it needs nothing.

    What touches health or medicine is never offered halving: that is for whoever
    treats the reader to say (design).

    Args:
        stand: how it stands.
        text: its words as the digest says them now, which an edit may have changed since the
            last decision about them.
    """
    if stand.pace is Pace.UNJUDGED:
        return Offer(Question.WHAT_CAME_OF_IT, (Act.CLOSE, Act.RENEW, Act.REWORD, Act.RELEASE))
    over = stand.pace in {Pace.DONE, Pace.ENDED} or stand.rule is Rule.NOTHING_AT_ALL
    if over and not stand.settled:
        return Offer(Question.WHAT_NEXT, (Act.RENEW, Act.REWORD, Act.RELEASE, Act.CLOSE))
    if stand.pace not in {Pace.STALLED, Pace.SLIPPING}:
        return None
    question = Question.DID_YOU if stand.nothing_said else Question.WHAT_STOPPED_YOU
    if stand.pace is Pace.SLIPPING:
        return Offer(question, ())
    less = halved(stand.life.term.measure)
    if touches_health(stand, text):
        less = None
    acts = [Act.REWORD]
    if less is not None:
        acts.append(Act.HALVE)
    if stand.life.term.once:
        acts.append(Act.MOVE)
    return Offer(question, (*acts, Act.PAUSE, Act.RELEASE), less)


def touches_health(stand: Stand, text: str = "") -> bool:
    """Tell whether a commitment touches health or medicine, by its words as decided or as now."""
    return any(Matter.HEALTH in matters(each) for each in (stand.life.text, text))


def halved(measure: Measure | None) -> Measure | None:
    """Return a measure that asks half, or None where that cannot be said.

    Half as long where it says how long, else half as many, else half as often.
    """
    if measure is None:
        return None
    if measure.minutes is not None and measure.minutes > 1:
        return replace(measure, minutes=(measure.minutes + 1) // 2)
    if measure.times > 1:
        return replace(measure, times=(measure.times + 1) // 2)
    if measure.period is Period.ONCE or measure.periods == 1:
        return None
    # Half as often over the same time is half as many periods.
    periods = None if measure.periods is None else (measure.periods + 1) // 2
    return replace(measure, every=2 * measure.every, periods=periods)
