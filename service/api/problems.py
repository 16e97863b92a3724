"""Every refusal and failure as an HTTP problem: the one table from errors to statuses.

The type of a problem is a URI reference, `/api/problems/...`, that can be opened in a
browser and stays what it is; programs decide by it, never by the words.
"""

from http import HTTPStatus

from cards import errors
from service.api.document_problems import OF_DOCUMENT
from service.api.missing_problems import OF_MISSING
from service.api.problem import Problem

MALFORMED = Problem(
    "malformed-request",
    HTTPStatus.BAD_REQUEST,
    "The request is malformed",
    "The body is not JSON in UTF-8, or the request is not HTTP as it should be.",
)
FROM_ELSEWHERE = Problem(
    "sent-from-elsewhere",
    HTTPStatus.FORBIDDEN,
    "Sent by another site",
    "A page that is not Catchword's made a browser send this. Only Catchword's own pages, and "
    "programs outside a browser, may change anything.",
)
NOTHING_HERE = Problem(
    "nothing-here",
    HTTPStatus.NOT_FOUND,
    "There is nothing at this address",
    "The address is not one of this API's, or an id in it is not written as a UUID.",
)
METHOD_REFUSED = Problem(
    "method-refused",
    HTTPStatus.METHOD_NOT_ALLOWED,
    "This address does not answer to that method",
    "The header Allow says which methods it answers to.",
)
TOO_LARGE = Problem(
    "request-too-large",
    HTTPStatus.REQUEST_ENTITY_TOO_LARGE,
    "The request is too large",
    "A request is at most 21 MB: one document of 20 MB and the form around it. Many files at once "
    "are at most 201 MB and 2,100 files, the text of a whole book is at most 65 MB, an archive of "
    "everything 513 MB.",
)
MEDIA_TYPE = Problem(
    "media-type-refused",
    HTTPStatus.UNSUPPORTED_MEDIA_TYPE,
    "The body is of another type than this address takes",
    "JSON is sent as application/json, a file as the part `file` of multipart/form-data, many as "
    "its parts `files`; annotations and bibliographies as what they are.",
)
INVALID_REQUEST = Problem(
    "invalid-request",
    HTTPStatus.UNPROCESSABLE_ENTITY,
    "The request does not have the shape it should have",
    "`errors` lists each field with what is wrong: `pointer` names one in the body (RFC 6901), "
    "`parameter` one in the query or the form.",
)
TAG_REQUIRED = Problem(
    "if-match-required",
    HTTPStatus.PRECONDITION_REQUIRED,
    "If-Match is required",
    "What can be edited is edited only by who has seen what it says now. Send the ETag you were "
    "given with it as If-Match, or * for whatever it says.",
)
MISDIRECTED = Problem(
    "misdirected",
    HTTPStatus.MISDIRECTED_REQUEST,
    "Addressed to another host",
    "Catchword answers only to the host names it was told are its own. CATCHWORD_HOSTS adds some.",
)
FAILURE = Problem(
    "failure",
    HTTPStatus.INTERNAL_SERVER_ERROR,
    "Catchword failed",
    "Nothing was changed. The log of the service says what happened; the same request may "
    "succeed later.",
)
UNAVAILABLE = Problem(
    "library-unavailable",
    HTTPStatus.SERVICE_UNAVAILABLE,
    "The library cannot be used at present",
    "It is busy with other changes, or its database cannot be reached or used. Nothing was "
    "changed. The header Retry-After says when to try again.",
)

OF_REFUSAL: dict[type[errors.Refusal], Problem] = {
    errors.Refusal: Problem(
        "refused",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "This cannot be done",
        "The detail says why.",
    ),
    errors.Invalid: Problem(
        "invalid",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "What was given is not well formed",
        "`where` names the field it is about, the detail says what is wrong with it.",
    ),
    errors.InvalidDigest: Problem(
        "invalid-digest",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "The digest breaks a rule of digests",
        "It has no title, nothing to keep, a part without words, a length or number beyond its "
        "bound, or a page and a locator that disagree; `where` names the part.",
    ),
    errors.InvalidAnswer: Problem(
        "invalid-answer",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "The answer cannot be a fact",
        "`where` and `errors` name the field it is about, the detail says what is wrong with it: "
        "an attempt in a way the item is not asked, a time or a day that cannot be.",
    ),
    errors.AnswerInFuture: Problem(
        "answer-in-future",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "The answer is dated in the future",
        "`answered_at` lies more than five minutes ahead of Catchword's clock.",
    ),
    errors.InvalidDraft: Problem(
        "invalid-draft",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "The draft cannot be kept",
        "A field of it is beyond its length, or there are as many drafts as are kept.",
    ),
    errors.InvalidBibliography: Problem(
        "invalid-bibliography",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "No book can be read from this bibliography",
        "It is neither BibTeX nor CSL-JSON, describes no book with a title, or is beyond its "
        "bounds. The detail says which.",
    ),
    errors.InvalidAnnotations: Problem(
        "invalid-annotations",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "No quotation can be read from these annotations",
        "They are no Web Annotations in JSON-LD, quote no words of a book, or are beyond their "
        "bounds. The detail says which.",
    ),
    errors.InvalidArchive: Problem(
        "invalid-archive",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "The archive cannot be read back",
        "It is damaged, of a later Catchword, or not as it was written; the detail names the file "
        "and the line. Nothing was kept.",
    ),
    errors.InvalidPreference: Problem(
        "invalid-preference",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "A setting is outside its range",
        "`where` names the setting, the detail gives its range.",
    ),
    errors.InvalidLink: Problem(
        "link-invalid",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "The link cannot be kept",
        "A link leads from a point that the digest holds to another book of the library. The "
        "detail says what is amiss.",
    ),
    **OF_MISSING,
    errors.Conflict: Problem(
        "conflict",
        HTTPStatus.CONFLICT,
        "It contradicts what is already kept",
        "The detail says what it contradicts.",
    ),
    errors.LibraryNotEmpty: Problem(
        "library-not-empty",
        HTTPStatus.CONFLICT,
        "The library is not empty",
        "An archive is read back into an empty library alone. Nothing was changed.",
    ),
    errors.AnswerConflict: Problem(
        "answer-conflict",
        HTTPStatus.CONFLICT,
        "Another answer already bears this id",
        "Answers are facts and are never changed. Take the other back, and send this one under an "
        "id of its own.",
    ),
    errors.DigestChanged: Problem(
        "digest-changed",
        HTTPStatus.PRECONDITION_FAILED,
        "The digest was changed meanwhile",
        "If-Match names a state it is no longer in. Open it again and repeat the correction on "
        "what it says now.",
    ),
    errors.DraftChanged: Problem(
        "draft-changed",
        HTTPStatus.PRECONDITION_FAILED,
        "The draft was changed meanwhile",
        "It is no longer as it was opened. Open it again and go on from what it says now.",
    ),
    errors.ReaderChanged: Problem(
        "settings-changed",
        HTTPStatus.PRECONDITION_FAILED,
        "The settings were changed meanwhile",
        "If-Match names a state they are no longer in. Open them again and repeat the change.",
    ),
    **OF_DOCUMENT,
    errors.CannotWrite: Problem(
        "cannot-write",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "The file cannot be written",
        "The detail says why.",
    ),
    errors.CannotPrint: Problem(
        "cannot-print",
        HTTPStatus.UNPROCESSABLE_ENTITY,
        "The digest cannot be printed",
        "It holds letters that no typeface at hand has. Every other form keeps them.",
    ),
}

OF_STATUS: dict[int, Problem] = {
    problem.status: problem
    for problem in (
        MALFORMED,
        FROM_ELSEWHERE,
        NOTHING_HERE,
        METHOD_REFUSED,
        TOO_LARGE,
        MEDIA_TYPE,
        INVALID_REQUEST,
        TAG_REQUIRED,
        MISDIRECTED,
        FAILURE,
        UNAVAILABLE,
    )
}

EVERY: dict[str, Problem] = {
    problem.name: problem for problem in (*OF_STATUS.values(), *OF_REFUSAL.values())
}


def of_refusal(kind: type[errors.Refusal]) -> Problem:
    """Return the problem a kind of refusal is, the most specific there is."""
    return next(OF_REFUSAL[each] for each in kind.__mro__ if each in OF_REFUSAL)
