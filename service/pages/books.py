"""`/books`: the library, and the place where digests are handed in."""

from dataclasses import dataclass
from http import HTTPStatus

from flask import Blueprint, render_template, request
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import FileStorage

from cards.digest import Notice
from cards.errors import DocumentRefused, Invalid
from cards.intake import Understood
from cards.parts import PartKind
from service.pages import shelf_places
from service.use_cases.add_digest import Added, add_digest, read_digest
from service.use_cases.library import list_digests
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
    shelf = list_digests(desk, shelf_places.read(request.args.get("after")), SHELF)
    return render_template(
        "books.html",
        books=shelf.entries,
        next=shelf_places.written(shelf.next),
        first="after" not in request.args,
        removed="removed" in request.args,
        formats=FORMATS,
        kinds=PartKind,
        fault=fault,
    )


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
