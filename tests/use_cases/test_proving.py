"""A digest held against the text of its book, while others use the library."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from uuid import UUID

import pytest

from cards.digest import Digest
from cards.proving import Folded
from cards.proving.proof import Mend, Proof, prove
from service.store.errors import StoreBusy
from service.store.sql_store import SqlStore
from service.use_cases import prove as prove_module
from service.use_cases.mend_digest import mend_digest
from service.use_cases.prove import give_book, mend_from_book, proof_of
from tests.use_cases.house import House

BOOK = b"There were angels who came and took men by the hand. " * 3
PAGE = b"<html><body><p>There were angels who came and took men by the hand.</p></body></html>"


def test_nobody_waits_while_a_digest_is_proved(
    house: House, digest: Digest, added: Callable[[], UUID], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Quotations are looked for outside of the transaction: another may write meanwhile."""
    digest_id = added()
    proving = prove
    written: list[int] = []

    def prove_slowly(looked_for: Digest, book: Folded) -> tuple[Proof, ...]:
        if not written:
            said = replace(digest, theme="A weaver hoards gold, and is given a child for it.")
            with ThreadPoolExecutor(1) as other:
                done = other.submit(mend_digest, house.desk, digest_id, said)
                written.append(done.result(timeout=5).revision)
        return proving(looked_for, book)

    monkeypatch.setattr(prove_module, "prove", prove_slowly)
    monkeypatch.setattr(prove_module, "_PROVED", {})
    proved = give_book(house.desk, digest_id, "silas.txt", b"In those days. " + BOOK)
    assert written == [2]
    assert proved.kept.revision == 2
    assert proved.proofs[0].found is not None


def test_the_same_bytes_as_another_kind_of_file_are_another_text(
    house: House, added: Callable[[], UUID]
) -> None:
    """What was folded of a page read as text is not taken for the page read as one."""
    digest_id = added()
    as_page = give_book(house.desk, digest_id, "silas.html", PAGE).proofs[0].found
    as_text = give_book(house.desk, digest_id, "silas.log.md", b"\n" + PAGE).proofs[0].found
    again = give_book(house.desk, digest_id, "silas.html", b"\n" + PAGE).proofs[0].found
    assert as_page is not None
    assert as_text is not None
    assert again is not None
    assert again.start == as_page.start


def test_many_books_looked_at_at_once_are_each_their_own(
    store: SqlStore, added: Callable[[], UUID], house: House
) -> None:
    """Readers who look at more books than are kept folded get each the places in their own."""
    digest_id = added()

    def look(number: int) -> bool:
        try:
            proved = give_book(house.desk, digest_id, f"{number}.txt", b"x " * number + BOOK)
        except StoreBusy:
            return True
        found = proved.proofs[0].found
        return found is not None and found.start == 2 * number

    with ThreadPoolExecutor(8) as threads:
        assert all(threads.map(look, range(1, 33)))


def test_mending_proves_what_it_made(
    house: House, digest: Digest, added: Callable[[], UUID]
) -> None:
    """After a mend in one step the proof shown is of the mended words."""
    digest_id = added()
    slip = replace(
        digest.quotations[0], text="There were angels who came and tuok men by the hand."
    )
    mend_digest(house.desk, digest_id, replace(digest, quotations=(slip,)))
    give_book(house.desk, digest_id, "silas.txt", BOOK.replace(b". ", b".", 1)[:52])
    assert Mend.WORDS in proof_of(house.desk, digest_id).proofs[0].mends
    mended = mend_from_book(house.desk, digest_id, {1: [Mend.WORDS]})
    assert "took men" in mended.proofs[0].quotation.text
    assert Mend.WORDS not in mended.proofs[0].mends
