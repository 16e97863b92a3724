"""Who may come in over HTTP, and what every response carries.

Catchword has no accounts yet and listens on the loopback address; so any page in the
reader's browser could send requests to it. The gate lets in only requests addressed to
a name of its own (against DNS rebinding) and, for whatever changes something, only those
that its own pages or a program sent (against cross-site requests).
"""

from http import HTTPStatus
from urllib.parse import urlsplit

from flask import Flask, Response, abort, request

from service.use_cases.archiving_back import LARGEST_SENT
from service.use_cases.ports import LARGEST_BOOK, LARGEST_BUNDLE, LARGEST_FILE

AROUND = 1024 * 1024
"""Bytes of the form around a file, or around many."""
LARGEST_REQUEST = LARGEST_FILE + AROUND
"""Bytes of a request, unless its route is one of `LARGEST_AT`."""
LARGEST_AT = {
    "/books": LARGEST_BUNDLE + AROUND,
    "/archive": LARGEST_SENT + AROUND,
    "/api/restore": LARGEST_SENT + AROUND,
    "/books/<uuid:digest_id>/proof": LARGEST_BOOK + AROUND,
    "/api/imports": LARGEST_BUNDLE + AROUND,
    "/api/imports/read": LARGEST_BUNDLE + AROUND,
    "/api/digests/<uuid:digest_id>/book": LARGEST_BOOK + AROUND,
}
"""Bytes of a request to the routes that take more: many files at once, a whole book, everything."""
MOST_PARTS = 2_100
"""Parts of one form: as many files as a bundle may hold, and the fields beside them."""

_LOOPBACK_NAMES = frozenset({"localhost", "127.0.0.1", "::1"})
_SAFE_METHODS = frozenset({"GET", "HEAD", "OPTIONS"})
_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self'; "
    "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"
)
_HEADERS = {
    "Content-Security-Policy": _POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}


def install(app: Flask, hosts: tuple[str, ...] = ()) -> None:
    """Put the gate before an application.

    Args:
        app: the application.
        hosts: names it answers to, besides the loopback names; "*" for any.
    """
    app.config["MAX_CONTENT_LENGTH"] = LARGEST_REQUEST
    app.config["MAX_FORM_PARTS"] = MOST_PARTS
    names = _LOOPBACK_NAMES | set(hosts)

    @app.before_request
    def bound_size() -> None:
        rule = "" if request.url_rule is None else request.url_rule.rule
        request.max_content_length = LARGEST_AT.get(rule, LARGEST_REQUEST)

    @app.before_request
    def check_host() -> None:
        if "*" not in names and _host_name() not in names:
            abort(HTTPStatus.MISDIRECTED_REQUEST, "Catchword does not answer to this host name.")

    @app.before_request
    def check_origin() -> None:
        if request.method not in _SAFE_METHODS and _from_elsewhere():
            abort(HTTPStatus.FORBIDDEN, "This request was sent by a page that is not Catchword's.")

    @app.after_request
    def add_headers(response: Response) -> Response:
        response.headers.extend(_HEADERS)
        if "Cache-Control" not in response.headers:
            response.headers["Cache-Control"] = "no-store"
        return response


def _host_name() -> str:
    try:
        return urlsplit(f"//{request.host}").hostname or ""
    except ValueError:
        return ""


def _from_elsewhere() -> bool:
    site = request.headers.get("Sec-Fetch-Site")
    if site is not None:
        return site not in {"same-origin", "none"}
    origin = request.headers.get("Origin")
    return origin is not None and urlsplit(origin).netloc != request.host
