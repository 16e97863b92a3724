"""Many files handed in at once, a folder or a zip: a report on each as soon as it is done."""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from io import BytesIO
from typing import IO

from flask import current_app
from werkzeug.datastructures import FileStorage

from cards.errors import CatchwordError
from service.pages.digest_form import lay
from service.pages.wording import capital, counted, listed
from service.use_cases.add_bundle import FileReport, add_files, files_in, look_over_files
from service.use_cases.add_digest import Added, Status
from service.use_cases.mend_digest import unplaced
from service.use_cases.ports import LARGEST_BUNDLE, Desk
from service.use_cases.records import BundledFile

_FAILED = (
    "Something went wrong in Catchword with this file, and the fault is not yours; what happened "
    "is written in its log. The other files go on."
)


@dataclass(frozen=True, slots=True)
class Upload:
    """A file as it was handed in: its name, and the stream of its bytes."""

    name: str
    stream: IO[bytes]


def taken_over(files: Iterable[FileStorage]) -> list[Upload]:
    """Return the files of a request, to be read after it.

    A request closes its files before a streamed page is sent; so their streams are taken
    off it. Whoever reads them closes them.
    """
    uploads = []
    for file in files:
        uploads.append(Upload(file.filename or "", file.stream))
        file.stream = BytesIO()
    return uploads


@dataclass(slots=True)
class Sum:
    """What became of all files so far.

    Attributes:
        files: how many are done.
        digests: how many digests were added, changed or unchanged.
        drafts: how many were laid out to look over.
        refused: how many files were refused.
    """

    files: int = 0
    digests: Counter[Status] = field(default_factory=Counter)
    drafts: int = 0
    refused: int = 0

    def take(self, report: FileReport) -> None:
        """Count one more file."""
        self.files += 1
        self.digests.update(added.status for added in report.added)
        self.drafts += len(report.drafts)
        self.refused += report.refused is not None

    @property
    def words(self) -> str:
        """All of it in one sentence."""
        said = [
            f"{counted(self.digests[status], 'digest')} {status}"
            for status in Status
            if self.digests[status]
        ]
        if self.drafts:
            said.append(f"{counted(self.drafts, 'draft')} to look over")
        if self.refused:
            said.append(f"{counted(self.refused, 'file')} refused")
        return f"{capital(counted(self.files, 'file'))}: {listed(said or ['nothing'])}."


@dataclass(frozen=True, slots=True)
class Step:
    """One file that is done, and how far all of them are.

    Attributes:
        report: what became of it.
        done: how much is done, of `of`; a zip of ten files is tenths of one.
        of: how many files were handed in; of a single zip, how many are in it.
        words: how far it is, in words.
    """

    report: FileReport
    done: float
    of: int
    words: str


def asked_of(added: Added) -> int:
    """Return how many quotations wait to be told after which point they stand."""
    return len(unplaced(added.kept))


def steps(desk: Desk, files: Sequence[Upload], total: Sum, *, look: bool) -> Iterator[Step]:
    """Keep the digests in files one by one, or lay them out to look over, and tell of each.

    At most one of the files is held in memory. Nothing that goes wrong with one of them
    stops the others.

    Args:
        desk: the door's desk.
        files: as they were handed in.
        total: what they come to; it is counted up as they are done.
        look: whether they are only laid out as drafts.
    """
    take = _looked_over if look else add_files
    try:
        for number, file in enumerate(files, 1):
            for one in _inside(desk, file):
                for report in _reports(desk, one, take):
                    total.take(report)
                    if len(files) == 1:
                        yield Step(report, one.number, one.of, _far(one.number, one.of))
                    else:
                        done = number - 1 + one.number / one.of
                        yield Step(report, done, len(files), _far(number, len(files)))
    finally:
        for file in files:
            file.stream.close()


def _inside(desk: Desk, file: Upload) -> Iterator[BundledFile]:
    content = file.stream.read(LARGEST_BUNDLE + 1)
    file.stream.close()
    return files_in(desk, [BundledFile(file.name, content)])


def _looked_over(desk: Desk, files: Iterable[BundledFile]) -> Iterator[FileReport]:
    return look_over_files(desk, files, lay)


def _reports(
    desk: Desk,
    file: BundledFile,
    take: Callable[[Desk, Iterable[BundledFile]], Iterator[FileReport]],
) -> Iterator[FileReport]:
    try:
        yield from take(desk, [file])
    except CatchwordError as error:
        yield FileReport(file.name, refused=error)
    except Exception:
        # The page is half sent, so nothing can answer for it but a line of its own.
        current_app.logger.exception("A file of many could not be taken in.")
        yield FileReport(file.name, refused=CatchwordError(_FAILED))


def _far(done: int, of: int) -> str:
    return f"{done} of {counted(of, 'file')}"
