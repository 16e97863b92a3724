"""Imports: many files handed over at once, with a report on each."""

import json
from collections.abc import Callable, Iterable, Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from http import HTTPStatus
from io import BytesIO
from logging import Logger
from typing import IO, TypeAlias

from flask import Response, current_app, request
from marshmallow import Schema
from werkzeug.datastructures import FileStorage

from service.api import examples
from service.api.desk import desk
from service.api.digest_shapes import understood_digest
from service.api.files import shown_path
from service.api.import_shapes import (
    FilesSchema,
    ImportReportSchema,
    ImportsSchema,
    ReadFilesSchema,
    ReadReportSchema,
    imported_digest,
)
from service.api.operations import Gives, Reply, Resource, Takes
from service.api.refusing import problem_of
from service.use_cases.add_bundle import add_files, files_in
from service.use_cases.add_digest import read_digests
from service.use_cases.advice import advise
from service.use_cases.ports import LARGEST_BUNDLE, Desk
from service.use_cases.records import BundledFile

resource = Resource(
    "imports", "/imports", "Many files at once, and zips of them: a report on each."
)

Digests: TypeAlias = list[dict[str, object]]
"""What becomes of the digests of one file, as a report shows them."""

_FILES = Takes(FilesSchema(), "The files.", location="files")
_REFUSED = {
    "file": "2019/shopping.txt",
    "digests": [],
    "problem": {
        "type": "/api/problems/nothing-recognised",
        "title": "No part of a digest was found in the file",
        "status": 422,
        "detail": "No part of a digest was found in “2019/shopping.txt”.",
        "instance": "/api/imports",
    },
}
_IMPORTED = {
    "id": examples.DIGEST_ID,
    "title": "Silas Marner",
    "status": "added",
    "items": {"theme": 1, "place": 1, "restate": 1},
    "warnings": examples.WARNINGS,
}


@resource.operation(
    "POST",
    takes=_FILES,
    gives=Gives(
        {HTTPStatus.OK: "A report a file, as each is done."},
        ImportsSchema(),
        example={
            "files": [
                {"file": "2019/silas-marner.docx", "digests": [_IMPORTED], "problem": None},
                _REFUSED,
            ]
        },
    ),
)
def add_many(sent: dict[str, list[FileStorage]]) -> Reply:
    """Add the digests in many files to the library.

    A file that cannot be read is refused in its report, and stops none of the others. Digests
    of books that are in the library correct them. Each report is sent when its file is done: who
    stops reading leaves the files after it untouched, and the same files again add nothing twice.
    """
    return _streamed(sent["files"], _added, ImportReportSchema())


@resource.operation(
    "POST /read",
    takes=_FILES,
    gives=Gives(
        {HTTPStatus.OK: "A report a file, as each is done."},
        ReadFilesSchema(),
        example={
            "files": [
                {
                    "file": "2019/silas-marner.docx",
                    "digests": [examples.UNDERSTOOD],
                    "problem": None,
                },
                _REFUSED,
            ]
        },
    ),
)
def read_many(sent: dict[str, list[FileStorage]]) -> Reply:
    """Say what would be understood of many files.

    Every digest in them, each part with the words it came from, what was left, and advice.
    Nothing is kept.
    """
    return _streamed(sent["files"], _read, ReadReportSchema())


def _added(laid: Desk, file: BundledFile) -> Digests:
    (report,) = add_files(laid, [file])
    if report.refused is not None:
        raise report.refused
    return [imported_digest(added) for added in report.added]


def _read(laid: Desk, file: BundledFile) -> Digests:
    if file.refusal is not None:
        raise file.refusal
    return [
        understood_digest(understood, advise(laid, understood.digest))
        for understood in read_digests(laid, file.name, file.content or b"")
    ]


def _streamed(
    sent: Iterable[FileStorage], take: Callable[[Desk, BundledFile], Digests], shape: Schema
) -> Response:
    """Return an answer that grows as the files are done: neither they nor it fill the memory."""
    held = ExitStack()
    uploads = [(shown_path(each.filename or ""), _taken_over(each, held)) for each in sent]
    reports = _Reports(desk(), take, request.path, current_app.logger)

    def written() -> Iterator[str]:
        between = '{"files": ['
        for report in reports.on(uploads):
            yield between + json.dumps(shape.dump(report))
            between = ", "
        yield "]}\n"

    answer = Response(written(), mimetype="application/json")
    answer.call_on_close(held.close)
    return answer


def _taken_over(upload: FileStorage, held: ExitStack) -> IO[bytes]:
    """Return the stream of an upload, to be closed by `held`.

    Flask closes what uploads hold when the view returns, and the answer is written after that.
    """
    stream = held.enter_context(upload.stream)
    upload.stream = BytesIO()
    return stream


@dataclass(frozen=True, slots=True)
class _Reports:
    """What makes reports when the request is over, and all it needs for that.

    Attributes:
        laid: the door's desk.
        take: what becomes of one file; it may raise.
        path: that was asked.
        log: of the application.
    """

    laid: Desk
    take: Callable[[Desk, BundledFile], Digests]
    path: str
    log: Logger

    def on(self, uploads: Iterable[tuple[str, IO[bytes]]]) -> Iterator[dict[str, object]]:
        """Yield a report on each file, those inside a zip in its place; one is held at a time."""
        for name, stream in uploads:
            try:
                with stream:
                    content = stream.read(LARGEST_BUNDLE + 1)
                for file in files_in(self.laid, [BundledFile(name, content)]):
                    yield self._on_one(file)
            except Exception as error:  # noqa: BLE001 - the answer is half sent, the rest is to come
                yield self._refused(name, error)

    def _on_one(self, file: BundledFile) -> dict[str, object]:
        try:
            return {"file": file.name, "digests": self.take(self.laid, file), "problem": None}
        except Exception as error:  # noqa: BLE001 - whatever it is, the other files go on
            return self._refused(file.name, error)

    def _refused(self, name: str, error: Exception) -> dict[str, object]:
        problem = problem_of(error, "POST", self.path, self.log)
        return {"file": name, "digests": [], "problem": problem}
