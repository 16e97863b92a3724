"""`catchword read FILE`: show what would be understood, store nothing."""

from collections.abc import Mapping
from pathlib import Path

import click

from cards.cautions import caution
from cards.digest import Digest, Notice
from cards.intake import Understood
from cards.parts import Care
from service.cli.files import bytes_of, digest_fields
from service.cli.group import Tools
from service.cli.screen import console, faint, heading, print_json
from service.use_cases.add_digest import read_digests
from service.use_cases.advice import advise
from service.use_cases.price import price_of, prices_in_words
from service.use_cases.telling import told_once


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--json", "as_json", is_flag=True, help="Print it as JSON.")
@click.pass_obj
def read(tools: Tools, file: Path, *, as_json: bool) -> None:
    """Show what would be understood of FILE, with advice on it, and store nothing."""
    with tools.desk() as desk:
        read = read_digests(desk, file.name, bytes_of(file))
        advised = [advise(desk, each.digest) for each in read]
        priced = [prices_in_words(price_of(desk, each.digest)) for each in read]
    if as_json:
        shown = [digest_fields(each.digest, each.notices) for each in read]
        print_json(shown[0] if len(shown) == 1 else shown)
        return
    for number, (each, advice, prices) in enumerate(zip(read, advised, priced, strict=True)):
        if number:
            console().print()
        _print(each, advice)
        _print_prices(prices)


def _print(understood: Understood, advice: tuple[Notice, ...]) -> None:
    digest, screen = understood.digest, console()
    screen.print(heading(digest.title))
    screen.print(faint(_facts(digest)))
    for name, lines in _parts(digest):
        screen.print()
        screen.print(heading(name))
        for line in lines:
            screen.print(line)
    to_look_at, worth_a_thought = told_once(understood.notices, advice)
    for name, notices in (("To look at", to_look_at), ("Worth a thought", worth_a_thought)):
        if notices:
            screen.print()
            screen.print(heading(name))
            for notice in notices:
                screen.print(f"{notice.part}: {notice.message}")


def _print_prices(prices: Mapping[Care, str]) -> None:
    if prices:
        screen = console()
        screen.print()
        screen.print(heading("What keeping it costs"))
        for care, words in prices.items():
            screen.print(f"{care}: {words}")


def _facts(digest: Digest) -> str:
    facts = [
        digest.author,
        digest.edition,
        f"{digest.pages} pages" if digest.pages else None,
        f"ISBN {digest.isbn}" if digest.isbn else None,
        f"finished on {digest.finished_on}" if digest.finished_on else None,
    ]
    return " · ".join(fact for fact in facts if fact)


def _parts(digest: Digest) -> list[tuple[str, list[str]]]:
    located = [
        f"{number}. {point.text}" + (f" ({point.locator})" if point.locator else "")
        for number, point in enumerate(digest.points, 1)
    ]
    quoted = [
        f"“{quotation.text}”"
        + (f" {quotation.locator}" if quotation.locator else "")
        + _after(quotation.after)
        for quotation in digest.quotations
    ]
    parts = [
        ("Theme", [digest.theme] if digest.theme else []),
        ("Points", located),
        ("Commitments", [line for each in digest.commitments for line in _cautioned(each.text)]),
        ("Quotations", quoted),
        ("Judgement", [digest.judgement] if digest.judgement else []),
    ]
    return [(name, lines) for name, lines in parts if lines]


def _cautioned(commitment: str) -> list[str]:
    said = caution(commitment)
    return [commitment] if said is None else [commitment, f"  {said}"]


def _after(point: int | None) -> str:
    if point is None:
        return ""
    return f" (after point {point})" if point else " (before the first point)"
