"""Talking a book over, from the command line."""

import pytest


@pytest.fixture
def added(terminal, written):
    """Silas Marner is in the library."""
    terminal.json("add", written("one.md"))


@pytest.mark.usefixtures("added")
def test_a_sheet_is_written(terminal, tmp_path):
    """For either length, to the file that is named."""
    for minutes in ("80", "15"):
        target = tmp_path / f"{minutes}.pdf"
        result = terminal.run("talk", "silas", "--minutes", minutes, "--to", str(target))
        assert result.exit_code == 0, result.output
        assert target.read_bytes().startswith(b"%PDF")


@pytest.mark.usefixtures("added")
def test_a_talk_is_kept_and_listed(terminal):
    """With whom, how long and what came of it; what was resolved is in the digest."""
    result = terminal.run(
        *("talk", "silas", "--held-with", "Hanne", "--took", "75", "--on", "2026-01-05"),
        *("--note", "She liked Eppie.", "--resolved", "I will visit Piet every Sunday."),
    )
    assert "the talk of 2026-01-05 is kept." in result.stdout
    assert "1 new commitment is in the digest." in result.stdout
    listed = terminal.run("talk", "silas", "--list").stdout
    assert "2026-01-05, with Hanne, 75 min" in listed
    assert "She liked Eppie." in listed
    assert "I will visit Piet" in terminal.run("out", "silas", "--as", "md", "--to", "-").stdout


@pytest.mark.usefixtures("added")
@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("silas", "--minutes", "16"), 2, "15"),
        (("walden",), 4, "walden"),
        (("silas", "--note", "Much."), 2, "--held-with"),
        (("silas", "--held-with", "Hanne", "--took", "0"), 2, "1"),
        (("silas", "--held-with", "Hanne", "--on", "9998-01-01"), 3, "has not come yet"),
        (("silas", "--held-with", "H" * 201), 3, "At most 200 characters"),
    ],
)
def test_what_cannot_be_kept_is_refused(terminal, words, code, said):
    """One line says what is wrong, and nothing is kept."""
    result = terminal.run("talk", *words)
    assert result.exit_code == code
    assert said in result.output
    assert "Traceback" not in result.output
    assert "Nobody was told about it yet." in terminal.run("talk", "silas", "--list").stdout
