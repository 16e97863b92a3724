"""Weights as the JSON a row keeps, and back."""

import json
from functools import lru_cache

from cards.kinds.base import KindName
from cards.weighting import PUBLISHED, Weighting


def weighting_to_json(weighting: Weighting) -> str | None:
    """Return weights as JSON, exact to the last bit; None for the published ones."""
    if weighting == PUBLISHED:
        return None
    return json.dumps(
        {
            "general": weighting.general,
            "by_kind": {kind.value: weights for kind, weights in weighting.by_kind},
        }
    )


@lru_cache(maxsize=64)
def weighting_from_json(written: str | None) -> Weighting:
    """Return the weights `weighting_to_json` wrote; read once, as every request asks for them."""
    if written is None:
        return PUBLISHED
    found = json.loads(written)
    return Weighting(
        tuple(found["general"]),
        tuple((KindName(kind), tuple(weights)) for kind, weights in found["by_kind"].items()),
    )
