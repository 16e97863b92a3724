"""Retention: what came back, how well it was foreseen, what is known, what targets take."""

from collections.abc import Iterable
from http import HTTPStatus

from flask import Response, abort

from cards.errors import CannotWrite
from cards.weighting import PUBLISHED, Weighting
from service.api.desk import desk
from service.api.files import attachment
from service.api.operations import BINARY, Content, Gives, Reply, Resource
from service.api.planning_shapes import PlanSchema, WeightsSchema
from service.api.retention_examples import PLAN, RETENTION, WEIGHTS
from service.api.retention_figures import figures_of
from service.api.retention_whole import RetentionSchema
from service.use_cases.retaining import show_retention
from service.use_cases.retaining_weights import former, in_force
from service.use_cases.retention_pictures import PICTURES
from service.use_cases.retention_pictures.targets import proposal_in_words

resource = Resource("retention", "/retention", "What is retained, and what lies ahead.")

_FORMS = {
    "svg": Content("image/svg+xml", {"type": "string"}, "<svg>...</svg>"),
    "png": Content("image/png", BINARY, "(the bytes of by-kind.png)"),
    "dark.png": Content("image/png", BINARY, "(the bytes of by-kind.dark.png)"),
    "csv": Content("text/csv", {"type": "string"}, "kind,asked,came_back,share,low,high,told\r\n"),
}
"""What a picture is handed out as."""


def _one_of(names: Iterable[str]) -> str:
    return ", ".join(f'"{name}"' for name in names)


@resource.operation(
    "GET",
    gives=Gives({HTTPStatus.OK: "The figures."}, RetentionSchema(), example=RETENTION),
)
def get_retention() -> Reply:
    """See what came back when asked, how well it was foreseen, and what is known.

    Shares come with their 95% bounds. Predictions are judged as they were stored before each
    answer, never as refitted weights would have them.
    """
    return figures_of(show_retention(desk())), HTTPStatus.OK, {}


@resource.operation(
    "GET /plan",
    gives=Gives({HTTPStatus.OK: "The plan."}, PlanSchema(), example=PLAN),
)
def get_retention_plan() -> Reply:
    """See what each target, from 0.70 to 0.97, would take and keep over ten years.

    Reckoned from the weights in force, the reader's own seconds and the items as they stand, if
    everything is asked on the day it is due.
    """
    retained = show_retention(desk())
    plan = retained.plan
    shown = {
        "day": retained.day,
        "target": retained.reader.target,
        "whole": plan.whole,
        "by_care": plan.by_care,
        "within": plan.within,
        "proposed": proposal_in_words(plan.whole, retained.reader.target),
    }
    return shown, HTTPStatus.OK, {}


@resource.operation(
    "GET /weights",
    gives=Gives({HTTPStatus.OK: "The weights."}, WeightsSchema(), example=WEIGHTS),
)
def get_retention_weights() -> Reply:
    """See whose weights foresee what is recalled, and what the last consideration came to."""
    retained = show_retention(desk())
    learnt, weighting = retained.learnt, retained.reader.weighting
    shown = {
        "own": weighting != PUBLISHED,
        "since": learnt.adopted[0].fitted_on if learnt.adopted else None,
        "in_force": _weighting(weighting),
        "told": in_force(retained),
        "considered_on": None if learnt.latest is None else learnt.latest.fitted_on,
        "verdicts": () if learnt.latest is None else learnt.latest.verdicts,
        "waiting": learnt.waiting,
        "former": [
            {"since": each.since, "until": each.until, "weighting": _weighting(each.weighting)}
            for each in former(learnt)
        ],
    }
    return shown, HTTPStatus.OK, {}


@resource.operation(
    f"GET /pictures/<any({_one_of(PICTURES)}):name>.<any({_one_of(_FORMS)}):form>",
    path={"name": "Which picture.", "form": "What it comes as: the figures behind it are CSV."},
    gives=Gives(
        {HTTPStatus.OK: "The file."},
        headers={HTTPStatus.OK: ("Content-Disposition",)},
        contents=tuple({each.media_type: each for each in _FORMS.values()}.values()),
    ),
    refuses=(CannotWrite,),
)
def get_retention_picture(name: str, form: str) -> Reply:
    """Take a picture of the figures, or the figures behind it.

    There is none of books of a care that none is kept with.
    """
    picture = PICTURES[name](show_retention(desk()))
    if picture is None:
        abort(HTTPStatus.NOT_FOUND)
    drawer = desk().pictures
    match form:
        case "svg":
            content = drawer.svg(picture)
        case "csv":
            content = drawer.data(picture)
        case _:
            content = drawer.png(picture, dark=form == "dark.png")
    return Response(
        content,
        content_type=_FORMS[form].media_type,
        headers={"Content-Disposition": attachment(f"{name}.{form}")},
    )


def _weighting(weighting: Weighting) -> dict[str, object]:
    return {
        "general": weighting.general,
        "by_kind": [{"kind": kind, "weights": each} for kind, each in weighting.by_kind],
    }
