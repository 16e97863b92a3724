"""Batches read in another thread, one ahead."""

import threading
from collections.abc import Generator

import pytest

from service.use_cases.exporting_ahead import ahead
from service.use_cases.exporting_records import Batch


def batches(upto: int, told: list[object]) -> Generator[Batch]:
    """Yield batches of 0, 1, 2 ... rows, and tell in which thread each was made."""
    try:
        for number in range(upto):
            told.append(threading.get_ident())
            yield Batch(number, {})
    finally:
        told.append("closed")


def test_the_same_batches_come_in_the_same_order() -> None:
    """All are read in one other thread, and what they came from is closed."""
    told: list[object] = []
    assert [each.count for each in ahead(batches(5, told))] == [0, 1, 2, 3, 4]
    *threads, last = told
    assert len(set(threads)) == 1
    assert (threading.get_ident() not in threads, last) == (True, "closed")


def test_no_more_than_one_is_read_ahead() -> None:
    """Whoever goes away has the one after theirs read in vain, and no other."""
    told: list[object] = []
    going = ahead(batches(100, told))
    next(going)
    next(going)
    going.close()
    assert (len(told), told[-1]) == (4, "closed")


def test_what_goes_wrong_in_reading_is_raised_where_it_is_awaited() -> None:
    """The very error of the reading thread comes out, after the batches before it."""

    def broken() -> Generator[Batch]:
        yield Batch(1, {})
        raise LookupError("gone")

    going = ahead(broken())
    assert next(going).count == 1
    with pytest.raises(LookupError, match="gone"):
        next(going)
