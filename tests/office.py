"""LibreOffice, where tests hold what we write against a word processor nobody here wrote."""

import os
import shutil
import subprocess
from pathlib import Path

import pytest

MISSING = "LibreOffice is not installed, so nothing was tried in it."


def libreoffice() -> str:
    """Return the path of the program; without it the test is skipped, but not in CI."""
    found = shutil.which("soffice")
    if found is None:
        if os.environ.get("CI") == "true":
            pytest.fail(MISSING)
        pytest.skip(MISSING)
    return found


def convert(program: str, kind: str, into: Path, *files: Path) -> None:
    """Have it open files and save them as another kind in a folder, with a profile of its own."""
    subprocess.run(
        [
            *(program, "--headless", f"-env:UserInstallation=file://{into.parent}/profile"),
            *("--convert-to", kind, "--outdir", str(into), *map(str, files)),
        ],
        check=True,
        capture_output=True,
    )
