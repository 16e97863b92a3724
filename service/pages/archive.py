"""`/archive`: everything at once, out of the library and back into an empty one."""

from http import HTTPStatus
from os import SEEK_END

from flask import Blueprint, Response, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.exceptions import RequestEntityTooLarge

from cards.errors import Conflict, Invalid
from service.use_cases.archiving import FILE, pieces_of, spooled_archive
from service.use_cases.archiving_back import LARGEST_SENT, is_empty, restore_everything
from service.use_cases.ports import Desk

_MEGABYTES = LARGEST_SENT // 1024**2
_TOO_LARGE = (
    f"At most {_MEGABYTES} MB can be sent here. Bring it back on the command line: catchword "
    "restore, and the file."
)


def install(door: Blueprint, desk: Desk) -> None:
    """Add the archive to the door."""

    @door.get("/archive")
    def archive() -> str:
        """Offer everything to take out, and the way back."""
        return _page(desk)

    @door.get("/archive/everything.zip")
    def everything() -> Response:
        """Hand out the archive."""
        archive = spooled_archive(desk)
        answer = Response(pieces_of(archive), mimetype="application/zip")
        answer.content_length = archive.seek(0, SEEK_END)
        archive.seek(0)
        answer.headers.set("Content-Disposition", "attachment", filename=FILE)
        answer.call_on_close(archive.close)
        return answer

    @door.post("/archive")
    def restore() -> ResponseReturnValue:
        """Bring everything back from an archive."""
        try:
            file = request.files.get("file")
            if file is None or not file.filename:
                fault = "Choose the archive first: a file that Catchword wrote, ending in .zip."
                return _page(desk, fault), HTTPStatus.UNPROCESSABLE_ENTITY
            restore_everything(desk, file.stream)
        except RequestEntityTooLarge:
            return _page(desk, _TOO_LARGE), HTTPStatus.REQUEST_ENTITY_TOO_LARGE
        except Invalid as refusal:
            return _page(desk, refusal.message), HTTPStatus.UNPROCESSABLE_ENTITY
        except Conflict as refusal:
            return _page(desk, refusal.message), HTTPStatus.CONFLICT
        return redirect(url_for("pages.archive", kept="everything"), HTTPStatus.SEE_OTHER)


def _page(desk: Desk, fault: str = "") -> str:
    return render_template(
        "archive.html",
        fault=fault,
        empty=is_empty(desk),
        back=request.args.get("kept") == "everything",
        megabytes=_MEGABYTES,
    )
