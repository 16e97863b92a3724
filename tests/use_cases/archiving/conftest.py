"""A library with everything in it, today’s and an earlier Catchword’s; and empty ones."""

import io
import tempfile
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from alembic import command

from service.feeds.archive.writing import write_archive
from service.store.archive.earlier import _tables
from service.store.archive.facts import SqlFacts
from service.store.migrations import _alone, alembic_config
from service.store.sql_store import SqlStore
from service.use_cases.archiving_back import restore_everything
from service.use_cases.archiving_records import Contents
from tests.standing import lay_empty_library
from tests.use_cases.archiving.lives import Earlier, Lived, out_of
from tests.use_cases.archiving.whole import live
from tests.use_cases.house import House


@pytest.fixture(scope="session")
def lived() -> Iterator[Lived]:
    """A library on SQLite that was lived in, once for all tests."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "library.db"
        lay_empty_library(file)
        with closing(SqlStore(f"sqlite:///{file}")) as store:
            house = House(store)
            live(house)
            yield Lived(out_of(house.desk), house)


@pytest.fixture
def sqlite_house(tmp_path: Path) -> Iterator[House]:
    """An empty library on SQLite."""
    lay_empty_library(tmp_path / "library.db")
    with closing(SqlStore(f"sqlite:///{tmp_path / 'library.db'}")) as store:
        yield House(store)


@pytest.fixture(scope="session")
def untouched() -> Iterator[House]:
    """An empty library on SQLite for everything that is to leave it empty."""
    with tempfile.TemporaryDirectory() as folder:
        lay_empty_library(Path(folder) / "library.db")
        with closing(SqlStore(f"sqlite:///{Path(folder) / 'library.db'}")) as store:
            yield House(store)


@pytest.fixture(scope="session")
def earlier(lived: Lived) -> Iterator[Earlier]:
    """The library as it is after going back to 0005, and forth again."""
    with tempfile.TemporaryDirectory() as folder:
        lay_empty_library(Path(folder) / "earlier.db")
        with closing(SqlStore(f"sqlite:///{Path(folder) / 'earlier.db'}")) as store:
            house = House(store)
            restore_everything(house.desk, io.BytesIO(lived.archive))
            with store.engines.writing.connect() as connection, _alone(connection):
                command.downgrade(alembic_config(connection), "0005")
                was = SqlFacts(connection, _tables(connection))
                target = io.BytesIO()
                contents = Contents(
                    "0005",
                    was.tables,
                    {},
                    lambda table: was.rows(house.reader, table),
                    lambda table: was.files(house.reader, table),
                    (),
                )
                write_archive(target, contents)
            store.migrate()
            yield Earlier(target.getvalue(), out_of(house.desk))
