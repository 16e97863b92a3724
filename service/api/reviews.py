"""Reviews: a year of what the books asked, looked back on."""

from http import HTTPStatus

from flask import Response

from cards.commitments import Outcome
from cards.errors import CannotPrint, Invalid
from cards.yearly import Promise
from service.api import examples
from service.api.desk import desk
from service.api.files import attachment
from service.api.operations import BINARY, Content, Gives, Reply, Resource
from service.api.review_shapes import ReviewSchema
from service.use_cases.yearly_review import FIRST_YEAR, yearly_review

resource = Resource("reviews", "/reviews", "A year of commitments looked back on.")

_YEAR = f"<int(min={FIRST_YEAR}, max=9998):year>"
_PATH = {"year": "Which year, by the reader's days."}
_COUNTS = {"kept": 31, "partly": 2, "missed": 4}
_PROMISE = {
    "commitment": examples.COMMITMENT_ID,
    "digest": examples.DIGEST_ID,
    "title": "Silas Marner",
    "text": "When I come home, ask a neighbour in for tea once a week.",
    "caution": None,
    "made_on": "2026-02-20",
    "new": True,
    "counts": _COUNTS,
    "deeds": 31,
    "pace": "on course",
    "before": None,
    "after": "on course; of the last 2 counted, 2 kept",
    "changes": [{"act": "pause", "day": "2026-07-01", "told": "Paused until 31 July 2026."}],
    "renewing": None,
}
_REVIEW = {
    "year": 2026,
    "last": "2026-12-31",
    "counts": _COUNTS,
    "books": [
        {
            "digest": examples.DIGEST_ID,
            "title": "Silas Marner",
            "author": "George Eliot",
            "promises": [_PROMISE],
        }
    ],
    "pairs": [
        {
            "likeness": "repeats",
            "rule": "Both ask nearly the same act: would one do?",
            "one": examples.COMMITMENT_ID,
            "other": "6a1f6f0e-1f3e-4ad1-9d53-7f2f0b9f8a22",
        }
    ],
    "minutes": 20,
}


@resource.operation(
    f"GET /{_YEAR}",
    path=_PATH,
    gives=Gives({HTTPStatus.OK: "The review."}, ReviewSchema(), example=_REVIEW),
    refuses=(Invalid,),
)
def get_review(year: int) -> Reply:
    """Look back on a year: what was promised to which book, what was kept, what changed."""
    review = yearly_review(desk(), year)
    books = [
        {
            "digest_id": book.digest_id,
            "title": book.title,
            "author": book.author,
            "promises": [_promise(one) for one in book.promises],
        }
        for book in review.books
    ]
    return (
        {
            "year": review.year,
            "last": review.last,
            "counts": {each.value: review.counts.get(each, 0) for each in Outcome},
            "books": books,
            "pairs": review.pairs,
            "minutes": review.minutes,
        },
        HTTPStatus.OK,
        {},
    )


@resource.operation(
    f"GET /{_YEAR}/pdf",
    path=_PATH,
    gives=Gives(
        {HTTPStatus.OK: "The file."},
        headers={HTTPStatus.OK: ("Content-Disposition",)},
        contents=(Content("application/pdf", BINARY, "(the bytes of review-2026.pdf)"),),
    ),
    refuses=(Invalid, CannotPrint),
)
def get_review_pdf(year: int) -> Reply:
    """Take the review of a year as a PDF."""
    return Response(
        desk().press.review(yearly_review(desk(), year)),
        content_type="application/pdf",
        headers={"Content-Disposition": attachment(f"review-{year}.pdf")},
    )


def _promise(one: Promise) -> dict[str, object]:
    return {
        "id": one.id,
        "digest_id": one.digest_id,
        "title": one.title,
        "text": one.text,
        "caution": one.caution,
        "made_on": one.made_on,
        "new": one.new,
        "counts": {each.value: one.counts.get(each, 0) for each in Outcome},
        "deeds": one.deeds,
        "stand": one.stand,
        "before": one.before,
        "after": one.after,
        "changes": one.changes,
        "renewing": one.renewing,
    }
