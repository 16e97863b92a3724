"""`/retention`: what came back, what is known, what lies ahead, and how well it was foreseen."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from http import HTTPStatus
from io import BytesIO

from flask import Blueprint, Response, abort, render_template, request, send_file, url_for

from service.use_cases.picture_records import Drawer, Picture
from service.use_cases.ports import Desk
from service.use_cases.retaining import Retained, show_retention
from service.use_cases.retaining_measures import measures, told
from service.use_cases.retaining_weights import columns, considered, former, in_force, waiting
from service.use_cases.retention_pictures import CAME_BACK, FORESEEN, PICTURES
from service.use_cases.retention_pictures.shares import headline

_MEDIA_TYPES = {"svg": "image/svg+xml", "png": "image/png", "csv": "text/csv"}
_FILES = (
    ("SVG", "svg", None),
    ("PNG", "png", None),
    ("PNG on dark paper", "png", 1),
    ("the data (CSV)", "csv", None),
)


@dataclass(frozen=True, slots=True)
class Shown:
    """A picture as it stands on a page.

    Attributes:
        picture: what it shows, and its figures.
        markup: as it is drawn.
        files: what it can be taken as, each with its address.
    """

    picture: Picture
    markup: str
    files: tuple[tuple[str, str], ...]


def install(door: Blueprint, desk: Desk) -> None:
    """Add the pages of retention, and their pictures as files, to the door."""

    @door.get("/retention")
    def retention() -> str:
        """Show what came back, what is known now and what lies ahead."""
        retained = show_retention(desk)
        return render_template(
            "retention/came_back.html",
            retained=retained,
            headline=headline(retained),
            shown=_shown(desk, retained, CAME_BACK),
        )

    @door.get("/retention/predictions")
    def predictions() -> str:
        """Show how well what came back was foreseen, and by whose weights."""
        retained = show_retention(desk)
        quality = retained.figures.quality
        latest, verdicts = considered(retained)
        return render_template(
            "retention/predictions.html",
            quality=quality,
            told="" if quality is None else told(quality),
            measures=() if quality is None else measures(quality),
            shown=_shown(desk, retained, FORESEEN),
            in_force=in_force(retained),
            considered=latest,
            verdicts=verdicts,
            waiting=waiting(retained.learnt),
            former=former(retained.learnt),
            weights=columns(retained),
        )

    @door.get("/retention/pictures/<name>.<form>")
    def retention_picture(name: str, form: str) -> Response:
        """Hand out a picture, or the figures behind it, as a file."""
        if name not in PICTURES or form not in _MEDIA_TYPES:
            abort(HTTPStatus.NOT_FOUND)
        picture = PICTURES[name](show_retention(desk))
        if picture is None:
            abort(HTTPStatus.NOT_FOUND)
        return send_file(
            BytesIO(_written(desk.pictures, picture, form)),
            mimetype=_MEDIA_TYPES[form],
            as_attachment=True,  # opened here, its own style would be refused
            download_name=f"{name}.{form}",
        )


def _written(drawer: Drawer, picture: Picture, form: str) -> bytes:
    match form:
        case "svg":
            return drawer.svg(picture)
        case "png":
            return drawer.png(picture, dark=request.args.get("dark") == "1")
        case _:
            return drawer.data(picture)


def _shown(
    desk: Desk, retained: Retained, pictures: Mapping[str, Callable[[Retained], Picture]]
) -> dict[str, Shown]:
    return {name: shown(desk.pictures, made(retained)) for name, made in pictures.items()}


def shown(drawer: Drawer, picture: Picture) -> Shown:
    """Return a picture as it stands on a page."""
    return Shown(picture, drawer.inline(picture), _files(picture.name))


def _files(name: str) -> tuple[tuple[str, str], ...]:
    return tuple(
        (label, url_for("pages.retention_picture", name=name, form=form, dark=dark))
        for label, form, dark in _FILES
    )
