"""Adding documents, read, understood and kept, against pandoc alone on the same files.

Pandoc alone is its own program, run once a file, its syntax tree thrown away; adding is
everything `add_digest` does, into SQLite on the same disk. The documents are digests of
made-up books, each written out by pandoc in one of six formats in turn, and are added in
turn with pandoc's runs, so that a machine that grows slower slows both. Run alone, it
prints the figures for as many documents as are asked for:
`python -m tests.benchmarks.adding 1000`.
"""

import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter
from typing import Any
from uuid import uuid4

import pypandoc

from service.documents.reader import PandocDocuments
from service.main import THE_READER
from service.store.sql_store import SqlStore
from service.use_cases.add_digest import Status, add_digest
from service.use_cases.ports import Desk

LIMIT = 1.3
FLAT = 1.1
"""Peak of memory up to the last document over the peak up to a tenth of them, at most."""
FORMATS = ("docx", "odt", "rtf", "html", "md", "txt")
NOW = datetime(2026, 1, 5, 19, tzinfo=UTC)
UNUSED: Any = object()
"""Stands for what adding must not touch: any use of it is an error."""
SUBJECTS = "tide orchard lantern quarry ferry mill harbour meadow glacier printer".split()


@dataclass(frozen=True)
class Adding:
    """What adding documents took.

    Attributes:
        ours, theirs: milliseconds a document, by us and by pandoc alone.
        ratio: of the two.
        early, late: megabytes that this process and its pandoc held at most, up to a tenth
            of the documents and up to the last.
    """

    ours: float
    theirs: float
    early: float
    late: float

    @property
    def ratio(self) -> float:
        """How many times as long adding takes."""
        return self.ours / self.theirs

    @property
    def growth(self) -> float:
        """How many times as much memory is held at the end."""
        return self.late / self.early

    def __str__(self) -> str:
        return (
            f"{self.ours:9.1f} ms against {self.theirs:9.1f} ms, {self.ratio:.2f} times; "
            f"memory {self.early:.0f} MB, then {self.late:.0f} MB, {self.growth:.2f} times"
        )


def written(number: int) -> str:
    """Write the digest of a made-up book, two pages of it, unlike every other."""
    about = SUBJECTS[number % len(SUBJECTS)]
    points = "\n".join(
        f"{place}. In stage {place} the {about} of book {number} is lost, found and lost again, "
        f"and those who keep it learn what it asks of them (p. {place * 20})"
        for place in range(1, 9)
    )
    commitments = "\n".join(
        f"- I will walk to the {about} {place} times a week." for place in range(1, 4)
    )
    quotations = "\n\n".join(
        f"> “The {about} keeps {place} words of book {number} for whoever comes by night, and "
        f"gives them back unasked.” (p. {place * 20 + 7})"
        for place in range(1, 7)
    )
    theme = f"Book {number} says by slow stages what the {about} is for. " * 6
    return (
        f"# The {about.title()} of {number} Winters by Ada Example {number}\n\nFinished: 12 May "
        f"2025\n\n312 pages\n\n## Summary\n\n{theme}\n\n## Points\n\n{points}\n\n## Commitments\n\n"
        f"{commitments}\n\n## Quotations\n\n{quotations}\n"
    )


def documents(folder: Path, count: int) -> Iterator[Path]:
    """Yield files of mixed formats, each made when it is asked for."""
    for number in range(count):
        suffix = FORMATS[number % len(FORMATS)]
        file = folder / f"{number}.{suffix}"
        text = written(number)
        if suffix in {"md", "txt"}:
            file.write_text(text)
        else:
            subprocess.run(
                [pypandoc.get_pandoc_path(), "--from", "markdown", "-s", "-o", str(file)],
                input=text.encode(),
                check=True,
                stderr=subprocess.DEVNULL,
            )
        yield file


@contextmanager
def open_library(folder: Path) -> Iterator[tuple[Desk, PandocDocuments]]:
    """Open an empty library on a disk."""
    store = SqlStore(f"sqlite:///{folder / 'library.db'}")
    store.migrate()
    reader = PandocDocuments()
    try:
        yield (
            Desk(
                store=store,
                documents=reader,
                books=UNUSED,
                press=UNUSED,
                feeds=UNUSED,
                pictures=UNUSED,
                now=lambda: NOW,
                new_id=uuid4,
                reader=THE_READER,
            ),
            reader,
        )
    finally:
        reader.close()
        store.close()


def alone(file: Path) -> None:
    """Run pandoc once on a file."""
    subprocess.run(
        [pypandoc.get_pandoc_path(), str(file), "--to", "json"],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        check=True,
    )


def held(reader: PandocDocuments) -> float:
    """Return the megabytes this process and its pandoc hold in memory."""
    pids = ["self", *map(str, reader.workers.pids())]
    lines = [line for pid in pids for line in Path(f"/proc/{pid}/status").read_text().splitlines()]
    return sum(int(line.split()[1]) for line in lines if line.startswith("VmRSS:")) / 1024


def measure(folder: Path, count: int = 120) -> Adding:
    """Add documents, and run pandoc on each of them, in turn."""
    ours = theirs = early = peak = 0.0
    with open_library(folder) as (desk, reader):
        for number, file in enumerate(documents(folder, count), 1):
            begin = perf_counter()
            if number % 2:
                alone(file)
                middle = perf_counter()
                added = add_digest(desk, file.name, file.read_bytes())
                end = perf_counter()
                first, second = middle - begin, end - middle
            else:
                added = add_digest(desk, file.name, file.read_bytes())
                middle = perf_counter()
                alone(file)
                second, first = middle - begin, perf_counter() - middle
            if added.status is not Status.ADDED or len(added.kept.digest().quotations) != 6:
                raise RuntimeError(f"{file.name} came to something else: {added}")
            theirs += first
            ours += second
            file.unlink()
            peak = max(peak, held(reader))
            if number == max(count // 10, 1):
                early = peak
        return Adding(ours * 1000 / count, theirs * 1000 / count, early, peak)


if __name__ == "__main__":
    with TemporaryDirectory() as place:
        asked = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
        print(f"adding {asked} documents {measure(Path(place), asked)}")
