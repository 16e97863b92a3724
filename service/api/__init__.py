"""The JSON door: a module a resource, its shapes beside it, one table of problems.

Every resource is declared once; its route, its checks and its place in the OpenAPI
document follow from that. `install` opens the door, `refuse` answers every failure
behind it.
"""

from flask import Flask

from service.api import (
    answers,
    check_ins,
    commitments,
    desk,
    digests,
    items,
    reader,
    sitting,
    wording,
)
from service.api.document import Document
from service.api.documentation import install_documentation
from service.api.refusing import refuse
from service.use_cases.ports import Desk

__all__ = ["install", "refuse"]


def install(app: Flask, laid: Desk) -> None:
    """Open the JSON door of an application, and its documentation, below `/api/`."""
    desk.lay(app, laid)
    document = Document(app)
    for module in (digests, items, sitting, answers, commitments, check_ins, wording, reader):
        document.register_blueprint(module.resource)
    install_documentation(app, document.spec.to_dict())
