"""`catchword add FILE...`: keep digests, and report on each file."""

import sys
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, nullcontext
from pathlib import Path

import click

from cards.errors import CatchwordError, DocumentRefused, Refusal
from service.cli.files import bytes_of, warnings_of
from service.cli.group import Tools, exit_code
from service.cli.screen import console, faint, heading, print_json
from service.use_cases.add_bundle import FileReport, add_files
from service.use_cases.ports import LARGEST_BUNDLE
from service.use_cases.records import BundledFile
from service.use_cases.telling import told_once

_SHOWN_FROM = 5
"""Files from which a bar shows how far it is."""


@click.command()
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print the reports as a JSON array.")
@click.pass_obj
def add(tools: Tools, files: tuple[Path, ...], *, as_json: bool) -> None:
    """Keep the digests in FILES, in folders and in zips of them.

    A file that cannot be read stops none of the others.
    """
    named = [path for file in files for path in _files(file)]
    if not named:
        raise DocumentRefused("There is no file in that folder. Nothing was added.", where="files")
    code = 0
    reports: list[dict[str, object]] = []
    report_on: Callable[[dict[str, object]], None] = reports.append if as_json else _print_report
    with tools.desk() as desk, _progress(len(named)) as advance:
        for path in named:
            for report in add_files(desk, [_read(path)]):
                if report.refused is not None:
                    code = exit_code(report.refused)
                for fields in _fields(report, whole=as_json):
                    report_on(fields)
            advance()
    if as_json:
        print_json(reports)
    if code:
        raise click.exceptions.Exit(code)


def _files(path: Path) -> list[Path]:
    """Return a file, or the files of a folder and the folders in it, by name; hidden ones not."""
    if not path.is_dir():
        return [path]
    inside = (each for each in path.rglob("*") if each.is_file())
    shown = (each for each in inside if not _hidden(each.relative_to(path)))
    return sorted(shown)


def _hidden(path: Path) -> bool:
    return any(part.startswith((".", "~$")) for part in path.parts)


def _read(path: Path) -> BundledFile:
    try:
        return BundledFile(str(path), bytes_of(path, LARGEST_BUNDLE))
    except DocumentRefused as refusal:
        return BundledFile(str(path), None, refusal)


def _progress(files: int) -> AbstractContextManager[Callable[[], None]]:
    """Return a bar on standard error while many files are read, where someone looks on."""
    if files < _SHOWN_FROM or not sys.stderr.isatty():
        return nullcontext(lambda: None)
    return _Bar(files)


class _Bar(AbstractContextManager[Callable[[], None]]):
    def __init__(self, files: int) -> None:
        self._bar = click.progressbar(length=files, label="Reading", file=sys.stderr, show_pos=True)

    def __enter__(self) -> Callable[[], None]:
        self._bar.__enter__()
        return lambda: self._bar.update(1)

    def __exit__(self, *failure: object) -> None:
        self._bar.render_finish()


def _fields(report: FileReport, *, whole: bool) -> Iterator[dict[str, object]]:
    """Yield one report a digest, or one on the file that was refused.

    `whole` gives every warning, as programs want them; else each thing is told once.
    """
    for added in report.added:
        yield {
            "file": report.name,
            "title": added.kept.title,
            "status": added.status.value,
            "items": added.items,
            "warnings": warnings_of(added.notices if whole else told_once(added.notices)[0]),
        }
    if report.refused is not None:
        yield {
            "file": report.name,
            "title": None,
            "status": "refused",
            "items": {},
            "warnings": [_warning(report.refused)],
        }


def _warning(error: CatchwordError) -> dict[str, str]:
    part = error.where if isinstance(error, Refusal) else None
    return {"part": part or "document", "message": error.message}


def _print_report(report: dict[str, object]) -> None:
    screen = console()
    title = report["title"] or report["file"]
    screen.print(heading(f"{title}: {report['status']}"))
    items, warnings = report["items"], report["warnings"]
    if isinstance(items, dict) and items:
        screen.print(", ".join(f"{count} {kind}" for kind, count in items.items()))
    if isinstance(warnings, list):
        for warning in warnings:
            # A refusal is about the file just named.
            part = "" if report["status"] == "refused" else f"{warning['part']}: "
            screen.print(faint(f"{part}{warning['message']}"))
