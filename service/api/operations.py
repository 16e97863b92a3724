"""What a resource is declared with: its operations, and what each takes, gives and refuses.

From one declaration come the route, the checks of the request, the shape of the answer
and the operation's place in the OpenAPI document.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import wraps
from http import HTTPStatus
from typing import Any, ClassVar, TypeAlias, TypeVar

from flask import Response, request
from flask_smorest import Blueprint
from marshmallow import Schema

from cards.errors import Refusal
from service.api import problems
from service.api.bodies import BodyParser, text_of
from service.api.problem import Problem
from service.api.refusing import MEDIA_TYPE

Reply: TypeAlias = Response | tuple[object, HTTPStatus, dict[str, str]]
"""What a view returns: a response, or what is to be dumped with a status and headers."""
View = TypeVar("View", bound=Callable[..., Reply])

_HEADERS = {
    "ETag": "The state of what is returned, to be sent as If-Match with a change of it.",
    "Location": "Where what was made can be found.",
    "Link": "The page that follows, as rel=next (RFC 8288); absent on the last.",
    "Content-Disposition": "The name of the file.",
}
BINARY = {"type": "string", "format": "binary"}
"""The schema of a body of bytes."""
_NOT_ALWAYS_THERE = frozenset({"Link"})
_IF_MATCH = {
    "name": "If-Match",
    "in": "header",
    "required": True,
    "description": "The ETag of the state that is to be changed, or * for whatever it is.",
    "schema": {"type": "string", "minLength": 1},
    "example": '"0b7f7a5e-3c5f-4f0e-9a55-1a4b4f7f5d10.3"',
}
_IF_NONE_MATCH = {
    "name": "If-None-Match",
    "in": "header",
    "required": False,
    "description": "The ETag of the state that is known already; 304 when it is still that.",
    "schema": {"type": "string"},
    "example": '"0b7f7a5e-3c5f-4f0e-9a55-1a4b4f7f5d10.3"',
}


@dataclass(frozen=True, slots=True)
class Takes:
    """What the body of a request holds.

    Attributes:
        location: `json` or `files`.
        example: a body, None for a file.
    """

    schema: Schema
    description: str
    location: str = "json"
    example: object = None
    required: bool = True


@dataclass(frozen=True, slots=True)
class Content:
    """A body that is no JSON of a shape of ours: bytes, or text that others have a form for.

    Attributes:
        schema: its JSON Schema.
        example: a body.
    """

    media_type: str
    schema: Mapping[str, Any]
    example: object


@dataclass(frozen=True, slots=True)
class TakesText:
    """What the body of a request holds that is text, handed to the view as it is.

    Attributes:
        contents: each form it may have.
    """

    description: str
    contents: tuple[Content, ...]


@dataclass(frozen=True, slots=True)
class Gives:
    """What an operation answers when nothing is amiss.

    Attributes:
        statuses: each status with what it means; the first is the usual one.
        schema: of a body in JSON, with its example.
        headers: the names of the headers each status carries.
        contents: each form of a body that is no JSON of ours.
    """

    statuses: Mapping[HTTPStatus, str]
    schema: Schema | None = None
    example: object = None
    headers: Mapping[HTTPStatus, tuple[str, ...]] = field(default_factory=dict)
    contents: tuple[Content, ...] = ()


class Resource(Blueprint):  # type: ignore[misc] # flask-smorest has no annotations
    """The operations on one kind of thing."""

    ARGUMENTS_PARSER: ClassVar[BodyParser] = BodyParser()

    def __init__(self, name: str, prefix: str, description: str) -> None:
        super().__init__(name, __name__, url_prefix=f"/api{prefix}", description=description)
        self._prepare_doc_cbks.append(_document_headers_and_problems)

    def operation(
        self,
        route: str,
        *,
        gives: Gives,
        takes: Takes | TakesText | None = None,
        query: Schema | None = None,
        refuses: tuple[type[Refusal], ...] = (),
        path: Mapping[str, str] | None = None,
    ) -> Callable[[View], View]:
        """Declare an operation.

        Args:
            route: method and path below the resource's, as in `GET /<uuid:digest_id>`;
                a method alone for the resource itself.
            gives: what it answers.
            takes: what its body holds.
            query: what its query holds.
            refuses: the refusals of the use case.
            path: what each variable of the path means.

        The view is called with the loaded query, the loaded body and the path's
        variables. Its docstring is the operation's summary and description.
        """
        method, _, rule = route.partition(" ")

        def declare(view: View) -> View:
            served: Any = view
            if isinstance(takes, TakesText):
                served = self._taking(takes, served)
            elif takes is not None:
                served = self.arguments(
                    takes.schema,
                    location=takes.location,
                    required=takes.required,
                    description=takes.description,
                    example=takes.example,
                )(served)
            if query is not None:
                served = self.arguments(query, location="query")(served)
            served = self._answering(gives, served)
            served._apidoc["declared"] = {  # noqa: SLF001 - flask-smorest's own convention
                "name": view.__name__,
                "headers": gives.headers,
                "problems": _problems(method, takes, query, refuses, path),
            }
            self.route(
                rule,
                methods=[method],
                endpoint=view.__name__,
                parameters=[
                    {"in": "path", "name": name, "description": meaning, "required": True}
                    for name, meaning in (path or {}).items()
                ],
            )(served)
            return view

        return declare

    def _taking(self, takes: TakesText, view: Callable[..., Reply]) -> Callable[..., Any]:
        media_types = tuple(each.media_type for each in takes.contents)

        @wraps(view)
        def served(**variables: object) -> Reply:
            return view(text_of(request, media_types), **variables)

        documented: Callable[..., Any] = self.doc(
            requestBody={
                "description": takes.description,
                "required": True,
                "content": {
                    each.media_type: {"schema": dict(each.schema), "example": each.example}
                    for each in takes.contents
                },
            }
        )(served)
        return documented

    def _answering(self, gives: Gives, served: Callable[..., Reply]) -> Callable[..., Any]:
        (usual, meaning), *others = gives.statuses.items()
        answers: list[tuple[HTTPStatus, str, Content | None]]
        answers = [(usual, meaning, each) for each in gives.contents]
        answers += [(status, other, None) for status, other in others]
        for status, said, content in answers:
            served = self.alt_response(
                int(status),
                schema=gives.schema if content is None else dict(content.schema),
                description=said,
                example=gives.example if content is None else content.example,
                content_type=None if content is None else content.media_type,
                success=True,
            )(served)
        if gives.contents:
            return served
        answering: Callable[..., Any] = self.response(
            int(usual), gives.schema, description=meaning, example=gives.example
        )(served)
        return answering


def _problems(
    method: str,
    takes: Takes | TakesText | None,
    query: Schema | None,
    refuses: tuple[type[Refusal], ...],
    path: Mapping[str, str] | None,
) -> list[Problem]:
    """Return every problem an operation can answer with."""
    found = [problems.of_refusal(kind) for kind in refuses]
    if takes is not None:
        found += [problems.MEDIA_TYPE, problems.TOO_LARGE, problems.MALFORMED]
    if isinstance(takes, Takes) or query is not None:
        found.append(problems.INVALID_REQUEST)
    if any(problem.status == HTTPStatus.PRECONDITION_FAILED for problem in found):
        found.append(problems.TAG_REQUIRED)
    if method != "GET":
        found.append(problems.FROM_ELSEWHERE)
    if path:
        found.append(problems.NOTHING_HERE)
    return [*found, problems.MISDIRECTED, problems.FAILURE, problems.UNAVAILABLE]


def _document_headers_and_problems(
    doc: dict[str, Any], doc_info: dict[str, Any], *, method: str, **_: object
) -> dict[str, Any]:
    """Add an operation's id, its headers and its problems to its documentation."""
    declared = doc_info["declared"]
    doc["operationId"] = declared["name"]
    responses = doc["responses"]
    responses.pop(HTTPStatus.UNPROCESSABLE_ENTITY.value, None)
    for status, names in declared["headers"].items():
        responses[int(status)]["headers"] = {name: _header(name) for name in names}
    tagged = any("ETag" in names for names in declared["headers"].values())
    if method == "get" and tagged:
        doc.setdefault("parameters", []).append(_IF_NONE_MATCH)
        responses[HTTPStatus.NOT_MODIFIED.value] = {
            "description": "It is still in the state that If-None-Match names.",
            "headers": {"ETag": _header("ETag")},
        }
    by_status: dict[int, list[Problem]] = {}
    for problem in dict.fromkeys(declared["problems"]):
        by_status.setdefault(int(problem.status), []).append(problem)
    if HTTPStatus.PRECONDITION_REQUIRED.value in by_status:
        doc.setdefault("parameters", []).append(_IF_MATCH)
    for status, several in sorted(by_status.items()):
        responses[status] = {
            "description": " Or: ".join(f"{each.title}." for each in several),
            "content": {
                MEDIA_TYPE: {
                    "schema": {"$ref": "#/components/schemas/Problem"},
                    "examples": {
                        each.name: {"$ref": f"#/components/examples/{each.name}"}
                        for each in several
                    },
                }
            },
        }
    return doc


def _header(name: str) -> dict[str, Any]:
    return {
        "description": _HEADERS[name],
        "required": name not in _NOT_ALWAYS_THERE,
        "schema": {"type": "string"},
    }
