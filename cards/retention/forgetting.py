"""The forgetting curve fitted to what happened: what came back after so many days."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import exp, expm1, log, log1p

from cards.retention.ages import CLASSES, OLDEST, AgeClass, age_within, class_of
from cards.retention.descent import Parameters, Slope, least
from cards.retention.losses import losses_of
from cards.retention.shares import ENOUGH, Share, share_of
from cards.retention.tally import Tally, total

RECALLED = 0.9
"""The recall at which stability is read off, as in FSRS-6."""
_CERTAIN = 1e-9
"""A curve is held this far from 0 and from 1: what happened must be possible."""
_FAR = 1e4
"""How many times faster or slower than at first sight anything is sought to be forgotten."""
_STRAIGHTEST, _MOST_BENT = 1e-4, 1e6
"""How bent a power curve is sought at the typical age: an exponential, and as good as level."""


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
        rate: how fast it begins to fall, a day.
        decay: the exponent of a power curve (1 + rate·t)^-decay, as in FSRS-6 below 1 for most
            readers; None of an exponential e^(-rate·t).
        log_loss: of the answers it was fitted to, a mean.
    """

    rate: float
    decay: float | None
    log_loss: float

    def at(self, days: float) -> float:
        """Return the recall after so many days, 0 to 1."""
        if self.decay is None:
            return exp(-self.rate * days)
        return exp(-self.decay * log1p(self.rate * days))

    @property
    def stability(self) -> float | None:
        """The days after which recall has fallen to 0.9; None for over a hundred years."""
        if self.at(OLDEST) > RECALLED:
            return None
        fallen = -log(RECALLED)
        return (fallen if self.decay is None else expm1(fallen / self.decay)) / self.rate


@dataclass(frozen=True, slots=True)
class Forgetting:
    """How what was asked came back, by the age of the memory.

    It is the curve of all items together, each asked when the schedule thought fit: what is
    remembered well is asked late, so that it falls more slowly than any single memory does.

    Attributes:
        ages: by readable class, those with an answer, the youngest first.
        power: the power curve under which what happened is likeliest.
        exponential: the exponential under which it is. Both None of fewer than 50 answers, of a
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
    return Forgetting(tuple(told), _power(seen), _exponential(seen))


@dataclass(frozen=True, slots=True)
class _Seen:
    days: float
    recalled: int
    asked: int


def _exponential(seen: list[_Seen]) -> Curve:
    """Fit an exponential, in the logarithm of its rate a day."""

    def at(parameters: Parameters) -> Slope:
        rate = exp(parameters[0])
        return _likelihood(seen, [(-rate * each.days, (-rate * each.days,)) for each in seen])

    start = log(-log(_share(seen)) / _typical(seen))
    (found,) = least(at, (start,), [(start - log(_FAR), start + log(_FAR))])
    return Curve(exp(found), None, at((found,)).loss / _asked(seen))


def _power(seen: list[_Seen]) -> Curve:
    """Fit a power curve (1 + a·t)^-d.

    In the logarithm of -ln of its recall at a typical age, which is known well, and in the
    logarithm of a there, which is not: so hardly one pulls the other.
    """
    typical = _typical(seen)

    def at(parameters: Parameters) -> Slope:
        level, bend = map(exp, parameters)
        whole = log1p(bend)
        points = []
        for each in seen:
            times = bend * each.days / typical
            so_far = log1p(times)
            fallen = -level * so_far / whole
            by_bend = -level * times / (1 + times) / whole - fallen * bend / (1 + bend) / whole
            points.append((fallen, (fallen, by_bend)))
        return _likelihood(seen, points)

    level = log(-log(_share(seen)))
    reach = log(_FAR)
    bounds = [(level - reach, level + reach), (log(_STRAIGHTEST), log(_MOST_BENT))]
    starts = [(level, log(bend)) for bend in (0.5, 20.0)]
    found = min((least(at, each, bounds) for each in starts), key=lambda each: at(each).loss)
    level, bend = map(exp, found)
    return Curve(bend / typical, level / log1p(bend), at(found).loss / _asked(seen))


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


def _share(seen: list[_Seen]) -> float:
    return sum(each.recalled for each in seen) / _asked(seen)


def _typical(seen: list[_Seen]) -> float:
    """Return the geometric mean of the ages, in days."""
    return exp(sum(each.asked * log(each.days) for each in seen) / _asked(seen))
