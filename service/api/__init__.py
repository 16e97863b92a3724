"""The JSON door: a module a resource, its shapes beside it, one table of problems.

Every resource is declared once; its route, its checks and its place in the OpenAPI
document follow from that. `install` opens the door, `refuse` answers every failure
behind it.
"""

from flask import Flask

from service.api import desk as desks
from service.api.answers import answers
from service.api.check_ins import check_ins
from service.api.digests import digests
from service.api.document import Document
from service.api.documentation import install_documentation
from service.api.items import items
from service.api.reader import reader
from service.api.refusing import refuse
from service.api.sitting import sitting
from service.use_cases.ports import Desk

__all__ = ["install", "refuse"]


def install(app: Flask, desk: Desk) -> None:
    """Open the JSON door of an application, and its documentation, below `/api/`."""
    desks.lay(app, desk)
    document = Document(app)
    for resource in (digests, items, sitting, answers, check_ins, reader):
        document.register_blueprint(resource)
    install_documentation(app, document.spec.to_dict())
