"""Syntax trees of documents, and what is said of one that pandoc can not read."""

import json
from typing import Any

from cards.errors import DocumentBroken, DocumentTooLarge, DocumentTooSlow
from service.documents.syntax_tree import NestedTooDeep
from service.documents.worker import Verdict
from service.documents.workers import Workers


def syntax_tree(
    workers: Workers, name: str, content: bytes, reader: str, seconds: float
) -> dict[str, Any]:
    """Return the syntax tree of a document.

    Args:
        workers: the pandoc processes to read it with.
        name: of the file, for what is said to the reader.
        content: its bytes.
        reader: pandoc's name of the format, with extensions.
        seconds: how long it may take by the clock on the wall.

    Raises:
        DocumentTooLarge: it needs more memory than is allowed, or yields too much.
        DocumentTooSlow: it was not done in time.
        NestedTooDeep: it is nested deeper than any document.
        DocumentBroken: pandoc can not read it. What pandoc said stays here.
    """
    answer = workers.read(content, reader, seconds)
    if answer.verdict is Verdict.TOO_SLOW:
        raise DocumentTooSlow(
            f"“{name}” could not be read within {seconds:g} seconds. Copy the digest alone into a "
            "new document and hand that over.",
            where="file",
        )
    if answer.verdict is Verdict.TOO_LARGE:
        raise DocumentTooLarge(
            f"“{name}” needs more room than a two-page digest can take. Copy the digest alone into "
            "a new document and hand that over.",
            where="file",
        )
    if answer.verdict is Verdict.UNREADABLE:
        raise _unreadable(name)
    try:
        tree = json.loads(answer.tree)
    except RecursionError as error:
        raise NestedTooDeep from error
    except ValueError as error:
        raise _unreadable(name) from error
    if not isinstance(tree, dict):
        raise _unreadable(name)
    return tree


def _unreadable(name: str) -> DocumentBroken:
    return DocumentBroken(
        f"“{name}” can not be read: it is damaged, or not what its name says. Open it in the "
        "program it was written with and save it again.",
        where="file",
    )
