"""Steps of `exports.feature`."""

import json
import sqlite3
from operator import itemgetter
from uuid import UUID, uuid4

import duckdb
import openpyxl
from pydantic import TypeAdapter
from pytest_bdd import given, parsers, scenarios, then, when
from ralph.models.xapi.base.statements import BaseXapiStatement

from cards.answers import Grade
from service.use_cases.add_digest import add_digest
from service.use_cases.answer import record_answer, take_back
from service.use_cases.items import list_items
from service.use_cases.recording import GivenAnswer
from tests.standing import application_on

scenarios("exports.feature")

READ_AS = {"csv": "read_csv", "json": "read_json", "parquet": "read_parquet"}


@given(parsers.parse('"{title}" was added'))
def added(mira, title):
    text = f'---\ntitle: "{title}"\n---\n\n## Points\n\n1. He lives by the pond.\n2. He leaves.\n'
    assert add_digest(mira.desk, "walden.md", text.encode()).kept.title == title


@given("she took one answer back")
def took_back(doors):
    item = list_items(doors.desk, limit=1).items[0].kept.item.id
    with doors.desk.store.reading() as work:
        doors.noted = work.answers.of_item(doors.desk.reader, item)[-1].id
    take_back(doors.desk, doors.noted, uuid4())


@when(parsers.parse("she takes her {what} out as {form}"))
def takes_out(doors, what, form):
    doors.seen = doors.mira.folder / f"{what}.{'json' if form == 'xapi' else form}"
    doors.says("export", what, "--as", form, "--out", str(doors.seen))


@when("her answers are fetched as csv, and she gives one more on the way")
def fetched_meanwhile(doors):
    doors.noted = number_kept(doors, "answers")
    item = list_items(doors.desk, limit=1).items[0].kept.item.id
    with application_on(doors.desk) as app:
        answer = app.test_client().get("/api/export/answers.csv")
        pieces = answer.iter_encoded()
        fetched = [next(pieces)]
        assert fetched[0].count(b"\n") < doors.noted
        record_answer(doors.desk, GivenAnswer(uuid4(), item, Grade.CLEAR))
        fetched += pieces
        answer.close()
    doors.seen = doors.mira.folder / "answers.csv"
    doors.seen.write_bytes(b"".join(fetched))


@when("she asks in the terminal for her answers as docx")
def asks_for_docx(doors):
    doors.noted = doors.terminal("export", "answers", "--as", "docx")


def number_kept(doors, what):
    """Count what is kept with a tool that knows nothing of Catchword."""
    with sqlite3.connect(doors.mira.folder / "winter.sqlite3") as kept:
        return kept.execute(f"SELECT count(*) FROM {what.replace('-', '_')}").fetchone()[0]


def table_of(file):
    """Read what was taken out: the names of its columns, and its rows as text."""
    if file.suffix == ".xlsx":
        workbook = openpyxl.load_workbook(file, read_only=True)
        names, *rows = list(workbook.worksheets[0].iter_rows(values_only=True))
        workbook.close()
        return list(names), rows
    read = duckdb.sql(f"SELECT * FROM {READ_AS[file.suffix[1:]]}('{file}')")
    return read.columns, duckdb.sql("SELECT columns(*)::VARCHAR FROM read").fetchall()


@then(parsers.parse("a tool that did not write it finds a row for each of her {what}"))
def finds_rows(doors, what):
    doors.noted = what
    assert len(table_of(doors.seen)[1]) == number_kept(doors, what) > 0


@then("its columns are those told beforehand, each with its type and what it means")
def told_beforehand(doors):
    (told,) = (
        each["columns"]
        for each in doors.api("export/columns")["exports"]
        if each["what"] == doors.noted
    )
    assert table_of(doors.seen)[0] == [column["name"] for column in told]
    assert all(column["type"] and column["meaning"].endswith(".") for column in told)
    (in_terminal,) = json.loads(doors.says("export", doors.noted, "--columns", "--json")).values()
    of_each = itemgetter("name", "type", "unit", "absent", "meaning")
    assert list(map(of_each, in_terminal)) == list(map(of_each, told))


@then("what was foretold is a number, the day a date and the instant an instant")
def typed(doors):
    read = duckdb.sql(f"SELECT predicted, day, answered_at, came_back FROM '{doors.seen}'")
    types = [str(each) for each in read.types]
    assert types == ["DOUBLE", "DATE", "TIMESTAMP WITH TIME ZONE", "BOOLEAN"]


@then("the share that came back, asked for in SQL, is the one on the page")
def asked_in_sql(doors):
    earlier = "lag(day) OVER (PARTITION BY item_id ORDER BY answered_at)"
    recalled, asked = duckdb.sql(
        f"SELECT count(*) FILTER (came_back), count(*) FROM "
        f"(SELECT *, {earlier} AS before FROM '{doors.seen}' WHERE taken_back_at IS NULL) "
        "WHERE before < day"
    ).fetchone()
    assert asked > 700
    assert f"{recalled:,} of {asked:,} came back" in doors.page("/retention")


@then("its rows by book, by kind, by age and by month each add up to the row of everything")
def adds_up(doors):
    names, rows = table_of(doors.seen)
    table = [dict(zip(names, row, strict=True)) for row in rows]
    (doors.noted,) = (row for row in table if row["of"] == "all")
    for of in ("book", "kind", "age", "month"):
        for figure in ("asked", "came_back"):
            together = [int(row[figure]) for row in table if row["of"] == of]
            assert sum(together) == int(doors.noted[figure]) > 500, of
            assert len(together) > 1


@then("that row is what the page says")
def is_the_page_s(doors):
    asked, recalled = (int(doors.noted[each]) for each in ("asked", "came_back"))
    low, high = (round(100 * float(doors.noted[each])) for each in ("low", "high"))
    page = doors.page("/retention")
    assert f"{recalled:,} of {asked:,} came back" in page
    assert f"from {low}% to {high}%" in page


@then(parsers.parse('the title stands there as "{title}"'))
def stands_as(doors, title):
    names, (row,) = table_of(doors.seen)
    assert row[list(names).index("title")] == title


@then("the API and the page hand out the very same")
def very_same(doors):
    written = doors.seen.read_bytes()
    assert doors.get("/api/export/check-ins.csv").data == written
    assert 'href="/exports/check-ins.csv"' in doors.page("/exports")
    assert doors.get("/exports/check-ins.csv").data == written


@then("the file holds all she had given before, and not that one")
def one_moment(doors):
    assert len(table_of(doors.seen)[1]) == doors.noted
    assert number_kept(doors, "answers") == doors.noted + 1


@then("every statement is one, with a statement for each answer")
def statements(doors):
    said = json.loads(doors.seen.read_text(encoding="utf-8"))
    TypeAdapter(list[BaseXapiStatement]).validate_python(said)
    answered = [each for each in said if each["verb"]["id"].endswith("/answered")]
    assert len(answered) == number_kept(doors, "answers")
    graded = {each["id"]: each["result"]["success"] for each in answered}
    with sqlite3.connect(doors.mira.folder / "winter.sqlite3") as kept:
        rows = kept.execute("SELECT id, grade FROM answers").fetchall()
    assert graded == {str(UUID(bytes=each)): grade != "blank" for each, grade in rows}


@then("what was taken back is voided by a statement of its own")
def voided(doors):
    said = json.loads(doors.seen.read_text(encoding="utf-8"))
    (void,) = (each for each in said if each["verb"]["id"].endswith("/voided"))
    assert void["object"] == {"objectType": "StatementRef", "id": str(doors.noted)}


@then("she is told which forms there are")
def told_forms(doors):
    assert doors.noted.exit_code == 2
    assert all(form in doors.noted.stderr for form in ("csv", "json", "parquet", "xlsx", "xapi"))
