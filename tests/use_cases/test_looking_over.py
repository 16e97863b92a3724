"""What a reader asks while looking a draft over."""

from dataclasses import replace
from uuid import uuid4

import pytest

from cards.digest import Digest
from cards.errors import DraftChanged, DraftMissing, InvalidDraft
from cards.intake.heading_words import Part
from service.use_cases.add_digest import add_digest
from service.use_cases.drafts import begin_draft, change_draft, look_over, open_draft
from service.use_cases.headings import set_headings
from service.use_cases.looking_over import already_kept, read_again
from service.use_cases.mend_digest import remove_digest
from service.use_cases.records import Draft
from tests.use_cases.house import House


def lay(digest: Digest) -> dict[str, str]:
    """Lay a digest out as a form of two fields."""
    return {"title": digest.title, "commitments": str(len(digest.commitments))}


def test_the_same_book_is_found_in_the_library(house: House, digest: Digest) -> None:
    """A digest of the same title and author is found whatever its case; a removed one is not."""
    assert already_kept(house.desk, digest) == ()
    added = add_digest(house.desk, "silas.docx", house.shelf.put(digest))
    shouted = replace(digest, title="SILAS MARNER", theme="Another theme altogether.")
    assert [kept.id for kept in already_kept(house.desk, shouted)] == [added.kept.id]
    assert already_kept(house.desk, replace(digest, title="Emma")) == ()
    remove_digest(house.desk, added.kept.id)
    assert already_kept(house.desk, digest) == ()


def test_a_file_is_read_again_with_new_headings(house: House, digest: Digest) -> None:
    """What is read anew takes the place of what was changed, under the same id and file."""
    (draft,) = look_over(house.desk, "silas.docx", house.shelf.put(digest), lay)
    change_draft(house.desk, draft.id, {"title": "Changed"}, draft.revision)
    set_headings(house.desk, {"Commitments": Part.POINTS})
    again = read_again(house.desk, draft.id, lay)
    assert again == open_draft(house.desk, draft.id)
    assert dict(again.typed) == {"title": "Silas Marner", "commitments": "0"}
    assert (again.file, again.revision, again.begun_at) == ("silas.docx", 3, draft.begun_at)
    assert read_again(house.desk, draft.id, lay).revision == 4


def test_what_came_from_no_file_cannot_be_read_again(house: House) -> None:
    """A draft that is not there, or was written here, has no file to read."""
    with pytest.raises(DraftMissing):
        read_again(house.desk, uuid4(), lay)
    draft = begin_draft(house.desk, {"title": "Walden"})
    with pytest.raises(DraftMissing):
        read_again(house.desk, draft.id, lay)


def test_a_file_that_holds_fewer_digests_now(house: House, digest: Digest) -> None:
    """Where the file has no digest in the draft's place now, it is said, and nothing changes."""
    content = house.shelf.put(digest)
    (draft,) = look_over(house.desk, "silas.docx", content, lay)
    with house.desk.store.writing() as work:
        original = work.drafts.original(house.desk.reader, draft.id)
        work.drafts.drop(house.desk.reader, draft.id)
        work.drafts.put(house.desk.reader, replace(draft, number=2))
        work.drafts.keep_original(house.desk.reader, draft.id, original)
        work.commit()
    with pytest.raises(InvalidDraft, match="holds 1 digest,"):
        read_again(house.desk, draft.id, lay)
    assert open_draft(house.desk, draft.id).number == 2


def test_what_is_kept_while_a_file_is_read_again_keeps_its_revision(
    house: House, digest: Digest
) -> None:
    """Another tab that saved meanwhile is told that the draft changed, and overwrites nothing."""
    (draft,) = look_over(house.desk, "silas.docx", house.shelf.put(digest), lay)

    def lay_slowly(read: Digest) -> dict[str, str]:
        saved.append(change_draft(house.desk, draft.id, {"title": "Changed"}, draft.revision))
        return lay(read)

    saved: list[Draft] = []
    again = read_again(house.desk, draft.id, lay_slowly)
    assert again.revision == saved[0].revision + 1
    with pytest.raises(DraftChanged):
        change_draft(house.desk, draft.id, {"title": "Late"}, saved[0].revision)
