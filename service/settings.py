"""The environment, read once, typed."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Self

import platformdirs

from cards.errors import CatchwordError, InvalidPreference

PORT = 8417
LOOPBACK = "127.0.0.1"
"""Nobody else on the network can read a reader's library unless the reader says so."""


class CannotListen(InvalidPreference):
    """An address Catchword was told to listen on and cannot."""

    def __init__(self, host: str, port: int) -> None:
        super().__init__(
            f"Catchword cannot listen on {host}, port {port}: it is taken, or this machine has no "
            "such address. Is Catchword running already? Else give another with --port.",
            where="port",
        )


@dataclass(frozen=True, slots=True)
class Settings:
    """Where Catchword keeps things and listens.

    Attributes:
        home: folder of the library and its originals.
        database_url: `sqlite:///...` or `postgresql://...`.
        host, port: where it listens.
        hosts: names under which it may be addressed, besides the loopback names.
    """

    home: Path
    database_url: str
    host: str = LOOPBACK
    port: int = PORT
    hosts: tuple[str, ...] = ()

    def listening(self, host: str | None, port: int | None) -> Self:
        """Return these settings with another host or port where one is given."""
        return replace(
            self,
            host=self.host if host is None else host,
            port=self.port if port is None else port,
        )


def from_environment(environment: Mapping[str, str], *, demo: bool = False) -> Settings:
    """Read the settings.

    `CATCHWORD_HOME`: the data folder, a per-user one unless set.
    `CATCHWORD_DATABASE_URL`: a PostgreSQL database instead of the SQLite file in it;
    the demo never uses it. `CATCHWORD_HOST`, `CATCHWORD_PORT`: where to listen.
    `CATCHWORD_HOSTS`: further host names it answers to, separated by commas.

    Raises:
        InvalidPreference: a variable holds something it cannot.
    """
    home = Path(environment.get("CATCHWORD_HOME") or platformdirs.user_data_path("catchword"))
    if demo:
        home /= "demo"
    file = f"sqlite:///{home / 'library.sqlite3'}"
    url = file if demo else environment.get("CATCHWORD_DATABASE_URL") or file
    return Settings(
        home=home,
        database_url=url,
        host=environment.get("CATCHWORD_HOST") or LOOPBACK,
        port=_port(environment.get("CATCHWORD_PORT")),
        hosts=tuple(
            name.strip() for name in environment.get("CATCHWORD_HOSTS", "").split(",") if name
        ),
    )


def _port(written: str | None) -> int:
    if not written:
        return PORT
    if not written.isdecimal() or not 0 <= int(written) <= 65535:
        raise InvalidPreference(
            f"CATCHWORD_PORT is “{written[:20]}”; a port is a number from 0 to 65535.",
            where="CATCHWORD_PORT",
        )
    return int(written)


class HomeUnusable(CatchwordError):
    """The data folder cannot be made or written to."""

    def __init__(self, home: Path, why: str | None) -> None:
        super().__init__(
            f"The data folder {home} cannot be used: {why or 'it is not writable'}. Name another "
            "with CATCHWORD_HOME."
        )
