"""What may be claimed of a share.

Source of the rule: reference, part 2 (our own): on target only where the Wilson interval holds
the target and 50 or more were asked.
"""

import pytest

from cards.retention.shares import Share, Verdict, share_of
from cards.retention.tally import Tally


@pytest.mark.parametrize(
    ("recalled", "asked", "target", "verdict"),
    [
        (45, 50, 0.9, Verdict.ON_TARGET),
        (44, 49, 0.9, Verdict.TOO_FEW),
        (45, 50, 0.79, Verdict.ON_TARGET),
        (45, 50, 0.78, Verdict.ABOVE),
        (45, 50, 0.95, Verdict.ON_TARGET),
        (45, 50, 0.96, Verdict.BELOW),
        (0, 10, 0.9, Verdict.BELOW),
        (9, 10, 0.9, Verdict.TOO_FEW),
        (0, 0, 0.9, Verdict.TOO_FEW),
        (1_000, 1_000, 0.97, Verdict.ABOVE),
    ],
)
def test_a_claim_wants_the_target_within_the_bounds_and_fifty_answers(
    recalled, asked, target, verdict
):
    """45 of 50 reach from .7864 to .9565; of fewer only what lies outside is claimed."""
    assert Share(recalled, asked).verdict(target) is verdict


@pytest.mark.parametrize(
    ("recalled", "asked", "words"),
    [
        (45, 50, "on target, 90%"),
        (4, 5, "too few to say whether 90% is met"),
        (10, 50, "below the 90% aimed for"),
        (500, 500, "above the 90% aimed for"),
    ],
)
def test_each_verdict_has_its_words(recalled, asked, words):
    """So that pages, mails and the terminal say the same."""
    assert Share(recalled, asked).told(0.9) == words


def test_a_share_tells_its_bounds():
    """Share and bounds of all answers of a tally; of nothing there is none."""
    found = share_of(Tally(50, 45, 20, 11))
    assert (found.recalled, found.asked, found.share) == (45, 50, 0.9)
    assert (found.low, found.high) == found.bounds == pytest.approx((0.7864, 0.9565), abs=5e-5)
    assert Share(0, 0).share is None
