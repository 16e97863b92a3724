"""From the SVG of a picture to its PNG, through Typst and the typefaces shipped."""

import threading
from functools import cached_property
from importlib.resources import files
from pathlib import Path
from typing import Final

import typst

from cards.errors import CannotWrite

FAMILY: Final = "Source Serif 4"
_DOTS: Final = 144
"""Dots to an inch: two to a unit of the picture, which is a point."""


class Setter:
    """Sets pictures as PNG; letters our typefaces lack come from the system's."""

    def __init__(self) -> None:
        self._lock = threading.Lock()

    def png(self, svg: bytes, width: float, height: float) -> bytes:
        """Return a drawing as a PNG of twice as many dots as it has units.

        Raises:
            CannotWrite: the typesetter failed.
        """
        inputs = {"svg": svg.decode(), "wide": f"{width:g}", "high": f"{height:g}"}
        try:
            with self._lock:
                return typst.compile(
                    self._source,
                    root=self._source.parent,
                    font_paths=self._fonts,
                    format="png",
                    ppi=_DOTS,
                    sys_inputs=inputs,
                )
        except typst.TypstError as error:
            raise CannotWrite(
                "The picture could not be set as PNG. Take it as SVG instead", where="picture"
            ) from error

    @cached_property
    def _source(self) -> Path:
        return Path(str(files("service.feeds.pictures") / "picture.typ"))

    @cached_property
    def _fonts(self) -> typst.Fonts:
        # Only the folder is taken from the rooms of documents, not a line of their code.
        shipped = files("service") / "documents" / "press" / "fonts"
        return typst.Fonts(include_system_fonts=True, font_paths=[str(shipped)])
