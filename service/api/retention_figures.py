"""The figures of retention as the API sends them."""

from collections.abc import Mapping
from uuid import UUID

from cards.kinds.base import Shelved
from cards.retention.quality import Quality
from cards.retention.shares import Share
from service.use_cases.retaining import Retained


def figures_of(retained: Retained) -> dict[str, object]:
    """Return all figures, to be dumped by their shape."""
    found, target = retained.figures, retained.figures.target
    return {
        "day": retained.day,
        "target": target,
        "answers": found.answers,
        "whole": _share(found.whole, target),
        "books": [
            {**_book(retained.books, book), "share": _share(share, target)}
            for book, share in found.books.items()
        ],
        "kinds": [
            {"kind": kind, "share": _share(share, target)} for kind, share in found.kinds.items()
        ],
        "ages": [
            {
                "first": each.age.first,
                "last": each.age.last,
                "share": _share(each.share, target),
                "predicted": each.predicted,
            }
            for each in found.forgetting.ages
        ],
        "months": [
            {"month": month, "share": _share(share, target)}
            for month, share in found.months.items()
        ],
        "quality": None if found.quality is None else _quality(found.quality),
        "forgetting": found.forgetting,
        "survival": [
            {
                "kind": kind,
                "items": each.items,
                "blanks": each.blanks,
                "median": each.median,
                "until": each.until,
                "steps": each.steps,
            }
            for kind, each in found.survival.items()
        ],
        "grades": found.agreements.all,
        "kept": found.kept,
        "known": {
            "asked": found.known.whole.asked,
            "unasked": found.known.whole.unasked,
            "expected": found.known.whole.expected,
            "spread": found.known.whole.spread,
            "books": [
                {
                    **_book(retained.books, each.book),
                    "items": each.items,
                    "asked": each.asked,
                    "now": each.now,
                    "left_alone": each.left_alone,
                    "kept_up": each.kept_up,
                }
                for each in retained.known
            ],
        },
        "coming": retained.coming,
    }


def _share(share: Share, target: float) -> dict[str, object]:
    return {
        "asked": share.asked,
        "came_back": share.recalled,
        "share": share.share,
        "low": share.low,
        "high": share.high,
        "verdict": share.verdict(target),
    }


def _book(books: Mapping[UUID, Shelved], book: UUID) -> dict[str, object]:
    found = books[book]
    return {"digest": found.id, "title": found.title, "author": found.author}


def _quality(quality: Quality) -> dict[str, object]:
    return {
        "losses": quality.losses,
        "log_loss_error": quality.log_loss_error,
        "rmse_bins": quality.rmse_bins,
        "ece": quality.ece,
        "auc": None if quality.auc is None else quality.auc.area,
        "curve": [
            {
                "predicted": each.predicted,
                "asked": each.share.asked,
                "came_back": each.share.recalled,
                "low": each.share.low,
                "high": each.share.high,
            }
            for each in quality.curve
        ],
        "guesses": quality.guesses,
    }
