"""`catchword restore FILE`: everything back, into a library that has nothing in it yet."""

from pathlib import Path

import click

from service.cli.archives import open_archive
from service.cli.group import Tools
from service.cli.screen import print_json
from service.use_cases.archiving_back import restore_everything


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print what was brought back as JSON.")
@click.pass_obj
def restore(tools: Tools, file: Path, *, as_json: bool) -> None:
    """Bring back everything from FILE, an archive that `catchword export everything` wrote.

    The library has to be empty: name a new folder as CATCHWORD_HOME to make a new one. Memories,
    due days and pages are as they were.
    """
    with open_archive(file) as archive, tools.desk() as desk:
        back = restore_everything(desk, archive)
    if as_json:
        print_json(
            {
                "digests": back.digests,
                "items": back.items,
                "answers": back.answers,
                "originals": back.originals,
            }
        )
        return
    click.echo(
        f"Everything is back: digests {back.digests:,}, items {back.items:,}, "
        f"answers {back.answers:,}, files {back.originals:,}."
    )
