"""Libraries that were lived in, and what is read of their archives."""

import io
import json
from dataclasses import dataclass

from service.use_cases.archiving import archive_everything
from service.use_cases.ports import Desk
from tests.feeds.archive.forging import files_in
from tests.use_cases.house import House


@dataclass(frozen=True)
class Lived:
    """A library with everything in it: its archive, and the time it was taken."""

    archive: bytes
    house: House


@dataclass(frozen=True)
class Earlier:
    """What 0005 would have written of the library, and what becomes of that library today."""

    archive: bytes
    migrated: bytes


def out_of(desk: Desk) -> bytes:
    """Take everything out."""
    target = io.BytesIO()
    archive_everything(desk, target)
    return target.getvalue()


def counts(archive: bytes) -> dict[str, int]:
    """Return how many facts of each sort an archive has, by its lines."""
    return {
        path.removeprefix("facts/").removesuffix(".jsonl"): content.count(b"\n")
        for path, content in files_in(archive).items()
        if path.endswith(".jsonl")
    }


def facts(archive: bytes, table: str) -> list[dict[str, object]]:
    """Return the facts of one sort in an archive."""
    return [json.loads(line) for line in files_in(archive)[f"facts/{table}.jsonl"].splitlines()]
