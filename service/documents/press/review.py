"""What is printed of a yearly review, as the data the typesetter takes: words, never code."""

from typing import Any

from cards.yearly import BookYear, Promise, Review, figures, standing
from service.documents.press.sheet import day_in_words, paragraphs_of, stacked
from service.documents.press.talk import fitted

_LANGUAGE = "en"
_SHOWN = 600
"""Letters of one commitment, or of what was decided of it, that are printed."""
_NAME = 200


def review_data(review: Review) -> dict[str, Any]:
    """Return a yearly review as the JSON data of `review.typ`."""
    return {
        "title": f"What the books asked in {review.year}",
        "lang": _LANGUAGE,
        "until": f"As it stood on {day_in_words(review.last, _LANGUAGE)}",
        "figures": figures(review),
        "books": [_book(each) for each in review.books],
        "pairs": [
            {"rule": pair.rule, "sides": [_side(pair.one), _side(pair.other)]}
            for pair in review.pairs
        ],
        "minutes": review.minutes,
        "timed": [_side(each) for each in review.timed],
        "renewing": [
            _side(each) | {"question": each.renewing.question.value}
            for each in review.to_renew
            if each.renewing is not None
        ],
    }


def _book(book: BookYear) -> dict[str, Any]:
    return {
        "name": _name(book.title, book.author),
        "promises": [
            {
                "words": _text(one.text),
                "stand": _line(standing(one)),
                "caution": one.caution,
                "changes": [
                    _line(f"{day_in_words(each.day, _LANGUAGE)}: {each.told}")
                    for each in one.changes
                ],
            }
            for one in book.promises
        ],
    }


def _side(one: Promise) -> dict[str, Any]:
    return {"words": _text(one.text), "book": _name(one.title, None)}


def _name(title: str, author: str | None) -> str:
    return stacked(fitted(", ".join(filter(None, (title, author))), _NAME))


def _text(words: str) -> list[dict[str, Any]]:
    return paragraphs_of(fitted(words, _SHOWN), _LANGUAGE)


def _line(words: str) -> str:
    said = stacked(fitted(words, _SHOWN))
    return said[:1].upper() + said[1:]
