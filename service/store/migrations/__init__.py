"""The tables' history, and how a store is brought up to date.

Each change is a module in `versions/`, run by Alembic; `python -m service.store.migrations
"What changes"` begins one from what the tables say. Alembic is imported only when
there is something to do: as a rule one SELECT finds that there is not.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from sqlalchemy import Connection, inspect, text

from service.store.engine import Engines
from service.store.errors import StoreNewer

if TYPE_CHECKING:
    from alembic.config import Config

HEAD = "0007"
"""The revision this Catchword works with: the latest in `versions/`."""

_SCRIPTS = Path(__file__).parent
_ONE_AT_A_TIME = 0x6361746368776F72
"""Key of the advisory lock on PostgreSQL: the bytes of "catchwor"."""


def bring_up_to_date(engines: Engines) -> None:
    """Bring the tables to `HEAD` in one transaction; whoever comes second finds it done.

    Raises:
        StoreNewer: they are of a later Catchword.
        StoreError: the database refused.
    """
    with engines.reading.connect() as connection:
        if _revision(connection) == HEAD:
            return
    with engines.writing.connect() as connection, _alone(connection):
        if _revision(connection) != HEAD:
            _upgrade(connection)


def _revision(connection: Connection) -> str | None:
    if not inspect(connection).has_table("alembic_version"):
        return None
    found: str | None = connection.execute(
        text("SELECT version_num FROM alembic_version")
    ).scalar_one_or_none()
    return found


@contextmanager
def _alone(connection: Connection) -> Iterator[None]:
    """Hold a transaction no other process can migrate in, and commit it."""
    if connection.dialect.name == "postgresql":
        with connection.begin():
            connection.execute(text("SELECT pg_advisory_xact_lock(:key)"), {"key": _ONE_AT_A_TIME})
            yield
        return
    # A table rebuilt under foreign keys loses the rows that point to it, and the
    # switch works outside a transaction only; so they are checked at the end.
    driver = connection.connection.cursor()
    driver.execute("PRAGMA foreign_keys = OFF")
    try:
        with connection.begin():
            yield
            broken = connection.exec_driver_sql("PRAGMA foreign_key_check").all()
            if broken:
                raise AssertionError(f"the migration broke references: {broken[:3]}")
    finally:
        driver.execute("PRAGMA foreign_keys = ON")
        driver.close()


def _upgrade(connection: Connection) -> None:
    from alembic import command  # noqa: PLC0415 - 0.1 s, and seldom needed
    from alembic.util import CommandError  # noqa: PLC0415

    try:
        command.upgrade(alembic_config(connection), HEAD)
    except CommandError as error:
        raise StoreNewer from error


def alembic_config(connection: Connection) -> "Config":
    """Return what Alembic needs to run on an open connection; `env.py` reads it."""
    from alembic.config import Config  # noqa: PLC0415

    config = Config()
    config.set_main_option("script_location", str(_SCRIPTS).replace("%", "%%"))
    config.set_main_option("path_separator", "os")
    config.set_main_option("file_template", "%%(rev)s_%%(slug)s")
    config.attributes["connection"] = connection
    return config
