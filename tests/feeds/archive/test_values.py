"""Facts as lines of JSON: exact, and nothing but what we write ourselves."""

import json
from datetime import UTC, date, datetime
from uuid import UUID

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.feeds.archive.strict_json import Unreadable
from service.feeds.archive.values import fact_in, line_of
from service.use_cases.archiving_records import FactTable, Field, FieldType, Row
from tests.store import anything

EVERY = FactTable(
    "every",
    "One of every type.",
    ("id",),
    (
        Field("id", FieldType.ID, False, None, "An id."),
        Field("at", FieldType.INSTANT, True, None, "An instant."),
        Field("day", FieldType.DAY, True, None, "A day."),
        Field("said", FieldType.WORDS, True, None, "Words."),
        Field("short", FieldType.WORDS, True, 5, "A few letters."),
        Field("count", FieldType.WHOLE, True, None, "A whole number."),
        Field("share", FieldType.NUMBER, True, None, "A number."),
        Field("true", FieldType.FLAG, True, None, "Yes or no."),
        Field("kept", FieldType.JSON, True, None, "JSON."),
    ),
)
ROW: Row = {
    "id": UUID(int=7),
    "at": datetime(2026, 3, 1, 21, 40, tzinfo=UTC),
    "day": date(2026, 3, 1),
    "said": "Mud keeps its own accounts.",
    "short": "clear",
    "count": 3,
    "share": 0.1,
    "true": True,
    "kept": '{"n": [1, 0.1, null, "—"]}',
}
any_json = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(10**18), 10**18)
    | anything.any_text
    | anything.shares,
    lambda below: st.lists(below, max_size=3) | st.dictionaries(anything.words, below, max_size=3),
    max_leaves=6,
)
NOT_QUITE_JSON = st.sampled_from(["", "7", '"', '{"loss": NaN}', "[1e999]", '{"a": 1, "a": 2}'])
json_values = st.lists(any_json, max_size=3) | st.dictionaries(anything.words, any_json, max_size=3)
rows = st.fixed_dictionaries(
    {
        "id": st.uuids(),
        "at": st.none() | anything.instants,
        "day": st.none() | anything.days,
        "said": st.none() | anything.words,
        "short": st.none() | st.text("abc", max_size=5),
        "count": st.none() | st.integers(-(2**31), 2**31 - 1),
        "share": st.none() | st.floats(allow_nan=False, allow_infinity=False),
        "true": st.none() | st.booleans(),
        "kept": st.none() | NOT_QUITE_JSON | json_values.map(json.dumps),
    }
)


@settings(max_examples=60)
@given(rows)
def test_a_fact_comes_back_exactly(row: Row) -> None:
    """Every value comes back equal, numbers to the last bit; written again it is the same line."""
    line = line_of(EVERY, row)
    assert line.count(b"\n") == 1
    back = fact_in(EVERY, line)
    assert line_of(EVERY, back) == line
    kept, was = back.pop("kept"), row["kept"]
    assert back == {name: value for name, value in row.items() if name != "kept"}
    assert str(back["share"]) == str(row["share"])
    assert kept == was or json.loads(str(kept)) == json.loads(str(was))


def changed(**values: object) -> bytes:
    """Return the line of a sound fact with other values, spelled as JSON spells them."""
    return json.dumps(json.loads(line_of(EVERY, ROW)) | values).encode()


def without(name: str) -> bytes:
    """Return the line of a sound fact without a field."""
    found = json.loads(line_of(EVERY, ROW))
    del found[name]
    return json.dumps(found).encode()


LINES: dict[str, tuple[bytes, str]] = {
    "empty": (b"\n", "is not JSON"),
    "no JSON": (b"{", "is not JSON"),
    "two facts": (line_of(EVERY, ROW).strip() * 2, "is not JSON"),
    "a list": (b"[]", "is not a JSON object"),
    "not UTF-8": (b'{"id": "\xff"}', "is not text in UTF-8"),
    "nested without end": (b'{"kept":' + b"[" * 100_000, "is not JSON"),
    "a field twice": (b'{"id": 1, "id": 2}', "names a field twice"),
    "a field too few": (without("day"), "has no field “day”"),
    "a field too many": (changed(reader_id=str(UUID(int=8))), "has a field “reader_id”"),
    "no value": (changed(id=None), "leaves “id” empty"),
    "no id": (changed(id="seven"), "has no id in “id”"),
    "an id in capitals": (changed(id=str(UUID(int=171)).upper()), "has no id in “id”"),
    "an id without hyphens": (changed(id=UUID(int=7).hex), "has no id in “id”"),
    "an instant nowhere": (changed(at="2026-03-01T21:40:00.000000"), "has no instant"),
    "an instant elsewhere": (changed(at="2026-03-01T21:40:00.000000+01:00"), "has no instant"),
    "a shorter instant": (changed(at="2026-03-01T21:40:00+00:00"), "has no instant"),
    "an instant as number": (changed(at=1772401200), "has no instant"),
    "a day that is none": (changed(day="2026-02-30"), "has no day"),
    "a day of a week": (changed(day="2026-W09-7"), "has no day"),
    "words as number": (changed(said=3), "has no words"),
    "half a character": (changed(said="\ud800"), "has words in “said” that cannot be kept"),
    "a NUL": (changed(said="a\x00b"), "has words in “said” that cannot be kept"),
    "words too long": (changed(short="splendid"), "or are too long"),
    "a huge number": (changed(count=2**31), "has no whole number"),
    "a number without end": (b'{"count": ' + b"9" * 10_000 + b"}", "too many digits"),
    "a broken number": (changed(count=1.5), "has no whole number"),
    "a flag as number": (changed(count=True), "has no whole number"),
    "a number as flag": (changed(true=1), "has no true or false"),
    "a number as words": (changed(share="0.1"), "has no number"),
    "no number": (changed(share=float("nan")), "holds NaN"),
    "no bound": (changed(share=float("-inf")), "holds -Infinity"),
    "beyond every bound": (b'{"share": 1e999}', "beyond every bound"),
    "JSON that holds nothing": (changed(kept=7), "has no object or list of JSON in “kept”"),
    "JSON as text": (changed(kept="[1]"), "has no object or list of JSON in “kept”"),
    "NaN inside": (changed(kept={"weights": [float("nan")]}), "holds NaN"),
}


@pytest.mark.parametrize("case", LINES)
def test_whatever_is_not_ours_is_refused(case: str) -> None:
    """Each in words that go on from the place they stand at."""
    line, said = LINES[case]
    with pytest.raises(Unreadable) as refused:
        fact_in(EVERY, line)
    assert said in str(refused.value)


@given(st.binary(max_size=200) | anything.any_text.map(lambda text: text.encode(errors="replace")))
def test_any_bytes_are_a_fact_or_refused(line: bytes) -> None:
    """Nothing but a refusal comes out of a line, whatever it is."""
    with pytest.raises(Unreadable):
        fact_in(EVERY, line)
