"""The documentation a person reads, made from the OpenAPI document a program reads.

One page lists every operation and shape; each type of problem has a page of its own at
its URI. No script, and nothing from elsewhere.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from http import HTTPStatus
from typing import Any

from flask import Blueprint, Flask, abort, render_template

from service.api.desk import desk
from service.api.problems import EVERY

_METHODS = ("get", "post", "put", "delete")


@dataclass(frozen=True, slots=True)
class Body:
    """A body of a request or an answer, as the page shows it.

    Attributes:
        shape: the name of its schema, or None.
        example: in JSON or as text, or None.
    """

    media_type: str
    shape: str | None
    example: str | None


@dataclass(frozen=True, slots=True)
class Answered:
    """One status an operation answers with, as the page shows it.

    Attributes:
        problems: the names of the problem types it can be.
    """

    status: str
    phrase: str
    meaning: str
    headers: tuple[str, ...]
    bodies: tuple[Body, ...]
    problems: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Operation:
    """An operation, as the page shows it."""

    name: str
    method: str
    path: str
    summary: str
    description: str
    parameters: tuple[dict[str, Any], ...]
    takes: tuple[Body, ...]
    required: bool
    answers: tuple[Answered, ...]


@dataclass(frozen=True, slots=True)
class Field:
    """A field of a shape, as the page shows it.

    Attributes:
        type: in words.
        shape: the name of the shape it holds, or None.
    """

    name: str
    type: str
    shape: str | None
    required: bool
    meaning: str


def install_documentation(app: Flask, document: dict[str, Any]) -> None:
    """Serve the pages that document the API below `/api/`."""
    pages = Blueprint("api-documentation", __name__, template_folder="templates")
    chapters = [
        (tag["name"], tag["description"], list(_operations(document, tag["name"])))
        for tag in document["tags"]
    ]
    schemas = document["components"]["schemas"]
    shapes = [
        (name, schema.get("description", ""), list(_fields(schema)))
        for name, schema in sorted(schemas.items())
    ]

    @pages.get("/api/")
    def overview() -> str:
        """List every operation, shape and problem."""
        return render_template(
            "api/overview.html",
            info=document["info"],
            chapters=chapters,
            shapes=shapes,
            problems=EVERY.values(),
            demo=desk().demo,
        )

    @pages.get("/api/problems/<name>")
    def problem(name: str) -> str:
        """Say what one type of problem means."""
        found = EVERY.get(name)
        if found is None:
            abort(HTTPStatus.NOT_FOUND)
        return render_template("api/problem.html", problem=found, demo=desk().demo)

    app.register_blueprint(pages)


def _operations(document: dict[str, Any], tag: str) -> Iterator[Operation]:
    for path, methods in document["paths"].items():
        shared = methods.get("parameters", [])
        for method in _METHODS:
            if method not in methods or tag not in methods[method]["tags"]:
                continue
            declared = methods[method]
            body = declared.get("requestBody", {})
            yield Operation(
                name=declared["operationId"],
                method=method.upper(),
                path=path,
                summary=declared["summary"],
                description=declared.get("description", ""),
                parameters=tuple(
                    {**each, "type": _type(each["schema"])}
                    for each in (*shared, *declared.get("parameters", []))
                ),
                takes=tuple(_bodies(body.get("content", {}))),
                required=body.get("required", False),
                answers=tuple(
                    _answered(status, answer)
                    for status, answer in sorted(declared["responses"].items())
                ),
            )


def _answered(status: str, answer: dict[str, Any]) -> Answered:
    content = answer.get("content", {})
    return Answered(
        status=status,
        phrase=HTTPStatus(int(status)).phrase,
        meaning=answer["description"],
        headers=tuple(answer.get("headers", {})),
        bodies=tuple(_bodies(content)),
        problems=tuple(name for body in content.values() for name in body.get("examples", ())),
    )


def _bodies(content: dict[str, Any]) -> Iterator[Body]:
    for media_type, body in content.items():
        example = body.get("example")
        text = example if isinstance(example, str) else json.dumps(example, indent=2)
        yield Body(media_type, _shape(body["schema"]), None if example is None else text)


def _fields(schema: dict[str, Any]) -> Iterator[Field]:
    required = schema.get("required", [])
    for name, described in schema.get("properties", {}).items():
        yield Field(
            name=name,
            type=_type(described),
            shape=_shape(described),
            required=name in required,
            meaning=described.get("description", ""),
        )


def _shape(schema: dict[str, Any]) -> str | None:
    """Return the name of the shape a schema holds, itself or in a list, or None."""
    several = (schema, *schema.get("allOf", ()), *schema.get("anyOf", ()), schema.get("items", {}))
    names = (each["$ref"].rpartition("/")[2] for each in several if "$ref" in each)
    return next(names, None)


def _type(schema: dict[str, Any]) -> str:
    """Return the type of a schema in words."""
    types = schema.get("type", ())
    types = [types] if isinstance(types, str) else list(types)
    if _shape(schema) is not None and "array" not in types:
        types = ["object", *(["null"] if {"type": "null"} in schema.get("anyOf", ()) else [])]
    said = " or ".join(dict.fromkeys(types)) or "anything"
    if "format" in schema:
        said += f" ({schema['format']})"
    if "enum" in schema:
        said += ": " + ", ".join(str(each) for each in schema["enum"] if each is not None)
    bounds = {
        "minimum": "from {}",
        "maximum": "to {}",
        "maxLength": "at most {} characters",
        "maxItems": "at most {} entries",
    }
    limits = [words.format(schema[key]) for key, words in bounds.items() if key in schema]
    return f"{said}, {' '.join(limits)}" if limits else said
