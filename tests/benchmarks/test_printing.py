"""The ratio of printing, measured side by side in one run where LibreOffice is installed."""

from pathlib import Path

import pytest

from tests.benchmarks import printing


@pytest.mark.skipif(printing.SOFFICE is None, reason=printing.MISSING)
def test_printing_takes_a_tenth_of_a_word_processors_time(tmp_path: Path):
    """A digest is printed in under a tenth of the time LibreOffice takes for its DOCX."""
    assert printing.measure(tmp_path).ratio < printing.LIMIT
