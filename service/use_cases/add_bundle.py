"""A reader hands over many files at once, a folder or a zip: each is kept by itself."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from cards.digest import Digest
from cards.errors import CatchwordError, DocumentRefused
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
        refused: why nothing became of it, or None.
        number: which of the files handed over together, from 1.
        of: how many they are, as far as is known.
    """

    name: str
    added: tuple[Added, ...] = ()
    drafts: tuple[Draft, ...] = ()
    refused: CatchwordError | None = None
    number: int = 1
    of: int = 1

    @property
    def refusal(self) -> str | None:
        """The sentence that says why nothing became of it, or None."""
        return None if self.refused is None else self.refused.message


def files_in(desk: Desk, files: Iterable[BundledFile]) -> Iterator[BundledFile]:
    """Yield files one by one, those inside a zip in its place; at most one is held in memory."""
    for file in files:
        if file.content is None:
            yield file
            continue
        try:
            bundle = desk.documents.unpack(file.name, file.content)
        except DocumentRefused as refusal:
            yield replace(file, content=None, refusal=refusal)
            continue
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
    """Return what became of a file; whatever it is refused for stops none of the others."""
    if file.content is None:
        report = FileReport(file.name, refused=file.refusal)
    else:
        try:
            report = take(file.name, file.content)
        except CatchwordError as refusal:
            report = FileReport(file.name, refused=refusal)
    return replace(report, number=file.number, of=file.of)
