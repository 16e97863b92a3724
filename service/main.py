"""Composition: the application, the desk behind its doors, and the command line."""

from collections.abc import Callable
from datetime import UTC, datetime
from uuid import UUID, uuid4

from flask import Flask, Response, request
from werkzeug.exceptions import HTTPException

from cards.errors import Refusal
from service import api, gate, pages
from service.documents.reader import PandocDocuments
from service.settings import Settings
from service.store import SqlStore
from service.use_cases.ports import Desk, Reader, ReaderId

THE_READER = ReaderId(UUID("00000000-0000-4000-8000-000000000001"))
"""The one reader of a library without accounts."""


def now_utc() -> datetime:
    """Return the time. The only clock of the house: doors get it from here."""
    return datetime.now(UTC)


def local_time_zone() -> str:
    """Return the IANA name of this machine's time zone, UTC when it has none."""
    import tzlocal  # noqa: PLC0415 - only a library just founded needs it

    return tzlocal.get_localzone_name() or "UTC"


def open_store(settings: Settings) -> SqlStore:
    """Open the library, founding or migrating it where needed."""
    settings.home.mkdir(parents=True, exist_ok=True, mode=0o700)
    store = SqlStore(settings.database_url, lambda reader: Reader(reader, local_time_zone()))
    store.migrate()
    return store


def open_desk(
    store: SqlStore, *, demo: bool = False, now: Callable[[], datetime] = now_utc
) -> Desk:
    """Set up what the doors hand to the use cases."""
    return Desk(store, PandocDocuments(), now, uuid4, THE_READER, demo)


def create_app(desk: Desk, hosts: tuple[str, ...] = ()) -> Flask:
    """Join the HTTP doors, the gate before them and one answer to every failure."""
    app = Flask("service", static_folder=None)
    gate.install(app, hosts)
    api.install(app, desk)
    pages.install(app, desk)

    def refuse(error: Exception) -> Response:
        door = api if request.path.startswith("/api/") else pages
        return door.refuse(error)

    for failure in (Refusal, HTTPException, Exception):
        app.register_error_handler(failure, refuse)
    return app
