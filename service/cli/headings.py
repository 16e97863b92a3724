"""`catchword headings`: a reader's own heading words."""

import click

from cards.errors import Invalid, Missing
from cards.intake.heading_words import Part
from service.cli.group import Tools
from service.cli.screen import console, faint, print_json
from service.use_cases.headings import set_headings, show_headings


@click.command()
@click.option(
    "--add",
    "added",
    multiple=True,
    metavar="WORDS=PART",
    help="In my digests these words announce that part: 'Lines that stay=quotations'.",
)
@click.option("--drop", "dropped", multiple=True, metavar="WORDS", help="Words to forget.")
@click.option("--json", "as_json", is_flag=True, help="Print them as JSON.")
@click.pass_obj
def headings(
    tools: Tools, added: tuple[str, ...], dropped: tuple[str, ...], *, as_json: bool
) -> None:
    """Show the headings of your own that announce a part, after changing those given."""
    with tools.desk() as desk:
        words = show_headings(desk)
        if added or dropped:
            for word in dropped:
                if words.pop(word, None) is None:
                    raise Missing(
                        f"“{word}” is no heading of your own. `catchword headings` shows them.",
                        where="headings",
                    )
            words = set_headings(desk, words | dict(map(_pair, added)))
    if as_json:
        print_json({word: part.value for word, part in words.items()})
        return
    screen = console()
    for word, part in words.items():
        screen.print(f"{word}: {part}")
    if not words:
        screen.print(faint("No headings of your own. The usual ones in seven languages are known."))


def _pair(given: str) -> tuple[str, Part]:
    word, _, part = given.rpartition("=")
    try:
        return word.strip(), Part(part.strip())
    except ValueError as error:
        raise Invalid(
            f"“{given}” names no part of a digest after its last “=”. Choose one of "
            f"{', '.join(Part)}.",
            where="headings",
        ) from error
