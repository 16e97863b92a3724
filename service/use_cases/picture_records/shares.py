"""Shares that were found: one under another, or over what was foretold."""

from dataclasses import dataclass

from service.use_cases.picture_records.checks import MOST_MARKS, check, check_share


@dataclass(frozen=True, slots=True)
class Share:
    """A share that was found, and how surely.

    Attributes:
        label: of what it is the share.
        share, low, high: of 1; the interval holds the share.
        n: how many it was found from, at least 1.
    """

    label: str
    share: float
    low: float
    high: float
    n: int

    def __post_init__(self) -> None:
        """Check the share and its interval."""
        check_share(self.share, self.low, self.high)
        check(self.n >= 1, "a share is of one or more")


@dataclass(frozen=True, slots=True)
class Shares:
    """Shares one under another, each with its interval; the target is a line through them."""

    rows: tuple[Share, ...]
    target: float | None = None

    def __post_init__(self) -> None:
        """Check the number of rows and the target."""
        check(len(self.rows) <= MOST_MARKS, "too many rows")
        check(self.target is None or 0 <= self.target <= 1, "a target is a share of 1")


@dataclass(frozen=True, slots=True)
class Foreseen:
    """What was foretold for some answers, and what came of them.

    Attributes:
        predicted: the mean recall foretold.
        share, low, high: of these answers, those that came back.
        n: how many answers, at least 1.
    """

    predicted: float
    share: float
    low: float
    high: float
    n: int

    def __post_init__(self) -> None:
        """Check all four shares."""
        check_share(self.share, self.low, self.high)
        check(0 <= self.predicted <= 1, "a prediction is a share of 1")
        check(self.n >= 1, "a share is of one or more")


@dataclass(frozen=True, slots=True)
class Calibration:
    """Shares that came back over what was foretold, with the diagonal of perfect foresight."""

    points: tuple[Foreseen, ...]

    def __post_init__(self) -> None:
        """Check the number of points."""
        check(len(self.points) <= MOST_MARKS, "too many points")
