"""A desk for measurements that read no documents."""

from collections.abc import Callable
from datetime import datetime
from uuid import uuid4

from cards.errors import DocumentUnsupported
from cards.intake.blocks import Document
from service.documents.book_texts import BookTexts
from service.documents.press.press import Press
from service.feeds.feeds import Feeds
from service.feeds.pictures.pictures import Pictures
from service.main import THE_READER
from service.use_cases.ports import Desk, Store


class NoDocuments:
    """Refuses every file."""

    def read(self, name: str, content: bytes) -> Document:
        """Refuse a file."""
        raise DocumentUnsupported(f"{name} is not read here: {len(content)} bytes.")

    def unpack(self, name: str, content: bytes) -> None:
        """Take every file for a single one."""


def bare_desk(store: Store, now: Callable[[], datetime]) -> Desk:
    """Return the desk of the one reader, on which no file can be handed over."""
    return Desk(
        store, NoDocuments(), BookTexts(), Press(), Feeds(), Pictures(), now, uuid4, THE_READER
    )
