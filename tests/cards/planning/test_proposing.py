"""Which target is proposed."""

import pytest

from cards.planning.proposing import HARDLY_MORE, proposal

TARGETS = tuple(each / 100 for each in range(70, 98))


def bowl(at: float, depth: float = 40.0) -> list[float]:
    """Return minutes that are fewest at a target and rise to both sides."""
    return [5.0 + depth * (target - at) ** 2 * 5 for target in TARGETS]


def test_the_fewest_minutes_are_proposed_and_what_is_alike_beside():
    """Around 0.86 the targets within five in a hundred of the fewest are told."""
    found = proposal(TARGETS, bowl(0.86))
    assert found is not None
    assert (found.target, found.at_edge) == (0.86, False)
    # 5 + 200 (t - 0.86)^2 is 1.05 times its least at 0.035 from it.
    assert HARDLY_MORE == 1.05
    assert (found.alike_from, found.alike_to) == (0.83, 0.89)


@pytest.mark.parametrize(("at", "edge"), [(0.6, 0.7), (0.99, 0.97)])
def test_where_the_best_lies_at_the_edge_it_is_said(at, edge):
    """Minutes that only rise, or only fall, propose an end of the range and say so."""
    found = proposal(TARGETS, bowl(at))
    assert found is not None
    assert (found.target, found.at_edge) == (edge, True)
    assert found.alike_from <= found.target <= found.alike_to


def test_a_single_lucky_target_is_not_proposed():
    """One target far below its neighbours, by rounding, does not win alone."""
    minutes: list[float | None] = [*bowl(0.9)]
    minutes[3] = 4.0
    found = proposal(TARGETS, minutes)
    assert found is not None
    assert found.target == 0.9


def test_where_nothing_is_gained_nothing_is_proposed():
    """Neither without items nor where none of them ever lasts; where few do, among those."""
    assert proposal(TARGETS, [None] * len(TARGETS)) is None
    some: list[float | None] = [None] * 10 + bowl(0.7)[10:]
    found = proposal(TARGETS, some)
    assert found is not None
    assert found.target == 0.8
