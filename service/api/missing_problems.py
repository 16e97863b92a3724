"""That this library has no such thing, as HTTP problems."""

from http import HTTPStatus

from cards import errors
from service.api.problem import Problem

_NOT_FOUND = HTTPStatus.NOT_FOUND
OF_MISSING: dict[type[errors.Refusal], Problem] = {
    errors.Missing: Problem(
        "missing", _NOT_FOUND, "There is no such thing in this library", "It may be gone."
    ),
    errors.DigestMissing: Problem(
        "digest-missing",
        _NOT_FOUND,
        "There is no such digest",
        "No digest of this library bears the id, or it was taken out; or it has no original file.",
    ),
    errors.DigestNotNamed: Problem(
        "digest-not-named",
        _NOT_FOUND,
        "No digest is called that, or several are",
        "Its words stand in no title and author of this library, or in those of several digests. "
        "The id of a digest always names one.",
    ),
    errors.ItemMissing: Problem(
        "item-missing",
        _NOT_FOUND,
        "There is no such item",
        "No item of this library bears the id, or its source is gone from its digest.",
    ),
    errors.AnswerMissing: Problem(
        "answer-missing",
        _NOT_FOUND,
        "There is no such answer",
        "No answer of this library bears the id.",
    ),
    errors.LinkMissing: Problem(
        "link-missing",
        _NOT_FOUND,
        "There is no such link",
        "No link from this digest bears the id, or it was dropped.",
    ),
    errors.SheetMissing: Problem(
        "sheet-missing",
        _NOT_FOUND,
        "There is no such sheet",
        "No printed sitting of this library bears the id.",
    ),
    errors.CommitmentMissing: Problem(
        "commitment-missing",
        _NOT_FOUND,
        "There is no such commitment",
        "The digest is not in this library, or holds no commitment with the id.",
    ),
    errors.PartMissing: Problem(
        "part-missing",
        _NOT_FOUND,
        "There is no such part in this digest",
        "The digest does not hold a part with the id, or has not retired the one it is to "
        "continue, or the two are of different kinds.",
    ),
    errors.VersionMissing: Problem(
        "version-missing",
        _NOT_FOUND,
        "There is no such version of this digest",
        "The digest was never at that revision, or was before its versions were kept.",
    ),
    errors.DraftMissing: Problem(
        "draft-missing",
        _NOT_FOUND,
        "There is no such draft",
        "No draft of this library bears the id. It may have been kept as a digest, or put away.",
    ),
    errors.BookTextMissing: Problem(
        "book-text-missing",
        _NOT_FOUND,
        "The text of this book was not given",
        "Quotations are proved against an EPUB, a text file or a web page of the whole book, which "
        "is to be given first.",
    ),
    errors.CheckInMissing: Problem(
        "check-in-missing",
        _NOT_FOUND,
        "There is no such check-in",
        "No check-in of this library bears the id, or it was taken back.",
    ),
    errors.DecisionMissing: Problem(
        "decision-missing",
        _NOT_FOUND,
        "There is no such decision",
        "No decision about a commitment of this library bears the id, or it was taken back.",
    ),
    errors.RereadingMissing: Problem(
        "re-reading-missing",
        _NOT_FOUND,
        "There is no such re-reading",
        "No re-reading of this library bears the id, or it was taken back.",
    ),
    errors.TalkMissing: Problem(
        "talk-missing",
        _NOT_FOUND,
        "There is no such talk",
        "No talk about a book of this library bears the id, or it was taken back.",
    ),
    errors.FeedAddressMissing: Problem(
        "calendar-address-missing",
        _NOT_FOUND,
        "The calendar has no such address",
        "No address of the calendar bears the id, or it was revoked.",
    ),
}
