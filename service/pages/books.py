"""`/books`: the library, and the place where digests are handed in."""

from collections.abc import Sequence
from http import HTTPStatus
from itertools import chain, islice

from flask import Blueprint, redirect, render_template, request, stream_template, url_for
from flask.typing import ResponseReturnValue
from werkzeug.exceptions import RequestEntityTooLarge

from cards.parts import PartKind
from service.pages import shelf_places
from service.pages.many_files import Sum, Upload, asked_of, steps, taken_over
from service.use_cases.drafts import count_drafts
from service.use_cases.library import list_digests
from service.use_cases.ports import LARGEST_BUNDLE, Desk

SHELF = 25
"""Books on one page of the library: a page one takes in without losing one's place."""
MOST_FILES = 2_000
"""Files handed in at once: twice the digests of a lifetime of reading."""
FORMATS = ".docx,.odt,.rtf,.html,.htm,.md,.markdown,.txt,.zip"
"""What the browser offers to choose; what is read is decided by the files' contents."""


def install(door: Blueprint, desk: Desk) -> None:
    """Add the library to the door."""

    @door.get("/books")
    def books() -> str:
        """Show one page of the library."""
        return _library(desk)

    @door.post("/books")
    def hand_in() -> ResponseReturnValue:
        """Keep the digests in the files handed in, or lay them out to look over."""
        try:
            # A browser sends a folder in whatever order the disk has it.
            folder = sorted(request.files.getlist("folder"), key=lambda file: file.filename or "")
            sent = chain(request.files.getlist("files"), folder)
            files = [file for file in sent if file.filename]
        except RequestEntityTooLarge:
            return _library(desk, _TOO_MUCH), HTTPStatus.REQUEST_ENTITY_TOO_LARGE
        fault = _fault(len(files))
        if fault:
            return _library(desk, fault), HTTPStatus.UNPROCESSABLE_ENTITY
        return _taken(desk, taken_over(files), look=request.form.get("do") != "add")


_TOO_MUCH = (
    f"At most {MOST_FILES:,} files of {LARGEST_BUNDLE // (1024 * 1024)} MB together can be handed "
    "in at once. Hand them in in several goes."
)


def _taken(desk: Desk, files: Sequence[Upload], *, look: bool) -> ResponseReturnValue:
    """Answer for one file as a whole, for several with a page that grows as they are done."""
    total = Sum()
    following = steps(desk, files, total, look=look)
    # A file or a zip tells of one file at least; a second one tells that there are many.
    first = list(islice(following, 2))
    if len(first) > 1:
        return stream_template(
            "handed_in.html",
            steps=chain(first, following),
            total=total,
            asked_of=asked_of,
            several=True,
        )
    (step,) = first
    if len(step.report.drafts) == 1:
        (draft,) = step.report.drafts
        return redirect(url_for("pages.draft", draft_id=draft.id), HTTPStatus.SEE_OTHER)
    page = render_template(
        "handed_in.html", steps=first, total=total, asked_of=asked_of, several=False
    )
    refused = step.report.refused is not None
    return page, HTTPStatus.UNPROCESSABLE_ENTITY if refused else HTTPStatus.OK


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
        drafts=count_drafts(desk),
        kinds=PartKind,
        fault=fault,
    )
