"""How the properties are searched: the same examples on every run, with no clock to beat."""

from hypothesis import HealthCheck, settings

# Deterministic, so that a run that fails here fails for the next reader too.
settings.register_profile(
    "properties",
    derandomize=True,
    deadline=None,
    database=None,
    max_examples=200,
    suppress_health_check=[HealthCheck.too_slow],
)
settings.load_profile("properties")
