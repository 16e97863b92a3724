"""The bytes of a book (EPUB, plain text, HTML) -> its text, its chapters and its pages."""

from service.documents.book_texts.reading import BookTexts

__all__ = ["BookTexts"]
