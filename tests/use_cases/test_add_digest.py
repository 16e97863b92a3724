"""A digest is added, recognised, corrected, removed and added again."""

from dataclasses import replace

import pytest

from cards.digest import Commitment, Point, Quotation
from cards.errors import DigestChanged, DigestMissing, InvalidDigest
from cards.intake import unplaced
from service.store.items import SqlItems
from service.use_cases.add_digest import Status, add_digest
from service.use_cases.library import list_digests, open_digest, open_original
from service.use_cases.mend_digest import mend_digest, place_quotations, remove_digest


def hand_over(house, digest, name="silas.docx"):
    """Add a digest as a file."""
    return add_digest(house.desk, name, house.shelf.put(digest))


def test_a_new_digest_is_kept_whole_with_its_original(house, digest):
    """What was understood, its items and the very bytes of the file come back."""
    report = hand_over(house, digest)
    opened = open_digest(house.desk, report.kept.id)
    assert report.status is Status.ADDED
    assert report.items == {
        "theme": 1,
        "next": 3,
        "restate": 2,
        "complete": 1,
        "source": 1,
        "order": 1,
        "place": 1,
    }
    assert opened.kept.digest() == replace(digest, pages=None)
    assert opened.original == "silas.docx"
    assert open_original(house.desk, report.kept.id).content == house.shelf.put(digest)


def test_the_same_file_twice_changes_nothing(house, digest):
    """The second time it is unchanged, to the last row a reader can see."""
    first = hand_over(house, digest)
    before = (open_digest(house.desk, first.kept.id), house.items())
    second = hand_over(house, digest, name="copy-of-silas.docx")
    assert second.status is Status.UNCHANGED
    assert before == (open_digest(house.desk, first.kept.id), house.items())


def test_the_same_file_leaves_corrections_alone_and_says_so(house, digest):
    """A digest mended since its file was added keeps its mending."""
    report = hand_over(house, digest)
    mended = replace(report.kept.digest(), theme="Another theme altogether.")
    mend_digest(house.desk, report.kept.id, mended)
    again = hand_over(house, digest)
    assert again.status is Status.UNCHANGED
    assert "mended since" in again.notices[-1].message
    assert open_digest(house.desk, report.kept.id).kept.digest() == mended


@pytest.mark.parametrize(
    "correction",
    [
        {"title": "SILAS  MARNER."},
        {"author": "george eliot"},
        {"title": "Silas Marner, the Weaver", "author": "Eliot"},
    ],
)
def test_a_corrected_book_is_recognised(house, digest, correction):
    """By title and author whatever their spelling, or by its file's name and its parts."""
    first = hand_over(house, digest)
    second = hand_over(house, replace(digest, **correction))
    assert second.status is Status.CHANGED
    assert second.kept.id == first.kept.id
    assert len(list_digests(house.desk).entries) == 1


def test_an_isbn_copied_by_mistake_makes_no_other_book_the_same(house, digest):
    """Another book under the same ISBN, as a copied template has it, is another book."""
    other = replace(
        digest,
        title="Cranford",
        author="Elizabeth Gaskell",
        isbn="9780306406157",
        theme="A town of ladies lives by small economies and large kindness.",
        points=(),
        commitments=(Commitment("I will pay old Mr. Peter a visit every Thursday."),),
        quotations=(),
    )
    first = hand_over(house, replace(digest, isbn="9780306406157"))
    assert first.kept.isbn == "9780306406157"
    assert hand_over(house, other, name="b.docx").status is Status.ADDED
    longer = replace(digest, isbn="9780306406157", title="Silas Marner: The Weaver of Raveloe")
    assert hand_over(house, longer, name="c.docx").status is Status.CHANGED


def test_what_the_reader_said_is_not_asked_again(house, digest):
    """A place told once is no longer among the notices when the digest is added again."""
    nowhere = replace(digest, quotations=(Quotation("Stay, and it will come by.", "ch. 2"),))
    first = hand_over(house, nowhere)
    assert unplaced(1) in first.notices
    place_quotations(house.desk, first.kept.id, {1: 2})
    assert unplaced(1) not in hand_over(house, replace(nowhere, theme="Reworded.")).notices
    remove_digest(house.desk, first.kept.id)
    assert unplaced(1) not in hand_over(house, nowhere).notices


def test_another_book_under_the_same_file_name_is_another_book(house, digest):
    """A name like digest.docx says nothing when the parts are others."""
    other = replace(
        digest,
        title="Cranford",
        author="Elizabeth Gaskell",
        theme="A town of ladies lives by small economies and large kindness.",
        points=(Point("The Captain reads in the street."), Point("The bank fails.")),
        commitments=(Commitment("I will pay old Mr. Peter a visit every Thursday."),),
        quotations=(),
    )
    hand_over(house, digest, name="digest.docx")
    assert hand_over(house, other, name="digest.docx").status is Status.ADDED
    assert len(list_digests(house.desk).entries) == 2


def test_a_removed_digest_comes_back_with_its_history(house, digest):
    """Adding the file of a removed digest restores the same digest and items."""
    first = hand_over(house, digest)
    before = house.items()
    remove_digest(house.desk, first.kept.id)
    assert not house.items()
    with pytest.raises(DigestMissing):
        open_digest(house.desk, first.kept.id)
    back = hand_over(house, digest)
    assert back.status is Status.ADDED
    assert back.kept.id == first.kept.id
    assert house.items() == before


def test_nothing_is_half_kept_when_keeping_fails(house, digest, monkeypatch):
    """A failure between the digest and its items leaves neither."""

    def fail(*_, **__):
        raise RuntimeError("the lights went out")

    monkeypatch.setattr(SqlItems, "put", fail)
    with pytest.raises(RuntimeError):
        hand_over(house, digest)
    assert not list_digests(house.desk).entries


def test_mending_an_older_revision_is_refused(house, digest):
    """Whoever opened the digest before another correction is told, and nothing is lost."""
    kept = hand_over(house, digest).kept
    mend_digest(house.desk, kept.id, replace(kept.digest(), theme="Mine."), kept.revision)
    with pytest.raises(DigestChanged):
        mend_digest(house.desk, kept.id, replace(kept.digest(), theme="Ours."), kept.revision)
    assert open_digest(house.desk, kept.id).kept.digest().theme == "Mine."


def test_a_quotation_is_placed_only_where_there_is_a_point(house, digest):
    """A point or quotation that is not there is refused by its number."""
    kept = hand_over(house, digest).kept
    for places, where in (({1: 9}, "quotations 1"), ({7: 1}, "quotations 7")):
        with pytest.raises(InvalidDigest) as refusal:
            place_quotations(house.desk, kept.id, places)
        assert refusal.value.where == where


def test_no_reader_reaches_anothers_digest(house, digest):
    """Another reader adds the same file as their own, and cannot open the first one's."""
    kept = hand_over(house, digest).kept
    other = house.another_reader()
    with pytest.raises(DigestMissing):
        open_digest(other.desk, kept.id)
    assert hand_over(other, digest).status is Status.ADDED


@pytest.mark.parametrize(
    ("given", "kept"),
    [
        ("../../etc/silas.docx", "silas.docx"),
        ("C:\\Books\\silas.docx", "silas.docx"),
        ("si\x00las\n.docx", "silas.docx"),
        ("x" * 300 + ".docx", "x" * 195 + ".docx"),
        ("///", "digest"),
    ],
)
def test_a_files_name_is_kept_without_folders_and_bounded(house, digest, given, kept):
    """What a browser or a program sends as a name is never taken for a path."""
    report = hand_over(house, digest, name=given)
    assert open_original(house.desk, report.kept.id).name == kept
