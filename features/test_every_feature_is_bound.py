"""No feature file may be forgotten by the tests."""

from pathlib import Path


def test_every_feature_is_bound():
    """Each feature file has a module of steps that binds its scenarios."""
    here = Path(__file__).parent
    for feature in here.glob("*.feature"):
        steps = here / f"test_{feature.stem}.py"
        assert f'scenarios("{feature.name}")' in steps.read_text(encoding="utf-8")
