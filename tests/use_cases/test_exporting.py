"""Facts taken out for other programs, from both databases, and read back."""

import csv
import io
import json
import threading
from datetime import date, datetime, timedelta
from uuid import UUID, uuid4

import pyarrow as pa
import pyarrow.parquet as pq
import pytest

from cards.answers import Answer, Grade
from cards.commitments import Outcome
from cards.errors import Invalid
from cards.items import Item, Standing
from service.store import exporting as stored
from service.store.exporting_packing import Packing
from service.use_cases.add_digest import add_digest
from service.use_cases.answer import take_back
from service.use_cases.check_in import Report, check_in, withdraw_check_in
from service.use_cases.commitments import all_commitments
from service.use_cases.exporting import export, forms_of
from service.use_cases.exporting_columns import What
from service.use_cases.exporting_described import DESCRIBED
from service.use_cases.exporting_records import ExportForm
from service.use_cases.records import KeptAnswer
from tests.use_cases.house import DIGEST, START, House


def taken(house: House, what: What, form: ExportForm) -> bytes:
    """Export, and return the whole file."""
    return b"".join(export(house.desk, what, form).pieces)


def objects(house: House, what: What) -> list[dict[str, object]]:
    """Export as JSON, and read it as Python does."""
    found = json.loads(taken(house, what, ExportForm.JSON))
    assert isinstance(found, list)
    return found


def parquet(house: House, what: What) -> pa.Table:
    """Export as Parquet, and read it as Arrow does."""
    return pq.read_table(io.BytesIO(taken(house, what, ExportForm.PARQUET)))


@pytest.fixture
def lived(house: House) -> House:
    """A library with answers, one of them taken back, and check-ins, one of them withdrawn."""
    add_digest(house.desk, "silas.docx", house.shelf.put(DIGEST))
    items = sorted(house.items())
    for day, grade in enumerate(Grade):
        house.now += timedelta(days=1 + day)
        for item in items[:3]:
            house.answer(item, grade)
    back = house.answer(items[3], Grade.VIVID)
    take_back(house.desk, back.answer.answer.id, uuid4())
    (commitment, *_) = [
        each.id for those in all_commitments(house.desk).by_pace.values() for each in those
    ]
    for outcome in Outcome:
        check_in(house.desk, Report(uuid4(), commitment, outcome, note="=1+1"))
    gone = check_in(house.desk, Report(uuid4(), commitment, Outcome.KEPT, witness="Hanne"))
    withdraw_check_in(house.desk, gone.id)
    return house


def test_an_empty_library_gives_a_header_and_no_rows(house: House) -> None:
    """Every form of every export can be had of a library nothing is in, and is well formed."""
    for what in What:
        header = ",".join(column.name for column in DESCRIBED[what].columns)
        assert taken(house, what, ExportForm.CSV) == f"{header}\r\n".encode()
        assert objects(house, what) == []
        table = parquet(house, what)
        assert (table.num_rows, table.column_names) == (0, header.split(","))
        assert taken(house, what, ExportForm.XLSX).startswith(b"PK")
        if ExportForm.XAPI in forms_of(what):
            assert json.loads(taken(house, what, ExportForm.XAPI)) == []


@pytest.fixture
def small_blocks(monkeypatch: pytest.MonkeyPatch) -> None:
    """Answers are read four at a time, so that a few make several blocks."""
    few = Packing(stored._ANSWER_COLUMNS, stored._OF_ANSWERS, 4)
    monkeypatch.setattr(stored, "_ANSWERS", few)


@pytest.mark.usefixtures("small_blocks")
def test_every_answer_is_exported_as_it_was_kept(lived: House) -> None:
    """Block after block, every answer comes once, each of its facts as the library has it."""
    rows = objects(lived, What.ANSWERS)
    assert len({row["id"] for row in rows}) == len(rows) == 13
    items = lived.items()
    for row in rows:
        with lived.store.reading() as work:
            found = work.answers.get(lived.reader, UUID(str(row["id"])))
        assert found is not None
        assert row == _said_of(found, items[found.answer.item_id].item)
    assert sum(row["taken_back_at"] is not None for row in rows) == 1


def _said_of(found: KeptAnswer, item: Item) -> dict[str, object]:
    answer = found.answer
    return {
        "id": str(answer.id),
        "item_id": str(answer.item_id),
        "digest_id": str(item.digest_id),
        "title": "Silas Marner",
        "kind": item.kind.value,
        "grade": answer.grade.value,
        "came_back": answer.grade is not Grade.BLANK,
        "answered_at": _utc(answer.answered_at),
        "day": answer.day.isoformat(),
        "predicted": answer.predicted,
        "suggested": answer.suggested and answer.suggested.value,
        "graded_first": answer.graded_first,
        "seconds": answer.seconds,
        "attempt": answer.attempt,
        "ticked": None if answer.ticked is None else " ".join(map(str, sorted(answer.ticked))),
        "received_at": _utc(found.received_at),
        "taken_back_at": found.taken_back_at and _utc(found.taken_back_at),
    }


def _utc(instant: datetime) -> str:
    return instant.strftime("%Y-%m-%dT%H:%M:%S.%fZ")


HOSTILE = (
    "",
    '=HYPERLINK("http://x")',
    "  =1+1",
    "＝1",
    "-1",
    "\t@x",
    'He said "no", and\r\nleft.',
    "'",
    "café ☕ \U0001f4d6",
    "1e5",
    "\x01\x1b[2J",
    "a" * 20_000,
)
"""What a reader might type to trouble whoever opens the file."""


@pytest.fixture
def hostile(house: House) -> dict[str, Answer]:
    """Answers whose words are hostile and whose numbers are at their edges, by their ids."""
    add_digest(house.desk, "silas.docx", house.shelf.put(DIGEST))
    item = min(house.items())
    numbers = (None, 0.0, 1.0, 0.1, 1 / 3, 5e-324, 0.1 + 0.2, 1 - 2**-53, 1e-17, 2 / 3, 0.5, 0.9)
    ticked = (None, frozenset[int](), frozenset({1, 12}))
    given = [
        Answer(
            UUID(int=number),
            item,
            Grade.CLEAR,
            START + timedelta(microseconds=number),
            date(2026, 1, 5),
            words,
            (None, *Grade)[number % 5],
            predicted,
            (None, 1, 600)[number % 3],
            number % 2 == 0,
            ticked[number % 3],
        )
        for number, (words, predicted) in enumerate(zip(HOSTILE, numbers, strict=True))
    ]
    with house.store.writing() as work:
        work.readers.lock(house.reader)
        for answer in given:
            work.answers.add(house.reader, answer, START)
        work.commit()
    return {str(each.id): each for each in given}


@pytest.mark.usefixtures("small_blocks")
def test_json_and_parquet_are_verbatim(house: House, hostile: dict[str, Answer]) -> None:
    """Words and numbers come out to the letter and the bit, what is absent is absent."""
    table = parquet(house, What.ANSWERS).to_pylist()
    for rows in (objects(house, What.ANSWERS), table):
        assert len(rows) == len(hostile)
        for row in rows:
            answer = hostile[str(row["id"])]
            assert row["attempt"] == answer.attempt
            assert row["predicted"] == answer.predicted
            assert row["seconds"] == answer.seconds
            assert row["suggested"] == answer.suggested
            assert row["graded_first"] == answer.graded_first
            ticked = answer.ticked
            assert row["ticked"] == (None if ticked is None else " ".join(map(str, sorted(ticked))))


def test_csv_is_disarmed_and_otherwise_verbatim(house: House, hostile: dict[str, Answer]) -> None:
    """Python's reader of CSV finds every cell; only what a spreadsheet could run is changed.

    Source of what it could run: OWASP, “CSV Injection” (from memory).
    """
    written = taken(house, What.ANSWERS, ExportForm.CSV).decode()
    rows = list(csv.DictReader(io.StringIO(written, newline="")))
    armed = 0
    for row in rows:
        words = hostile[row["id"]].attempt
        assert row["attempt"] in {words, f"'{words}"}
        assert row["attempt"].lstrip(' "')[:1] not in set("=+-@\t\r＝")
        armed += row["attempt"] != words
        predicted = hostile[row["id"]].predicted
        assert row["predicted"] == ("" if predicted is None else repr(predicted))
    assert (len(rows), armed) == (len(HOSTILE), 5)


def test_items_stand_as_they_are_shown(lived: House) -> None:
    """Each item is exported with its memory, its standing, and its recall on the day."""
    lived.now += timedelta(days=3)
    today = lived.now.date()
    rows = {row["id"]: row for row in objects(lived, What.ITEMS)}
    with lived.store.reading() as work:
        reader = work.readers.get(lived.reader)
    assert rows.keys() == {str(each) for each in lived.items()}
    for key, kept in lived.items().items():
        row, memory = rows[str(key)], kept.memory
        assert (row["standing"], row["kind"]) == (kept.standing, kept.item.kind)
        assert row["answers"] == (None if memory is None else memory.answers)
        if memory is not None:
            assert row["stability"] == memory.stability
            assert row["due_on"] == memory.due_on.isoformat()
            assert row["recall"] == reader.schedule(kept.item.kind).recall(memory, today)
    assert {row["standing"] for row in rows.values()} >= {Standing.UNASKED, Standing.SETTLING}


def test_digests_come_whole_with_their_parts(lived: House) -> None:
    """JSON and Parquet hold the parts as a list, CSV one a line with its locator."""
    (row,) = objects(lived, What.DIGESTS)
    assert (row["title"], row["author"]) == (DIGEST.title, DIGEST.author)
    assert row["theme"] == DIGEST.theme
    points, quotations = row["points"], row["quotations"]
    assert isinstance(points, list)
    assert isinstance(quotations, list)
    assert [(each["text"], each["locator"]) for each in points] == [
        (each.text, each.locator) for each in DIGEST.points
    ]
    (nested,) = parquet(lived, What.DIGESTS).to_pylist()
    assert nested["points"] == points
    assert nested["quotations"] == quotations
    (flat,) = csv.DictReader(io.StringIO(taken(lived, What.DIGESTS, ExportForm.CSV).decode()))
    assert flat["points"].splitlines()[0] == "The lot falls on Marner. (p. 12)"


def test_commitments_stand_as_their_page_says(lived: House) -> None:
    """Words, measure, pace and what came of each are those of the commitments' own page."""
    rows = {row["id"]: row for row in objects(lived, What.COMMITMENTS)}
    told = all_commitments(lived.desk).by_pace
    assert len(rows) == 2
    for pace, those in told.items():
        for held in those:
            row = rows[str(held.id)]
            assert (row["text"], row["pace"]) == (held.kept.text, pace)
    assert sorted((row["kept"], row["partly"], row["missed"]) for row in rows.values()) == [
        (0, 0, 0),
        (1, 1, 1),
    ]


def test_check_ins_are_all_there(lived: House) -> None:
    """Each comes with its commitment's words; one taken back says when."""
    rows = objects(lived, What.CHECK_INS)
    assert sorted(str(row["outcome"]) for row in rows) == ["kept", "kept", "missed", "partly"]
    (back,) = (row for row in rows if row["taken_back_at"] is not None)
    assert (back["witness"], back["taken_back_at"]) == ("Hanne", _utc(lived.now))
    assert {row["commitment"] for row in rows} <= {each.text for each in DIGEST.commitments}


def test_no_other_readers_row_is_ever_in_it(lived: House) -> None:
    """Another reader of the same database exports nothing of this one's, nor this one of theirs."""
    other = lived.another_reader()
    assert [objects(other, what) for what in What] == [[]] * len(What)
    mine = [objects(lived, what) for what in What]
    add_digest(other.desk, "silas.docx", lived.shelf.put(DIGEST))
    other.answer(min(other.items()), Grade.HAZY)
    assert [objects(lived, what) for what in What] == mine
    assert len(objects(other, What.ANSWERS)) == 1


@pytest.mark.usefixtures("small_blocks")
def test_an_export_is_one_moment_whatever_is_answered_meanwhile(lived: House) -> None:
    """What is recorded after the first piece is in no later one: the state is the first's."""
    before = objects(lived, What.ANSWERS)
    exported = export(lived.desk, What.ANSWERS, ExportForm.JSON)
    writer = threading.Thread(
        target=lambda: [lived.answer(item, Grade.VIVID) for item in lived.items()]
    )
    writer.start()
    writer.join()
    assert json.loads(b"".join(exported.pieces)) == before
    assert len(objects(lived, What.ANSWERS)) > len(before)


def test_an_export_given_up_lets_the_store_go(lived: House) -> None:
    """Closed half-way, it leaves no connection in use."""
    engine = lived.store.engines.reading
    exported = export(lived.desk, What.ANSWERS, ExportForm.CSV)
    assert engine.pool.checkedout() == 1
    exported.pieces.close()
    assert engine.pool.checkedout() == 0


def test_statements_are_made_of_what_was_done_alone(house: House) -> None:
    """Nothing else can be had as xAPI; the refusal says what can."""
    for what in (What.ITEMS, What.DIGESTS, What.COMMITMENTS):
        with pytest.raises(Invalid, match="answers and of check-ins") as refused:
            export(house.desk, what, ExportForm.XAPI)
        assert refused.value.where == "form"
