"""What a fit finds out of memories that are known, and against an independent optimiser.

A small sample of `python -m tests.benchmarks.recovery`, which prints the same of 100 seeds. The
source of the truth is the simulated reader, that of the comparison the compiled package
fsrs-rs-python 0.9.3, which fits the same model in its own way.
"""

import numpy as np
import pytest

from cards.fitting.likeliest import fit
from tests.benchmarks.recovery.compiled import fit_compiled
from tests.benchmarks.recovery.considered import outcome
from tests.benchmarks.recovery.foreseeing import expected_losses


def test_a_reader_with_another_memory_is_foreseen_better_by_what_is_adopted():
    """Weights fitted to a reader of another memory model are adopted, and foresee better."""
    found = outcome("other memory", 1, books=25)
    assert found.adopted
    assert found.proposed < found.in_force


def test_a_reader_exactly_as_published_is_left_with_the_published_weights():
    """Nothing is adopted for a reader whom the weights in force describe, for no kind either."""
    found = outcome("as published", 1, books=25)
    assert not found.adopted
    assert found.kinds == 0


@pytest.mark.parametrize("reader", ["as published", "other weights"])
def test_with_few_answers_less_is_lost_than_by_the_compiled_optimiser(reader):
    """After 360 answers the expected loss of the next 360 is below that of the compiled fit."""
    rows = [expected_losses(reader, seed, 360, (fit, fit_compiled)) for seed in range(1, 4)]
    defaults, ours, compiled, truth = np.mean(rows, axis=0)
    assert ours < compiled
    assert truth < ours
    if reader == "other weights":
        assert ours < defaults
