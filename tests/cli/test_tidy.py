"""`catchword tidy` tells what was learned from the answers."""

from dataclasses import replace
from datetime import UTC, date, datetime
from uuid import UUID

import pytest

from cards.fitting import Verdict
from cards.kinds.base import KindName
from cards.weighting import PUBLISHED
from service.use_cases import tidy as tidying
from service.use_cases.learning import Learned
from service.use_cases.learning_records import Fitting
from tests.cli.conftest import Terminal

FITTING = Fitting(
    UUID(int=1),
    datetime(2026, 3, 1, tzinfo=UTC),
    date(2026, 3, 1),
    700,
    (
        Verdict(None, 700, 140, None, True, "Weights of your own foresee your answers better."),
        Verdict(KindName.PLACE, 90, 18, None, False, "Of placing there are too few to tell."),
    ),
    PUBLISHED,
)
MOVED = (
    "50 due days were moved to what your own weights foresee; 210 more wait for the days to come."
)


@pytest.mark.parametrize(
    ("learned", "said"),
    [
        (Learned(None, 0, 0), []),
        (
            Learned(FITTING, 50, 210),
            [
                "Weights of your own foresee your answers better.",
                MOVED,
            ],
        ),
        (
            Learned(None, 1, 0),
            ["1 due day was moved to what your own weights foresee."],
        ),
    ],
)
def test_it_says_what_was_learned(
    terminal: Terminal, monkeypatch: pytest.MonkeyPatch, learned: Learned, said: list[str]
) -> None:
    """What was judged is told, of a kind where it changed, and how many due days moved and wait."""
    monkeypatch.setattr(tidying, "learn", lambda _: learned)
    assert terminal.run("tidy").stdout.splitlines() == [*said, "No mail is wanted."]


def test_as_json_it_says_the_same(terminal: Terminal, monkeypatch: pytest.MonkeyPatch) -> None:
    """The JSON holds whether it was considered and adopted, the sentences and the due days."""
    monkeypatch.setattr(tidying, "learn", lambda _: Learned(FITTING, 50, 210))
    told = terminal.json("tidy")["weights"]
    assert told == {
        "considered": True,
        "adopted": True,
        "sentences": [each.sentence for each in FITTING.verdicts],
        "moved": 50,
        "waiting": 210,
    }
    not_adopted = replace(FITTING, verdicts=FITTING.verdicts[1:])
    monkeypatch.setattr(tidying, "learn", lambda _: Learned(not_adopted, 0, 0))
    assert terminal.json("tidy")["weights"]["adopted"] is False
