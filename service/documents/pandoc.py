"""Pandoc as a subprocess: shut in, and bounded in memory, time and output."""

import json
import os
import subprocess
import tempfile
import threading
from typing import Any

import pypandoc

from cards.errors import DocumentBroken, DocumentTooLarge, DocumentTooSlow

MEMORY = "256M"
"""Heap of the converter: a two-page document takes about 40 MB of it."""
MAX_OUTPUT = 16 * 1024 * 1024
"""Bytes of syntax tree read back: some 400,000 words, a thousand times a digest."""
_HEAP_EXHAUSTED = 251


def syntax_tree(name: str, content: bytes, reader: str, seconds: float) -> dict[str, Any]:
    """Return the syntax tree of a document.

    Args:
        name: of the file, for what is said to the reader.
        content: its bytes, handed over on standard input.
        reader: pandoc's name of the format, with extensions.
        seconds: how long it may take by the clock on the wall.

    Raises:
        DocumentTooLarge: it needs more memory than is allowed, or yields too much.
        DocumentTooSlow: it was not done in time.
        DocumentBroken: pandoc can not read it. What pandoc said stays here.
    """
    output, status, late = _run(content, reader, seconds)
    if late:
        raise DocumentTooSlow(
            f"“{name}” could not be read within {seconds:g} seconds. Copy the digest alone into a "
            "new document and hand that over.",
            where="file",
        )
    if status == _HEAP_EXHAUSTED or len(output) > MAX_OUTPUT:
        raise DocumentTooLarge(
            f"“{name}” needs more room than a two-page digest can take. Copy the digest alone into "
            "a new document and hand that over.",
            where="file",
        )
    if status != 0:
        raise _unreadable(name)
    try:
        tree = json.loads(output)
    except (ValueError, RecursionError) as error:
        raise _unreadable(name) from error
    if not isinstance(tree, dict):
        raise _unreadable(name)
    return tree


def _run(content: bytes, reader: str, seconds: float) -> tuple[bytes, int, bool]:
    command = [
        pypandoc.get_pandoc_path(),
        "--sandbox",
        "--from",
        reader,
        "--to",
        "json",
        "+RTS",
        f"-M{MEMORY}",
        "-RTS",
    ]
    late = threading.Event()
    with tempfile.TemporaryDirectory() as folder, tempfile.TemporaryFile() as source:
        source.write(content)
        source.seek(0)
        with subprocess.Popen(  # noqa: S603 - a fixed command, its input on a closed channel
            command,
            stdin=source,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            cwd=folder,
            env=_environment(folder),
        ) as process:
            assert process.stdout is not None

            def stop() -> None:
                late.set()
                process.kill()

            timer = threading.Timer(seconds, stop)
            timer.start()
            try:
                output = process.stdout.read(MAX_OUTPUT + 1)
                if len(output) > MAX_OUTPUT:
                    process.kill()
                process.wait()
            finally:
                timer.cancel()
                process.kill()
    return output, process.returncode, late.is_set()


def _environment(folder: str) -> dict[str, str]:
    """Return the least pandoc starts with: a language, and an empty home."""
    kept = {key: os.environ[key] for key in ("SYSTEMROOT",) if key in os.environ}
    return {"LANG": "C.UTF-8", "HOME": folder, **kept}


def _unreadable(name: str) -> DocumentBroken:
    return DocumentBroken(
        f"“{name}” can not be read: it is damaged, or not what its name says. Open it in the "
        "program it was written with and save it again.",
        where="file",
    )
