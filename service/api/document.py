"""The OpenAPI document, generated from the resources as they are declared."""

from importlib.metadata import version
from typing import Any

from apispec.ext.marshmallow import MarshmallowPlugin
from apispec.ext.marshmallow.openapi import OpenAPIConverter
from flask import Flask
from flask_smorest import Api
from marshmallow import Schema

from service.api import problems
from service.api.fields import Shape
from service.api.refusing import ProblemSchema

_ABOUT = """Catchword keeps finished books alive. A digest, the two-page record of one finished
book, is handed over; items are made of it, and a sitting asks a few of them every day, at the
moment they are about to be forgotten.

Every failure is answered with a problem document (RFC 9457), whose `type` programs decide by.
What can be edited carries an ETag, and is changed only with If-Match; all that belongs to a
digest is edited under the tag of the digest. Lists come in pages: `next` is the cursor of the
page that follows, null on the last. Answers and check-ins are facts: each carries an id made by
whoever recorded it, so sending one twice changes nothing. Days are the reader's own, in their
time zone, turning over at their hour."""


class _Converter(OpenAPIConverter):
    """Adds what a shape rules beyond its fields."""

    def schema2jsonschema(self, schema: Schema) -> dict[str, Any]:
        described: dict[str, Any] = super().schema2jsonschema(schema)  # type: ignore[no-untyped-call] # apispec leaves it bare
        if isinstance(schema, Shape):
            described |= schema.rules
            if schema.__doc__:
                described["description"] = schema.__doc__.partition("\n\n")[0]
        return described


class _Plugin(MarshmallowPlugin):
    Converter = _Converter


class Document(Api):  # type: ignore[misc] # flask-smorest has no annotations
    """The document, and the address it is served at.

    Failures are answered by `refusing.refuse` alone, so flask-smorest's own handler and
    its own shape of errors are left out.
    """

    DEFAULT_ERROR_RESPONSE_NAME = None

    def __init__(self, app: Flask) -> None:
        app.config.update(
            API_TITLE="Catchword",
            API_VERSION=version("catchword"),
            OPENAPI_VERSION="3.1.0",
            OPENAPI_URL_PREFIX="/api",
            OPENAPI_JSON_PATH="openapi.json",
        )
        super().__init__(
            app, spec_kwargs={"info": {"description": _ABOUT}, "marshmallow_plugin": _Plugin()}
        )

    def _register_error_handlers(self) -> None:
        """Leave failures to the application."""

    def _register_responses(self) -> None:
        """Describe problems in the place of flask-smorest's errors."""
        self.spec.components.schema("Problem", schema=ProblemSchema)
        for problem in problems.EVERY.values():
            self.spec.components.example(
                problem.name,
                {
                    "summary": problem.title,
                    "description": problem.meaning,
                    "value": {
                        "type": problem.type,
                        "title": problem.title,
                        "status": int(problem.status),
                        "detail": problem.meaning,
                        "instance": "/api/...",
                    },
                },
            )

    def _register_pagination_header(self) -> None:
        """Leave out a header that is not sent: pages are linked by RFC 8288."""

    def _register_etag_headers(self) -> None:
        """Leave out what operations describe themselves."""
