"""The forgetting curve fitted to what happened: what came back after so many days."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import exp, log, log1p

from cards.retention.ages import CLASSES, AgeClass, age_within, class_of
from cards.retention.descent import Parameters, Slope, least
from cards.retention.losses import losses_of
from cards.retention.shares import ENOUGH, Share, share_of
from cards.retention.tally import Tally, total

RECALLED = 0.9
"""The recall at which stability is read off, as in FSRS-6."""
_CERTAIN = 1e-9
"""A curve is held this far from 0 and from 1: what happened must be possible."""
_FASTEST, _SLOWEST = 1e-3, 1e7
_FLATTEST, _STEEPEST = 0.005, 10.0


@dataclass(frozen=True, slots=True)
class OfAge:
    """What came back at an age of the memory.

    Attributes:
        age: the readable class.
        share: what came back.
        predicted: the mean recall predicted, or None where nothing was.
    """

    age: AgeClass
    share: Share
    predicted: float | None


@dataclass(frozen=True, slots=True)
class Curve:
    """A forgetting curve that starts at 1.

    Attributes:
        stability: days after which recall has fallen to 0.9.
        decay: the exponent of a power curve, as in FSRS-6 below 1 for most readers; None of
            an exponential.
        log_loss: of the answers it was fitted to, a mean.
    """

    stability: float
    decay: float | None
    log_loss: float

    def at(self, days: float) -> float:
        """Return the recall after so many days, 0 to 1."""
        if self.decay is None:
            return float(RECALLED ** (days / self.stability))
        return exp(-self.decay * log1p(factor(self.decay) * days / self.stability))


@dataclass(frozen=True, slots=True)
class Forgetting:
    """How what was asked came back, by the age of the memory.

    It is the curve of all items together, each asked when the schedule thought fit: what is
    remembered well is asked late, so that it falls more slowly than any single memory does.

    Attributes:
        ages: by readable class, those with an answer, the youngest first.
        power: the curve (1 + f·t/S)^-d with f = 0.9^(-1/d) - 1 that makes what happened likeliest.
        exponential: the curve 0.9^(t/S) that does. Both None of fewer than 50 answers, of a
            single age, or where all or nothing came back.
    """

    ages: tuple[OfAge, ...]
    power: Curve | None
    exponential: Curve | None


def forgetting_of(ages: Mapping[int, Tally]) -> Forgetting:
    """Return what came back by age, and the curves fitted to it.

    Args:
        ages: what is counted, by the first day of the bin of the age.
    """
    classes: dict[AgeClass, list[Tally]] = {}
    for age, tally in ages.items():
        classes.setdefault(class_of(age), []).append(tally)
    told = []
    for each in CLASSES:
        if each in classes:
            tally = total(classes[each])
            losses = losses_of(tally)
            predicted = None if losses is None else losses.predicted
            told.append(OfAge(each, share_of(tally), predicted))
    seen = [_Seen(age_within(age), each.recalled, each.n) for age, each in ages.items()]
    asked, recalled = sum(each.asked for each in seen), sum(each.recalled for each in seen)
    if asked < ENOUGH or len(seen) < 2 or recalled in {0, asked}:
        return Forgetting(tuple(told), None, None)
    exponential = _exponential(seen)
    return Forgetting(tuple(told), _power(seen, exponential), exponential)


def factor(decay: float) -> float:
    """Return f of (1 + f·t/S)^-d, such that recall is 0.9 after S days."""
    return float(RECALLED ** (-1 / decay) - 1)


@dataclass(frozen=True, slots=True)
class _Seen:
    days: float
    recalled: int
    asked: int


def _exponential(seen: list[_Seen]) -> Curve:
    """Fit an exponential, in the logarithm of its rate a day."""

    def at(parameters: Parameters) -> Slope:
        pace = exp(parameters[0])
        return _likelihood(seen, [(-pace * each.days, (-pace * each.days,)) for each in seen])

    (found,) = least(at, (log(0.01),), [(-log(_SLOWEST), -log(_FASTEST))])
    return Curve(-log(RECALLED) / exp(found), None, at((found,)).loss / _asked(seen))


def _power(seen: list[_Seen], start: Curve) -> Curve:
    """Fit a power curve, in logarithms of its rate f/S and of its exponent."""

    def at(parameters: Parameters) -> Slope:
        rate, decay = map(exp, parameters)
        points = []
        for each in seen:
            fallen = -decay * log1p(rate * each.days)
            by_rate = -decay * rate * each.days / (1 + rate * each.days)
            points.append((fallen, (by_rate, fallen)))
        return _likelihood(seen, points)

    bounds = [(-log(_SLOWEST), log(_SLOWEST)), (log(_FLATTEST), log(_STEEPEST))]
    starts = [(log(factor(decay) / start.stability), log(decay)) for decay in (0.05, 0.2, 1.0)]
    found = min((least(at, each, bounds) for each in starts), key=lambda each: at(each).loss)
    rate, decay = map(exp, found)
    return Curve(factor(decay) / rate, decay, at(found).loss / _asked(seen))


def _likelihood(seen: list[_Seen], points: Sequence[tuple[float, Parameters]]) -> Slope:
    """Return -ln of the likelihood, its gradient and its information (Fisher).

    Args:
        seen: what happened.
        points: for each, ln of the curve and its derivatives by the parameters.
    """
    size = len(points[0][1])
    loss, gradient = 0.0, [0.0] * size
    information = [[0.0] * size for _ in range(size)]
    for each, (logarithm, derivatives) in zip(seen, points, strict=True):
        recall = min(max(exp(logarithm), _CERTAIN), 1 - _CERTAIN)
        gone = each.asked - each.recalled
        loss -= each.recalled * log(recall) + gone * log1p(-recall)
        # By ln R: of what came back 1, of what did not -R/(1 - R); expected square R/(1 - R).
        odds = recall / (1 - recall)
        slope = gone * odds - each.recalled
        for row, by in enumerate(derivatives):
            gradient[row] += slope * by
            for column, other in enumerate(derivatives):
                information[row][column] += each.asked * odds * by * other
    return Slope(loss, gradient, information)


def _asked(seen: list[_Seen]) -> int:
    return sum(each.asked for each in seen)
