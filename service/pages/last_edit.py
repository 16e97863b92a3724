"""What the last edit of a digest did, as it stands after the reader's word on any of it."""

from uuid import UUID

from cards.identity import Change
from service.use_cases.ports import Desk
from service.use_cases.records import Cause
from service.use_cases.versions import list_versions, open_version

_NO_EDIT = (Cause.OVERRULED, Cause.CARED)
"""What makes a version and says nothing new."""


def last_edit(desk: Desk, digest_id: UUID) -> tuple[Change, ...]:
    """Return what the last edit did to the parts, taking overruled ones as they are held now.

    So one part can be overruled after another, and each of them back again. Empty when the
    digest was never edited, or nothing is known of what it said before.

    Raises:
        DigestMissing: this reader has no such digest.
    """
    edited = False
    for entry in list_versions(desk, digest_id).entries:
        if edited:
            return open_version(desk, digest_id, entry.revision).since
        edited = entry.cause not in _NO_EDIT
    return ()
