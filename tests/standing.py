"""What takes longer to make than most tests take: made once a process, and lent to each test."""

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import fields, replace
from functools import cache
from pathlib import Path

from flask import Flask
from jinja2 import StrictUndefined

from service.main import create_app
from service.store.sql_store import SqlStore
from service.use_cases.ports import Desk


def lay_empty_library(file: Path) -> None:
    """Write an SQLite library that was just founded, and its folder where there is none."""
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(_empty_library())


@cache
def _empty_library() -> bytes:
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "library.db"
        store = SqlStore(f"sqlite:///{file}")
        store.migrate()
        store.close()
        return file.read_bytes()


@contextmanager
def application_on(desk: Desk) -> Iterator[Flask]:
    """Lend the whole application over a desk, to one test at a time.

    It keeps nothing between requests but the desk it was composed over; that one stands for
    `desk` in all its parts until the context is left, and for none afterwards. A name a template
    misses is an error.
    """
    made = _made.get(desk.demo)
    if made is None:
        standing = replace(desk)
        made = _made[desk.demo] = (create_app(standing), standing)
        made[0].jinja_env.undefined = StrictUndefined
    app, standing = made
    try:
        for part in fields(desk):
            object.__setattr__(standing, part.name, getattr(desk, part.name))
        yield app
    finally:
        for part in fields(desk):
            object.__setattr__(standing, part.name, None)


_made: dict[bool, tuple[Flask, Desk]] = {}
"""The applications there are, by whether they show the demo, with the desks under them."""
