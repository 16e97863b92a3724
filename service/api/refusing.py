"""From an exception to the problem document that answers it (RFC 9457)."""

import json
from collections.abc import Iterator, Mapping
from http import HTTPStatus
from logging import Logger
from urllib.parse import quote

from flask import Response, current_app, request
from marshmallow import fields
from werkzeug.exceptions import HTTPException

from cards.errors import CatchwordError, InvalidAnswer, Refusal
from service.api import problems
from service.api.fields import Shape
from service.api.problem import Problem

MEDIA_TYPE = "application/problem+json"
RETRY_AFTER = 2
"""Seconds after which a library that was busy is worth asking again: longer than any change."""


class WrongFieldSchema(Shape):
    """One field that is not as it should be."""

    detail = fields.String(required=True, metadata={"description": "What is wrong with it."})
    pointer = fields.String(
        metadata={"description": "Where it is in the body, as a JSON Pointer: `#/points/0/text`."}
    )
    parameter = fields.String(
        metadata={"description": "Its name, when it is in the query or the form."}
    )


class ProblemSchema(Shape):
    """A problem document."""

    type = fields.String(
        required=True,
        metadata={"description": "What programs decide by.", "format": "uri-reference"},
    )
    title = fields.String(required=True, metadata={"description": "What the type means."})
    status = fields.Integer(required=True, metadata={"description": "The HTTP status."})
    detail = fields.String(
        required=True, metadata={"description": "What is wrong this time, and what to do."}
    )
    instance = fields.String(
        required=True,
        metadata={"description": "The address that was asked.", "format": "uri-reference"},
    )
    where = fields.String(
        metadata={"description": "The field or part of the digest it is about, where there is one."}
    )
    errors = fields.List(
        fields.Nested(WrongFieldSchema),
        metadata={"description": "Each field that is not as it should be."},
    )


def refuse(error: Exception) -> Response:
    """Return the problem document that answers an exception.

    What is not a refusal and not HTTP's own is a failure of Catchword or of its store: it
    is logged, and no more of it is told than Catchword's own words.
    """
    if isinstance(error, HTTPException) and error.code != HTTPStatus.INTERNAL_SERVER_ERROR:
        return _of_http(error)
    written = problem_of(error, request.method, request.path, current_app.logger)
    answer = _response(written)
    if written["type"] == problems.UNAVAILABLE.type:
        answer.headers["Retry-After"] = str(RETRY_AFTER)
    return answer


def problem_of(error: Exception, method: str, path: str, log: Logger) -> dict[str, object]:
    """Return what `ProblemSchema` dumps of a refusal or of a failure; a failure is logged.

    Args:
        error: what was raised.
        method: of the request.
        path: that was asked.
        log: of the application.
    """
    if isinstance(error, Refusal):
        place = {} if error.where is None else _places(error, error.where)
        return _described(problems.of_refusal(type(error)), error.message, path, **place)
    log.error("%s %s failed", method, path, exc_info=error)
    if isinstance(error, CatchwordError):
        return _described(problems.UNAVAILABLE, error.message, path)
    return _described(problems.FAILURE, problems.FAILURE.meaning, path)


def _places(error: Refusal, where: str) -> dict[str, object]:
    """Return what a refusal is about; of an answer, `where` is always a field of the body."""
    if not isinstance(error, InvalidAnswer):
        return {"where": where}
    wrong = {"detail": error.message, **_place("json", (where,))}
    return {"where": where, "errors": [wrong]}


def _of_http(error: HTTPException) -> Response:
    status = HTTPStatus(error.code or HTTPStatus.BAD_REQUEST)
    problem = problems.OF_STATUS.get(status)
    messages = getattr(error, "data", {}).get("messages", {})
    wrong = [
        {"detail": detail, **place}
        for location, found in messages.items()
        for detail, place in _flat(location, found)
    ]
    if problem is None:
        detail = error.description or status.description or status.phrase
        answer = _response(_written("about:blank", status.phrase, status, detail, request.path))
    elif wrong:
        answer = _response(_described(problem, _counted(len(wrong)), request.path, errors=wrong))
    else:
        answer = _response(_described(problem, _detail(problem, error), request.path))
    for name, value in error.get_headers():
        if name != "Content-Type":
            answer.headers[name] = value
    return answer


def _detail(problem: Problem, error: HTTPException) -> str:
    if problem is problems.NOTHING_HERE:
        return f"There is nothing at {request.path}. What there is stands at /api/openapi.json."
    if problem is problems.METHOD_REFUSED:
        return f"{request.path} does not answer to {request.method}."
    own_words = error.description not in {None, type(error).description}
    return error.description if own_words and error.description else problem.meaning


def _counted(wrong: int) -> str:
    if wrong == 1:
        return "One field is not as it should be."
    return f"{wrong} fields are not as they should be."


def _flat(
    location: str, found: object, path: tuple[str, ...] = ()
) -> Iterator[tuple[str, dict[str, str]]]:
    """Yield each message about a field with where the field is."""
    if isinstance(found, Mapping):
        for name, below in found.items():
            yield from _flat(location, below, path if name == "_schema" else (*path, str(name)))
    elif isinstance(found, list):
        for message in found:
            yield str(message), _place(location, path)
    else:
        yield str(found), _place(location, path)


def _place(location: str, path: tuple[str, ...]) -> dict[str, str]:
    if location != "json":
        return {"parameter": ".".join(path)} if path else {}
    steps = (_quoted(step.replace("~", "~0").replace("/", "~1")) for step in path)
    return {"pointer": "#" + "".join(f"/{step}" for step in steps)}


def _quoted(text: str) -> str:
    return quote(text, errors="replace")


def _described(problem: Problem, detail: str, path: str, **extensions: object) -> dict[str, object]:
    return _written(problem.type, problem.title, problem.status, detail, path, **extensions)


def _written(
    uri: str, title: str, status: HTTPStatus, detail: str, path: str, **extensions: object
) -> dict[str, object]:
    return {
        "type": uri,
        "title": title,
        "status": int(status),
        "detail": detail,
        "instance": _quoted(path),
        **extensions,
    }


def _response(written: Mapping[str, object]) -> Response:
    status = written["status"]
    assert isinstance(status, int)
    return Response(json.dumps(written) + "\n", status, mimetype=MEDIA_TYPE)
