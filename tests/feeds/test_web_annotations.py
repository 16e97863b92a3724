"""Quotations as Web Annotations, held to the W3C's data model (tests/reference/web_annotation)."""

import json
from pathlib import Path
from uuid import UUID

import jsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st

from cards.digest import Quotation
from cards.errors import InvalidAnnotations
from cards.proving import Anchor
from service.feeds.json_ld import MAX_ANNOTATIONS, MAX_DEPTH
from service.feeds.web_annotations import (
    Annotated,
    annotation,
    annotations_in,
    book_urn,
    collection,
    written,
)
from service.feeds.web_annotations_in import Read, read

MODEL = Path(__file__).parent.parent / "reference" / "web_annotation"
SCHEMA = json.loads((MODEL / "model.schema.json").read_text(encoding="utf-8"))
EXAMPLES = json.loads((MODEL / "examples.json").read_text(encoding="utf-8"))
DIGEST = UUID(int=1)
ANCHOR = Anchor(
    exact="hell’s heart",
    prefix="unconquering whale; to the last I grapple with thee; from ",
    suffix=" I stab at thee; for hate’s sake I spit",
    start=1_187_400,
    end=1_187_412,
    fraction=0.9976,
    chapter=135,
    page="623",
    source="0f" * 32,
)
QUOTATIONS = [
    Annotated(UUID(int=2), Quotation("hell's heart", "p. 623", 4), ANCHOR),
    Annotated(UUID(int=3), Quotation("Call me Ishmael.", "ch. 1", 0)),
    Annotated(UUID(int=4), Quotation("It is not down in any map; true places never are.")),
]


def valid(made: object) -> bool:
    """Tell whether a value is what the model demands."""
    return not list(jsonschema.Draft7Validator(SCHEMA).iter_errors(made))


def texts(most: int = 60) -> st.SearchStrategy[str]:
    """Make texts with words, of any script."""
    letters = st.characters(exclude_categories=["C", "Z"])
    return st.text(letters, min_size=1, max_size=most)


@pytest.mark.parametrize("example", EXAMPLES.values(), ids=EXAMPLES)
def test_the_models_own_examples_keep_to_the_schema(example: object):
    """The schema used here takes every example the Recommendation gives of its sorts."""
    assert valid(example)


@pytest.mark.parametrize(
    "spoilt",
    [
        {"type": "Annotation"},
        {
            "target": {
                "source": "http://example.org/page1",
                "selector": {"type": "TextQuoteSelector"},
            }
        },
        {"@context": "http://example.org/other"},
        {"bodyValue": "both"},
    ],
)
def test_the_schema_can_refuse(spoilt: dict[str, object]):
    """An annotation without a target, an exact quote, its context, or with two bodies is none."""
    made = {**EXAMPLES["quote"], **spoilt}
    if spoilt == {"type": "Annotation"}:
        del made["target"]
    assert not valid(made)


def test_a_collection_keeps_to_the_model():
    """What goes out is a collection as the model demands, and so is each annotation in it."""
    made = collection(DIGEST, "Moby-Dick", "Herman Melville", "978-0-306-40615-7", QUOTATIONS)
    assert valid(made)
    assert made["total"] == 3
    assert made["first"]["items"][0]["target"]["source"] == "urn:isbn:9780306406157"
    assert all(valid(annotation(each, "Moby-Dick", None)) for each in QUOTATIONS)


def test_a_collection_of_nothing_keeps_to_the_model():
    """A digest without quotations is a collection of none."""
    assert valid(collection(DIGEST, "Moby-Dick", None, None, []))


def test_a_quotation_carries_its_selectors():
    """A quotation found in the text carries quote, position and page; another its words."""
    made = collection(DIGEST, "Moby-Dick", None, None, QUOTATIONS)
    found, named, bare = made["first"]["items"]
    assert found["target"]["selector"] == [
        {
            "type": "TextQuoteSelector",
            "exact": ANCHOR.exact,
            "prefix": ANCHOR.prefix,
            "suffix": ANCHOR.suffix,
        },
        {"type": "TextPositionSelector", "start": ANCHOR.start, "end": ANCHOR.end},
        {
            "type": "FragmentSelector",
            "conformsTo": "http://tools.ietf.org/rfc/rfc3778",
            "value": "page=623",
        },
    ]
    assert [each["type"] for each in named["target"]["selector"]] == ["TextQuoteSelector"]
    assert "catchword:locator" not in bare


def test_what_goes_out_comes_in_the_same():
    """A collection read back gives the same quotations, anchors, title, author and book."""
    made = collection(DIGEST, "Moby-Dick", "Herman Melville", "9780306406157", QUOTATIONS)
    back = read(written(made))
    assert [each.quotation for each in back.quotations] == [each.quotation for each in QUOTATIONS]
    assert [each.anchor for each in back.quotations] == [ANCHOR, None, None]
    assert (back.title, back.author, back.isbn) == ("Moby-Dick", "Herman Melville", "9780306406157")
    assert not back.left


@given(
    title=texts(),
    made=st.lists(
        st.builds(
            Quotation,
            text=texts(),
            locator=st.none() | texts(20),
            after=st.none() | st.integers(0, 500),
        ),
        max_size=4,
        min_size=1,
    ),
    exact=texts(),
)
def test_any_quotations_come_back(title: str, made: list[Quotation], exact: str):
    """Whatever the words, locators and points, they come back as they went, within the model."""
    anchor = Anchor(exact, "before ", " after", 5, 9, 0.5, None, "ix", "ab" * 32)
    sent = [
        Annotated(UUID(int=number), each, anchor if number % 2 else None)
        for number, each in enumerate(made)
    ]
    gone = collection(DIGEST, title, None, None, sent)
    assert valid(gone)
    back = read(written(gone))
    assert back.title == title
    assert [each.quotation for each in back.quotations] == made
    assert [each.anchor for each in back.quotations] == [each.anchor for each in sent]


def test_a_published_quote_is_read():
    """The model's own example of a quote gives its words and what stands around them."""
    assert read(json.dumps(EXAMPLES["quote"])).quotations == (
        Read(
            name="http://example.org/anno22",
            source="http://example.org/page1",
            quotation=Quotation("anotation"),
            exact="anotation",
            prefix="this is an ",
            suffix=" that has some",
        ),
    )


def test_a_published_refinement_is_read():
    """A quote that refines another selector is found within it."""
    (only,) = read(json.dumps(EXAMPLES["refined"])).quotations
    assert (only.exact, only.prefix, only.suffix) == (
        "Selected Text",
        "text before the ",
        " and text after it",
    )


def test_what_quotes_nothing_is_listed():
    """Of many annotations, those that quote no words are named, never dropped silently."""
    back = read(json.dumps(list(EXAMPLES.values())))
    assert [each.exact for each in back.quotations] == ["anotation", "Selected Text"]
    assert back.left == (
        "Annotation 2 (http://example.org/anno23) quotes no words, so no quotation was made of it.",
        "Annotation 4 (http://example.org/anno1) quotes no words, so no quotation was made of it.",
    )


def test_pages_and_comments_of_others_are_read():
    """A page fragment gives the locator, and the words of bodies are comments."""
    made = {
        **EXAMPLES["quote"],
        "body": [{"type": "TextualBody", "value": "A printer's error.", "purpose": "commenting"}],
        "target": {
            "source": {"id": "urn:isbn:9780306406157", "type": "Text"},
            "selector": [
                EXAMPLES["quote"]["target"]["selector"],
                {"type": "FragmentSelector", "value": "page=10"},
                {"type": "TextPositionSelector", "start": 412, "end": 421},
            ],
        },
    }
    back = read(json.dumps(made))
    (only,) = back.quotations
    assert only.quotation.locator == "p. 10"
    assert (only.start, only.end, only.anchor) == (412, 421, None)
    assert only.comments == ("A printer's error.",)
    assert back.isbn == "9780306406157"


def test_the_number_of_a_point_stays_with_its_digest():
    """Taken into another digest, a quotation does not say after which of its points it stands."""
    taken = annotations_in(written(collection(DIGEST, "Moby-Dick", None, None, QUOTATIONS)))
    assert [each.quotation.after for each in taken] == [None, None, None]
    assert taken[0].anchor == ANCHOR


def test_a_book_is_named_by_a_sound_isbn_or_by_its_title():
    """A wrong check digit names no book."""
    assert book_urn("Emma", "0-306-40615-2") == "urn:isbn:0306406152"
    assert book_urn("Emma & Co", "0-306-40615-3") == "urn:x-catchword:book:Emma%20%26%20Co"


def nested(levels: int) -> str:
    """Return JSON of arrays in one another."""
    return "[" * levels + "]" * levels


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "no JSON"),
        ('{"type": "Annotation"', "no JSON"),
        ('{"a": NaN}', "no JSON"),
        ("<rdf/>", "no JSON"),
        ("9" * 5000, "no JSON"),
        (nested(100_000), "no JSON"),
        (nested(MAX_DEPTH + 2), "deeper"),
        ("[]", "no Web Annotation"),
        ("null", "no Web Annotation"),
        ('{"type": "Dataset", "items": [1, 2]}', "no Web Annotation"),
        (json.dumps(EXAMPLES["whole"]), "quotes no words"),
        (json.dumps([{"type": "Annotation"}] * (MAX_ANNOTATIONS + 1)), "more than"),
        ("[" + "0," * 1_000_001 + "0]", "more than"),
    ],
    ids=range(13),
)
def test_what_is_no_annotation_is_refused(text: str, says: str):
    """What is broken, too deep, too large or quotes nothing is refused in a sentence."""
    with pytest.raises(InvalidAnnotations, match=says) as refused:
        read(text)
    assert refused.value.message.endswith(".")


@pytest.mark.parametrize(
    "target",
    [
        7,
        [[["x"]]],
        {"source": 5, "selector": {"type": ["TextQuoteSelector"], "exact": {"a": 1}}},
        {"selector": {"type": "TextQuoteSelector", "exact": "\x00"}},
        {"selector": {"type": "TextQuoteSelector", "exact": "x" * 30_000}},
        {"selector": {"type": "TextQuoteSelector", "exact": "   "}},
    ],
)
def test_targets_of_any_shape_break_nothing(target: object):
    """A target that is not shaped as the model says makes no quotation, and harms no other."""
    made = [{"type": "Annotation", "target": target}, EXAMPLES["quote"]]
    back = read(json.dumps(made))
    assert [each.exact for each in back.quotations] == ["anotation"]
    assert len(back.left) == 1


@pytest.mark.parametrize("position", [(-1, 5), (9, 5), (True, 5), ("1", 5), (1.5, 5), (0, 2**80)])
def test_offsets_that_are_none_are_not_taken(position: tuple[object, object]):
    """Offsets that are negative, reversed, no integers or past all texts are left out."""
    made = json.loads(json.dumps(EXAMPLES["quote"]))
    made["target"]["selector"] = [
        made["target"]["selector"],
        {"type": "TextPositionSelector", "start": position[0], "end": position[1]},
    ]
    (only,) = read(json.dumps(made)).quotations
    assert (only.start, only.end) == (None, None)
