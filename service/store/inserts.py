"""Inserts that say what happens when the row is already there.

SQLite and PostgreSQL write them alike, but SQLAlchemy has a construct for each; one
statement in text serves both, needs neither dialect, and is built once at import.
"""

from collections.abc import Iterable

from sqlalchemy import Table, TextClause, bindparam, text


def insert_once(table: Table) -> TextClause:
    """Return the insert of a whole row that does nothing when any key of it is taken."""
    return _insert(table, "DO NOTHING")


def insert_or_update(table: Table, columns: Iterable[str]) -> TextClause:
    """Return the insert of a whole row that updates `columns` when its id is taken."""
    key = ", ".join(column.name for column in table.primary_key)
    sets = ", ".join(f"{column} = excluded.{column}" for column in columns)
    return _insert(table, f"({key}) DO UPDATE SET {sets}")


def _insert(table: Table, on_conflict: str) -> TextClause:
    names = [column.name for column in table.columns]
    values = ", ".join(f":{name}" for name in names)
    # Names of tables and columns are ours, from tables.py; what a reader gave is bound.
    statement = f"INSERT INTO {table.name} ({', '.join(names)}) VALUES ({values}) ON CONFLICT "  # noqa: S608
    return text(statement + on_conflict).bindparams(
        *(bindparam(column.name, type_=column.type) for column in table.columns)
    )
