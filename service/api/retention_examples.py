"""Examples of the figures of retention."""

from service.api import examples

_SHARE = {
    "asked": 240,
    "came_back": 217,
    "share": 0.904,
    "low": 0.86,
    "high": 0.935,
    "verdict": "on target",
}
_BOOK = {"digest": examples.DIGEST_ID, "title": "Silas Marner"}
_CURVE = {"rate": 0.021, "decay": 0.41, "log_loss": 0.311, "stability": 14.0}
RETENTION = {
    "day": "2026-03-01",
    "target": 0.9,
    "answers": 281,
    "whole": _SHARE,
    "books": [{**_BOOK, "author": "George Eliot", "share": _SHARE}],
    "kinds": [{"kind": "theme", "share": _SHARE}],
    "ages": [{"first": 8, "last": 14, "share": _SHARE, "predicted": 0.912}],
    "months": [{"month": "2026-02", "share": _SHARE}],
    "quality": {
        "losses": {"n": 240, "log_loss": 0.305, "brier": 0.084, "predicted": 0.91, "share": 0.904},
        "log_loss_error": 0.031,
        "rmse_bins": 0.043,
        "ece": 0.021,
        "auc": 0.66,
        "curve": [{"predicted": 0.88, "asked": 24, "came_back": 21, "low": 0.69, "high": 0.957}],
        "guesses": [
            {
                "guess": "always the target",
                "value": 0.9,
                "log_loss": 0.318,
                "brier": 0.087,
                "gain": 0.013,
                "gain_error": 0.009,
            }
        ],
    },
    "forgetting": {
        "power": _CURVE,
        "exponential": {"rate": 0.004, "decay": None, "log_loss": 0.316, "stability": 26.3},
    },
    "survival": [
        {
            "kind": "theme",
            "items": 10,
            "blanks": 1,
            "median": None,
            "until": 51,
            "steps": [
                {
                    "day": 12,
                    "at_risk": 9,
                    "blanks": 1,
                    "lasting": 0.889,
                    "low": 0.433,
                    "high": 0.984,
                }
            ],
        }
    ],
    "grades": {
        "n": 240,
        "same": 180,
        "higher": 24,
        "kappa": 0.61,
        "weighted": 0.74,
        "counts": [[20, 3, 0, 0], [6, 30, 12, 1], [1, 9, 90, 8], [0, 2, 18, 40]],
    },
    "kept": [{"month": "2026-02", "kept": 6, "partly": 1, "missed": 1, "silent": 0}],
    "known": {
        "asked": 24,
        "unasked": 3,
        "expected": 22.1,
        "spread": 1.3,
        "books": [
            {
                **_BOOK,
                "items": 27,
                "asked": 24,
                "now": 22.1,
                "left_alone": 15.2,
                "kept_up": 25.3,
            }
        ],
    },
    "coming": [{"day": "2026-03-01", "due": 2.4, "unasked": 1.1, "left_over": 0.0}],
}
_CARE = {
    "care": None,
    "items": 27,
    "now": 22.1,
    "left_alone": [15.2, 10.9, 9.1],
    "targets": [
        {
            "target": 0.9,
            "minutes": [0.9, 0.3, 0.2],
            "mean_minutes": 0.4,
            "known": [25.3, 25.4, 25.4],
            "until_lasting": 5.2,
        }
    ],
    "proposal": {"target": 0.89, "alike_from": 0.86, "alike_to": 0.92, "at_edge": False},
}
PLAN = {
    "day": "2026-03-01",
    "target": 0.9,
    "whole": _CARE,
    "by_care": [{**_CARE, "care": "steady"}],
    "within": 0.97,
    "proposed": "Your 90% is among the targets that keep most per minute: from 86% to 92% all are "
    "alike within what the model can tell.",
}
_WEIGHTING = {
    "general": [0.212, 1.2931, 2.3065],
    "by_kind": [{"kind": "place", "weights": [0.18, 1.1, 2.0]}],
}
WEIGHTS = {
    "own": True,
    "since": "2026-02-12",
    "in_force": _WEIGHTING,
    "told": "In force since 12 February 2026 are weights fitted to your own answers.",
    "considered_on": "2026-02-12",
    "verdicts": [
        {
            "kind": None,
            "answers": 240,
            "held_out": 60,
            "in_force": 0.312,
            "proposed": 0.301,
            "error": 0.004,
            "adopted": True,
            "sentence": "Weights fitted to your earlier answers foresaw the 60 since 1 February "
            "2026 better than those in force until now: yours are in force now.",
        }
    ],
    "waiting": 12,
    "former": [{"since": None, "until": "2026-02-12", "weighting": _WEIGHTING}],
}
