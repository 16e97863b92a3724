"""Steps of `exports_everything.feature`."""

import json
from contextlib import ExitStack
from dataclasses import replace
from importlib import resources
from io import BytesIO
from types import SimpleNamespace
from uuid import UUID
from zipfile import ZipFile

import pytest
from pytest_bdd import given, parsers, scenarios, then, when

from features.winter_steps import BOOKS, Doors, library_in
from service.use_cases.add_digest import add_digest
from service.use_cases.items import list_items
from service.use_cases.library import list_digests
from service.use_cases.records import ReaderId
from service.use_cases.sit import todays_sitting
from tests.standing import lay_empty_library

scenarios("exports_everything.feature")

OTHER = ReaderId(UUID("00000000-0000-4000-8000-00000000beef"))
"""The reader of the library the archive is read into."""


@pytest.fixture
def elsewhere(mira):
    """An empty library of another reader, on a machine whose clock shows the same."""
    file = mira.folder / "elsewhere" / "library.sqlite3"
    lay_empty_library(file)
    with ExitStack() as opened:
        desk = opened.enter_context(library_in(file, lambda: mira.now, OTHER))
        yield Doors(SimpleNamespace(desk=desk, folder=file.parent), opened)


@given("she takes everything out")
def takes_out(doors):
    file = doors.mira.folder / "everything.zip"
    doors.says("export", "everything", "--out", str(file))
    doors.seen = file.read_bytes()


def everything(doors):
    answer = doors.get("/api/export/everything.zip")
    assert answer.status_code == 200
    return answer.data


@when("the end of the archive was lost on the way")
def cut_short(doors):
    doors.seen = doors.seen[: len(doors.seen) // 2]


@when("somebody changed a grade in the archive")
def changed(doors):
    doors.seen = rewritten(doors.seen, lambda name, held: held.replace(b'"blank"', b'"vivid"', 1))


@when("somebody put another file into the archive")
def another_file(doors):
    filled = BytesIO(doors.seen)
    with ZipFile(filled, "a") as archive:
        archive.writestr("facts/more.jsonl", "{}\n")
    doors.seen = filled.getvalue()


def rewritten(archive, change):
    """Write an archive again, an entry changed where it is one of facts."""
    fresh = BytesIO()
    with ZipFile(BytesIO(archive)) as former, ZipFile(fresh, "w") as changed:
        for name in former.namelist():
            changed.writestr(name, change(name, former.read(name)))
    return fresh.getvalue()


def restore(doors, elsewhere):
    """Read the archive into a library as a terminal would."""
    file = elsewhere.mira.folder / "everything.zip"
    file.write_bytes(doors.seen)
    return elsewhere.terminal("restore", str(file))


@when("she reads it into an empty library")
def reads_in(doors, elsewhere):
    result = restore(doors, elsewhere)
    assert result.exit_code == 0, result.output
    assert f"digests {len(BOOKS)}," in result.stdout


@when("she reads it into an empty library, and cannot")
def cannot_read_in(doors, elsewhere):
    doors.noted = restore(doors, elsewhere)


@when("she brings it back on the page of an empty library")
def brings_back(doors, elsewhere):
    file = (BytesIO(doors.seen), "everything.zip")
    assert elsewhere.post("/archive", {"file": file}).status_code == 303


@when('she reads it into a library that holds "Silas Marner"')
def reads_into_one(doors, elsewhere):
    add_digest(elsewhere.desk, "silas.md", b"# Silas Marner\n\n## Points\n\n1. The lot falls.\n")
    doors.noted = restore(doors, elsewhere)


@then("the archive explains itself, and holds each of her digests as Markdown")
def explains_itself(doors):
    with ZipFile(BytesIO(doors.seen)) as archive:
        readme = archive.read("README.md").decode()
        digests = [name for name in archive.namelist() if name.startswith("digests/")]
        texts = [archive.read(name).decode() for name in digests]
    assert all(f"`{folder}/`" in readme for folder in ("digests", "facts", "originals"))
    entries = list_digests(doors.desk).entries
    assert len(texts) == len(entries) == len(BOOKS)
    for entry in entries:
        (text,) = (each for each in texts if f'title: "{entry.kept.title}"' in each)
        assert all(part.text in text for part in entry.kept.digest().points)


@then("every document she handed in is in it as it came")
def as_it_came(doors):
    shipped = resources.files("service.documents") / "demo_library"
    with ZipFile(BytesIO(doors.seen)) as archive:
        held = {archive.read(name) for name in archive.namelist() if name.startswith("originals/")}
    assert held == {(shipped / f"{book}.md").read_bytes() for book in BOOKS}


@then("every answer is a line of JSON in it, with its grade")
def answers_are_lines(doors):
    with ZipFile(BytesIO(doors.seen)) as archive:
        lines = archive.read("facts/answers.jsonl").decode().splitlines()
    held = {each["id"]: each["grade"] for each in map(json.loads, lines)}
    kept = {}
    with doors.desk.store.reading() as work:
        for view in list_items(doors.desk, limit=500).items:
            for answer in work.answers.of_item(doors.desk.reader, view.kept.item.id):
                kept[str(answer.id)] = answer.grade.value
    assert held == kept
    assert len(kept) > 900


@then("every item is due on the same day, with the same memory")
def same_memory(doors, elsewhere):
    here, there = (
        [each.kept for each in list_items(of.desk, limit=500).items] for of in (doors, elsewhere)
    )
    assert there == here
    assert sum(each.memory is not None for each in here) > 90


@then("today's sitting asks the same")
def same_sitting(doors, elsewhere):
    here, there = (todays_sitting(of.desk) for of in (doors, elsewhere))
    assert there == here
    assert here.items


@then("the pages of today, of her books, of her promises and of retention are the same")
def same_pages(doors, elsewhere):
    books = [f"/books/{entry.kept.id}" for entry in list_digests(doors.desk).entries]
    for of in (doors, elsewhere):
        of.mira.desk = replace(of.desk, new_id=lambda: OTHER)
    for address in ("/", "/books", "/commitments", "/retention", *books):
        assert elsewhere.page(address) == doors.page(address)


@then("everything taken out again is the same to the byte")
def same_archive(doors, elsewhere):
    assert everything(elsewhere) == doors.seen


@then(parsers.parse('she is told "{words}"'))
def is_told(doors, words):
    assert doors.noted.exit_code != 0
    assert words in one_line(doors.noted)


@then("she is told what is wrong in a sentence")
def told_what(doors):
    assert doors.noted.exit_code == 3
    assert one_line(doors.noted).endswith(".")


@then("she is told which entry it is in a sentence")
def told_which(doors):
    told_what(doors)
    assert "facts/" in one_line(doors.noted)


def one_line(result):
    """Return the line a refusal is told in, to be sure that it is one."""
    (line,) = result.stderr.splitlines()
    assert line.startswith("catchword: ")
    return line


@then('that library holds "Silas Marner" alone')
def alone(elsewhere):
    assert [each.kept.title for each in list_digests(elsewhere.desk).entries] == ["Silas Marner"]


@then("that library is empty")
def stays_empty(elsewhere):
    assert list_digests(elsewhere.desk).entries == ()
    assert list_items(elsewhere.desk).items == ()
