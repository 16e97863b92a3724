"""The contents of an EPUB: its chapters by name and, where it lists them, its pages."""

from collections.abc import Iterator
from dataclasses import dataclass

from lxml import etree

from service.documents.book_texts.archive import Archive, joined
from service.documents.book_texts.markup import NoMarkup, briefly, decoded_markup, page_of, xml_of

_TYPE = "{http://www.idpf.org/2007/ops}type"
_MAX_LABEL = 300
_AROUND_LABEL = 4_000
"""Characters of a line of contents with the white space its markup is set out in."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A line of contents: its words, how deep it stands, the path and the id it leads to."""

    title: str
    level: int
    path: str
    fragment: str


@dataclass(frozen=True, slots=True)
class Navigation:
    """The lines of the table of contents, and those of the list of pages."""

    contents: tuple[Entry, ...] = ()
    pages: tuple[Entry, ...] = ()


def navigation_of(archive: Archive, nav: str | None, ncx: str | None) -> Navigation:
    """Return the contents of an EPUB: EPUB 3's where there are any, else EPUB 2's.

    Contents that cannot be read are none: the headings of the pages stand in for them.
    """
    found = _of_nav(archive, nav)
    older = Navigation() if found.contents and found.pages else _of_ncx(archive, ncx)
    return Navigation(found.contents or older.contents, found.pages or older.pages)


def _of_nav(archive: Archive, path: str | None) -> Navigation:
    content = None if path is None else archive.part(path)
    if content is None or path is None:
        return Navigation()
    try:
        root = page_of(decoded_markup(content))
    except NoMarkup:
        return Navigation()
    lists: dict[str, tuple[Entry, ...]] = {"toc": (), "page-list": ()}
    for nav in root.iter("{*}nav"):
        if next(nav.iterancestors("{*}nav"), None) is not None:
            continue  # read with the one it stands in
        said = f"{nav.get(_TYPE) or nav.get('epub:type') or ''} {nav.get('role') or ''}"
        for kind in set(said.replace("doc-pagelist", "page-list").replace("doc-", "").split()):
            if kind in lists and not lists[kind]:
                lists[kind] = tuple(_lines(nav, path))
    return Navigation(lists["toc"], lists["page-list"])


def _lines(nav: etree._Element, path: str) -> Iterator[Entry]:
    """Yield the links of a list in order, with the number of lists each stands in."""
    depth = 0
    for event, element in etree.iterwalk(nav, events=("start", "end")):
        name = etree.QName(element).localname if isinstance(element.tag, str) else ""
        if name in {"ol", "ul"}:
            depth += 1 if event == "start" else -1
        elif name == "a" and event == "start" and element.get("href"):
            target, fragment = joined(path, element.get("href") or "")
            words = _words(element)
            if target and words:
                yield Entry(words, depth, target, fragment)


def _of_ncx(archive: Archive, path: str | None) -> Navigation:
    content = None if path is None else archive.part(path)
    if content is None or path is None:
        return Navigation()
    try:
        root = xml_of(content)
    except NoMarkup:
        return Navigation()
    return Navigation(
        tuple(_points(root, path, "navPoint")), tuple(_points(root, path, "pageTarget"))
    )


def _points(root: etree._Element, path: str, wanted: str) -> Iterator[Entry]:
    depth = 0
    for event, element in etree.iterwalk(root, events=("start", "end")):
        if not isinstance(element.tag, str) or etree.QName(element).localname != wanted:
            continue
        depth += 1 if event == "start" else -1
        if event == "end":
            continue
        label, content = element.find("{*}navLabel"), element.find("{*}content")
        target, fragment = joined(path, "" if content is None else content.get("src") or "")
        words = "" if label is None else _words(label)
        if words and target and content is not None:
            yield Entry(words, depth, target, fragment)


def _words(element: etree._Element) -> str:
    return (briefly(element, _AROUND_LABEL) or "")[:_MAX_LABEL]
