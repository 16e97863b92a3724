"""What is written out, cited, brought back and proved from the terminal."""

import json
import zipfile
from datetime import datetime
from zoneinfo import ZoneInfo

import pytest

from tests.cli.conftest import DIGEST

LEVIN = """\
# Anna Karenina

Leo Tolstoy

## Summary

Two households, one broken and one slowly built, are weighed against each other.

## Points

1. Stiva wakes on the sofa. (p. 1)
2. Levin mows with his men. (p. 250)
"""
OTHER = DIGEST.replace("Silas Marner", "Middlemarch")


@pytest.fixture
def kept(terminal, written):
    """A library of two books."""
    terminal.json("add", written("silas.md"), written("middlemarch.md", OTHER))
    return terminal


@pytest.mark.parametrize("form", ["docx", "odt", "md", "json"])
def test_what_is_written_out_reads_back_the_same(kept, tmp_path, form):
    """`out` and `read` of every form but the PDF give the digest `read` gave of the original."""
    path = tmp_path / f"out.{form}"
    result = kept.run("out", "silas", "--as", form, "--to", str(path))
    assert result.exit_code == 0, result.output
    first, again = kept.json("read", str(tmp_path / "silas.md")), kept.json("read", str(path))
    assert {**again, "warnings": []} == {**first, "warnings": []}


def test_the_pdf_has_two_pages_and_a_name_of_its_own(kept, tmp_path, monkeypatch):
    """Without a target it is called after the book, in the folder one stands in."""
    monkeypatch.chdir(tmp_path)
    result = kept.run("out", "Silas Marner")
    assert result.exit_code == 0, result.output
    assert (tmp_path / "silas-marner.pdf").read_bytes().startswith(b"%PDF-")


def test_a_digest_that_is_not_the_only_one_meant_is_asked_for_again(kept):
    """Words that name none, or both, are refused with what could be meant."""
    none, both = kept.run("out", "Romola"), kept.run("care", "eliot", "close")
    assert (none.exit_code, both.exit_code) == (4, 4)
    assert "No digest is called “Romola”" in none.stderr
    assert "Silas Marner" in both.stderr
    assert "Middlemarch" in both.stderr


def test_a_file_that_can_not_be_written_is_said(kept, tmp_path):
    """One line with the path, and exit code 6."""
    result = kept.run("out", "silas", "--to", str(tmp_path / "nowhere" / "x.pdf"))
    assert result.exit_code == 6
    assert "cannot be written" in result.stderr


def test_what_stands_there_is_not_written_over_unasked(kept, tmp_path, monkeypatch):
    """A filled-in blank and a file gone on with stay; named with --to, they are written over."""
    monkeypatch.chdir(tmp_path)
    for command, name in ((("blank",), "digest.docx"), (("out", "silas"), "silas-marner.pdf")):
        assert kept.run(*command).exit_code == 0
        (tmp_path / name).write_bytes(b"mine")
        refused = kept.run(*command)
        assert refused.exit_code == 6
        assert f"{name} stands there already" in refused.stderr
        assert (tmp_path / name).read_bytes() == b"mine"
        assert kept.run(*command, "--to", name).exit_code == 0
        assert (tmp_path / name).read_bytes() != b"mine"


@pytest.mark.parametrize("form", ["docx", "odt", "md"])
def test_an_untouched_blank_is_refused_in_words(terminal, tmp_path, form):
    """A blank holds no digest yet, and reading it says so."""
    path = tmp_path / f"blank.{form}"
    assert terminal.run("blank", "--as", form, "--to", str(path)).exit_code == 0
    result = terminal.run("read", str(path))
    assert result.exit_code == 6
    assert result.stderr.startswith("catchword: ")


def test_a_book_is_cited_for_other_programs(kept):
    """BibTeX, CSL-JSON and Web Annotations are printed."""
    assert kept.run("cite", "silas").stdout.startswith("@book{")
    (item,) = json.loads(kept.run("cite", "silas", "--as", "csl-json").stdout)
    assert item["title"] == "Silas Marner"
    shared = json.loads(kept.run("cite", "silas", "--as", "annotations").stdout)
    assert "angels who came" in json.dumps(shared, ensure_ascii=False)


def test_versions_are_listed_shown_and_brought_back(kept, written):
    """An edit by handing the file in again is a version, and the first comes back."""
    changed = DIGEST.replace("one question.", "one question and wait.")
    kept.json("add", written("silas.md", changed))
    listed = kept.json("versions", "silas")
    assert [(each["version"], each["cause"]) for each in listed] == [(2, "changed"), (1, "added")]
    assert "reworded" in kept.run("versions", "silas", "--show", "2").stdout
    assert "version 1 is back" in kept.run("versions", "silas", "--restore", "1").stdout
    assert [each["version"] for each in kept.json("versions", "silas")] == [3, 2, 1]
    assert kept.run("versions", "silas", "--restore", "9").exit_code == 4
    again = kept.run("versions", "silas", "--restore", "3").stdout
    assert again == "Silas Marner says already what version 3 says.\n"


def test_versions_are_told_by_the_readers_clock(kept):
    """The list gives the day and the minute in the reader's time zone, without fractions."""
    assert kept.run("reader", "--time-zone", "Asia/Kathmandu").exit_code == 0
    (row,) = kept.json("versions", "silas")
    there = datetime.fromisoformat(row["kept_at"]).astimezone(ZoneInfo("Asia/Kathmandu"))
    assert kept.run("versions", "silas").stdout == f"1  {there:%Y-%m-%d %H:%M}  added\n"


def test_care_is_shown_and_changed(kept):
    """A resting book lets nothing new in."""
    assert kept.run("care", "silas").stdout.startswith("Silas Marner: steady\n")
    assert kept.run("care", "silas", "resting").stdout.startswith("Silas Marner: resting\n")
    titles = {item["title"] for item in kept.json("due")["items"]}
    assert titles - {None} == {"Middlemarch"}


def test_headings_of_ones_own_are_read_by(terminal, written):
    """A heading nobody could know announces a part once the reader says so."""
    before, _, _ = DIGEST.partition("## Quotations")
    text = f"{before}## Lanterns\n\nWe see no white-winged angels now.\n"
    path = written("own.md", text)
    assert terminal.json("read", path)["quotations"] == []
    assert terminal.json("headings", "--add", "Lanterns=quotations") == {"Lanterns": "quotations"}
    assert len(terminal.json("read", path)["quotations"]) == 1
    assert terminal.run("headings", "--add", "Lanterns=lamps").exit_code == 3
    assert terminal.json("headings", "--drop", "Lanterns") == {}
    unknown = terminal.run("headings", "--drop", "Lanterns")
    assert unknown.exit_code == 4
    assert "“Lanterns” is no heading of your own" in unknown.stderr


NOVEL = """\
CHAPTER 1

In old days there were angels who came and took men by the hand and led them away from the city
of destruction. We see no white-winged angels now.
"""


def test_quotations_are_proved_and_mended(kept, written):
    """A slip is shown, and mended with its chapter in one step."""
    slipped = DIGEST.replace("who came and", "who cam and").replace(" (p. 131)", "")
    kept.json("add", written("silas.md", slipped))
    book = written("novel.txt", NOVEL)
    shown = kept.run("prove", "silas", book)
    assert shown.exit_code == 0, shown.output
    assert "“cam”" in shown.stdout
    (proof,) = kept.json("prove", "silas")
    assert (proof["chapter"], proof["locator"]) == (1, "ch. 1")
    (mended,) = kept.json("prove", "silas", "--mend")
    assert mended["slips"] == []
    assert "who came and took" in mended["text"]
    assert kept.run("prove", "middlemarch").exit_code == 4


def test_folders_and_zips_are_added_whole(terminal, tmp_path):
    """Each file in them has its report; hidden ones are left alone."""
    folder = tmp_path / "digests"
    (folder / "old").mkdir(parents=True)
    (folder / "silas.md").write_text(DIGEST, encoding="utf-8")
    (folder / "old" / "letter.txt").write_text("Dear aunt,\n", encoding="utf-8")
    (folder / ".hidden.md").write_text(DIGEST, encoding="utf-8")
    with zipfile.ZipFile(folder / "more.zip", "w") as bundle:
        bundle.writestr("years/middlemarch.md", OTHER)
        bundle.writestr("years/empty.md", "")
    result = terminal.run("add", str(folder), "--json")
    reports = json.loads(result.stdout)
    assert result.exit_code == 6
    assert sorted(report["status"] for report in reports) == [
        "added",
        "added",
        "refused",
        "refused",
    ]
    assert {report["title"] for report in reports} == {"Silas Marner", "Middlemarch", None}


def test_several_digests_in_one_file_are_shown_and_kept_each(terminal, written):
    """`read --json` prints an array, and `add` reports on each digest."""
    path = written("two.md", f"{DIGEST}\n\n{LEVIN}")
    shown = terminal.json("read", path)
    assert [each["title"] for each in shown] == ["Silas Marner", "Anna Karenina"]
    assert [each["title"] for each in terminal.json("add", path)] == [
        "Silas Marner",
        "Anna Karenina",
    ]
