"""`catchword prove DIGEST [BOOK]`: quotations held against the text of their book."""

from pathlib import Path

import click

from cards.proving.proof import Mend, Proof
from service.cli.files import bytes_of
from service.cli.group import Tools
from service.cli.screen import console, faint, heading, print_json
from service.use_cases.library import named
from service.use_cases.ports import LARGEST_BOOK
from service.use_cases.prove import give_book, mend_from_book, proof_of


@click.command()
@click.argument("digest")
@click.argument("book", type=click.Path(path_type=Path), required=False)
@click.option("--mend", "mending", is_flag=True, help="Mend what the text can mend, in one step.")
@click.option("--json", "as_json", is_flag=True, help="Print it as JSON.")
@click.pass_obj
def prove(tools: Tools, digest: str, book: Path | None, *, mending: bool, as_json: bool) -> None:
    """Find the quotations of DIGEST in BOOK, an EPUB, a text file or a web page.

    Without BOOK the text given before is used. It never leaves your library.
    """
    with tools.desk() as desk:
        kept = named(desk, digest)
        if book is not None:
            proved = give_book(desk, kept.id, book.name, bytes_of(book, LARGEST_BOOK))
        else:
            proved = proof_of(desk, kept.id)
        if mending:
            wanted = {proof.number: tuple(Mend) for proof in proved.proofs if proof.mends}
            proved = mend_from_book(desk, kept.id, wanted, proved.kept.revision)
    if as_json:
        print_json([_fields(proof) for proof in proved.proofs])
        return
    screen = console()
    screen.print(heading(f"{proved.kept.title}, in {proved.book}"))
    for proof in proved.proofs:
        screen.print()
        screen.print(f"{proof.number}. “{proof.quotation.text}”")
        for line in _told(proof):
            screen.print(faint(f"   {line}"))


def _told(proof: Proof) -> list[str]:
    found = proof.found
    if found is None:
        return ["These words are not in the text."]
    if found.ambiguous:
        return [f"They stand in {found.places} places, and nothing says which is meant."]
    lines = [f"{found.fraction:.1%} of the way{f', {proof.locator}' if proof.locator else ''}"]
    lines += [f"{slip.kind}: “{slip.quoted}”, in the book “{slip.book}”" for slip in found.slips]
    return lines + ([proof.contradiction] if proof.contradiction else [])


def _fields(proof: Proof) -> dict[str, object]:
    found = proof.found
    return {
        "quotation": proof.number,
        "text": proof.quotation.text,
        "found": found is not None,
        "places": found.places if found else 0,
        "fraction": round(found.fraction, 6) if found else None,
        "chapter": found.spot.chapter.number if found and found.spot.chapter else None,
        "locator": proof.locator,
        "after": proof.after,
        "contradiction": proof.contradiction,
        "slips": [
            {"kind": slip.kind.value, "quoted": slip.quoted, "book": slip.book}
            for slip in (found.slips if found else ())
        ],
        "mended": found.mended if found else None,
    }
