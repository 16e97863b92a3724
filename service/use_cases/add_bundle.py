"""A reader hands over many files at once, a folder or a zip: each is kept by itself."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass

from cards.digest import Digest
from cards.errors import DocumentRefused, Invalid
from service.use_cases.add_digest import Added, add_digests
from service.use_cases.drafts import look_over
from service.use_cases.ports import Desk
from service.use_cases.records import BundledFile, Draft


@dataclass(frozen=True, slots=True)
class FileReport:
    """What became of one file of many.

    Attributes:
        name: the file's, with the folders it stood in.
        added: what became of each digest in it.
        drafts: the drafts laid out of it, where it was only looked over.
        refusal: the sentence that says why it was refused, or None.
        part: what the refusal is about, or None.
    """

    name: str
    added: tuple[Added, ...] = ()
    drafts: tuple[Draft, ...] = ()
    refusal: str | None = None
    part: str | None = None


def files_in(desk: Desk, files: Iterable[BundledFile]) -> Iterator[BundledFile]:
    """Yield files one by one, those inside a zip in its place; at most one is held in memory."""
    for file in files:
        bundle = None if file.content is None else desk.documents.unpack(file.name, file.content)
        if bundle is None:
            yield file
        else:
            yield from bundle


def add_files(desk: Desk, files: Iterable[BundledFile]) -> Iterator[FileReport]:
    """Keep the digests of many files, yielding a report on each as soon as it is done.

    One that cannot be read stops none of the others.
    """
    for file in files_in(desk, files):
        yield _report(
            file, lambda name, content: FileReport(name, added=add_digests(desk, name, content))
        )


def look_over_files(
    desk: Desk, files: Iterable[BundledFile], lay: Callable[[Digest], Mapping[str, str]]
) -> Iterator[FileReport]:
    """Lay out the digests of many files as drafts, yielding a report on each; see `look_over`."""
    for file in files_in(desk, files):
        yield _report(
            file, lambda name, content: FileReport(name, drafts=look_over(desk, name, content, lay))
        )


def _report(file: BundledFile, take: Callable[[str, bytes], FileReport]) -> FileReport:
    if file.content is None:
        return _refused(file.name, file.refusal)
    try:
        return take(file.name, file.content)
    except (DocumentRefused, Invalid) as refusal:
        return _refused(file.name, refusal)


def _refused(name: str, refusal: DocumentRefused | Invalid | None) -> FileReport:
    if refusal is None:
        raise AssertionError("a file without content was refused, and says why")
    return FileReport(name, refusal=refusal.message, part=refusal.where)
