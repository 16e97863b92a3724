"""Which answers are alike by what came before them: the bins of the RMSE in bins.

As the compiled FSRS library bins them (fsrs-rs 0.9, `evaluate`): by age, by how often the item
was asked after a day or more, and by how often it had come back blank, each on a scale of
its own powers.
"""

from functools import lru_cache
from math import floor, log

_AGE, _LENGTH, _BLANKS = 3.62, 1.89, 1.73


@lru_cache(maxsize=65_536)
def history_bin(age: int, length: int, blanks: int) -> tuple[int, int, int]:
    """Return the bin of an answer.

    Args:
        age: days since the answer before, 1 or more.
        length: answers to the item given a day or more after the one before, this one
            with them; 1 or more.
        blanks: earlier answers to the item that were blank.
    """
    return (
        _power(age, _AGE),
        _power(length + 1, _LENGTH),
        _power(blanks, _BLANKS) if blanks else 0,
    )


def _power(number: int, base: float) -> int:
    return floor(log(number, base))
