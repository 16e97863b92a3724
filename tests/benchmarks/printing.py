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


def measure(folder: Path, rounds: int = 5) -> Ratio:
    """Measure one print against one conversion, each time of other words; nothing is kept."""
    assert SOFFICE is not None, MISSING
    press = Press()
    source = folder / "digest.docx"
    source.write_bytes(press.write(MARNER, Form.DOCX))
    copies = count()

    def ours() -> bytes:
        said = f"{MARNER.theme} So ends telling number {next(copies)}."
        return press.write(replace(MARNER, theme=said), Form.PDF)

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
