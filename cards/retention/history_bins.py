"""Which answers are alike by what came before them: the bins of the RMSE in bins.

As the compiled FSRS library bins them (fsrs-rs-python 0.9.3, `evaluate`): by age, by how often
the item was asked after a day or more, and by how often it then came back blank, each on a
scale of its own powers.
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
        blanks: how many of those before this one were blank.
    """
    return (
        _power(age, _AGE),
        _power(length + 1, _LENGTH),
        _power(blanks, _BLANKS) + 1 if blanks else 0,
    )


def _power(number: int, base: float) -> int:
    return floor(log(number, base))
