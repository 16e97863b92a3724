"""The ratio of printing, measured side by side in one run."""

from pathlib import Path

from tests.benchmarks import printing
from tests.office import libreoffice


def test_printing_takes_a_tenth_of_a_word_processors_time(tmp_path: Path):
    """A digest is printed in under a tenth of the time LibreOffice takes for its DOCX."""
    assert printing.measure(tmp_path, libreoffice()).ratio < printing.LIMIT
