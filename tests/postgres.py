"""A real PostgreSQL server for the tests: Debian's, in a folder of its own, gone afterwards."""

import os
import pwd
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import psycopg

_BINARIES = Path("/usr/lib/postgresql")
_SETTINGS = (
    "-c listen_addresses='' -c fsync=off -c synchronous_commit=off -c full_page_writes=off "
    "-c max_connections=60 -c shared_buffers=32MB"
)


class ServerMissingError(Exception):
    """There is no PostgreSQL server on this machine."""


class Server:
    """A running server, reached by its Unix socket alone."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def url(self, database: str) -> str:
        """Return the address of one of its databases."""
        return f"postgresql://postgres@/{database}?host={self._folder}"

    def create(self, database: str, template: str = "template1") -> str:
        """Make a database, empty or like another one, and return its address."""
        self._run(f'CREATE DATABASE "{database}" TEMPLATE "{template}"')
        return self.url(database)

    def drop(self, database: str) -> None:
        """Drop a database with whoever is connected to it."""
        self._run(f'DROP DATABASE "{database}" WITH (FORCE)')

    def _run(self, statement: str) -> None:
        with psycopg.connect(self.url("postgres"), autocommit=True) as connection:
            connection.execute(statement)


@contextmanager
def running() -> Iterator[Server]:
    """Start a server and stop it at the end.

    Raises:
        ServerMissingError: none is installed.
    """
    versions = sorted(_BINARIES.glob("*/bin/initdb"), key=lambda path: int(path.parts[-3]))
    if not versions:
        raise ServerMissingError(f"no PostgreSQL server under {_BINARIES}")
    binaries = versions[-1].parent
    # Not pytest's own folder: its parents are closed to the user the server runs as.
    folder = Path(tempfile.mkdtemp(prefix="catchword-pg-"))
    # The server refuses to run as root.
    user = pwd.getpwnam("nobody") if os.geteuid() == 0 else None
    if user:
        os.chown(folder, user.pw_uid, user.pw_gid)

    def run(*command: str) -> None:
        subprocess.run(
            [str(binaries / command[0]), "-D", str(folder / "data"), *command[1:]],
            check=True,
            cwd=folder,
            stdout=subprocess.DEVNULL,
            user=user and user.pw_uid,
            group=user and user.pw_gid,
            extra_groups=[] if user else None,
        )

    try:
        run("initdb", "-A", "trust", "-U", "postgres", "-E", "UTF8", "--locale=C", "--no-sync")
        log = str(folder / "log")
        run("pg_ctl", "-w", "-l", log, "-o", f"-k {folder} {_SETTINGS}", "start")
        try:
            yield Server(folder)
        finally:
            run("pg_ctl", "-w", "-m", "immediate", "stop")
    finally:
        shutil.rmtree(folder)
