"""Listens to the statements a store sends to its database."""

from sqlalchemy import event

from service.store.engine import Engines


class Statements(list[str]):
    """The statements sent so far, in order; those that begin a transaction left out."""

    def __init__(self, engines: Engines) -> None:
        super().__init__()
        for engine in {
            engines.reading.dialect: engines.reading,
            engines.writing.dialect: engines.writing,
        }.values():
            event.listen(engine, "before_cursor_execute", self._hear)

    def _hear(self, _connection, _cursor, statement: str, *_: object) -> None:
        if not statement.startswith("BEGIN"):
            self.append(" ".join(statement.split()))
