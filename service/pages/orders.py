"""The order in which a reader puts what is shown: read from a form, and told beside the book's."""

from collections.abc import Mapping, Sequence

from cards.kinds.base import Cue
from service.pages import fields
from service.pages.fields import Fault
from service.pages.wording import listed


def read_order(form: Mapping[str, str], shown: int) -> tuple[int, ...]:
    """Return the numbers of what is shown, in the order given; what has no place is left out.

    Places need not follow on one another: first, third and seventh are three in a row.

    Args:
        form: `place-1` holds the place of what is shown first, and so on.
        shown: how many there are.

    Raises:
        Fault: a place is no number there is, or two have the same.
    """
    places: dict[int, list[int]] = {}
    for number in range(1, shown + 1):
        place = fields.whole(form, f"place-{number}", "A place", 1, shown)
        if place is not None:
            places.setdefault(place, []).append(number)
    twice = sorted(place for place, numbers in places.items() if len(numbers) > 1)
    if twice:
        which = "place" if len(twice) == 1 else "places"
        raise Fault(
            "order",
            f"Two points or more share {which} {listed(map(str, twice))}. Give each a place of "
            "its own, and none to what you do not remember.",
        )
    return tuple(places[place][0] for place in sorted(places))


def ordered(cue: Cue, order: Sequence[int]) -> list[str]:
    """Return what is shown in the order given; numbers of what is no longer there are dropped."""
    texts = {landmark.number: landmark.text for landmark in cue.landmarks}
    return [texts[number] for number in order if number in texts]
