"""What the reader is told and asked about a digest as it was understood."""

from collections.abc import Sequence

from cards.digest import Digest, Notice
from cards.intake.blocks import Block
from cards.intake.generic_titles import is_generic
from cards.intake.labels import is_detail_label
from cards.intake.sections import Section
from cards.intake.wording import excerpt

MAX_TOLD = 20
"""Lines left out of one section that are told of one by one."""
NO_LOCATOR = "It has no locator. Add the page or the chapter where it stands."
NO_PLACE = "Nothing says after which point it stands. Say so once, and it can be placed."


def bare_headings(sections: Sequence[Section]) -> list[Notice]:
    """Return a notice of the headings that announce nothing and have nothing left under them."""
    names = [
        section.name
        for section in sections
        if section.part is None
        and section.name
        and not section.blocks
        and not is_generic(section.name)
        and not is_detail_label(section.name)
    ]
    if not names:
        return []
    told = listed(names)
    return [Notice("document", f"These headings announce no part of a digest: {told}.")]


def listed(names: Sequence[str]) -> str:
    """Return words in quotation marks, as many as are told of one by one."""
    told = ", ".join(f"“{excerpt(name)}”" for name in names[:MAX_TOLD])
    return told + (f" and {len(names) - MAX_TOLD} more" if len(names) > MAX_TOLD else "")


def asked(digest: Digest) -> list[Notice]:
    """Return what the reader is asked about quotations that can not be placed."""
    notices = []
    for number, quotation in enumerate(digest.quotations, 1):
        if quotation.locator is None:
            notices.append(Notice(f"quotations {number}", NO_LOCATOR))
        if digest.points and quotation.after is None:
            notices.append(unplaced(number))
    return notices


def unplaced(number: int) -> Notice:
    """Return what the reader is asked about a quotation of which nothing says where it stands."""
    return Notice(f"quotations {number}", NO_PLACE)


def left_out(name: str, blocks: Sequence[Block]) -> list[Notice]:
    """Return a notice for each block that was not taken in, and one for what is past the bound."""
    where = f"Under “{excerpt(name, 60)}”" if name else "Before the first heading"
    texts = [block.text.replace("\t", ", ") for block in blocks[:MAX_TOLD]]
    told = [f"this was not taken in: “{excerpt(text)}”" for text in texts]
    if len(blocks) > MAX_TOLD:
        told.append(f"{len(blocks) - MAX_TOLD} more lines were not taken in")
    return [Notice("document", f"{where}, {words}.") for words in told]
