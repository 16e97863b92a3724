"""How the body and the query of a request are read, before any shape is asked of them."""

import json
from collections.abc import Sequence
from typing import NoReturn

from flask import Request
from marshmallow import RAISE, Schema
from webargs import missing
from webargs.flaskparser import FlaskParser
from werkzeug.datastructures import MultiDict
from werkzeug.exceptions import BadRequest, UnsupportedMediaType


class BodyParser(FlaskParser):
    """Takes JSON as RFC 8259 has it and forms with files; refuses any other body with 415."""

    DEFAULT_UNKNOWN_BY_LOCATION = {  # noqa: RUF012 - as webargs has it
        **FlaskParser.DEFAULT_UNKNOWN_BY_LOCATION,
        "query": RAISE,
        "files": RAISE,
    }

    def load_json(self, req: Request, schema: Schema) -> object:  # noqa: ARG002
        """Return the JSON of a body, `missing` when there is no body at all.

        Raises:
            UnsupportedMediaType: it is of another type.
            BadRequest: it is not JSON.
        """
        body = req.get_data(cache=True)
        if not body:
            return missing
        if req.mimetype != "application/json":
            raise UnsupportedMediaType("Send the body as application/json.")
        try:
            return json.loads(body.decode(), parse_constant=_no_number)
        except RecursionError:
            raise BadRequest("The body is nested too deep.") from None
        except ValueError as error:
            raise BadRequest(f"The body is not JSON: {_reason(error)}.") from error

    def load_files(self, req: Request, schema: Schema) -> object:
        """Return the files of a form, `missing` when there is no body at all.

        Raises:
            UnsupportedMediaType: it is of another type.
        """
        if req.mimetype == "multipart/form-data":
            unknown = [(name, text) for name, text in req.form.items() if name not in schema.fields]
            parts = MultiDict([*req.files.items(multi=True), *unknown])
            return self._makeproxy(parts, schema)
        if req.get_data(cache=True):
            names = " or ".join(f"“{name}”" for name in schema.fields)
            raise UnsupportedMediaType(f"Send it as the part {names} of multipart/form-data.")
        return missing


def text_of(req: Request, media_types: Sequence[str]) -> str:
    """Return the body of a request that is text of one of some types, as it is.

    Raises:
        UnsupportedMediaType: it is of another type.
        BadRequest: its text is not UTF-8.
    """
    if req.mimetype not in media_types:
        raise UnsupportedMediaType(f"Send the body as {' or '.join(media_types)}.")
    try:
        return req.get_data().decode()
    except UnicodeDecodeError as error:
        raise BadRequest("The body is not text in UTF-8.") from error


def _no_number(written: str) -> NoReturn:
    raise ValueError(f"{written} is no number of JSON")


def _reason(error: ValueError) -> str:
    if isinstance(error, json.JSONDecodeError):
        return f"{error.msg}, line {error.lineno}, column {error.colno}"
    return "its text is not UTF-8" if isinstance(error, UnicodeDecodeError) else str(error)
