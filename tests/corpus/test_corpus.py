"""Every document of the corpus, understood down to its last part.

What each of them holds was written down beside it by hand, from what its reader meant:
common practice, no published source. README.md says who made which document.
"""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from cards import intake
from cards.digest import Digest
from service.documents.reader import PandocDocuments

HERE = Path(__file__).parent
DOCUMENTS = sorted(path.name for path in (HERE / "documents").iterdir())
TYPED = (".txt", ".text", ".md", ".markdown")
"""Formats in which a straight mark may be set as the curly one that was meant."""
FACTS = ("title", "author", "isbn", "pages", "finished_on")
TEXTS = ("theme", "judgement")
LISTS = ("points", "commitments", "quotations")
_SET = {"---": "—", "--": "–", "...": "…", "’": "'", "‘": "'", "“": '"', "”": '"'}


def digests_in(name: str) -> list[dict[str, Any]]:
    """Return the digests a document was understood to hold."""
    document = PandocDocuments().read(name, (HERE / "documents" / name).read_bytes())
    return [as_expected(one.digest) for one in intake.understand_all(document)]


def as_expected(digest: Digest) -> dict[str, Any]:
    """Return a digest in the form in which what is expected is written down."""
    return {
        **{fact: getattr(digest, fact) for fact in (*FACTS, *TEXTS, "edition")},
        "finished_on": None if digest.finished_on is None else digest.finished_on.isoformat(),
        "points": [{"text": one.text, "locator": one.locator} for one in digest.points],
        "commitments": [one.text for one in digest.commitments],
        "quotations": [
            {"text": one.text, "locator": one.locator, "after": one.after}
            for one in digest.quotations
        ],
    }


def compared(value: object, *, typed: bool) -> object:
    """Return a value as it is compared: white space collapsed, typed marks as one sort."""
    if isinstance(value, dict):
        return {key: compared(inner, typed=typed) for key, inner in value.items()}
    if isinstance(value, list):
        return [compared(inner, typed=typed) for inner in value]
    if not isinstance(value, str):
        return value
    if typed:
        value = re.sub("|".join(map(re.escape, _SET)), lambda found: _SET[found[0]], value)
    return " ".join(value.split())


def wrong_parts(wanted: dict[str, Any], found: dict[str, Any], *, typed: bool) -> list[str]:
    """Return a line for each part of a digest that is not as it was meant."""
    wrong = []
    for part in (*FACTS, *TEXTS, *LISTS, "edition"):
        if part == "edition" and part not in wanted:
            continue
        want, got = (compared(digest[part], typed=typed) for digest in (wanted, found))
        if want == got:
            continue
        if part not in LISTS:
            wrong.append(f"{part}: {want!r} was meant, {got!r} understood")
            continue
        assert isinstance(want, list)
        assert isinstance(got, list)
        if len(want) != len(got):
            wrong.append(f"{part}: {len(want)} were meant, {len(got)} understood")
        for at in range(max(len(want), len(got))):
            pair = [side[at] if at < len(side) else None for side in (want, got)]
            if pair[0] != pair[1]:
                wrong.append(f"{part} {at + 1}: {pair[0]!r} was meant, {pair[1]!r} understood")
    return wrong


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_part_is_as_its_reader_meant(name: str):
    """Each digest of a document has the parts its reader meant, and no others."""
    wanted = json.loads((HERE / "expected" / f"{name}.json").read_text(encoding="utf-8"))
    found = digests_in(name)
    wrong = (
        []
        if len(wanted) == len(found)
        else [f"digests: {len(wanted)} were meant, {len(found)} understood"]
    )
    for number, (want, got) in enumerate(zip(wanted, found, strict=False), 1):
        lines = wrong_parts(want, got, typed=name.endswith(TYPED))
        wrong += lines if len(wanted) == 1 else [f"digest {number}, {line}" for line in lines]
    assert not wrong, "\n" + "\n".join(wrong)


def test_every_document_is_accounted_for():
    """Each document has its expected digests and its line in README.md, and neither has more."""
    expected = sorted(
        path.name.removesuffix(".json") for path in (HERE / "expected").glob("*.json")
    )
    assert expected == DOCUMENTS
    readme = (HERE / "README.md").read_text(encoding="utf-8")
    assert sorted(re.findall(r"^\| `(.+?)` \|", readme, re.MULTILINE)) == DOCUMENTS
