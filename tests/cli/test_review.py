"""A year looked back on, from the command line."""

from datetime import UTC, datetime

import pytest

YEAR = datetime.now(UTC).year
"""The commands read the clock themselves."""


def test_a_year_is_told_and_written(terminal, written, tmp_path):
    """What was promised to which book is told; as a PDF it goes where it is named."""
    terminal.json("add", written("one.md"))
    told = terminal.run("review", str(YEAR))
    assert told.exit_code == 0, told.output
    assert f"What the books asked in {YEAR}" in told.stdout
    assert "Silas Marner, George Eliot" in told.stdout
    assert "When the tea is poured, I will ask Hanne one question." in told.stdout
    target = tmp_path / "review.pdf"
    assert terminal.run("review", str(YEAR), "--to", str(target)).exit_code == 0
    assert target.read_bytes().startswith(b"%PDF")


def test_an_empty_library_has_a_review(terminal):
    """Nothing was promised, and that is said."""
    assert "0 commitments of 0 books; no check-ins." in terminal.run("review").stdout


@pytest.mark.parametrize(("year", "code"), [("9998", 3), ("1899", 3), ("soon", 2)])
def test_another_year_is_refused(terminal, year, code):
    """One line says which years can be looked back on."""
    result = terminal.run("review", year)
    assert result.exit_code == code
    assert "Traceback" not in result.output
