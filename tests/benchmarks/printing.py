"""A digest set and printed, against LibreOffice making a PDF of the same digest's DOCX."""

from dataclasses import replace
from itertools import count
from pathlib import Path

from service.documents.press.press import Press
from service.use_cases.records import Form
from tests.benchmarks.paired import Ratio, paired
from tests.documents.press.digests import MARNER
from tests.office import convert

LIMIT = 0.1


def measure(folder: Path, program: str, rounds: int = 3) -> Ratio:
    """Measure one print against one conversion, each print by a new press and of new words."""
    source = folder / "digest.docx"
    source.write_bytes(Press().write(MARNER, Form.DOCX))
    copies = count()

    def ours() -> bytes:
        told = f" So ends telling number {next(copies)}."
        digest = replace(
            MARNER,
            title=MARNER.title + told,
            theme=f"{MARNER.theme}{told}",
            points=tuple(replace(point, text=point.text + told) for point in MARNER.points),
            quotations=tuple(replace(one, text=one.text + told) for one in MARNER.quotations),
        )
        return Press().write(digest, Form.PDF)

    def theirs() -> None:
        convert(program, "pdf", folder / "out", source)

    return paired(ours, theirs, rounds, warm=1)
