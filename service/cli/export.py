"""`catchword export WHAT`: facts for other programs, as a table or as statements of xAPI."""

from contextlib import closing
from functools import partial
from pathlib import Path
from typing import IO

import click

from service.cli.group import Tools
from service.cli.screen import console, faint, heading, print_json, prose
from service.cli.whole_file import write_whole
from service.use_cases.archiving import FILE, pieces_of, spooled_archive
from service.use_cases.exporting import export as export_of
from service.use_cases.exporting import file_name, forms_of
from service.use_cases.exporting_columns import HOLDS, What
from service.use_cases.exporting_described import DESCRIBED
from service.use_cases.exporting_records import ExportForm
from service.use_cases.ports import Desk

EVERYTHING = "everything"
"""What the archive of the whole library is called here."""
CHOICES = [*(what.value for what in What), EVERYTHING]
"""What can be asked for."""


@click.command()
@click.argument("what", type=click.Choice(CHOICES), required=False)
@click.option(
    "--as",
    "form",
    type=click.Choice([form.value for form in ExportForm]),
    help="What to write it as; csv unless given. Everything is an archive.",
)
@click.option(
    "--out",
    "--to",
    "target",
    type=click.Path(path_type=Path, allow_dash=True),
    help="The file to write; named after what it holds unless given, - for standard output.",
)
@click.option("--columns", is_flag=True, help="Say what the columns hold, and write nothing.")
@click.option("--json", "as_json", is_flag=True, help="Print the columns as JSON.")
@click.pass_obj
def export(
    tools: Tools,
    *,
    what: str | None,
    form: str | None,
    target: Path | None,
    columns: bool,
    as_json: bool,
) -> None:
    """Write all your answers, items, digests, commitments or check-ins to a file.

    `everything` writes the whole library as one archive, which `catchword restore` reads back.
    """
    if columns or as_json:
        _tell_columns(list(What) if what in {None, EVERYTHING} else [What(what)], as_json=as_json)
        return
    if what is None:
        raise click.UsageError(f"Say what: {', '.join(CHOICES)}.")
    if what == EVERYTHING and form is not None:
        raise click.UsageError("Everything is an archive of several forms; leave --as out.")
    with tools.desk() as desk:
        if what == EVERYTHING:
            path = write_whole(target, FILE, partial(_everything, desk))
        else:
            chosen = What(what), ExportForm(form or ExportForm.CSV)
            path = write_whole(target, file_name(*chosen), partial(_table, desk, *chosen))
    if path is not None:
        console(stderr=True).print(f"{what}: {path}")


def _everything(desk: Desk, file: IO[bytes]) -> None:
    file.writelines(pieces_of(spooled_archive(desk)))


def _table(desk: Desk, what: What, form: ExportForm, file: IO[bytes]) -> None:
    exported = export_of(desk, what, form)
    with closing(exported.pieces):
        file.writelines(exported.pieces)


def _tell_columns(chosen: list[What], *, as_json: bool) -> None:
    if as_json:
        print_json(
            {
                what.value: [
                    {
                        "name": column.name,
                        "type": column.holds.value,
                        "unit": column.unit,
                        "absent": column.absent,
                        "meaning": column.meaning,
                        "fields": [each.name for each in column.fields],
                    }
                    for column in DESCRIBED[what].columns
                ]
                for what in chosen
            }
        )
        return
    screen = console()
    for what in chosen:
        described = DESCRIBED[what]
        screen.print(heading(what.value))
        prose(screen, described.holds)
        prose(screen, faint(f"As {', '.join(forms_of(what))}."))
        for column in described.columns:
            unit = f", in {column.unit}" if column.unit else ""
            screen.print(f"{column.name}  ", faint(f"{column.holds.value}{unit}"), sep="")
            prose(screen, column.meaning, indent=2)
            for each in column.fields:
                prose(screen, f"{each.name}: {each.meaning}", indent=4)
    screen.print(heading("types"))
    for holds, said in HOLDS.items():
        prose(screen, f"{holds.value}: {said}")
