"""However many facts there are, no more of them than a few are in memory."""

import tempfile
import tracemalloc
from collections.abc import Iterator

from service.feeds.archive.reading import OpenArchive
from service.feeds.archive.writing import write_archive
from service.use_cases.archiving_records import Contents, Row
from tests.feeds.archive.test_opening import WORDS

SLACK = 128 * 1024
"""Bytes by which four thousand facts may take more memory than a hundred."""


def peak(facts: int) -> int:
    """Return the most memory that writing so many facts and reading them back takes, in bytes."""

    def rows(_: object) -> Iterator[Row]:
        return ({"word": f"a word no other fact has: {number}"} for number in range(facts))

    contents = Contents("0007", (WORDS,), {}, rows, lambda _: iter(()), ())
    with tempfile.TemporaryFile() as file:
        tracemalloc.start()
        try:
            write_archive(file, contents)
            with OpenArchive(file) as opened:
                opened.hold_to([WORDS])
                assert sum(1 for _ in opened.rows(WORDS)) == facts
            return tracemalloc.get_traced_memory()[1]
        finally:
            tracemalloc.stop()


def test_many_facts_take_no_more_memory_than_few() -> None:
    """Each is written as it comes and forgotten, and read back likewise."""
    peak(100)
    assert peak(4_000) < peak(100) + SLACK
