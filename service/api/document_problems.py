"""The refusals of files as HTTP problems: a digest or a book that cannot be read from one."""

from http import HTTPStatus

from cards import errors
from service.api.problem import Problem

_UNREADABLE = HTTPStatus.UNPROCESSABLE_ENTITY
OF_DOCUMENT: dict[type[errors.Refusal], Problem] = {
    errors.DocumentRefused: Problem(
        "document-refused",
        _UNREADABLE,
        "No digest can be read from this file",
        "The detail says why. Nothing was kept.",
    ),
    errors.DocumentEmpty: Problem(
        "document-empty", _UNREADABLE, "The file is empty", "There are no words in it."
    ),
    errors.DocumentTooLarge: Problem(
        "document-too-large",
        HTTPStatus.REQUEST_ENTITY_TOO_LARGE,
        "The file is too large",
        "It, or what it unpacks to, is far more than a two-page digest.",
    ),
    errors.DocumentTooSlow: Problem(
        "document-too-slow",
        _UNREADABLE,
        "The file took too long to read",
        "Reading was given up. Copy the digest alone into a new document and send that.",
    ),
    errors.DocumentLocked: Problem(
        "document-locked",
        _UNREADABLE,
        "The file is protected by a password",
        "Save it without one and send it again.",
    ),
    errors.DocumentBroken: Problem(
        "document-broken",
        _UNREADABLE,
        "The file is damaged",
        "It is cut short, or not what its name says.",
    ),
    errors.DocumentUnsupported: Problem(
        "document-unsupported",
        HTTPStatus.UNSUPPORTED_MEDIA_TYPE,
        "The file is of a format Catchword does not read",
        "Digests are read from DOCX, ODT, RTF, HTML, Markdown, plain text and Catchword's own "
        "JSON; whole books from EPUB, plain text and HTML.",
    ),
    errors.SeveralDigests: Problem(
        "several-digests",
        _UNREADABLE,
        "The file holds several digests",
        "One is asked for here. `/api/imports` takes files with any number of them.",
    ),
    errors.NothingRecognised: Problem(
        "nothing-recognised",
        _UNREADABLE,
        "No part of a digest was found in the file",
        "It has no heading Catchword knows, such as Theme, Points, Commitments or Quotations.",
    ),
}
