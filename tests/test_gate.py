"""Who may come in over HTTP, and what every response carries."""

import pytest
from flask import Flask, request

from service import gate


def client_of(hosts: tuple[str, ...] = ()):
    """A bare application behind the gate."""
    app = Flask("gated")
    gate.install(app, hosts)

    @app.route("/", methods=["GET", "POST"])
    def hello():
        return "hello"

    return app.test_client()


@pytest.mark.parametrize(
    ("host", "status"),
    [
        ("localhost:8417", 200),
        ("127.0.0.1:8417", 200),
        ("[::1]:8417", 200),
        ("evil.example:8417", 421),
        ("127.0.0.1.evil.example", 421),
        ("localhost.", 421),
        ("", 421),
    ],
)
def test_only_its_own_names_are_answered(host, status):
    """A page whose name was pointed at this machine (DNS rebinding) gets nothing."""
    assert client_of().get("/", headers={"Host": host}).status_code == status


def test_further_names_are_answered_where_the_reader_says_so():
    """A name in the settings is answered, and no other."""
    client = client_of(("books.example",))
    assert client.get("/", headers={"Host": "books.example"}).status_code == 200
    assert client.get("/", headers={"Host": "shop.example"}).status_code == 421
    assert client_of(("*",)).get("/", headers={"Host": "any.example"}).status_code == 200


@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ({}, 200),
        ({"Origin": "http://localhost"}, 200),
        ({"Origin": "http://evil.example"}, 403),
        ({"Origin": "null"}, 403),
        ({"Sec-Fetch-Site": "same-origin"}, 200),
        ({"Sec-Fetch-Site": "none"}, 200),
        ({"Sec-Fetch-Site": "cross-site"}, 403),
        ({"Sec-Fetch-Site": "same-site"}, 403),
    ],
)
def test_nothing_is_changed_for_a_page_from_elsewhere(headers, status):
    """A form on another site cannot post here (Fetch Metadata, W3C; Origin, RFC 6454)."""
    assert client_of().post("/", headers=headers).status_code == status
    assert client_of().get("/", headers=headers).status_code == 200


def test_every_response_carries_the_policy():
    """Scripts, styles and forms come from Catchword itself alone; nothing is framed or sniffed."""
    headers = client_of().get("/").headers
    policy = headers["Content-Security-Policy"]
    assert "default-src 'none'" in policy
    assert "unsafe-inline" not in policy
    assert "frame-ancestors 'none'" in policy
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Cache-Control"] == "no-store"


def test_an_endless_request_is_not_read():
    """A body beyond the largest document is refused before it is parsed."""
    app = Flask("gated")
    gate.install(app)

    @app.post("/")
    def read():
        return str(len(request.get_data()))

    client = app.test_client()
    assert client.post("/", data=b"x" * (gate.LARGEST_REQUEST + 1)).status_code == 413
    assert client.post("/", data=b"x" * 1000).status_code == 200


@pytest.mark.parametrize(("route", "largest"), gate.LARGEST_AT.items())
def test_a_route_for_many_files_or_a_book_takes_more(route, largest):
    """Such a route takes a body up to its own bound; any other is refused one as large."""
    app = Flask("gated")
    gate.install(app)
    for rule in (route, "/elsewhere"):
        app.add_url_rule(rule, rule, lambda **_: str(len(request.get_data())), methods=["POST"])
    client = app.test_client()
    path = route.replace("<uuid:digest_id>", "0b7f7a5e-3c5f-4f0e-9a55-1a4b4f7f5d10")
    for sent, over in ((path, largest + 1), ("/elsewhere", gate.LARGEST_REQUEST + 1)):
        refused = client.post(sent, environ_overrides={"CONTENT_LENGTH": str(over)})
        assert refused.status_code == 413
    body = b"x" * (gate.LARGEST_REQUEST + 1)
    assert client.post(path, data=body).text == str(len(body))
