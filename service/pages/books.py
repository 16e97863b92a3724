"""`/books`: the library, and the place where digests are handed in."""

import contextlib
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from http import HTTPStatus
from uuid import UUID

from flask import Blueprint, abort, render_template, request
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import FileStorage

from cards.digest import Notice
from cards.errors import DocumentRefused, Invalid, Refusal
from cards.intake import Understood
from cards.parts import PartKind
from service.use_cases.add_digest import Added, add_digest, read_digest
from service.use_cases.library import OpenDigest, list_digests, open_digest
from service.use_cases.mend_digest import unplaced
from service.use_cases.ports import Desk

SHELF = 25
"""Books on one page of the library: a page one takes in without losing one's place."""
MOST_FILES = 50
"""Files handed in at once: each takes about a tenth of a second to read."""
FORMATS = ".docx,.odt,.rtf,.html,.htm,.md,.markdown,.txt"
"""What the browser offers to choose; what is read is decided by the files' contents."""


@dataclass(frozen=True, slots=True)
class Report:
    """What became of one file.

    Attributes:
        name: the file's.
        added: what it came to, or None.
        understood: what would be understood of it, when it was only read.
        refusal: the sentence that says why it was refused, or "".
        unplaced: how many quotations wait to be told after which point they stand.
    """

    name: str
    added: Added | None = None
    understood: Understood | None = None
    refusal: str = ""
    unplaced: int = 0

    @property
    def notices(self) -> tuple[Notice, ...]:
        """What to tell the reader about it."""
        told = self.added or self.understood
        return () if told is None else told.notices


def install(door: Blueprint, desk: Desk) -> None:
    """Add the library to the door."""

    @door.get("/books")
    def books() -> str:
        """Show one page of the library."""
        return _library(desk)

    @door.post("/books")
    def hand_in() -> ResponseReturnValue:
        """Read the files handed in; keep their digests unless they are only to be read."""
        files = [file for file in request.files.getlist("files") if file.filename]
        fault = _fault(len(files))
        if fault:
            return _library(desk, fault), HTTPStatus.UNPROCESSABLE_ENTITY
        only_read = request.form.get("do") == "read"
        reports = [(_read if only_read else _add)(desk, file) for file in files]
        page = render_template("read.html" if only_read else "added.html", reports=reports)
        if all(report.refusal for report in reports):
            return page, HTTPStatus.UNPROCESSABLE_ENTITY
        return page


def _fault(files: int) -> str:
    if files == 0:
        return "Choose a file first: a digest you wrote in a word processor."
    if files > MOST_FILES:
        return f"These are {files} files; at most {MOST_FILES} can be handed in at once."
    return ""


def _library(desk: Desk, fault: str = "") -> str:
    shelf = list_digests(desk, _cursor(request.args.get("after")), SHELF)
    return render_template(
        "books.html",
        books=_opened(desk, (entry.kept.id for entry in shelf.entries)),
        next=None if shelf.next is None else f"{shelf.next[0].isoformat()}~{shelf.next[1]}",
        first="after" not in request.args,
        removed="removed" in request.args,
        formats=FORMATS,
        kinds=PartKind,
        fault=fault,
    )


def _opened(desk: Desk, ids: Iterable[UUID]) -> list[OpenDigest]:
    books = []
    for digest_id in ids:
        # One taken out between the two looks is simply no longer there.
        with contextlib.suppress(Refusal):
            books.append(open_digest(desk, digest_id))
    return books


def _cursor(written: str | None) -> tuple[datetime, UUID] | None:
    if written is None:
        return None
    instant, _, digest_id = written.partition("~")
    try:
        at, after = datetime.fromisoformat(instant), UUID(digest_id)
    except ValueError:
        abort(HTTPStatus.NOT_FOUND)
    if at.tzinfo is None:
        abort(HTTPStatus.NOT_FOUND)
    return at, after


def _add(desk: Desk, file: FileStorage) -> Report:
    name = file.filename or ""
    try:
        added = add_digest(desk, name, file.read())
    except (DocumentRefused, Invalid) as refusal:
        return Report(name, refusal=refusal.message)
    return Report(name, added, unplaced=len(unplaced(added.kept)))


def _read(desk: Desk, file: FileStorage) -> Report:
    name = file.filename or ""
    try:
        return Report(name, understood=read_digest(desk, name, file.read()))
    except (DocumentRefused, Invalid) as refusal:
        return Report(name, refusal=refusal.message)
