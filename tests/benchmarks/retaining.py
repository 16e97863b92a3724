"""The figures of the retention page over a million answers, against one plain pass over them.

The pass groups the same table by kind and month and counts what came back: less than the page
tells. And the figures over many answers against those over few of the same library: what they
add up to is kept, so that they cost the same.
"""

from pathlib import Path

from sqlalchemy import text

from service.main import THE_READER
from service.store.sql_store import SqlStore
from service.use_cases.retaining import show_retention
from service.use_cases.tallying import bring_on
from tests.benchmarks.many_answers import ITEMS, NOW, library
from tests.benchmarks.nothing_to_read import bare_desk
from tests.benchmarks.paired import Ratio, paired

LIMIT = 2.0
GROWTH_LIMIT = 1.3
MANY, FEW = 1_000_000, 10_000

_PASS = text(
    "SELECT items.kind, substr(answers.day, 1, 7), count(*), sum(answers.grade <> 'blank')"
    " FROM answers JOIN items"
    " ON items.reader_id = answers.reader_id AND items.id = answers.item_id"
    " WHERE answers.reader_id = :reader GROUP BY 1, 2"
)


def measure(folder: Path, many: int = MANY, few: int = FEW) -> tuple[Ratio, Ratio]:
    """Measure the figures against the pass, and over many answers against few."""
    with library(folder / "many.db", many) as full, library(folder / "few.db", few) as scant:
        desks = [bare_desk(store, lambda: NOW) for store in (full, scant)]
        for desk in desks:
            bring_on(desk)

        def plain() -> None:
            if sum(row[2] for row in _passed(full)) != many:
                raise RuntimeError("Not every answer was counted.")

        def ours(which: int, answers: int) -> None:
            found = show_retention(desks[which]).figures
            if found.whole.asked != answers - ITEMS:
                raise RuntimeError(f"Not every answer is in the figures: {found.whole.asked}.")

        against = paired(lambda: ours(0, many), plain, 6, warm=1)
        growth = paired(lambda: ours(0, many), lambda: ours(1, few), 10, warm=1)
    return against, growth


def _passed(store: SqlStore) -> list[tuple[str, str, int, int]]:
    with store.engines.reading.begin() as connection:
        found = connection.execute(_PASS, {"reader": THE_READER.bytes}).all()
    return [tuple(row) for row in found]
