"""Today's sitting."""

from http import HTTPStatus

from service.api import examples
from service.api.desk import desk
from service.api.item_shapes import SittingSchema
from service.api.operations import Gives, Reply, Resource
from service.use_cases.sit import todays_sitting

resource = Resource("sitting", "/sitting", "What is asked today.")


@resource.operation(
    "GET",
    gives=Gives({HTTPStatus.OK: "The sitting."}, SittingSchema(), example=examples.SITTING),
)
def get_sitting() -> Reply:
    """Sit down to what is asked today.

    What is due, most at risk first; then unasked items, a few a day; last what came back blank
    today and comes round again. An item whose page shows the answer of another comes after it.
    """
    return todays_sitting(desk()), HTTPStatus.OK, {}
