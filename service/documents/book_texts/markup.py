"""XML and HTML of books, parsed leniently, without entities, network or unbounded trees."""

import re
from html import escape
from html.entities import html5

from lxml import etree

_OPENS_DOCTYPE = re.compile("<!DOCTYPE", re.IGNORECASE)
_DOCTYPE = re.compile(
    r"<!DOCTYPE[^>\[]{0,2000}(?:\[.{0,20000}?\]\s{0,200})?>", re.DOTALL | re.IGNORECASE
)
_BEFORE_ROOT = 50_000
"""Characters in which a document type may be declared."""
_DECLARATION = re.compile(r"\A\s*<\?xml[^>]*\?>", re.DOTALL)
_ENCODING = re.compile(
    rb"""\A.{0,8}?<\?xml[^>]{0,80}?encoding\s*=\s*["']([A-Za-z0-9._-]{1,40})["']""", re.DOTALL
)
_META = re.compile(
    rb"""<meta[^>]{0,200}?charset\s*=\s*["']?([A-Za-z0-9._-]{1,40})""", re.IGNORECASE
)
_HEEDED = re.compile(
    r"(?:windows-?|cp)125[0-8]|(?:cp|ibm)8(?:5[0-25-8]|6[0-9])|iso-?8859-?(?:[2-9]|1[0134-6])"
    r"|koi8-[ru]|tis-620|shift_?jis|euc-(?:jp|kr)|gb(?:k|2312|18030)|big5|mac(?:intosh|_?roman)",
    re.IGNORECASE,
)
"""Encodings that are heeded where they are declared. Codecs that are of addresses and programs
are none of a book, and one of them takes a minute for a megabyte; Latin-1 means Windows-1252
(WHATWG, Encoding Standard, 4.2)."""
_ENTITY = re.compile(r"&([A-Za-z][A-Za-z0-9]{0,30});")
_OF_XML = frozenset({"amp", "lt", "gt", "quot", "apos"})
_EMPTY = re.compile(r"<([A-Za-z][\w:.-]*+)((?:[^<>\"'/]|/(?!>)|\"[^\"<]*\"|'[^'<]*')*+)/>")
_VOID = frozenset("area base br col embed hr img input link meta source track wbr".split())
_NO_XML = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\ufffe\uffff\ud800-\udfff]")
_BOMS = ((b"\xef\xbb\xbf", "utf-8"), (b"\xff\xfe", "utf-16-le"), (b"\xfe\xff", "utf-16-be"))
_HEAD = 2048


class NoMarkup(ValueError):
    """A part in which no element can be found, or nested deeper than libxml2 takes unasked."""


def decoded_markup(content: bytes) -> str:
    """Return the text of a part: by its byte order mark, UTF-8, what it declares, Windows-1252."""
    for mark, encoding in _BOMS:
        if content.startswith(mark):
            return content[len(mark) :].decode(encoding, errors="replace")
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError:
        said = _ENCODING.search(content[:_HEAD]) or _META.search(content[:_HEAD])
        declared = said[1].decode("ascii") if said is not None else ""
        try:
            encoding = declared if _HEEDED.fullmatch(declared) else "cp1252"
            return content.decode(encoding, errors="replace")
        except LookupError:
            return content.decode("cp1252", errors="replace")


def xml_of(content: bytes) -> etree._Element:
    """Return the root of a part that has to be XML: the container, the package, the contents.

    Declarations are cut out before it is parsed, so nothing can be declared; entities of
    HTML become their characters, others make it malformed.

    Raises:
        NoMarkup: it is not well formed.
    """
    try:
        return etree.fromstring(_bare(decoded_markup(content)), _xml_parser())
    except (etree.XMLSyntaxError, ValueError) as error:
        raise NoMarkup from error


def page_of(markup: str, *, well_formed: bool = True) -> etree._Element:
    """Return the root of a page of XHTML or HTML, mended as browsers do where it is broken.

    Raises:
        NoMarkup: nothing can be made of it.
    """
    bare = _bare(markup)
    if well_formed:
        try:
            return etree.fromstring(bare, _xml_parser())
        except (etree.XMLSyntaxError, ValueError):
            # XHTML closes an empty element with a slash, which HTML does not know.
            bare = _EMPTY.sub(_opened, bare)
    parser = etree.HTMLParser(
        no_network=True, remove_comments=True, remove_pis=True, huge_tree=False, encoding="utf-8"
    )
    try:
        root = etree.fromstring(bare.encode("utf-8"), parser)
    except (etree.XMLSyntaxError, ValueError) as error:
        raise NoMarkup from error
    if root is None:
        raise NoMarkup
    if any(error.level_name == "FATAL" for error in parser.error_log):
        raise NoMarkup
    return root


def briefly(element: etree._Element, most: int) -> str | None:
    """Return the words of an element in single spaces, or None where it holds more than a few.

    What stands in one another hundreds deep, and asks at each depth for all its words, would
    else be read hundreds of times over.

    Args:
        element: of any tree.
        most: characters, white space among them, and elements, it may hold.
    """
    said: list[str] = []
    left = most
    for count, (event, inner) in enumerate(etree.iterwalk(element, events=("start", "end"))):
        if event == "end" and inner is element:
            break
        piece = (inner.text if event == "start" else inner.tail) or ""
        left -= len(piece)
        if left < 0 or count > 2 * most:
            return None
        said.append(piece)
    return " ".join("".join(said).split())


def _bare(markup: str) -> str:
    # Only at the first place where one opens: looking on from each costs a second a page.
    opens = _OPENS_DOCTYPE.search(markup, 0, _BEFORE_ROOT)
    declared = None if opens is None else _DOCTYPE.match(markup, opens.start(), _BEFORE_ROOT)
    if declared is not None:
        markup = markup[: declared.start()] + markup[declared.end() :]
    plain = _DECLARATION.sub("", markup, count=1)
    return _NO_XML.sub("", _ENTITY.sub(_character, plain)).lstrip("\ufeff \t\r\n")


def _character(entity: re.Match[str]) -> str:
    name = entity[1]
    if name in _OF_XML or f"{name};" not in html5:
        return entity[0]
    # `&LT;` is a sign and opens no element.
    return escape(html5[f"{name};"])


def _opened(element: re.Match[str]) -> str:
    name, attributes = element[1], element[2]
    if name.lower() in _VOID:
        return f"<{name}{attributes}>"
    return f"<{name}{attributes}></{name}>"


def _xml_parser() -> etree.XMLParser:
    return etree.XMLParser(
        resolve_entities=False,
        no_network=True,
        load_dtd=False,
        huge_tree=False,
        remove_comments=True,
        remove_pis=True,
    )
