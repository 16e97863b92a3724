"""`catchword add FILE...`: keep digests, and report on each file."""

from collections.abc import Callable
from pathlib import Path

import click

from cards.errors import CatchwordError, Refusal
from service.cli.files import bytes_of, warnings_of
from service.cli.group import Tools, exit_code
from service.cli.screen import console, faint, heading, print_json
from service.use_cases.add_digest import add_digest
from service.use_cases.ports import Desk


@click.command()
@click.argument("files", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print the reports as a JSON array.")
@click.pass_obj
def add(tools: Tools, files: tuple[Path, ...], *, as_json: bool) -> None:
    """Keep the digests in FILES; a file that cannot be read stops none of the others."""
    code = 0
    reports: list[dict[str, object]] = []
    report_on: Callable[[dict[str, object]], None] = reports.append if as_json else _print_report
    with tools.desk() as desk:
        for file in files:
            try:
                report_on(_add(desk, file))
            except CatchwordError as error:
                code = exit_code(error)
                report_on(_refused(file, error))
    if as_json:
        print_json(reports)
    if code:
        raise click.exceptions.Exit(code)


def _add(desk: Desk, file: Path) -> dict[str, object]:
    added = add_digest(desk, file.name, bytes_of(file))
    return {
        "file": str(file),
        "title": added.kept.title,
        "status": added.status.value,
        "items": added.items,
        "warnings": warnings_of(added.notices),
    }


def _refused(file: Path, error: CatchwordError) -> dict[str, object]:
    part = error.where if isinstance(error, Refusal) else None
    return {
        "file": str(file),
        "title": None,
        "status": "refused",
        "items": {},
        "warnings": [{"part": part or "document", "message": error.message}],
    }


def _print_report(report: dict[str, object]) -> None:
    screen = console()
    title = report["title"] or report["file"]
    screen.print(heading(f"{title}: {report['status']}"))
    items, warnings = report["items"], report["warnings"]
    if isinstance(items, dict) and items:
        screen.print(", ".join(f"{count} {kind}" for kind, count in items.items()))
    if isinstance(warnings, list):
        for warning in warnings:
            screen.print(faint(f"{warning['part']}: {warning['message']}"))
