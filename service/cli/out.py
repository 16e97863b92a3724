"""`catchword out DIGEST`: a digest on paper, or as a file of an open format."""

from pathlib import Path

import click

from cards.budget import Budget
from service.cli.files import write_bytes
from service.cli.group import Tools
from service.cli.screen import console, faint
from service.use_cases.library import named
from service.use_cases.records import Form
from service.use_cases.writing_out import measure, write_out


@click.command()
@click.argument("digest")
@click.option(
    "--as",
    "form",
    type=click.Choice([form.value for form in Form]),
    default=Form.PDF.value,
    show_default=True,
    help="What to write it as.",
)
@click.option(
    "--to",
    "target",
    type=click.Path(path_type=Path, allow_dash=True),
    help="The file to write; named after the book unless given, - for standard output.",
)
@click.pass_obj
def out(tools: Tools, digest: str, form: str, target: Path | None) -> None:
    """Write DIGEST, named by its title or id, on two pages or as a file that reads back."""
    with tools.desk() as desk:
        kept = named(desk, digest)
        written = write_out(desk, kept.id, Form(form))
        budget = measure(desk, kept.digest()) if Form(form) is Form.PDF else Budget(())
    path = write_bytes(target, written.name, written.content)
    screen = console(stderr=True)
    if path is not None:
        screen.print(f"{kept.title}: {path}")
    for cut in budget.cuts:
        screen.print(faint(f"{cut.part}: {cut.message}"))
