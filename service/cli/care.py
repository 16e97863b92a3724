"""`catchword care DIGEST [CARE]`: how much of a book to keep."""

import click

from cards.parts import Care
from service.cli.group import Tools
from service.cli.screen import console, faint
from service.use_cases.care import set_care
from service.use_cases.library import named
from service.use_cases.price import price_of_kept, prices_in_words


@click.command()
@click.argument("digest")
@click.argument("care", type=click.Choice([care.value for care in Care]), required=False)
@click.pass_obj
def care(tools: Tools, digest: str, care: str | None) -> None:
    """Say how much of DIGEST's book to keep: close, steady or resting; or show it."""
    with tools.desk() as desk:
        kept = named(desk, digest)
        if care is not None:
            kept = set_care(desk, kept.id, Care(care))
        prices = prices_in_words(price_of_kept(desk, kept.id))
    screen = console()
    screen.print(f"{kept.title}: {kept.care}")
    for each, words in prices.items():
        screen.print(faint(f"  {each}: {words}"))
