"""Figures that never fall, nearest to some that do."""

import numpy as np

from cards.sitting.worth_memory import Floats


def rising(rows: Floats) -> Floats:
    """Return the rows nearest to those given, by least squares, that fall in no column.

    Isotonic regression by its min-max formula (Barlow, Bartholomew, Bremner & Brunk 1972,
    Statistical Inference under Order Restrictions; from memory); the tests hold it against
    SciPy's.
    """
    count = len(rows)
    summed = np.concatenate([np.zeros((1, *rows.shape[1:])), np.cumsum(rows, axis=0)])
    begin, end = np.arange(count)[:, None], np.arange(count)[None, :]
    length = np.maximum(end - begin + 1, 1).reshape(count, count, *(1,) * (rows.ndim - 1))
    means = (summed[end + 1] - summed[begin]) / length
    inside = (end >= begin).reshape(length.shape)
    # Of the stretches from each row on that reach a row or beyond, the least mean;
    # of those that begin at it or before, the greatest.
    least = np.minimum.accumulate(np.where(inside, means, np.inf)[:, ::-1], axis=1)[:, ::-1]
    highest: Floats = np.maximum.accumulate(least, axis=0)[np.arange(count), np.arange(count)]
    return highest
