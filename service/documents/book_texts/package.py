"""The package document of an EPUB: what the book is, and in which order its parts are read."""

from dataclasses import dataclass

from lxml import etree

from cards.digest import MAX_TITLE
from cards.errors import DocumentBroken
from cards.intake.isbn import compact, is_isbn
from service.documents.book_texts.archive import Archive, joined
from service.documents.book_texts.markup import NoMarkup, briefly, xml_of

_CONTAINER = "META-INF/container.xml"
_AROUND_FACT = 4_000
"""Characters of a title, a name or a number with the white space it is set out in."""
_PAGES = frozenset({"application/xhtml+xml", "text/html", "application/x-dtbook+xml"})


@dataclass(frozen=True, slots=True)
class Package:
    """What a package document says.

    Attributes:
        title, author, isbn: of the book, or None.
        spine: paths of its pages in reading order.
        nav: path of the navigation document of EPUB 3, or None.
        ncx: path of the contents of EPUB 2, or None.
    """

    title: str | None
    author: str | None
    isbn: str | None
    spine: tuple[str, ...]
    nav: str | None
    ncx: str | None


def package_of(name: str, archive: Archive) -> Package:
    """Return what the package document of an EPUB says.

    Raises:
        DocumentBroken: it has none, or one that cannot be read or names no page.
    """
    root_path = _package_path(name, archive)
    content = archive.part(root_path)
    if content is None:
        raise _missing(name, f"its package document ({root_path or 'content.opf'}) is missing")
    try:
        root = xml_of(content)
    except NoMarkup as error:
        raise _missing(name, "its package document is damaged") from error
    manifest = {item.get("id"): item for item in root.iterfind(".//{*}manifest/{*}item")}
    spine = _spine(archive, root, root_path, manifest)
    if not spine:
        raise _missing(name, "its package document names no page")
    authors = [
        author for author in map(_words, root.iterfind(".//{*}metadata/{*}creator")) if author
    ]
    return Package(
        title=_first(root, "title"),
        author=" and ".join(authors[:3])[:MAX_TITLE] or None,
        isbn=_isbn(root),
        spine=spine,
        nav=_listed(root_path, manifest, "nav"),
        ncx=_ncx(root, root_path, manifest),
    )


def _package_path(name: str, archive: Archive) -> str:
    content = archive.part(_CONTAINER)
    if content is None:
        raise _missing(name, f"its table of parts ({_CONTAINER}) is missing")
    try:
        root = xml_of(content)
    except NoMarkup as error:
        raise _missing(name, f"its table of parts ({_CONTAINER}) is damaged") from error
    for rootfile in root.iterfind(".//{*}rootfile"):
        path, _ = joined("", rootfile.get("full-path") or "")
        if path:
            return path
    raise _missing(name, f"its table of parts ({_CONTAINER}) names no package document")


def _spine(
    archive: Archive, root: etree._Element, base: str, manifest: dict[str | None, etree._Element]
) -> tuple[str, ...]:
    paths: dict[str, str] = {}
    for reference in root.iterfind(".//{*}spine/{*}itemref"):
        item = manifest.get(reference.get("idref"))
        if item is None or (item.get("media-type") or "").lower() not in _PAGES:
            continue
        path, _ = joined(base, item.get("href") or "")
        # One part is one page, in however many spellings of its name the spine has it.
        if path:
            paths.setdefault(archive.name_of(path), path)
    return tuple(paths.values())


def _listed(base: str, manifest: dict[str | None, etree._Element], wanted: str) -> str | None:
    for item in manifest.values():
        if wanted in (item.get("properties") or "").split():
            return joined(base, item.get("href") or "")[0] or None
    return None


def _ncx(root: etree._Element, base: str, manifest: dict[str | None, etree._Element]) -> str | None:
    spine = root.find(".//{*}spine")
    named = manifest.get(spine.get("toc")) if spine is not None and spine.get("toc") else None
    for item in [named, *manifest.values()]:
        if item is not None and (item.get("media-type") or "") == "application/x-dtbncx+xml":
            return joined(base, item.get("href") or "")[0] or None
    return None


def _isbn(root: etree._Element) -> str | None:
    """Return the first identifier that is a sound ISBN, be it so named or not."""
    for said in root.iterfind(".//{*}metadata/{*}identifier"):
        number = compact(_words(said).lower().removeprefix("urn:").removeprefix("isbn:"))
        if is_isbn(number):
            return number
    return None


def _first(root: etree._Element, field: str) -> str | None:
    found = root.find(f".//{{*}}metadata/{{*}}{field}")
    return None if found is None else _words(found)[:MAX_TITLE] or None


def _words(element: etree._Element) -> str:
    return briefly(element, _AROUND_FACT) or ""


def _missing(name: str, what: str) -> DocumentBroken:
    return DocumentBroken(
        f"“{name}” is no sound EPUB: {what}. Fetch or export the book once more.", where="file"
    )
