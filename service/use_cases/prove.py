"""A reader holds a digest against the text of its book, and mends it from there."""

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from threading import Lock
from uuid import UUID

from cards.digest import Digest
from cards.errors import BookTextMissing, InvalidDigest
from cards.parts import KeptDigest, PartKind
from cards.proving import Anchor, Folded, anchor_of, fold_book, reanchor
from cards.proving.proof import Mend, Proof, prove
from service.use_cases.add_digest import bare
from service.use_cases.keeping import opened, opened_to_change
from service.use_cases.mend_digest import change_digest
from service.use_cases.ports import Desk, UnitOfWork
from service.use_cases.records import AnnotatedQuotation, BookFile, Cause, PartAnchor

FOLDED_AT_ONCE = 4
"""Books kept folded while they are looked at: half a second each to fold, megabytes to keep."""

_FOLDED: dict[str, Folded] = {}
_PROVED: dict[tuple[str, Digest], tuple[Folded, tuple[Proof, ...]]] = {}
_LOCK = Lock()
"""For both: many readers' requests keep and let go at once."""


@dataclass(frozen=True, slots=True)
class Proved:
    """A digest held against the text of its book.

    Attributes:
        kept: the digest.
        book: the name of the file the text was read from.
        proofs: one a quotation, in the digest's order.
        anchors: where quotations were found, by the ids of their parts; those of an
            earlier edition where this text has them no more.
    """

    kept: KeptDigest
    book: str
    proofs: tuple[Proof, ...]
    anchors: Mapping[UUID, Anchor]


def give_book(desk: Desk, digest_id: UUID, name: str, content: bytes) -> Proved:
    """Keep the text of a digest's book, and hold the digest against it.

    The text stays in the reader's own library and is never exported. Quotations anchored
    in another edition are found again by their words.

    Raises:
        DigestMissing: this reader has no such digest.
        DocumentRefused: no text can be read from the file.
    """
    text = desk.books.read(name, content)
    sha256 = hashlib.sha256(content).hexdigest()
    book = BookFile(bare(name), sha256, desk.now(), text)
    with desk.store.reading() as work:
        digest = opened(desk, work, digest_id, None).digest()
    _proofs(digest, book)  # before the transaction: it takes as long as a thousand writes
    with desk.store.writing() as work:
        kept = opened_to_change(desk, work, digest_id, None)
        work.books.put(desk.reader, digest_id, book)
        proved = _proved(desk, work, kept, book)
        work.commit()
    return proved


def proof_of(desk: Desk, digest_id: UUID) -> Proved:
    """Hold a digest against the text of its book that was given before.

    Raises:
        DigestMissing: this reader has no such digest.
        BookTextMissing: no text of its book was given.
    """
    with desk.store.reading() as work:
        digest = opened(desk, work, digest_id, None).digest()
        book = _book(desk, work, digest_id)
    _proofs(digest, book)
    with desk.store.writing() as work:
        kept = opened_to_change(desk, work, digest_id, None)
        proved = _proved(desk, work, kept, book)
        work.commit()
    return proved


def mend_from_book(
    desk: Desk,
    digest_id: UUID,
    wanted: Mapping[int, Iterable[Mend]],
    revision: int | None = None,
) -> Proved:
    """Mend quotations from the text of their book, in one step.

    Args:
        desk: the door's desk.
        digest_id: which digest.
        wanted: the numbers of the quotations, with what is to be mended in each.
        revision: the revision the proof was read at, or None.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since that revision.
        BookTextMissing: no text of its book was given.
        InvalidDigest: there is no such quotation.
    """
    with desk.store.reading() as work:
        digest = opened(desk, work, digest_id, revision).digest()
        book = _book(desk, work, digest_id)
    wanted = {number: tuple(mends) for number, mends in wanted.items()}
    _proofs(_mended(digest, book, wanted), book)
    with desk.store.writing() as work:
        known = opened_to_change(desk, work, digest_id, revision)
        mended = _mended(known.digest(), book, wanted)
        kept = change_digest(desk, work, known, mended, Cause.PROVED)
        proved = _proved(desk, work, kept, book)
        work.commit()
    return proved


def forget_book(desk: Desk, digest_id: UUID) -> None:
    """Forget the text of a digest's book; what was found in it stays with the quotations.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.writing() as work:
        opened_to_change(desk, work, digest_id, None)
        work.books.drop(desk.reader, digest_id)
        work.commit()


def annotations_of(desk: Desk, digest_id: UUID) -> str:
    """Return the quotations of a digest as Web Annotations (W3C 2017), JSON-LD.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    with desk.store.reading() as work:
        kept = opened(desk, work, digest_id, None)
        anchors = {each.part_id: each.anchor for each in work.books.anchors(desk.reader, kept.id)}
    return desk.feeds.to_annotations(kept, anchors)


def take_annotations(
    desk: Desk, digest_id: UUID, text: str, revision: int | None = None
) -> KeptDigest:
    """Add to a digest the quotations that Web Annotations hold and it has not yet.

    Raises:
        DigestMissing: this reader has no such digest.
        DigestChanged: it was changed since that revision.
        InvalidAnnotations: the text is no such document.
        InvalidDigest: with them, it breaks a rule of digests.
    """
    brought = desk.feeds.annotations_in(text)
    with desk.store.writing() as work:
        known = opened_to_change(desk, work, digest_id, revision)
        digest = known.digest()
        held = {quotation.text for quotation in digest.quotations}
        fresh = [each for each in brought if each.quotation.text not in held]
        more = (*digest.quotations, *(each.quotation for each in fresh))
        kept = change_digest(desk, work, known, replace(digest, quotations=more), Cause.MENDED)
        work.books.put_anchors(desk.reader, kept.id, _anchors_brought(kept, brought))
        work.commit()
    return kept


def _anchors_brought(kept: KeptDigest, brought: Iterable[AnnotatedQuotation]) -> list[PartAnchor]:
    by_words = {part.text: part.id for part in kept.held(PartKind.QUOTATION)}
    return [
        PartAnchor(by_words[each.quotation.text], each.anchor)
        for each in brought
        if each.anchor is not None and each.quotation.text in by_words
    ]


def _mended(digest: Digest, book: BookFile, wanted: Mapping[int, Iterable[Mend]]) -> Digest:
    for number in wanted:
        if not 1 <= number <= len(digest.quotations):
            raise InvalidDigest(
                f"There is no quotation {number}; the digest has {len(digest.quotations)}.",
                where=f"quotations {number}",
            )
    proofs = _proofs(digest, book)
    mended = tuple(proof.mended(wanted.get(proof.number, ())) for proof in proofs)
    return replace(digest, quotations=mended)


def _proved(desk: Desk, work: UnitOfWork, kept: KeptDigest, book: BookFile) -> Proved:
    """Hold a digest against a text, and keep where its quotations were found."""
    folded = _folded(book)
    proofs = _proofs(kept.digest(), book)
    known = {each.part_id: each.anchor for each in work.books.anchors(desk.reader, kept.id)}
    anchors: dict[UUID, Anchor] = {}
    for part, proof in zip(kept.held(PartKind.QUOTATION), proofs, strict=True):
        if proof.found is not None:
            anchors[part.id] = anchor_of(proof.found, book.sha256)
        elif part.id in known:
            again = reanchor(known[part.id], folded, book.sha256)
            anchors[part.id] = known[part.id] if again is None else again
    moved = [PartAnchor(*each) for each in anchors.items() if known.get(each[0]) != each[1]]
    if moved:
        work.books.put_anchors(desk.reader, kept.id, moved)
    return Proved(kept, book.name, proofs, anchors)


def _book(desk: Desk, work: UnitOfWork, digest_id: UUID) -> BookFile:
    book = work.books.get(desk.reader, digest_id)
    if book is None:
        raise BookTextMissing(digest_id)
    return book


def _folded(book: BookFile) -> Folded:
    """Return the text of a book folded; the same bytes under another name may be another text."""
    folded = _FOLDED.get(book.sha256)
    if folded is None or folded.book != book.text:
        folded = fold_book(book.text)
        with _LOCK:
            _FOLDED.pop(book.sha256, None)
            while len(_FOLDED) >= FOLDED_AT_ONCE:
                del _FOLDED[next(iter(_FOLDED))]
            _FOLDED[book.sha256] = folded
    return folded


def _proofs(digest: Digest, book: BookFile) -> tuple[Proof, ...]:
    """Return the proofs of a digest by the text of its book, of those just made if they are."""
    folded = _folded(book)
    key = (book.sha256, digest)
    known = _PROVED.get(key)
    if known is not None and known[0] is folded:
        return known[1]
    proofs = prove(digest, folded)
    with _LOCK:
        _PROVED.pop(key, None)
        while len(_PROVED) >= FOLDED_AT_ONCE:
            del _PROVED[next(iter(_PROVED))]
        _PROVED[key] = (folded, proofs)
    return proofs
