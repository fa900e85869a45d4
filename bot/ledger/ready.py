"""Statements that are run for every text, made ready once.

SQLAlchemy finds out anew at each run how a statement is written and what becomes of its values: on
SQLite that takes several times as long as the statement itself, and a text runs eight. Here it is
asked once, and the statement is then run by the driver, within the same transaction. On any other
database, where the way to it takes longer than all that, a statement is run as it is.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from sqlalchemy import Connection, Dialect
from sqlalchemy.engine import IteratorResult, Result
from sqlalchemy.engine.result import SimpleResultMetaData
from sqlalchemy.exc import DBAPIError


class Ready:
    """A statement with single values, which are given by the same names each time."""

    def __init__(self, statement: Any) -> None:
        self._statement = statement
        self._written: _Written | None = None

    def run(self, connection: Connection, given: Mapping[str, Any]) -> Result[*tuple[Any, ...]]:
        """Its rows with these values. Raises what SQLAlchemy raises, and KeyError for other names
        than those of the first time."""
        if connection.dialect.name != "sqlite":
            return connection.execute(self._statement, given)
        written = self._on_sqlite(connection.dialect, given)
        cursor = written.run(connection, given)
        return IteratorResult(written.names, written.rows(cursor))

    def changed(self, connection: Connection, given: Mapping[str, Any]) -> int:
        """How many rows an update or a deletion wrote with these values. Raises as `run` does."""
        if connection.dialect.name != "sqlite":
            return connection.execute(self._statement, given).rowcount
        cursor = self._on_sqlite(connection.dialect, given).run(connection, given)
        return int(cursor.rowcount)

    def _on_sqlite(self, dialect: Dialect, given: Mapping[str, Any]) -> _Written:
        if self._written is None:
            self._written = _Written(self._statement, dialect, list(given))
        return self._written


class _Written:
    """A statement as SQLite's driver takes it: its words, what becomes of its values, and what of
    its rows. `names`: those of its columns."""

    def __init__(self, statement: Any, dialect: Dialect, given: Sequence[str]) -> None:
        compiled = statement.compile(
            dialect=dialect, column_keys=given if statement.is_insert else None
        )
        binds = [(name, compiled.binds[name]) for name in compiled.positiontup]
        if any(bind.expanding for _, bind in binds):
            raise TypeError(f"With a list in it, it is written anew each time: {compiled}")
        columns = list(getattr(statement, "exported_columns", ()))
        self._words = str(compiled)
        self._given = set(given)
        self._own = {name: bind.value for name, bind in binds if not bind.required}
        self._values = [
            (name, bind.type.dialect_impl(dialect).bind_processor(dialect)) for name, bind in binds
        ]
        self._made = [
            column.type.dialect_impl(dialect).result_processor(dialect, None) for column in columns
        ]
        self.names = SimpleResultMetaData([str(column.key) for column in columns])

    def run(self, connection: Connection, given: Mapping[str, Any]) -> Any:
        if given.keys() != self._given:
            raise KeyError(f"Values for {set(given)} instead of {self._given}: {self._words}")
        told = {**self._own, **given}
        values = [told[name] if made is None else made(told[name]) for name, made in self._values]
        driver: Any = connection.connection.driver_connection
        try:
            return driver.execute(self._words, values)
        except Exception as error:
            module: Any = connection.dialect.dbapi
            refused: Any = DBAPIError.instance(self._words, values, error, module.Error)
            raise refused from error

    def rows(self, cursor: Any) -> Iterator[Sequence[Any]]:
        found = cursor.fetchall()
        if not any(self._made):
            return iter(found)
        return (
            tuple(
                value if made is None else made(value)
                for made, value in zip(self._made, row, strict=True)
            )
            for row in found
        )
