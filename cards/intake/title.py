"""Title and author, from the top of a digest."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from cards.digest import MAX_TITLE
from cards.intake.blocks import Block, Shape
from cards.intake.generic_titles import is_generic
from cards.intake.imprint import is_imprint, names_makers
from cards.intake.known_authors import is_known_author, is_known_surname, is_single_name
from cards.intake.wording import flowing, folded, unquoted

MAX_TITLE_LINE = 200
"""Characters in a paragraph that may be a title."""
TITLE_STYLES = frozenset({"title", "titel", "titre", "título", "titolo", "book title"})
"""Paragraph styles of word processors for a document's title, in lower case."""
_MAX_LINES = 4
"""Lines of a title page typed as one paragraph."""
_PROSE_WORDS = 14
NO_NAMES = frozenset(
    "novel fiction essay essays poem poems verse play drama history biography memoir philosophy "
    "copy final version revised new old kopie copie copia fassung versie digest summary book "
    "draft contents notes review finished read unfinished abridged english german french".split()
)
_STALE = re.compile(
    r"(?:document|dokument|untitled|unbenannt|sans titre|test)[\s\d]*$|microsoft word\b",
    re.IGNORECASE,
)
_PREFIX = re.compile(
    r"(?:(?:(?:a |my )?(?:book |reading )?(?:digest|summary|book report|report|review|log)|"
    r"(?:my |my reading |reading |book )notes)(?: (?:of|on|from|for|about)\s+|\s*[:–—]\s*)|"
    r"notes\s*[:–—]\s+|(?:mein )?(?:lesenotizen|notizen|zusammenfassung)(?: zu | von |\s*[:–—]\s*)|"
    r"(?:mes )?(?:notes|fiche) de lecture(?: sur |\s*[:–—]\s*)|(?:fiche|ficha|scheda)\s*[:–—]\s*|"
    r"(?:ficha|notas) de (?:lectura|leitura)\s*[:–—]\s*|scheda di lettura\s*[:–—]\s*|"
    r"leesverslag\s*[:–—]\s*)(?=\S)",
    re.IGNORECASE,
)
_APART = re.compile(
    r"\ANotes (?:on|from|about|for) (?=[^a-zà-ÿ]{0,40}[A-ZÀ-Þ]{3}[^a-zà-ÿ]{0,120}"
    r"(?:$|,| by | [–—-] )|[“‘«\"])"
)
"""Words in front of a title set apart from them by capitals or marks; *Notes on Nursing* is one."""
_BY = re.compile(r",?\s+(?:by|von|par|di|de|por|door)\s+|,\s+(?-i:d)[’']", re.IGNORECASE)
_LAST_FIRST = re.compile(r"([^\W\d_][\w’'-]+), ((?:[^\W\d_][\w’'.-]*)(?: [^\W\d_][\w’'.-]*){0,2})")
_MAX_NAME = 4
"""Words of a person's name in front of a comma."""
COLON = re.compile(r"(\s?):\s+")
_LEADING_BY = re.compile(r"(?:written )?by:?\s+|von\s+|par\s+|door\s+", re.IGNORECASE)
_LEADING_DE = re.compile(
    r"(?:(?:escrito )?(?:de|di|da|por|di:|por:)\s+|(?-i:d)[’'])(?=[^\W\d_])", re.IGNORECASE
)
_HONORIFICS = frozenset(
    folded(
        "madame mrs miss mr monsieur mademoiselle dr doctor don dona doña senhor señor signor lady "
        "lord king queen prince princess captain uncle aunt frau herr père tío tante onkel saint"
    ).split()
)
"""Words before a name that begin titles of books (Madame Bovary) and no author's name."""
_DASH = re.compile(r"\s+[–—-]\s+|\s*[|/·]\s+")
_PARTICLES = frozenset(
    "de von van der den la le du di da dos das del della des bin ibn al el y and e und et en ter "
    "ten "
    "of the zu af av".split()
)
_ARTICLE = re.compile(
    r"(?:the|an?(?=\s\w\w)|der|die|das|ein|eine|les|une|los|las|il|gli|het)\s|l[’']", re.IGNORECASE
)
"""Articles a title may open with and a name does not, as it may with *la* or *de*."""
BRACKETED = re.compile(r"(?P<title>[^()]{1,200})\s\((?P<inside>[^()]{3,80})\)")
_ALTERNATIVE = re.compile(r"[;,]?\s(?:or|oder|ou|ovvero|ossia|of)$", re.IGNORECASE)
"""The end of a title behind which a second follows: *Erewhon; or, Over the Range*."""
_LAST_YEAR = re.compile(r",?\s\(?(?:c\.?\s)?1?\d{3}\)?$|,?\s\(?20\d\d\)?$")
YEAR = re.compile(r",?\s*\b1?\d{3}\b|,?\s*\b20\d{2}\b")


@dataclass(frozen=True, slots=True)
class Named:
    """A title, and the author where the same words give one."""

    title: str
    author: str | None = None


def named_in(text: str, *, english: bool = False) -> Named:
    """Return the title and the author in a title line: `Walden by Henry David Thoreau`.

    Only an `english` *by* counts where that is said: *de* or *von* may be of the title.
    """
    text = _PREFIX.sub("", flowing(text).strip(" .*_#")).strip()
    text = _APART.sub("", text)
    text = unquoted(text) or text
    for found in reversed(list(_BY.finditer(text[:MAX_TITLE]))):
        title, author = text[: found.start()], text[found.end() :]
        by = found[0].strip(" ,").lower() == "by"
        apart = found[0].startswith(",") and is_known_surname(author)
        whole = len(author.split()) > 1 or is_single_name(author) or apart
        full = whole and author[0].isupper() and not english
        if title and is_name(author) and (by or full):
            return Named(unquoted(title), author)
    parts = _DASH.split(text[:MAX_TITLE], maxsplit=1)
    if len(parts) == 2 and all(parts):
        return _of_pair(unquoted(parts[0].strip()), unquoted(parts[1].strip()), text)
    if (named := _by_colon(text)) is not None:
        return named
    bracketed = BRACKETED.fullmatch(text)
    if bracketed is not None:
        inside = YEAR.sub("", bracketed["inside"]).strip(" ,")
        person = is_name(inside) and "the" not in inside.split()
        if person and (len(inside.split()) > 1 or is_single_name(inside)):
            return Named(unquoted(bracketed["title"]), inside)
    return _by_comma(text)


def may_open_title(text: str) -> bool:
    """Tell whether a text opens with an article, as a title may and a name does not."""
    return _ARTICLE.match(text) is not None


def is_full_name(text: str) -> bool:
    """Tell whether a text looks like one person's name of two words or more."""
    joints = {"and", "the", "of", "und", "et", "y", "e", "en", "ou", "o", "or", "oder"}
    words = text.lower().split()
    honoured = bool(words) and folded(words[0]) in _HONORIFICS
    return is_name(text) and len(words) > 1 and joints.isdisjoint(words) and not honoured


def is_name(text: str) -> bool:
    """Tell whether a text looks like the name of one or several people."""
    words = text.replace(",", " ").replace("&", " ").replace(".", ". ").split()
    if not 1 <= len(words) <= 12 or len(text) > 120 or any(letter.isdigit() for letter in text):
        return False
    proper = [word for word in words if word.lower() not in _PARTICLES]
    return bool(proper) and all(word[0].isalpha() and not word[0].islower() for word in proper)


def author_line(text: str, *, right_under: bool = False, capital: bool = False) -> str | None:
    """Return the author a line under the title gives: `by X`, or a name alone.

    A name of one word (Plato) counts only `right_under` the title; one in capitals only
    there, and where the title is in capitals too.
    """
    text = _LAST_YEAR.sub("", flowing(text).strip(" .,*_–—-()")).strip(" ,(")
    found = _LEADING_BY.match(text)
    if found is not None and is_name(text[found.end() :]):
        return text[found.end() :]
    found = _LEADING_DE.match(text)
    if found is not None and is_full_name(text[found.end() :]):
        return text[found.end() :]
    if is_imprint(text) or _ARTICLE.match(text):
        return None
    least = 1 if right_under and folded(text) not in NO_NAMES else 2
    return (
        text
        if is_name(text)
        and least <= len(text.split()) <= 8
        and (not text.isupper() or (capital and right_under and len(text.split()) > 1))
        else None
    )


def says_by(text: str) -> bool:
    """Tell whether a line gives an author in so many words: `by Jane Austen`."""
    text = flowing(text[:MAX_TITLE_LINE]).strip(" .,*_–—-()")
    found = _LEADING_BY.match(text)
    return found is not None and is_name(text[found.end() :])


def without_by(text: str) -> str:
    """Return a line without the *by* it opens with."""
    return _LEADING_BY.sub("", text)


def is_prose(text: str) -> bool:
    """Tell whether a paragraph is prose and no line of a title page."""
    return sum(any(map(str.isalnum, word)) for word in text.split()) >= _PROSE_WORDS


def worth_trusting(title: str | None) -> bool:
    """Tell whether a document's own title property was set by someone."""
    return title is not None and bool(title.strip()) and _STALE.match(title.strip()) is None


def title_block(front: Sequence[Block], level: int = 0) -> int | None:
    """Return the index of the block that is the title, or None.

    A paragraph in the style for titles comes first, then the first heading, then
    the first line short enough to be one. A heading under such a line counts only
    where it is above the `level` of the headings that announce parts.
    """
    line = next(
        (at for at, block in enumerate(front) if _is_line(block) and not is_generic(block.text)),
        None,
    )
    for wanted in (_styled_title, _is_heading):
        for index, block in enumerate(front):
            under = line is not None and line < index and 0 < level <= block.level
            if wanted(block) and not is_generic(block.text) and not under:
                return index
    return line


def _styled_title(block: Block) -> bool:
    return block.style.lower() in TITLE_STYLES


def _is_prose_block(text: str) -> bool:
    """Tell whether a paragraph is prose, and no few lines of a title page."""
    lines = text.split("\n")
    if 1 < len(lines) <= _MAX_LINES and not any(line[:1].islower() for line in lines):
        return any(map(is_prose, lines)) or lines[0].endswith(".")
    return is_prose(text)


def _is_heading(block: Block) -> bool:
    return block.shape is Shape.HEADING


def _is_line(block: Block) -> bool:
    return (
        block.shape is Shape.PARAGRAPH
        and len(block.text) <= MAX_TITLE_LINE
        and (block.strong or not _is_prose_block(block.text))
        and _LEADING_BY.match(block.text) is None
        and not names_makers(block.text)
    )


def _of_pair(left: str, right: str, whole: str) -> Named:
    """Tell title and author apart on the two sides of a dash.

    The author is the side that looks like one person's full name; where both or
    neither do, the right one, if it can be a name at all.
    """
    if _LAST_FIRST.fullmatch(left) or is_single_name(left):
        return Named(right, _turned(left))
    if is_full_name(left) and not is_full_name(right) and not is_single_name(right):
        return Named(right, left)
    if is_known_author(left) and not is_known_author(right):
        return Named(right, left)
    return Named(left, right) if is_name(right) and not _ARTICLE.match(right) else Named(whole)


def _by_colon(text: str) -> Named | None:
    """Return the title behind an author's name and a colon: `Voltaire : Candide`."""
    found = COLON.search(text[:MAX_TITLE])
    if found is None:
        return None
    left, right = text[: found.start()].strip(), unquoted(text[found.end() :].strip())
    if right and is_single_name(left):
        return Named(right, left)
    return Named(right, _turned(left)) if right and _LAST_FIRST.fullmatch(left) else None


def _turned(name: str) -> str:
    """Return a name with its parts in their order: `Austen, Jane` as `Jane Austen`."""
    found = _LAST_FIRST.fullmatch(name)
    return name if found is None else f"{found[2]} {found[1]}"


def _by_comma(text: str) -> Named:
    first, _, rest = text.partition(", ")
    name = is_full_name(first) and len(first.split()) <= _MAX_NAME and not _ARTICLE.match(first)
    known = is_known_author(first) and not is_known_author(rest)
    titled = not is_name(rest) or "the" in rest.split() or known
    if name and rest[:1].isupper() and titled:
        return Named(unquoted(rest), first)
    title, found, author = text.rpartition(", ")
    if title and is_single_name(author) and not is_single_name(title):
        return Named(unquoted(title), author)
    if is_full_name(title) and folded(author.partition(" ")[0]) in _HONORIFICS:
        return Named(author, title)
    if _ALTERNATIVE.search(title) or "the" in author.split():
        return Named(unquoted(text))
    if found and title and is_name(author) and 2 <= len(author.split()) <= 4:
        proper = [word for word in author.split() if word[0].isupper()]
        if len(proper) >= 2 and author.split()[0].lower() not in _PARTICLES:
            return Named(unquoted(title), author)
    return Named(unquoted(text))
