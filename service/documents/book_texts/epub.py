"""The text of a book in an EPUB, by its spine."""

from itertools import pairwise

from cards.errors import DocumentEmpty
from cards.proving.text import MAX_CHARACTERS, MAX_MARKS, BookText, PageMark
from service.documents.book_texts.archive import Archive
from service.documents.book_texts.bounds import too_long
from service.documents.book_texts.chapters import chapters_of
from service.documents.book_texts.flow import Flow, Heading
from service.documents.book_texts.markup import NoMarkup, decoded_markup, page_of
from service.documents.book_texts.navigation import Entry, navigation_of
from service.documents.book_texts.package import package_of


def book_in_epub(name: str, content: bytes) -> BookText:
    """Return a book from the bytes of an EPUB.

    A page that cannot be read even leniently is passed over, as a reader's program does.

    Raises:
        DocumentTooLarge: it is over a bound, packed or unpacked.
        DocumentLocked: it is protected against copying.
        DocumentBroken: it is damaged, or no sound EPUB.
        DocumentEmpty: it holds no words.
    """
    archive = Archive(name, content)
    package = package_of(name, archive)
    flow = Flow()
    for path in package.spine:
        page = archive.part(path)
        if page is None:
            continue
        try:
            flow.read(path, page_of(decoded_markup(page)))
        except NoMarkup:
            continue
        if flow.length > MAX_CHARACTERS:
            raise too_long(name)
    text = flow.text
    if not text.strip():
        raise DocumentEmpty(
            f"“{name}” holds no words, only pictures perhaps. Hand over an edition with text.",
            where="file",
        )
    navigation = navigation_of(archive, package.nav, package.ncx)
    return BookText(
        title=package.title,
        author=package.author,
        isbn=package.isbn,
        text=text,
        chapters=chapters_of(_headings(navigation.contents, flow), len(text), package.title)[
            :MAX_MARKS
        ],
        pages=marks_of(flow, navigation.pages),
    )


def _headings(contents: tuple[Entry, ...], flow: Flow) -> list[Heading]:
    """Return the headings the contents lead to; those of the pages where there are no contents."""
    listed = [
        Heading(entry.title, at, entry.level)
        for entry in contents
        if (at := _offset(entry, flow)) is not None
    ]
    return listed if len(listed) > 1 else flow.headings


def _offset(entry: Entry, flow: Flow) -> int | None:
    key = f"{entry.path}#{entry.fragment}" if entry.fragment else entry.path
    at = flow.ids.get(key, flow.ids.get(entry.path))
    return None if at is None else min(at, flow.length)


def marks_of(flow: Flow, listed: tuple[Entry, ...] = ()) -> tuple[PageMark, ...]:
    """Return the page marks of a flow in order: those in its text, or else those a list leads to.

    A list that leads to more pages than are marked in the text is the better one. A mark
    at the place of the one before it takes its place: an empty page holds no words.
    """
    in_list = [
        (entry.title, at)
        for entry in listed
        if entry.fragment and (at := _offset(entry, flow)) is not None
    ]
    marks = max(flow.pages, in_list, key=len)
    ordered = sorted(((min(at, flow.length), label) for label, at in marks), key=lambda one: one[0])
    last = [at != following for (at, _), (following, _) in pairwise(ordered)] + [True]
    kept = [
        PageMark(label[:20], at)
        for (at, label), is_last in zip(ordered, last, strict=False)
        if is_last
    ]
    return tuple(kept[:MAX_MARKS])
