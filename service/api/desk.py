"""Where a resource finds the desk it hands to use cases."""

from flask import Flask, current_app

from service.use_cases.ports import Desk

_KEY = "catchword-api"


def lay(app: Flask, desk: Desk) -> None:
    """Put the desk where `desk` finds it."""
    app.extensions[_KEY] = desk


def desk() -> Desk:
    """Return the desk of the application that answers the present request."""
    laid = current_app.extensions[_KEY]
    assert isinstance(laid, Desk)
    return laid
