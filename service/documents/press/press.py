"""The press: what writes a digest out, behind the port of that name."""

from cards.budget import Budget
from cards.digest import Digest
from cards.errors import CannotWrite
from cards.intake.own_blocks import TEMPLATE, blocks_of_digest, whole_text
from cards.intake.own_hints import OWN_HINTS, template_blocks
from cards.intake.own_words import language_of
from cards.talk import Agenda
from cards.yearly import Review
from service.documents.press.docx import docx
from service.documents.press.json_form import json_of
from service.documents.press.markdown import markdown
from service.documents.press.odt import odt
from service.documents.press.typesetter import Typesetter
from service.use_cases.records import Form
from service.use_cases.sitting_records import PrintedSheet


class Press:
    """Writes digests out in every form, and measures them on their two pages."""

    def __init__(self) -> None:
        self._typesetter = Typesetter()

    def write(self, digest: Digest, form: Form) -> bytes:
        """Return a digest as a file of one form; all but the PDF read back to the same digest.

        Raises:
            CannotPrint: the PDF would lack letters that no font at hand has.
        """
        language = language_of(whole_text(digest))
        match form:
            case Form.PDF:
                return self._typesetter.pdf(digest)
            case Form.DOCX:
                return docx(blocks_of_digest(digest, language), language)
            case Form.ODT:
                return odt(blocks_of_digest(digest, language), language)
            case Form.MARKDOWN:
                return markdown(blocks_of_digest(digest, language)).encode()
            case Form.JSON:
                return json_of(digest).encode()

    def sheet(self, printed: PrintedSheet) -> bytes:
        """Return a sitting on paper as a PDF: cues on one side, answers on the other.

        Raises:
            CannotPrint: it would lack letters that no font at hand has.
        """
        return self._typesetter.sitting(printed)

    def talk(self, agenda: Agenda) -> bytes:
        """Return the sheet of a talk as a PDF of two pages: to talk by, and to check by.

        Raises:
            CannotPrint: it would lack letters that no font at hand has.
        """
        return self._typesetter.talk(agenda)

    def review(self, review: Review) -> bytes:
        """Return a yearly review as a PDF.

        Raises:
            CannotPrint: it would lack letters that no font at hand has.
        """
        return self._typesetter.review(review)

    def measure(self, digest: Digest) -> Budget:
        """Return how much of its two pages a digest takes, as it is set for printing."""
        return self._typesetter.measure(digest)

    def template(self, form: Form, language: str = "en") -> bytes:
        """Return a blank digest to fill in, as DOCX, ODT or Markdown.

        Args:
            form: one of these three.
            language: of its headings and hints: en, de, fr, es, it, pt or nl.

        Raises:
            CannotWrite: there is none in that form or language.
        """
        if language not in OWN_HINTS:
            raise CannotWrite(
                f"There is no blank digest in the language “{language}”. There is one in each of "
                f"{', '.join(OWN_HINTS)}.",
                where="language",
            )
        blocks = template_blocks(language)
        match form:
            case Form.DOCX:
                return docx(blocks, language, mark=TEMPLATE)
            case Form.ODT:
                return odt(blocks, language, mark=TEMPLATE)
            case Form.MARKDOWN:
                return markdown(blocks, mark=TEMPLATE).encode()
            case _:
                raise CannotWrite(
                    "A blank digest to fill in comes as DOCX, ODT or Markdown.", where="form"
                )
