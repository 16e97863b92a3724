"""The next batch of an export is read while the one before it is written."""

from collections.abc import Generator
from concurrent.futures import Future, ThreadPoolExecutor
from contextlib import closing

from service.use_cases.exporting_records import Batch


def ahead(batches: Generator[Batch]) -> Generator[Batch]:
    """Yield the same batches, each read in another thread while the one before it is worked on.

    What reads them is never in two threads at once. Closing it waits for the one being read.
    """
    with closing(batches), ThreadPoolExecutor(1, "export") as reading:
        following: Future[Batch | None] = reading.submit(next, batches, None)
        while (batch := following.result()) is not None:
            following = reading.submit(next, batches, None)
            yield batch
