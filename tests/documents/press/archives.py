"""What a word processor does to a document, done to its parts."""

import io
import zipfile
from collections.abc import Callable


def edited(content: bytes, path: str, change: Callable[[str], str]) -> bytes:
    """A zipped document with one of its parts changed."""
    source = zipfile.ZipFile(io.BytesIO(content))
    target = io.BytesIO()
    with source, zipfile.ZipFile(target, "w") as archive:
        for entry in source.infolist():
            text = source.read(entry).decode()
            archive.writestr(entry.filename, change(text) if entry.filename == path else text)
    return target.getvalue()


def without(content: bytes, path: str) -> bytes:
    """A zipped document that has lost one of its parts."""
    source = zipfile.ZipFile(io.BytesIO(content))
    target = io.BytesIO()
    with source, zipfile.ZipFile(target, "w") as archive:
        for entry in source.infolist():
            if entry.filename != path:
                archive.writestr(entry.filename, source.read(entry))
    return target.getvalue()
