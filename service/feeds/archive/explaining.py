"""What explains an archive: its README, and what every field of its facts means."""

from collections.abc import Iterable, Iterator, Mapping
from importlib import resources

from service.feeds.archive.layout import facts_path
from service.use_cases.archiving_records import FactTable, Field, FieldType

_FORMS = {
    FieldType.ID: "UUID, in small letters",
    FieldType.INSTANT: "instant in UTC, `2026-03-01T21:40:00.000000+00:00`",
    FieldType.DAY: "day, `2026-03-01`",
    FieldType.WORDS: "words",
    FieldType.WHOLE: "whole number",
    FieldType.NUMBER: "number, exact to the last bit",
    FieldType.FLAG: "true or false",
    FieldType.JSON: "JSON",
    FieldType.FILE: "path",
}


def readme(left_out: Mapping[str, str]) -> str:
    """Return the README of an archive, in Markdown.

    Args:
        left_out: what is not in it, with the reason.
    """
    file = resources.files("service.feeds.archive") / "readme.md"
    listed = "".join(f"- `{name}`: {why}\n" for name, why in sorted(left_out.items()))
    return f"{file.read_text(encoding='utf-8')}\n{listed}"


def fields(tables: Iterable[FactTable]) -> str:
    """Return what every field of every sort of facts means, in Markdown."""
    return "".join(_described(tables))


def _described(tables: Iterable[FactTable]) -> Iterator[str]:
    yield (
        "# The facts, field by field\n\n"
        "One file a sort, one JSON object a line, in the order of their keys. A field that may be\n"
        "absent is `null` then.\n"
    )
    for table in tables:
        key = ", ".join(f"`{name}`" for name in table.key) or "none: it is one line at the most"
        yield f"\n## {facts_path(table.name).removeprefix('facts/')}\n\n{table.meaning}\n"
        yield f"Key: {key}.\n\n| field | form | means |\n|---|---|---|\n"
        for field in table.fields:
            yield f"| `{field.name}` | {_form(field)} | {field.meaning} |\n"


def _form(field: Field) -> str:
    bound = f", at most {field.longest} characters" if field.longest else ""
    return f"{_FORMS[field.type]}{bound}{'; or `null`' if field.optional else ''}"
