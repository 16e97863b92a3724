"""The JSON door: a module a resource, its shapes beside it, one table of problems.

Every resource is declared once; its route, its checks and its place in the OpenAPI
document follow from that. `install` opens the door, `refuse` answers every failure
behind it.
"""

from flask import Flask

from service.api import (
    advice,
    annotations,
    answers,
    archives,
    bibliography,
    book,
    care,
    check_ins,
    commitments,
    decisions,
    desk,
    digests,
    exports,
    headings,
    imports,
    items,
    links,
    price,
    reader,
    readings,
    reminders,
    rereading,
    retention,
    reviews,
    sheets,
    sitting,
    talks,
    versions,
    wording,
    writing_out,
)
from service.api.document import Document
from service.api.documentation import install_documentation
from service.api.refusing import refuse
from service.use_cases.ports import Desk

__all__ = ["install", "refuse"]


_RESOURCES = (
    digests.resource,
    imports.resource,
    versions.resource,
    care.resource,
    readings.resource,
    links.resource,
    price.resource,
    price.prices,
    advice.resource,
    writing_out.resource,
    writing_out.blanks,
    book.resource,
    annotations.resource,
    bibliography.citation,
    bibliography.citations,
    items.resource,
    sitting.resource,
    sheets.resource,
    answers.resource,
    commitments.resource,
    check_ins.resource,
    decisions.resource,
    talks.resource,
    reviews.resource,
    rereading.books,
    rereading.facts,
    retention.resource,
    wording.resource,
    reader.resource,
    reminders.resource,
    reminders.addresses,
    headings.resource,
    exports.resource,
    archives.resource,
)
"""The resources, in the order the documentation tells of them."""


def install(app: Flask, laid: Desk) -> None:
    """Open the JSON door of an application, and its documentation, below `/api/`."""
    desk.lay(app, laid)
    document = Document(app)
    for resource in _RESOURCES:
        document.register_blueprint(resource)
    install_documentation(app, document.spec.to_dict())
