"""Every refusal the core can express.

    CatchwordError               the store's own failures are of this kind too
      Refusal                    the request cannot be carried out; says why
        Invalid                  what was given is not well formed
          InvalidDigest          a digest breaks a rule of its own
          InvalidAnswer          an answer that cannot be a fact
            AnswerInFuture       it is dated after now
          InvalidDraft           a draft that is too long, or one too many
          InvalidBibliography    neither BibTeX nor CSL-JSON
          InvalidAnnotations     no Web Annotations
          InvalidArchive         an archive that cannot be read back
          InvalidPreference      a reader's setting outside its range
        Missing                  this reader has no such thing
          DigestMissing
          DigestNotNamed         no digest, or several, by these words
          ItemMissing
          AnswerMissing
          CommitmentMissing
          CheckInMissing
          DecisionMissing
          RereadingMissing
          TalkMissing
          FeedAddressMissing
          PartMissing
          VersionMissing
          DraftMissing
          BookTextMissing
        Conflict                 it contradicts what is already kept
          AnswerConflict         another answer already bears this id
          DigestChanged          the digest was edited meanwhile
          DraftChanged           the draft was changed elsewhere
          ReaderChanged          the settings were changed meanwhile
          LibraryNotEmpty        where an empty one is asked for
        DocumentRefused          a file from which no digest can be read
          DocumentEmpty
          DocumentTooLarge
          DocumentTooSlow
          DocumentLocked         protected by a password
          DocumentBroken         truncated, or not what its name says
          DocumentUnsupported    a format Catchword does not read
          SeveralDigests         where one is asked for
          NothingRecognised      no part of a digest was found in it
        CannotWrite              a file that cannot be written
          CannotPrint            letters no typeface at hand has

A refusal carries one clear sentence and, where there is one, the field or part
it is about; doors translate it and add nothing.
"""

from cards.errors.archives import InvalidArchive, LibraryNotEmpty
from cards.errors.conflicts import (
    AnswerConflict,
    DigestChanged,
    DraftChanged,
    ReaderChanged,
)
from cards.errors.documents import (
    CannotPrint,
    DocumentBroken,
    DocumentEmpty,
    DocumentLocked,
    DocumentTooLarge,
    DocumentTooSlow,
    DocumentUnsupported,
    NothingRecognised,
    SeveralDigests,
)
from cards.errors.invalid import (
    AnswerInFuture,
    InvalidAnnotations,
    InvalidAnswer,
    InvalidBibliography,
    InvalidDigest,
    InvalidDraft,
    InvalidLink,
    InvalidPreference,
)
from cards.errors.missing import (
    AnswerMissing,
    BookTextMissing,
    CheckInMissing,
    CommitmentMissing,
    DecisionMissing,
    DigestMissing,
    DigestNotNamed,
    DraftMissing,
    FeedAddressMissing,
    ItemMissing,
    LinkMissing,
    PartMissing,
    RereadingMissing,
    SheetMissing,
    TalkMissing,
    VersionMissing,
)
from cards.errors.refusals import (
    CannotWrite,
    CatchwordError,
    Conflict,
    DocumentRefused,
    Invalid,
    Missing,
    Refusal,
)

__all__ = [
    "AnswerConflict",
    "AnswerInFuture",
    "AnswerMissing",
    "BookTextMissing",
    "CannotPrint",
    "CannotWrite",
    "CatchwordError",
    "CheckInMissing",
    "CommitmentMissing",
    "Conflict",
    "DecisionMissing",
    "DigestChanged",
    "DigestMissing",
    "DigestNotNamed",
    "DocumentBroken",
    "DocumentEmpty",
    "DocumentLocked",
    "DocumentRefused",
    "DocumentTooLarge",
    "DocumentTooSlow",
    "DocumentUnsupported",
    "DraftChanged",
    "DraftMissing",
    "FeedAddressMissing",
    "Invalid",
    "InvalidAnnotations",
    "InvalidAnswer",
    "InvalidArchive",
    "InvalidBibliography",
    "InvalidDigest",
    "InvalidDraft",
    "InvalidLink",
    "InvalidPreference",
    "ItemMissing",
    "LibraryNotEmpty",
    "LinkMissing",
    "Missing",
    "NothingRecognised",
    "PartMissing",
    "ReaderChanged",
    "Refusal",
    "RereadingMissing",
    "SeveralDigests",
    "SheetMissing",
    "TalkMissing",
    "VersionMissing",
]
