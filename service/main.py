"""Composition: the application, the desk behind its doors, and the command line."""

from __future__ import annotations

import os
import sys
import traceback
from collections.abc import Callable, Iterator, Mapping
from contextlib import closing, contextmanager
from datetime import UTC, datetime
from importlib import resources
from typing import TYPE_CHECKING, Any, cast
from urllib.parse import urlsplit
from uuid import UUID, uuid4

import click

from cards.errors import CatchwordError
from service.cli import Tools, catchword
from service.settings import CannotListen, HomeUnusable, Settings, from_environment

if TYPE_CHECKING:
    from flask import Flask, Response

    from service.use_cases.letter_records import MailServer
    from service.use_cases.ports import Desk, Post, Store
    from service.use_cases.records import ReaderId

# The use cases, the web, the store and the documents are imported where they are used: a command
# that needs none of them starts in a quarter of the time.
# ruff: noqa: PLC0415

THE_READER: ReaderId = cast("ReaderId", UUID("00000000-0000-4000-8000-000000000001"))
"""The one reader of a library without accounts."""

DEMO_SEED = 1869
"""Of the demo reader's simulated year; any other number tells another year."""
_DEMO_MARK = "this-is-a-demo"
"""A file beside a library that tells the demo's from a reader's own."""


def now_utc() -> datetime:
    """Return the time. The only clock of the house: the doors get it from here."""
    return datetime.now(UTC)


def local_time_zone() -> str:
    """Return the IANA name of this machine's time zone, UTC when it has none."""
    import tzlocal

    return tzlocal.get_localzone_name() or "UTC"


def create_app(desk: Desk, hosts: tuple[str, ...] = ()) -> Flask:
    """Join the HTTP doors, the gate before them and one answer to every failure.

    Args:
        desk: what the doors hand to the use cases.
        hosts: names the application answers to besides the loopback names; "*" for any.
    """
    from flask import Flask, request
    from werkzeug.exceptions import HTTPException

    from service import api, gate, pages

    app = Flask("service", static_folder=None)
    gate.install(app, hosts)
    api.install(app, desk)
    pages.install(app, desk)

    def refuse(error: Exception) -> Response:
        at_api = request.path.startswith("/api/")
        return api.refuse(error) if at_api else pages.refuse(error)

    for failure in (CatchwordError, HTTPException, Exception):
        app.register_error_handler(failure, refuse)
    return app


@contextmanager
def desk_on(
    store: Store,
    now: Callable[[], datetime] = now_utc,
    new_id: Callable[[], UUID] = uuid4,
    reader: ReaderId = THE_READER,
    *,
    demo: bool = False,
    post: Post | None = None,
    address: str | None = None,
) -> Iterator[Desk]:
    """Set up the desk of a reader on a store, with everything else it needs, and close that."""
    from service.documents.book_texts import BookTexts
    from service.documents.press.press import Press
    from service.documents.reader import PandocDocuments
    from service.feeds.feeds import Feeds
    from service.feeds.pictures.pictures import Pictures
    from service.use_cases.ports import Desk

    with closing(PandocDocuments()) as documents:
        yield Desk(
            store,
            documents,
            BookTexts(),
            Press(),
            Feeds(),
            Pictures(),
            now,
            new_id,
            reader,
            demo,
            post=post,
            address=address,
        )


@contextmanager
def open_desk(settings: Settings, now: Callable[[], datetime] = now_utc) -> Iterator[Desk]:
    """Open the library, founding or migrating it where needed, and close it afterwards."""
    from service.store.sql_store import SqlStore
    from service.use_cases.entering import enter_missing
    from service.use_cases.records import Reader

    try:
        settings.home.mkdir(parents=True, exist_ok=True, mode=0o700)
    except OSError as error:
        raise HomeUnusable(settings.home, error.strerror) from error
    store = SqlStore(settings.database_url, lambda reader: Reader(reader, local_time_zone()))
    try:
        store.migrate()
        demo = (settings.home / _DEMO_MARK).exists()
        post = None if settings.mail is None else _post(settings.mail)
        with desk_on(store, now, demo=demo, post=post, address=settings.address) as desk:
            enter_missing(desk)
            yield desk
    finally:
        store.close()


def _post(server: MailServer) -> Post:
    from service.post.smtp import SmtpPost

    return SmtpPost(server)


def serve(settings: Settings) -> None:
    """Listen until interrupted, and say where."""
    import waitress

    with open_desk(settings) as desk:
        reached = urlsplit(settings.address or "").hostname
        app = create_app(desk, (*settings.hosts, reached) if reached else settings.hosts)
        try:
            server = waitress.create_server(
                app, host=settings.host, port=settings.port, threads=4, ident=None
            )
        except (OSError, ValueError) as error:
            raise CannotListen(settings.host, settings.port) from error
        click.echo(f"Catchword is open at {_address(server)} (Ctrl-C closes it)")
        try:
            server.run()
        finally:
            server.close()


def _address(server: Any) -> str:  # noqa: ANN401 - waitress has no types
    """Return where a server listens; one for several addresses listens first on its first."""
    listening = getattr(server, "effective_listen", None)
    host, port = listening[0] if listening else (server.effective_host, server.effective_port)
    return f"http://[{host}]:{port}/" if ":" in host else f"http://{host}:{port}/"


def found_demo_library(settings: Settings, tell: Callable[[float], None]) -> None:
    """Found the demo library anew in a folder of its own, telling how far it is."""
    from service.use_cases.found_demo import DemoFile, found_demo

    mark = settings.home / _DEMO_MARK
    mark.unlink(missing_ok=True)
    for leftover in settings.home.glob("library.sqlite3*"):
        leftover.unlink()
    folder = resources.files("service.documents") / "demo_library"
    files = [
        DemoFile(file.name, file.read_bytes())
        for file in folder.iterdir()
        if not file.name.endswith(".txt")
    ]
    with open_desk(settings) as desk:
        found_demo(desk, files, DEMO_SEED, tell)
    mark.touch()


def tools(environment: Mapping[str, str]) -> Tools:
    """Return what the commands need, on the settings of an environment."""

    def listen(host: str | None, port: int | None, demo: bool) -> None:
        serve(from_environment(environment, demo=demo).listening(host, port))

    def has_demo() -> bool:
        return (from_environment(environment, demo=True).home / _DEMO_MARK).exists()

    def found(tell: Callable[[float], None]) -> None:
        found_demo_library(from_environment(environment, demo=True), tell)

    return Tools(lambda: open_desk(from_environment(environment)), listen, has_demo, found)


def run() -> None:
    """Run the command line on this process's environment.

    A failure of Catchword's own is told in one line; its trace goes to a file in the
    data folder, never to the screen.
    """
    try:
        catchword(obj=tools(os.environ), prog_name="catchword")
    except Exception as error:  # noqa: BLE001 - the last door out
        log = from_environment(os.environ).home / "errors.log"
        log.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        with log.open("a", encoding="utf-8") as lines:
            lines.write(f"{now_utc().isoformat()}\n")
            traceback.print_exception(error, file=lines)
        click.echo(
            f"catchword: something went wrong inside Catchword ({type(error).__name__}); nothing "
            f"was half done. The details are in {log}.",
            err=True,
        )
        sys.exit(1)
