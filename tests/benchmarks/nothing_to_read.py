"""A document reader for measurements that read no documents."""

from cards.errors import DocumentUnsupported
from cards.intake.blocks import Document


class NoDocuments:
    """Refuses every file."""

    def read(self, name: str, content: bytes) -> Document:
        """Refuse a file."""
        raise DocumentUnsupported(f"{name} is not read here: {len(content)} bytes.")
