"""JSON: the shape its schema states, and sentences for whatever is not of it."""

import json
from importlib.resources import files

import jsonschema
import pytest
from hypothesis import given, settings

from cards.digest import Digest
from cards.errors import DocumentBroken, InvalidDigest
from cards.intake import understand
from service.documents.press.json_form import json_of
from service.documents.press.press import Press
from service.documents.reader import PandocDocuments
from service.use_cases.records import Form
from tests.documents.press.digests import MARNER
from tests.property.written_digests import any_digests

SCHEMA = json.loads((files("service.documents.press") / "digest.schema.json").read_text("utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)


def test_the_schema_is_one():
    """The schema is valid JSON Schema of the draft it names."""
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


@settings(max_examples=60)
@given(digest=any_digests())
def test_what_is_written_is_of_the_shape(digest: Digest):
    """Every digest written as JSON is valid under the schema."""
    VALIDATOR.validate(json.loads(json_of(digest)))


def test_only_a_title_and_a_part_are_needed(documents: PandocDocuments):
    """What is left out is none; the file may begin with a byte order mark."""
    content = '\ufeff{"catchword": 1, "title": "Emma", "theme": "She is wrong."}'.encode()
    found = understand(documents.read("emma.json", content))
    assert found.digest == Digest(title="Emma", theme="She is wrong.")


WHOLE = json.loads(json_of(MARNER))
WRONG = [
    ("[]", "not an object with “catchword”: 1"),
    ('{"title": "Emma"}', "not an object with “catchword”: 1"),
    ('{"catchword": 2, "title": "Emma"}', "not an object with “catchword”: 1"),
    ('{"catchword": 1, "title": ', "no JSON from line 1 on"),
    ('{"catchword": 1, "title": NaN}', "no JSON that a digest can be written in"),
    ('{"catchword": 1, "title": "A", "title": "B", "theme": "x"}', "says something twice"),
    ("[" * 100_000, "no JSON"),
    (json.dumps(WHOLE | {"title": None}), "the title is missing"),
    (json.dumps(WHOLE | {"title": 3}), "the title is not words in quotation marks"),
    (json.dumps(WHOLE | {"pages": "224"}), "the pages is not a whole number"),
    (json.dumps(WHOLE | {"pages": True}), "the pages is not a whole number"),
    (json.dumps(WHOLE | {"finished_on": "May 2025"}), "the finished_on is no date"),
    (json.dumps(WHOLE | {"points": {}}), "the points is not a list"),
    (json.dumps(WHOLE | {"points": ["A child"]}), "points 1 is not an object"),
    (json.dumps(WHOLE | {"points": [{"locator": "p. 1"}]}), "the text of points 1 is missing"),
    (json.dumps(WHOLE | {"quotations": [{"text": "x", "page": 3}]}), "quotations 1 has no “page”"),
    (json.dumps(WHOLE | {"theem": "x"}), "a digest has no “theem”"),
]


@pytest.mark.parametrize(("text", "said"), WRONG, ids=[said for _, said in WRONG])
def test_what_is_not_of_the_shape_is_refused(documents: PandocDocuments, text: str, said: str):
    """The refusal says what is wrong and where, in a sentence, and names the file."""
    with pytest.raises(DocumentBroken) as refused:
        documents.read("mine.json", text.encode())
    assert "“mine.json”" in refused.value.message
    assert said in refused.value.message


def test_bytes_that_are_no_text_are_refused(documents: PandocDocuments):
    """A file not in UTF-8 is refused in a sentence."""
    with pytest.raises(DocumentBroken, match="not written in UTF-8"):
        documents.read("mine.json", '{"title": "Émile"}'.encode("latin-1"))


@pytest.mark.parametrize(
    "change",
    [
        {"title": "  "},
        {"pages": 0},
        {"title": "a\x00b"},
        {"quotations": [{"text": "x", "after": 9}]},
    ],
)
def test_bounds_of_a_digest_hold(documents: PandocDocuments, change: dict[str, object]):
    """What the schema cannot forbid, a digest refuses."""
    with pytest.raises(InvalidDigest):
        documents.read("mine.json", json.dumps(WHOLE | change).encode())


def test_the_largest_digest_reads_back(documents: PandocDocuments):
    """A digest at its bounds is no larger than what is read."""
    digest = Digest(
        title="\U0001f9a5" * 500,
        theme="\U0001f9a5" * 20_000,
        points=MARNER.points * 160,
        commitments=MARNER.commitments * 250,
    )
    written = Press().write(digest, Form.JSON)
    assert understand(documents.read("large.json", written)).digest == digest
