"""The connections: how each database is opened, and how its transactions begin.

SQLite: the driver's own transactions lose updates silently (two of them can read
before either writes), so they are off, and every writer begins with BEGIN IMMEDIATE.
There is one writing connection, for which the writers of this process queue; SQLite
itself would have them poll the file, which is neither fair nor quick. Readers have
connections of their own, which cannot write.

PostgreSQL: readers see one state throughout (REPEATABLE READ, read only); writers run
READ COMMITTED and lock what they are about to change.
"""

from dataclasses import dataclass

from sqlalchemy import URL, Engine, PoolProxiedConnection, create_engine, event, make_url
from sqlalchemy.engine.interfaces import DBAPIConnection
from sqlalchemy.exc import ArgumentError

from service.store.errors import StoreUnavailable
from service.store.refusals import translate

PATIENCE = 10
"""Seconds a writer waits for others. Ours: a reader gives a page up at about that time."""
READERS_AT_ONCE = 16
"""Connections that read an SQLite file at once; more wait their turn."""

_PRAGMAS = (
    f"PRAGMA busy_timeout = {PATIENCE * 1000}",  # first: the next one may have to wait
    "PRAGMA journal_mode = WAL",
    # NORMAL is quicker, and loses the last commits at a power cut: answers are facts.
    "PRAGMA synchronous = FULL",
    "PRAGMA foreign_keys = ON",
)


@dataclass(frozen=True, slots=True)
class Engines:
    """The two ways into one database.

    Attributes:
        reading: connections for transactions that only read.
        writing: connections for transactions that may write.
    """

    reading: Engine
    writing: Engine

    def close(self) -> None:
        """Close every connection that is not in use."""
        self.reading.dispose()
        self.writing.dispose()


def open_engines(address: str) -> Engines:
    """Prepare the engines for `sqlite:///path` or `postgresql://...`; nothing is opened yet.

    Raises:
        StoreUnavailable: the address is neither.
    """
    try:
        url = make_url(address)
    except ArgumentError:
        raise _unknown_address() from None
    match url.get_backend_name():
        case "sqlite" if url.database not in {None, "", ":memory:"}:
            return _sqlite(url)
        case "postgresql":
            return _postgresql(url)
        case _:
            raise _unknown_address()


def _unknown_address() -> StoreUnavailable:
    # The address may hold a password, so it is not repeated.
    return StoreUnavailable(
        "The address of the database is not understood. Give one as sqlite:///folder/file.db or "
        "postgresql://user@host/name."
    )


def _sqlite(url: URL) -> Engines:
    def opened(pragmas: tuple[str, ...], begin: str, **pool: int) -> Engine:
        engine = create_engine(
            url,
            connect_args={"isolation_level": None, "check_same_thread": False},
            pool_timeout=PATIENCE,
            **pool,
        )

        def on_connect(connection: DBAPIConnection, _: object) -> None:
            cursor = connection.cursor()
            for pragma in pragmas:
                cursor.execute(pragma)
            cursor.close()

        def do_begin(dbapi_connection: PoolProxiedConnection) -> None:
            cursor = dbapi_connection.cursor()
            cursor.execute(begin)
            cursor.close()

        event.listen(engine, "connect", on_connect)
        # In place of a "begin" event: with one, every statement looks for listeners, and
        # an answer takes a tenth longer.
        engine.dialect.do_begin = do_begin  # type: ignore[method-assign]
        event.listen(engine, "handle_error", translate)
        return engine

    return Engines(
        reading=opened(
            (*_PRAGMAS, "PRAGMA query_only = ON"),
            "BEGIN",
            pool_size=4,
            max_overflow=READERS_AT_ONCE - 4,
        ),
        writing=opened(_PRAGMAS, "BEGIN IMMEDIATE", pool_size=1, max_overflow=0),
    )


def _postgresql(url: URL) -> Engines:
    engine = create_engine(
        url,
        connect_args={
            "application_name": "catchword",
            "client_encoding": "utf8",
            "connect_timeout": PATIENCE,
            "options": f"-c timezone=UTC -c datestyle=ISO -c lock_timeout={PATIENCE}s",
        },
        pool_pre_ping=True,
        pool_timeout=PATIENCE,
    )
    event.listen(engine, "handle_error", translate)
    reading = engine.execution_options(isolation_level="REPEATABLE READ", postgresql_readonly=True)
    return Engines(reading=reading, writing=engine)
