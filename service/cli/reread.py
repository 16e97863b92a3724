"""`catchword reread`: which books to open again, at which pages, and that it was done."""

from datetime import date, datetime
from uuid import UUID

import click
from rich.console import Console

from cards.rereading import MOST_MINUTES, BookToReread, RereadingList
from service.cli.group import Tools
from service.cli.screen import console, faint, heading, print_json, prose
from service.use_cases.library import named
from service.use_cases.ports import Desk
from service.use_cases.rereading import (
    ReadAgain,
    ToldRereading,
    earlier_rereadings,
    list_rereading,
    record_rereading,
    withdraw_rereading,
)


@click.command()
@click.option("--done", metavar="DIGEST", help="Record that you read pages of it again.")
@click.option("--pages", default="", help="Which, as in 10-24, 30.")
@click.option("--minutes", type=click.IntRange(1, MOST_MINUTES), help="How long it took.")
@click.option("--note", default="", help="A word about it.")
@click.option(
    "--on", type=click.DateTime(["%Y-%m-%d"]), help="The day you read; today unless given."
)
@click.option("--take-back", type=click.UUID, metavar="ID", help="Take a re-reading back.")
@click.option("--json", "as_json", is_flag=True, help="Print the list as JSON.")
@click.pass_obj
def reread(  # noqa: PLR0913 - a flag each
    tools: Tools,
    *,
    done: str | None,
    pages: str,
    minutes: int | None,
    note: str,
    on: datetime | None,
    take_back: UUID | None,
    as_json: bool,
) -> None:
    """List the books to open again, at which pages and why, most worth it first."""
    if done is None and (pages or note or (minutes, on) != (None, None)):
        raise click.UsageError("Say which book you read again, with --done DIGEST.")
    with tools.desk() as desk:
        if take_back is not None:
            withdrawn = withdraw_rereading(desk, take_back)
            prose(console(), f"The re-reading of {withdrawn.day} is taken back.")
        elif done is not None:
            day: date | None = None if on is None else on.date()
            _record(desk, ReadAgain(desk.new_id(), named(desk, done).id, day, pages, minutes, note))
        elif as_json:
            print_json(_as_json(list_rereading(desk), earlier_rereadings(desk)))
        else:
            _list(console(), list_rereading(desk), earlier_rereadings(desk))


def _record(desk: Desk, read: ReadAgain) -> None:
    told = record_rereading(desk, read)
    screen = console()
    prose(screen, f"{told.title}: the re-reading of {told.rereading.day} is kept.")
    asked = len(told.rereading.items)
    if asked:
        what = "One item is" if asked == 1 else f"{asked} items are"
        prose(screen, f"{what} asked afresh within three days.")
    prose(screen, faint(f"catchword reread --take-back {told.rereading.id} takes it back."))


def _list(screen: Console, listed: RereadingList, earlier: list[ToldRereading]) -> None:
    for book in listed.books:
        _show(screen, book)
    if not listed.books:
        prose(screen, faint("No book needs opening again."))
    if listed.more:
        prose(screen, faint(f"And {listed.more} more."))
    if earlier:
        screen.print(heading("What earlier re-readings came to"))
    for each in earlier:
        read = each.rereading
        which = f", {read.pages}" if read.pages else ""
        prose(screen, f"{read.day}  {each.title}{which}")
        prose(screen, faint(each.helped.sentence), indent=2)


def _show(screen: Console, book: BookToReread) -> None:
    minutes = f", {book.minutes} min" if book.minutes else ""
    by = f", by {book.author}" if book.author else ""
    prose(screen, heading(f"{book.title}{by}{minutes}"))
    for because in book.reasons:
        prose(screen, because.sentence)
        if because.caution:
            prose(screen, faint(because.caution))
    for stretch in book.stretches:
        prose(screen, stretch.place, indent=2)
        for point in stretch.points:
            prose(screen, faint(point.text), indent=4)
        for quotation in stretch.quotations:
            prose(screen, faint(f"“{quotation.text}”"), indent=4)


def _as_json(listed: RereadingList, earlier: list[ToldRereading]) -> dict[str, object]:
    return {
        "books": [
            {
                "digest": str(book.digest_id),
                "title": book.title,
                "author": book.author,
                "reasons": [
                    {"reason": each.reason.value, "sentence": each.sentence}
                    for each in book.reasons
                ],
                "stretches": [
                    {
                        "place": each.place,
                        "first": each.first,
                        "last": each.last,
                        "points": [part.text for part in each.points],
                        "quotations": [part.text for part in each.quotations],
                    }
                    for each in book.stretches
                ],
                "minutes": book.minutes,
            }
            for book in listed.books
        ],
        "more": listed.more,
        "earlier": [
            {
                "id": str(each.rereading.id),
                "digest": str(each.rereading.digest_id),
                "day": each.rereading.day.isoformat(),
                "pages": each.rereading.pages,
                "minutes": each.rereading.minutes,
                "note": each.rereading.note,
                "helped": each.helped.sentence,
            }
            for each in earlier
        ],
    }
