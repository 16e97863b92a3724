"""Fewer courses where many are asked again and again."""

_EVERY, _ASKINGS, _FEWEST = 16, 1_500_000, 1_024


def thinned(count: int, step: int) -> slice | None:
    """Return which of so many courses go on after a step, each for two; None where all do.

    Under usual weights few courses are asked more than some thirty times. Where nothing
    ever grows all of them are, thousands of times: neighbours then go on as one, as soon as
    courses times steps are more than a hard library comes to, but for the last thousand, so
    that a plan takes seconds under any weights there are.
    """
    if step % _EVERY or count <= _FEWEST or count * step <= _ASKINGS:
        return None
    return slice(step // _EVERY % 2, None, 2)
