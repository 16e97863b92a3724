"""What a fit was judged by, as the JSON a row keeps, and back."""

import json
from collections.abc import Iterable
from dataclasses import asdict
from typing import Any

from cards.fitting import Comparison, Verdict
from cards.kinds.base import KindName


def verdicts_to_json(verdicts: Iterable[Verdict]) -> str:
    """Return verdicts as JSON, figures exact to the last bit."""
    return json.dumps([asdict(each) for each in verdicts], ensure_ascii=False)


def verdicts_from_json(written: str) -> tuple[Verdict, ...]:
    """Return the verdicts `verdicts_to_json` wrote."""
    return tuple(_verdict(each) for each in json.loads(written))


def _verdict(found: dict[str, Any]) -> Verdict:
    kind, compared = found.pop("kind"), found.pop("comparison")
    return Verdict(
        kind=None if kind is None else KindName(kind),
        comparison=None if compared is None else Comparison(**compared),
        **found,
    )
