"""`catchword blank`: a blank digest to fill in."""

from pathlib import Path

import click

from service.cli.files import write_bytes
from service.cli.group import Tools
from service.cli.screen import console
from service.use_cases.records import Form
from service.use_cases.writing_out import BLANKS
from service.use_cases.writing_out import blank as blank_of


@click.command()
@click.option(
    "--as",
    "form",
    type=click.Choice([form.value for form in BLANKS]),
    default=Form.DOCX.value,
    show_default=True,
    help="What to write it as.",
)
@click.option(
    "--to",
    "target",
    type=click.Path(path_type=Path, allow_dash=True),
    help="The file to write; digest.docx and the like unless given, - for standard output.",
)
@click.pass_obj
def blank(tools: Tools, form: str, target: Path | None) -> None:
    """Write a blank digest to fill in and hand back."""
    with tools.desk() as desk:
        written = blank_of(desk, Form(form))
    path = write_bytes(target, written.name, written.content)
    if path is not None:
        console(stderr=True).print(str(path))
