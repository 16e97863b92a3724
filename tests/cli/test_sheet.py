"""A sitting on paper from the command line."""

import pytest


def test_a_sheet_is_written_and_entered(terminal, written, tmp_path):
    """Letters are entered one by one; Enter leaves an item as it is; then nothing waits."""
    terminal.json("add", written("one.md"))
    target = tmp_path / "sitting.pdf"
    result = terminal.run("sheet", "--minutes", "5", "--to", str(target))
    assert result.exit_code == 0, result.output
    assert target.read_bytes().startswith(b"%PDF")
    result = terminal.run("sheet", "--enter", typed="c\n\nv\n" + "\n" * 20)
    assert "2 answers are kept." in result.stdout
    nothing = terminal.run("sheet", "--enter")
    assert nothing.exit_code == 4
    assert "No printed sitting waits" in nothing.stderr


def test_an_interrupt_enters_nothing(terminal, written, tmp_path):
    """All of it or nothing: what was typed before is not kept."""
    terminal.json("add", written("one.md"))
    terminal.run("sheet", "--to", str(tmp_path / "sitting.pdf"))
    before = terminal.json("due")
    assert terminal.run("sheet", "--enter", typed="c\n").exit_code != 0
    assert terminal.json("due") == before


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("sheet", "--minutes", "0"), 2),
        (("sheet",), 3),
        (("sheet", "--id", "00000000-0000-4000-8000-000000000001"), 4),
    ],
)
def test_what_cannot_be_printed_or_entered_is_refused(terminal, words, code):
    """Minutes out of range, an empty library, a sheet of nobody's: one line each."""
    result = terminal.run(*words)
    assert result.exit_code == code
    assert "Traceback" not in result.output
