"""Steps of `looking_over.feature`."""

import re

import pytest
from pytest_bdd import given, parsers, scenarios, then, when

from features.draft_steps import Desktop
from service.use_cases.drafts import list_drafts
from service.use_cases.library import list_digests, open_original
from tests.pages.draft_pages import draft_form, hand_in, listed_as_left, looked_over

scenarios("looking_over.feature")


@pytest.fixture
def desktop(mira) -> Desktop:
    return Desktop.of(mira)


@given(parsers.parse('her digest has the line "{line}" under a heading "{heading}"'))
def has_a_line(mira, line, heading):
    mira.source = mira.source.replace("## Quotations", f"## {heading}\n\n{line}\n\n## Quotations")


@when("Mira hands her digest in to look it over")
def hands_in(mira, desktop):
    desktop.form = looked_over(desktop.client, mira.file, mira.document())


@when("she takes that line in as a commitment")
def takes_in(desktop):
    desktop.presses("take left-1 commitments")


@when(parsers.parse('she says that in her digests "{heading}" announces the commitments'))
def announces(desktop, heading):
    page = desktop.page()
    order = re.search(rf'value="(heading [a-z]+-\d+)">[^<]*<span class="unseen"> \({heading}', page)
    stem = order[1].removeprefix("heading ")
    desktop.presses(order[1], **{f"{stem}-part": "commitments"})


@when(parsers.parse("she says that quotation {quotation:d} stands after point {point:d}"))
def says_where(desktop, quotation, point):
    desktop.presses("save", **{f"quotations-{quotation}-after": str(point)})


@when(parsers.parse("she joins point {point:d} with the next"))
def joins(desktop, point):
    desktop.presses(f"join points-{point}")


@when(parsers.parse('she splits point {point:d} before "{word}"'))
def splits(desktop, point, word):
    words = desktop.form.fields[f"points-{point}-text"]
    apart = words.replace(f" {word}", f"\n\n{word}")
    desktop.presses(f"split points-{point}", **{f"points-{point}-text": apart})


@when(parsers.parse("she makes point {point:d} a quotation"))
def makes_a_quotation(desktop, point):
    desktop.presses(f"turn points-{point} quotations")


@when("she keeps it")
def keeps(desktop):
    desktop.keeps()


@when("she keeps it as another reading")
def keeps_as_a_reading(desktop):
    desktop.keeps(**{"as": "reading"})


@when("Mira hands in a folder of three digests and an empty file")
@when("she hands in the same folder again")
def hands_in_a_folder(mira, desktop):
    plain = mira.source
    files = []
    for number in (1, 2, 3):
        mira.source = plain.replace("Silas Marner", f"Silas Marner {number}")
        if mira.noted is None or len(mira.noted) < 3:
            mira.noted = [*(mira.noted or []), mira.document()]
        files.append((f"digests/{number}.docx", mira.noted[number - 1]))
    mira.source = plain
    files.insert(1, ("digests/empty.docx", b""))
    desktop.answer = hand_in(desktop.client, *files, do="add")


@then("nothing is in her library yet")
def nothing_kept(mira):
    assert list_digests(mira.desk).entries == ()


@then(parsers.parse('beside point {point:d} stand the words "{words}"'))
def beside(desktop, point, words):
    row = desktop.page().partition(f'id="points-{point}"')[2].partition("</li>\n")[0]
    assert words in row.partition('<div class="found lines"')[2]


@then("the draft can be found again among her drafts")
def found_again(desktop):
    assert f'href="{desktop.form.action}"' in desktop.client.get("/drafts").text


@then(parsers.parse('the line "{line}" is listed as standing nowhere'))
def listed(desktop, line):
    assert listed_as_left(desktop.page()) == [line]


@then("no line stands nowhere")
def none_left(desktop):
    assert listed_as_left(desktop.page()) == []


@then(parsers.parse('her draft has {part} {number:d} "{words}"'))
def draft_has(desktop, part, number, words):
    assert desktop.form.fields[f"{part}s-{number}-text"] == words


@then(parsers.parse('in the next file she hands in "{heading}" announces the commitments too'))
def announces_too(mira, desktop, heading):
    mira.source = mira.source.replace("Silas Marner", "Adam Bede")
    assert heading in mira.source
    form = looked_over(desktop.client, "adam-bede.docx", mira.document())
    assert form.fields["commitments-3-text"] == "Ask Hanne about the loom every Sunday."


@then(parsers.parse("quotation {quotation:d} stands after point {point:d}"))
def stands_after(desktop, quotation, point):
    form = draft_form(desktop.page())
    assert form.fields[f"quotations-{quotation}-after"] == str(point)


@then(
    parsers.parse(
        'her library holds "{title}" with {points:d} points and {quotations:d} quotations'
    )
)
def library_holds(mira, title, points, quotations):
    (entry,) = list_digests(mira.desk).entries
    digest = entry.kept.digest()
    assert digest.title == title
    assert (len(digest.points), len(digest.quotations)) == (points, quotations)


@then("the file she handed in is kept with it")
def file_is_kept(mira):
    (entry,) = list_digests(mira.desk).entries
    assert open_original(mira.desk, entry.kept.id).name == mira.file


@then("she has no drafts")
def no_drafts(mira):
    assert list_drafts(mira.desk).drafts == ()


@then("she is told that the book is in her library already")
def told_of_it(desktop):
    assert "This book is in your library already" in desktop.form.shown


@then("two digests are in her library")
def two_kept(mira):
    assert len(list_digests(mira.desk).entries) == 2


@then("there is a report on each of the four files")
def four_reports(desktop):
    assert desktop.answer.text.count("<article") == 4


@then("three digests are in her library")
def three_kept(mira):
    assert len(list_digests(mira.desk).entries) == 3


@then("the three digests are unchanged")
def unchanged(desktop):
    assert "three digests unchanged and one file refused" in desktop.answer.text
