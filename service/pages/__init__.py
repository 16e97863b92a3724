"""The HTML door: a module a page, templates beside them, everything they load in `static`."""

from service.pages.door import install
from service.pages.refusals import refuse

__all__ = ["install", "refuse"]
