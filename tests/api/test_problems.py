"""Every failure under `/api/` is a problem document, and every type of problem can be met."""

import logging
from collections.abc import Callable
from typing import Any
from uuid import uuid4

import pytest
from flask.testing import FlaskClient
from werkzeug.exceptions import Gone
from werkzeug.test import TestResponse

from cards import errors
from service.api import answers, sitting
from service.api.problems import EVERY, OF_REFUSAL, of_refusal
from service.store.errors import StoreBusy
from service.store.unit_of_work import SqlUnitOfWork
from service.use_cases.ports import Desk
from tests.api.conftest import Door

Sends = Callable[[FlaskClient], TestResponse]

FROM_HTTP: dict[str, tuple[int, Sends]] = {
    "malformed-request": (
        400,
        lambda client: client.post("/api/answers", data="{", content_type="application/json"),
    ),
    "sent-from-elsewhere": (
        403,
        lambda client: client.post(
            "/api/answers", json={}, headers={"Origin": "https://elsewhere.example"}
        ),
    ),
    "nothing-here": (404, lambda client: client.get("/api/books")),
    "method-refused": (405, lambda client: client.patch("/api/digests")),
    "request-too-large": (
        413,
        lambda client: client.post(
            "/api/answers", data=b" " * 22_020_097, content_type="application/json"
        ),
    ),
    "media-type-refused": (
        415,
        lambda client: client.post("/api/answers", data="id=1", content_type="text/plain"),
    ),
    "invalid-request": (422, lambda client: client.post("/api/answers", json={})),
    "misdirected": (
        421,
        lambda client: client.get("/api/sitting", headers={"Host": "elsewhere.example"}),
    ),
    "if-match-required": (428, lambda client: client.delete(f"/api/digests/{uuid4()}")),
}


def shape(response: TestResponse) -> dict[str, Any]:
    """Return a problem document after checking what RFC 9457 asks of every one."""
    assert response.headers["Content-Type"] == "application/problem+json"
    document: dict[str, Any] = response.json
    assert document["status"] == response.status_code
    assert document["type"].startswith("/api/problems/")
    assert document["title"] == EVERY[document["type"].rpartition("/")[2]].title
    assert document["detail"].endswith(".")
    assert document["instance"] == response.request.path
    return document


@pytest.mark.parametrize("name", sorted(FROM_HTTP))
def test_what_http_refuses_is_a_problem_too(door: Door, name: str) -> None:
    """Malformed, misdirected, oversized and unconditional requests are problem documents."""
    status, sends = FROM_HTTP[name]
    refused = sends(door.client)
    assert refused.status_code == status
    assert shape(refused)["type"] == f"/api/problems/{name}"


def test_a_wrong_method_is_told_the_right_ones(door: Door) -> None:
    """405 carries Allow, with every method the address answers to."""
    allowed = door.client.patch("/api/digests").headers["Allow"]
    assert {each.strip() for each in allowed.split(",")} == {"GET", "HEAD", "OPTIONS", "POST"}


@pytest.mark.parametrize(
    "path",
    ["/api/digests/1", "/api/digests/%00", "/api/digests/9" * 2, "/api/%ff", "/api/x y"],
)
def test_an_unknown_address_is_a_problem(door: Door, path: str) -> None:
    """Whatever stands below `/api/` and is nothing is answered with a problem document."""
    refused = door.client.get(path)
    assert refused.status_code == 404
    assert refused.json["type"] == "/api/problems/nothing-here"


@pytest.mark.parametrize(
    "body",
    [
        b"{",
        b"[" * 100_000,
        b'{"id": NaN}',
        b'{"id": ' + b"9" * 5_000 + b"}",
        b"\xff\xfe",
        '{"id": "\u00e9"}'.encode("latin-1"),
    ],
)
def test_a_body_that_is_not_json_is_malformed(door: Door, body: bytes) -> None:
    """Cut, bottomless, not UTF-8, or with what JSON has no number for: 400, and never a failure."""
    refused = door.client.post("/api/answers", data=body, content_type="application/json")
    assert refused.status_code == 400
    assert shape(refused)["type"] == "/api/problems/malformed-request"


@pytest.mark.parametrize("body", [b"[]", b"1", b"null", b'"a"'])
def test_json_that_is_no_object_has_the_wrong_shape(door: Door, body: bytes) -> None:
    """JSON that is not an object is refused with 422, pointing at the whole body."""
    refused = door.client.post("/api/answers", data=body, content_type="application/json")
    assert refused.status_code == 422
    assert shape(refused)["errors"][0]["pointer"] == "#"


@pytest.mark.parametrize("kind", sorted(OF_REFUSAL, key=lambda kind: kind.__name__))
def test_each_refusal_is_its_own_problem(
    door: Door, monkeypatch: pytest.MonkeyPatch, kind: type[errors.Refusal]
) -> None:
    """A refusal raised in a use case is answered by its row of the table, message and place."""
    refusal = kind.__new__(kind)
    errors.Refusal.__init__(refusal, "It will not do.", where="part")

    def refuse(_: Desk, __: int | None) -> None:
        raise refusal

    monkeypatch.setattr(sitting, "todays_sitting", refuse)
    refused = door.client.get("/api/sitting")
    document = shape(refused)
    assert refused.status_code == OF_REFUSAL[kind].status
    assert document["type"] == OF_REFUSAL[kind].type
    assert (document["detail"], document["where"]) == ("It will not do.", "part")


def test_every_refusal_the_core_can_express_has_a_row_of_its_own() -> None:
    """No refusal of the core falls back on a more general problem."""

    def below(kind: type[errors.Refusal]) -> set[type[errors.Refusal]]:
        return {kind}.union(*(below(each) for each in kind.__subclasses__()))

    core = {
        kind for kind in below(errors.Refusal) if kind.__module__.startswith(f"{errors.__name__}.")
    }
    assert core == set(OF_REFUSAL)
    assert len({problem.name for problem in OF_REFUSAL.values()}) == len(OF_REFUSAL)


def test_a_refusal_without_a_row_is_answered_by_the_nearest() -> None:
    """A kind of refusal that is not in the table is the problem of the kind above it."""

    class Stranger(errors.DocumentBroken):
        """A refusal of a later day."""

    assert of_refusal(Stranger) is OF_REFUSAL[errors.DocumentBroken]


def test_a_failure_tells_nothing_and_is_logged(
    door: Door, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    """What nobody expected is answered 500 without a word of it, and logged with its trace."""

    def fail(*_: object) -> None:
        raise KeyError("secret of the driver")

    monkeypatch.setattr(sitting, "todays_sitting", fail)
    with caplog.at_level(logging.ERROR):
        failed = door.client.get("/api/sitting")
    assert failed.status_code == 500
    assert shape(failed)["type"] == "/api/problems/failure"
    assert "secret" not in failed.get_data(as_text=True)
    assert caplog.records[0].exc_info is not None


def test_a_busy_library_asks_to_be_asked_again(door: Door, monkeypatch: pytest.MonkeyPatch) -> None:
    """A store that is busy is answered 503 in its own words, with Retry-After."""

    def busy(*_: object) -> None:
        raise StoreBusy

    monkeypatch.setattr(answers, "record_answer", busy)
    failed = door.answer(str(uuid4()))
    assert failed.status_code == 503
    assert shape(failed)["detail"] == StoreBusy.message
    assert int(failed.headers["Retry-After"]) > 0


def test_a_status_without_a_row_is_still_a_problem(
    door: Door, monkeypatch: pytest.MonkeyPatch
) -> None:
    """An HTTP failure outside the table is a problem of type about:blank (RFC 9457, 4.2.1)."""

    def gone(*_: object) -> None:
        raise Gone

    monkeypatch.setattr(sitting, "todays_sitting", gone)
    refused = door.client.get("/api/sitting")
    assert (refused.status_code, refused.json["type"]) == (410, "about:blank")
    assert refused.json["title"] == "Gone"


@pytest.mark.parametrize("name", sorted(EVERY))
def test_a_problem_type_can_be_opened(door: Door, name: str) -> None:
    """The URI of each type is a page that says what it means, with its status."""
    page = door.client.get(f"/api/problems/{name}")
    assert page.status_code == 200
    assert EVERY[name].title in page.text
    assert str(EVERY[name].status.value) in page.text


def test_nothing_is_kept_of_a_file_that_fails_late(
    door: Door, monkeypatch: pytest.MonkeyPatch
) -> None:
    """When the very commit of a digest fails, the library is as it was."""

    def fail(_: SqlUnitOfWork) -> None:
        raise OSError("the disk is full")

    with monkeypatch.context() as patch:
        patch.setattr(SqlUnitOfWork, "commit", fail)
        assert door.add().status_code == 500
    assert door.client.get("/api/digests").json["digests"] == []
    assert door.client.get("/api/items").json["items"] == []
