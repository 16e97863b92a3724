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


def test_nothing_but_enter_leaves_the_sheet_waiting(terminal, written, tmp_path):
    """It says that nothing was entered, and the same sheet can be entered afterwards."""
    terminal.json("add", written("one.md"))
    terminal.run("sheet", "--to", str(tmp_path / "sitting.pdf"))
    left = terminal.run("sheet", "--enter", typed="\n" * 20)
    assert left.exit_code == 0
    assert "Nothing was entered: the sheet still waits" in left.stdout
    assert "1 answer is kept." in terminal.run("sheet", "--enter", typed="c" + "\n" * 20).stdout


def test_a_sheet_that_cannot_be_written_does_not_wait(terminal, written, tmp_path):
    """Refused in one line, and no sheet that nobody has on paper is left open."""
    terminal.json("add", written("one.md"))
    refused = terminal.run("sheet", "--to", str(tmp_path / "nowhere" / "sitting.pdf"))
    assert refused.exit_code != 0
    assert "cannot be written" in refused.stderr
    assert "No printed sitting waits" in terminal.run("sheet", "--enter").stderr


def test_a_file_is_named_after_the_readers_day(terminal, written, tmp_path, monkeypatch):
    """The day of the reader's zone, as the title of the sheet has it, and not that of UTC."""
    monkeypatch.chdir(tmp_path)
    terminal.json("add", written("one.md"))
    for zone in ("Pacific/Kiritimati", "Pacific/Niue"):
        terminal.run("reader", "--time-zone", zone)
        assert terminal.run("sheet").exit_code == 0
    # 25 hours lie between the two (time zone database): never the same day.
    assert len(list(tmp_path.glob("sitting-*.pdf"))) == 2


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
