"""Title and author taken, where the title page gives none, from what the file says of itself."""

from cards.digest import MAX_TITLE, Notice
from cards.intake.blocks import Document
from cards.intake.known_authors import is_single_name
from cards.intake.labels import Fact
from cards.intake.page_lines import same_title
from cards.intake.title import Named, is_full_name, named_in, worth_trusting
from cards.intake.title_elsewhere import named_in_file_name, named_in_header, named_nowhere_else
from cards.intake.title_page import TitlePage
from cards.intake.wording import excerpt, flowing, folded, tidied

_NOBODY = frozenset(
    "user users office admin administrator owner microsoft windows default unknown author pc "
    "benutzer utilisateur usuario utente usuario gebruiker docx pandoc libreoffice".split()
)
"""Words of the names that programs write down as a document's author."""


def settle(page: TitlePage, document: Document) -> None:
    """Fall back on what the file says of itself, once the whole document was read."""
    page.title = page.facts.title or ""
    _from_header(page, _margin(page, document, "header"))
    _margin(page, document, "footer")
    own = flowing(tidied(document.properties.get("title", "")))
    if not page.title and worth_trusting(own):
        _take_named(page, named_in(own), own)
    if page.facts.author is None and (parted := named_nowhere_else(page.title)) is not None:
        page.title, page.facts.author = parted.title, parted.author
        page.facts.found[Fact.AUTHOR] = list(page.facts.found.get(Fact.TITLE, []))
        page.facts.outside[Fact.AUTHOR] = list(page.facts.outside.get(Fact.TITLE, []))
    if not page.title:
        _from_file_name(page, document.name)
    author = flowing(tidied(document.properties.get("author", "")))
    someone = bool(author) and _NOBODY.isdisjoint(folded(author).split())
    if page.facts.author is None and someone and folded(own) == folded(page.title):
        page.facts.author = author
        page.facts.outside[Fact.AUTHOR] = [author]
    if page.facts.author is not None:
        page.facts.author = page.facts.author[:MAX_TITLE].strip() or None
    if page.facts.author is None:
        page.notices.append(
            Notice("author", "No author was found. Put “by” and the name under the title.")
        )


def _from_header(page: TitlePage, header: str) -> None:
    """Take the title and the author, where nothing else gave them, off the top of the pages."""
    named, lines = named_in_header(header)
    if named is None:
        return
    if not page.title:
        _take_named(page, named, lines)
    elif page.facts.author is None and named.author and same_title(named.title, page.title):
        page.facts.author = named.author
        page.facts.outside[Fact.AUTHOR] = [lines]
    elif (
        page.facts.author is None
        and named.author is None
        and (is_full_name(named.title) or is_single_name(named.title))
    ):
        page.facts.author = named.title
        page.facts.outside[Fact.AUTHOR] = [lines]


def _margin(page: TitlePage, document: Document, name: str) -> str:
    """Take the facts at the top or the foot of the pages; return what is left of the words."""
    words = tidied(document.properties.get(name, "").replace("\t", "\n"))
    page.facts.at = ()
    known = {fact: getattr(page.facts, fact.value) for fact in Fact}
    left = "\n".join(filter(None, map(page.facts.take_line, words.split("\n"))))
    for fact in Fact:
        if getattr(page.facts, fact.value) != known[fact]:
            page.facts.outside.setdefault(fact, []).append(words)
    page.title = page.title or page.facts.title or ""
    return left


def _take_named(page: TitlePage, named: Named, words: str) -> None:
    """Take a title, and perhaps an author, from words beside the text."""
    page.title = named.title
    page.facts.outside[Fact.TITLE] = [words]
    if page.facts.author is None and named.author is not None:
        page.facts.author = named.author
        page.facts.outside[Fact.AUTHOR] = [words]


def _from_file_name(page: TitlePage, name: str) -> None:
    stem = name.rpartition(".")[0] or name
    named = named_in_file_name(" ".join(stem.replace("_", " ").split()))
    page.title = (tidied(named.title) or "Untitled")[:MAX_TITLE]
    page.facts.outside[Fact.TITLE] = [name or "Untitled"]
    whose = ""
    if page.facts.author is None and named.author is not None:
        page.facts.author = named.author
        page.facts.outside[Fact.AUTHOR] = [name]
        whose = f" by {excerpt(named.author)}"
    page.notices.append(
        Notice(
            "title",
            f"No title was found, so the file's name stands for it: “{page.title}”{whose}. Put "
            "the title at the top of the digest.",
        )
    )
