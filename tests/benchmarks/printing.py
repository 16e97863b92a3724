"""A digest set and printed, against LibreOffice making a PDF of the same digest's DOCX."""

import shutil
import subprocess
from dataclasses import replace
from itertools import count
from pathlib import Path

from service.documents.press.press import Press
from service.use_cases.records import Form
from tests.benchmarks.paired import Ratio, paired
from tests.documents.press.digests import MARNER

LIMIT = 0.1
MISSING = "LibreOffice is not installed, so printing was not measured against it."
SOFFICE = shutil.which("soffice")


def measure(folder: Path, rounds: int = 3) -> Ratio:
    """Measure one print against one conversion, each print by a new press and of new words."""
    assert SOFFICE is not None, MISSING
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
        subprocess.run(
            [
                *(SOFFICE, "--headless", f"-env:UserInstallation=file://{folder}/profile"),
                *("--convert-to", "pdf", "--outdir", str(folder / "out"), str(source)),
            ],
            check=True,
            capture_output=True,
        )

    return paired(ours, theirs, rounds, warm=1)
