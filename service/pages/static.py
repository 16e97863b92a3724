"""What the pages load: the stylesheet, scripts, the typeface and the sign, from our own files.

Everything is read once, when the door opens, and what is text is packed for browsers that take
it so. An address that carries the file's own hash may be kept for ever; any other is asked about
again and answered with 304 when it is the same.
"""

import gzip
import hashlib
import mimetypes
from dataclasses import dataclass
from functools import cache
from http import HTTPStatus
from importlib import resources
from importlib.resources.abc import Traversable

from flask import Blueprint, Response, abort, request, url_for

HASH_LENGTH = 12
"""Hexadecimal digits of a file's sha256 in its address: 48 bits, ample for a dozen files."""
_PACKED = {"text/javascript", "text/css", "image/svg+xml"}
"""Media types that packing makes smaller; a typeface is packed already."""
_TYPES = {".js": "text/javascript", ".woff2": "font/woff2", ".svg": "image/svg+xml"}


@dataclass(frozen=True, slots=True)
class StaticFile:
    """One file: its bytes, media type and the beginning of its sha256.

    Attributes:
        packed: its bytes as gzip, or None where that gains nothing.
    """

    content: bytes
    media_type: str
    hash: str
    packed: bytes | None


def install(door: Blueprint) -> None:
    """Serve the files under `/static/`."""

    @door.get("/static/<path:name>")
    def static_file(name: str) -> Response:
        """Serve one file."""
        file = _files().get(name)
        if file is None:
            abort(HTTPStatus.NOT_FOUND)
        packed = file.packed if request.accept_encodings["gzip"] else None
        response = Response(packed or file.content, mimetype=file.media_type)
        response.set_etag(file.hash if packed is None else f"{file.hash}-gzip")
        if packed:
            response.content_encoding = "gzip"
        if file.packed:
            response.vary.add("Accept-Encoding")
        if request.args.get("v") == file.hash:
            response.headers["Cache-Control"] = "public, max-age=31536000, immutable"
        else:
            response.headers["Cache-Control"] = "no-cache"
        response.make_conditional(request)
        return response


def address(name: str) -> str:
    """Return the address under which a file may be kept for ever. KeyError when there is none."""
    return url_for("pages.static_file", name=name, v=_files()[name].hash)


@cache
def _files() -> dict[str, StaticFile]:
    return dict(_found(resources.files("service.pages") / "static", ""))


def _found(folder: Traversable, path: str) -> list[tuple[str, StaticFile]]:
    found = []
    for entry in folder.iterdir():
        name = path + entry.name
        if entry.is_dir():
            found += _found(entry, name + "/")
        else:
            content = entry.read_bytes()
            digest = hashlib.sha256(content).hexdigest()[:HASH_LENGTH]
            media_type = _media_type(name)
            # Without a time in its head the packed file is the same from start to start.
            packed = gzip.compress(content, mtime=0) if media_type in _PACKED else None
            found.append((name, StaticFile(content, media_type, digest, packed)))
    return found


def _media_type(name: str) -> str:
    ending = "." + name.rpartition(".")[2]
    return _TYPES.get(ending) or mimetypes.guess_type(name)[0] or "application/octet-stream"
