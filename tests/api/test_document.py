"""The OpenAPI document and its pages."""

import json
import re
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest
from flask import Flask
from jsonschema import Draft202012Validator
from openapi_spec_validator import validate

from service.api.documentation import _METHODS
from service.api.problems import EVERY
from service.main import create_app
from service.use_cases.ports import Desk
from tests.api.conftest import Door


@pytest.fixture
def document(door: Door) -> dict[str, Any]:
    """The document as it is served."""
    served: dict[str, Any] = door.client.get("/api/openapi.json").json
    return served


def operations(document: dict[str, Any]) -> Iterator[tuple[str, str, dict[str, Any]]]:
    """Yield method, path and operation."""
    for path, methods in document["paths"].items():
        for method in _METHODS:
            if method in methods:
                yield method.upper(), path, methods[method]


def test_the_document_is_valid(document: dict[str, Any]) -> None:
    """The document is OpenAPI 3.1.0 to the validator of the specification's own schema."""
    assert document["openapi"] == "3.1.0"
    validate(document)


def test_every_route_is_in_the_document(app: Flask, document: dict[str, Any]) -> None:
    """Each address below `/api/` is documented with each of its methods, and nothing else is."""
    served = {
        (method, re.sub(r"<(?:[^:<>]+:)?(\w+)>", r"{\1}", rule.rule))
        for rule in app.url_map.iter_rules()
        if rule.rule.startswith("/api/") and not rule.endpoint.startswith("api-doc")
        for method in (rule.methods or set()) - {"HEAD", "OPTIONS"}
    }
    assert {(method, path) for method, path, _ in operations(document)} == served


def test_every_operation_says_what_it_does(document: dict[str, Any]) -> None:
    """Each operation has an id of its own, a summary, described parameters, and its examples."""
    found = list(operations(document))
    assert len({operation["operationId"] for _, _, operation in found}) == len(found)
    for method, path, operation in found:
        assert operation["summary"].endswith("."), (method, path)
        for parameter in operation.get("parameters", []):
            assert parameter["description"], (method, path, parameter["name"])
        body = operation.get("requestBody", {}).get("content", {})
        assert "multipart/form-data" in body or all("example" in each for each in body.values())
        for status, answer in operation["responses"].items():
            assert answer["description"]
            content = answer.get("content", {}).values()
            assert all("example" in each or each["examples"] for each in content), (path, status)


def test_every_field_is_described(document: dict[str, Any]) -> None:
    """Each field of each shape says what it means."""
    for name, schema in document["components"]["schemas"].items():
        assert schema["description"], name
        for field, described in schema["properties"].items():
            assert described.get("description"), (name, field)


def test_every_operation_documents_its_problems(document: dict[str, Any]) -> None:
    """Each failure is documented as application/problem+json with the types it can be."""
    for method, path, operation in operations(document):
        failures = {
            status: answer
            for status, answer in operation["responses"].items()
            if int(status) >= 400
        }
        assert {"421", "500", "503"} <= set(failures)
        assert method == "GET" or "403" in failures
        for answer in failures.values():
            assert list(answer["content"]) == ["application/problem+json"], (method, path)
            (problem,) = answer["content"].values()
            assert problem["schema"] == {"$ref": "#/components/schemas/Problem"}
            assert set(problem["examples"]) <= set(EVERY)


def test_examples_fit_their_shapes(document: dict[str, Any]) -> None:
    """Each example of a body is valid under the schema beside it (JSON Schema 2020-12)."""
    shapes = {"components": document["components"]}
    for method, path, operation in operations(document):
        bodies = [operation.get("requestBody", {}), *operation["responses"].values()]
        for body in bodies:
            for content in body.get("content", {}).values():
                if "example" in content:
                    whole = Draft202012Validator({**content["schema"], **shapes})
                    wrong = [error.message for error in whole.iter_errors(content["example"])]
                    assert not wrong, (method, path, wrong)


def test_examples_have_every_field_of_their_shapes(document: dict[str, Any]) -> None:
    """An example of an answer shows each field its shape knows, and no other."""
    schemas = document["components"]["schemas"]
    for method, path, operation in operations(document):
        for answer in operation["responses"].values():
            for content in answer.get("content", {}).values():
                if "$ref" in content["schema"] and "example" in content:
                    schema = schemas[content["schema"]["$ref"].rpartition("/")[2]]
                    assert set(schema["properties"]) == set(content["example"]), (method, path)


def test_the_page_lists_everything_and_needs_no_script(
    door: Door, document: dict[str, Any]
) -> None:
    """The page names every operation, shape, field and problem; it has no script and no style."""
    page = door.client.get("/api/")
    assert page.headers["Content-Type"].startswith("text/html")
    for method, path, operation in operations(document):
        assert f"<code>{method} {path}</code>" in page.text
        assert operation["summary"].replace("'", "&#39;") in page.text
    for name, schema in document["components"]["schemas"].items():
        assert f'id="shape-{name}"' in page.text
        assert all(f"<code>{field}</code>" in page.text for field in schema["properties"])
    assert all(f'href="{problem.type}"' in page.text for problem in EVERY.values())
    assert not re.search(r"<script|<style|\sstyle=|\son\w+=", page.text)
    assert len(re.findall(r'rel="stylesheet"', page.text)) == 1


def test_every_link_of_the_page_leads_somewhere(door: Door) -> None:
    """Each link within the page has its target, each link to another page is answered."""
    page = door.client.get("/api/").text
    anchors = set(re.findall(r'\sid="([^"]+)"', page))
    targets = set(re.findall(r'href="([^"]+)"', page))
    assert len(anchors) == len(re.findall(r'\sid="([^"]+)"', page))
    for target in targets:
        if target.startswith("#"):
            assert target[1:] in anchors
        else:
            assert door.client.get(target).status_code == 200, target


def test_the_document_holds_no_machine_and_no_clock(door: Door) -> None:
    """Served twice, the document is the same to the byte."""
    one, two = (door.client.get("/api/openapi.json") for _ in range(2))
    assert one.data == two.data
    assert json.loads(one.data)["info"]["title"] == "Catchword"


def test_a_demo_says_so_on_the_pages_of_the_api(desk: Desk) -> None:
    """The API's pages of a demo library are labelled as one, and a reader's own are not."""
    for demo in (True, False):
        client = create_app(replace(desk, demo=demo)).test_client()
        for address in ("/api/", "/api/problems/conflict"):
            page = client.get(address)
            assert page.status_code == 200
            assert ("a demo library" in page.text) is demo


def test_the_pages_lead_to_every_room(door: Door) -> None:
    """From the API's pages each room of the house is one step away, and none of them is lost."""
    rooms = re.search(r'<nav aria-label="Rooms">(.*?)</nav>', door.client.get("/").text, re.DOTALL)
    assert rooms is not None
    for address in ("/api/", "/api/problems/conflict"):
        page = door.client.get(address).text
        for room in re.findall(r'href="([^"]+)"', rooms[1]):
            assert f'href="{room}"' in page


def test_code_in_the_prose_is_set_as_code(door: Door) -> None:
    """What is code in a description is shown as code, without the marks it is written with."""
    page = door.client.get("/api/").text
    assert re.search(r"<code>next</code>\s+is the cursor", page)
    prose = re.sub(r"<pre.*?</pre>", "", page, flags=re.DOTALL)
    assert "`" not in prose
