"""The ratios that README's table gives, each measured side by side in one run."""

from tests.benchmarks import answering, folding, sitting


def test_folding_a_history_costs_little_more_than_the_package_itself():
    """Folding a history takes at most 1.2 times calling the package directly."""
    assert folding.measure().ratio <= folding.LIMIT


def test_recording_an_answer_costs_little_more_than_its_rows(tmp_path):
    """An answer through the API takes at most 2.5 times a bare view that writes its rows."""
    assert answering.measure(tmp_path).ratio <= answering.LIMIT


def test_a_sitting_does_not_grow_with_the_library(tmp_path):
    """A sitting among 100,000 items takes at most 1.3 times one among 1,000."""
    assert sitting.measure(tmp_path).ratio <= sitting.LIMIT
