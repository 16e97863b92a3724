"""`catchword cite DIGEST`: a book's facts, or a digest's quotations, for other programs."""

import click

from service.cli.group import Tools
from service.use_cases.bibliography import cite_bibtex, cite_csl_json
from service.use_cases.library import named
from service.use_cases.prove import annotations_of

WAYS = {"bibtex": cite_bibtex, "csl-json": cite_csl_json, "annotations": annotations_of}


@click.command()
@click.argument("digest")
@click.option(
    "--as",
    "way",
    type=click.Choice(list(WAYS)),
    default="bibtex",
    show_default=True,
    help="BibTeX, CSL-JSON, or the quotations as W3C Web Annotations.",
)
@click.pass_obj
def cite(tools: Tools, digest: str, way: str) -> None:
    """Print what other programs take of DIGEST."""
    with tools.desk() as desk:
        click.echo(WAYS[way](desk, named(desk, digest).id).rstrip("\n"))
