"""Steps of `proved_against_the_book.feature`."""

import json

import pytest
from pytest_bdd import given, scenarios, then, when

from cards.answers import Grade
from cards.errors import BookTextMissing
from cards.kinds.base import KindName
from cards.parts import PartKind
from cards.proving import SlipKind
from cards.proving.proof import Mend
from service.use_cases.library import open_digest
from service.use_cases.prove import (
    annotations_of,
    forget_book,
    give_book,
    mend_from_book,
    proof_of,
)
from service.use_cases.records import Form
from service.use_cases.versions import list_versions
from service.use_cases.writing_out import write_out

scenarios("proved_against_the_book.feature")

DIGEST = """\
# Persuasion

Jane Austen

## Summary

Eight years after she was talked out of an engagement, Anne Elliot is loved again, and this time
trusts her own judgement.

## Points

1. Anne is persuaded to give up Wentworth. (ch. 4)
2. The letter in the White Hart. (ch. 23)

## Quotations

> She had been forced into prudance in her youth, she learned romance as she grew older

> You pierce my soul. I am half agony, half hope. (ch. 12)

> All the privilege I claim for my own sex is that of loving longest

> A man must think well of himself to go far in the navy
"""
NOVEL = """\
PERSUASION

CHAPTER 1

Sir Walter Elliot, of Kellynch Hall, in Somersetshire, was a man who, for his own amusement,
never took up any book but the Baronetage.

CHAPTER 2

How eloquent could Anne Elliot have been! She had been forced into prudence in her youth, she
learned romance as she grew older: the natural sequel of an unnatural beginning.

CHAPTER 3

"All the privilege I claim for my own sex (it is not a very enviable one; you need not covet
it), is that of loving longest, when existence or when hope is gone."

"I can listen no longer in silence. You pierce my soul. I am half agony, half hope. Tell me not
that I am too late, that such precious feelings are gone for ever."
"""
PREFACE = """\
PREFACE

{}
""".format("The editor has corrected the punctuation of the first printing throughout. " * 12)


def kept(mira):
    return open_digest(mira.desk, mira.reports[0].kept.id).kept


@given('Mira\'s digest of "Persuasion" with four quotations, copied in haste')
def copied(mira):
    mira.source, mira.file = DIGEST, "persuasion.docx"
    mira.adds()
    mira.answers_all_of_it(Grade.CLEAR)


@given("the text of the book, an ordinary text file")
def the_text(mira):
    (mira.folder / "persuasion.txt").write_text(NOVEL, encoding="utf-8")


@when("she gives the text to the digest")
def gives(mira):
    content = (mira.folder / "persuasion.txt").read_bytes()
    mira.noted = give_book(mira.desk, kept(mira).id, "persuasion.txt", content)


@when("she gives the text of another edition, with a preface before it")
def another_edition(mira):
    first = mira.noted
    content = (PREFACE + NOVEL).encode()
    mira.noted = (first, give_book(mira.desk, kept(mira).id, "other.txt", content))


@when("she has everything mended")
def mends(mira):
    wanted = {proof.number: tuple(Mend) for proof in mira.noted.proofs}
    mend_from_book(mira.desk, kept(mira).id, wanted, kept(mira).revision)


@when("she has the text forgotten")
def forgets(mira):
    forget_book(mira.desk, kept(mira).id)


@then("three quotations are found where they stand, and one is not in the book")
def found(mira):
    proofs = mira.noted.proofs
    assert [proof.found is not None for proof in proofs] == [True, True, True, False]
    assert [proof.found.spot.chapter.number for proof in proofs[:3]] == [2, 3, 3]


@then('the slip in the first is shown, "prudance" for "prudence"')
def slip(mira):
    (only,) = mira.noted.proofs[0].found.slips
    assert (only.kind, only.quoted, only.book) == (SlipKind.SPELLING, "prudance", "prudence")


@then("the chapter she noted wrongly for the second is said to be another")
def contradicted(mira):
    assert "ch. 12" in mira.noted.proofs[1].contradiction or (
        "chapter 12" in mira.noted.proofs[1].contradiction
    )
    assert "chapter 3" in mira.noted.proofs[1].contradiction


@then("the quotations say what the book says, with the chapter they stand in")
def mended(mira):
    quotations = kept(mira).digest().quotations
    assert quotations[0].text.startswith("She had been forced into prudence")
    assert [quotation.locator for quotation in quotations] == ["ch. 2", "ch. 3", "ch. 3", None]


@then("what she answered about them stays with them")
def history_stays(mira):
    placed = [
        item.kept
        for item in mira.items().values()
        if item.kept.item.kind is KindName.PLACE and item.kept.memory is not None
    ]
    ids = {part.id for part in mira.reports[0].kept.held(PartKind.QUOTATION)}
    assert placed
    assert {each.item.part_id for each in placed} <= ids


@then("a version of the digest before that is kept")
def version_kept(mira):
    assert [each.cause for each in list_versions(mira.desk, kept(mira).id).entries] == [
        "proved",
        "added",
    ]


@then("the three are found again, further on")
def further_on(mira):
    first, second = mira.noted
    for earlier, later in zip(first.proofs[:3], second.proofs[:3], strict=True):
        assert later.found.exact == earlier.found.exact
        assert later.found.start > earlier.found.start


@then("no form the digest is written out in holds more of the book than she quoted")
def not_exported(mira):
    for form in (Form.MARKDOWN, Form.JSON):
        written = write_out(mira.desk, kept(mira).id, form).content.decode()
        assert "Baronetage" not in written
    assert "Baronetage" not in json.dumps(annotations_of(mira.desk, kept(mira).id))


@then("what was found stays with the quotations")
def anchors_stay(mira):
    with pytest.raises(BookTextMissing):
        proof_of(mira.desk, kept(mira).id)
    assert "half agony" in annotations_of(mira.desk, kept(mira).id)
