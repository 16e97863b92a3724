"""What is shown when a request cannot be carried out: one sentence, and a way on."""

from http import HTTPStatus

from flask import Response, current_app, make_response, render_template
from werkzeug.exceptions import HTTPException

from cards.errors import (
    CatchwordError,
    Conflict,
    DocumentTooLarge,
    Missing,
    Refusal,
)

_SENTENCES = {
    HTTPStatus.BAD_REQUEST: "What was sent could not be read.",
    HTTPStatus.FORBIDDEN: "This was sent from a page that is not Catchword’s.",
    HTTPStatus.NOT_FOUND: "There is no such page in this house.",
    HTTPStatus.METHOD_NOT_ALLOWED: "This page cannot be used in that way.",
    HTTPStatus.REQUEST_ENTITY_TOO_LARGE: "What was sent is larger than 20 MB, far more than a "
    "two-page digest.",
    HTTPStatus.SERVICE_UNAVAILABLE: "The library could not be used just now. Try again.",
}
_HEADINGS = {
    HTTPStatus.NOT_FOUND: "Not in this library",
    HTTPStatus.CONFLICT: "Something was changed meanwhile",
    HTTPStatus.INTERNAL_SERVER_ERROR: "Something went wrong here",
    HTTPStatus.SERVICE_UNAVAILABLE: "The library is shut",
}
_FAILED = (
    "Catchword could not do this, and the fault is not yours. Nothing was half kept; "
    "what happened is written in its log."
)


def refuse(error: Exception) -> Response:
    """Return the page for a failure, with the status that says what it was."""
    if isinstance(error, HTTPException):
        return _http(error)
    if isinstance(error, Missing) and error.where is not None:
        # An id, which the message names, means nothing to who followed a link.
        sentence = f"There is no {error.where} at this address. It may have been taken out."
        return page(sentence, status_of(error))
    if isinstance(error, Refusal):
        return page(error.message, status_of(error))
    current_app.logger.error("A page failed.", exc_info=error)
    if isinstance(error, CatchwordError):
        status = HTTPStatus.SERVICE_UNAVAILABLE
        return page(str(error) or _SENTENCES[status], status)
    return page(_FAILED, HTTPStatus.INTERNAL_SERVER_ERROR)


def status_of(refusal: Refusal) -> HTTPStatus:
    """Return the status that says what kind of refusal it is."""
    match refusal:
        case Missing():
            return HTTPStatus.NOT_FOUND
        case Conflict():
            return HTTPStatus.CONFLICT
        case DocumentTooLarge():
            return HTTPStatus.REQUEST_ENTITY_TOO_LARGE
        case _:
            return HTTPStatus.UNPROCESSABLE_ENTITY


def page(sentence: str, status: HTTPStatus) -> Response:
    """Return a page of one sentence. It asks nothing of the store, which may be what failed."""
    heading = _HEADINGS.get(status, "This cannot be done")
    body = render_template("refusal.html", heading=heading, sentence=sentence)
    return make_response(body, status)


def _http(error: HTTPException) -> Response:
    answer = error.get_response()
    if answer.status_code < HTTPStatus.BAD_REQUEST:
        return make_response(answer)
    status = HTTPStatus(answer.status_code)
    ours = error.description if error.description != type(error).description else None
    refused = page(ours or _SENTENCES.get(status, _SENTENCES[HTTPStatus.BAD_REQUEST]), status)
    if "Allow" in answer.headers:
        refused.headers["Allow"] = answer.headers["Allow"]
    return refused
