"""A measure as the JSON a row keeps, and back."""

import json
from datetime import date

from cards.commitments import Measure, Period


def measure_to_json(measure: Measure | None) -> str | None:
    """Return a measure as JSON, None for none."""
    if measure is None:
        return None
    return json.dumps(
        {
            "times": measure.times,
            "period": measure.period.value,
            "every": measure.every,
            "on": list(measure.on),
            "periods": measure.periods,
            "deadline": None if measure.deadline is None else measure.deadline.isoformat(),
            "minutes": measure.minutes,
        }
    )


def measure_from_json(written: str | None) -> Measure | None:
    """Return the measure `measure_to_json` wrote."""
    if written is None:
        return None
    found = json.loads(written)
    deadline = found["deadline"]
    return Measure(
        times=found["times"],
        period=Period(found["period"]),
        every=found["every"],
        on=tuple(found["on"]),
        periods=found["periods"],
        deadline=None if deadline is None else date.fromisoformat(deadline),
        minutes=found["minutes"],
    )
