"""The store's tables brought up to date when it is opened.

alembic takes a third of a second to import, so it is only asked when there is something to
do: an empty SQLite store gets today's tables at once (a test proves them equal to the migrated
ones), an up-to-date one is only looked at.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from sqlalchemy import Connection, Engine, inspect, text
from sqlmodel import SQLModel

from bot.ledger import tables

# The newest migration in migrations/versions; a test compares the two.
HEAD = "0005"
MIGRATIONS = Path(__file__).parent / "migrations"
# Any number will do, as long as all processes take the same one.
_ADVISORY_LOCK = 7_245_001


class NewerStoreError(Exception):
    """The store was written by a later version of Pailtext. Run that version, or newer."""


def bring_up_to_date(engine: Engine) -> None:
    """Give the store today's tables, whatever it holds.

    1. Its stamp is today's: nothing to do.
    2. It is an empty SQLite store: create today's tables, write the stamp.
    3. Otherwise run the migrations that are missing; on PostgreSQL under an advisory lock, as
       several processes may start together.

    Raises NewerStoreError when the stamp is one that this version does not know.
    """
    with engine.connect() as connection:
        found = stamp(connection)
    if found == HEAD:
        return
    if found is None and engine.dialect.name == "sqlite":
        with writing_alone(engine) as connection:
            if not inspect(connection).get_table_names():
                create_today(connection)
                return
    migrate(engine)


@contextmanager
def writing_alone(engine: Engine) -> Iterator[Connection]:
    """A transaction that writes. On SQLite it says so at once: a reader that turns writer later
    can fail with SQLITE_BUSY, whatever the timeout."""
    with engine.begin() as connection:
        if engine.dialect.name == "sqlite":
            connection.exec_driver_sql("BEGIN IMMEDIATE")
        yield connection


def stamp(connection: Connection) -> str | None:
    """The migration that the store was last brought to, None where there was none yet."""
    if not inspect(connection).has_table("alembic_version"):
        return None
    found = connection.execute(text("SELECT version_num FROM alembic_version")).scalar()
    return None if found is None else str(found)


def create_today(connection: Connection) -> None:
    """Create today's tables in an empty store and stamp it."""
    assert tables.Record.__tablename__  # the tables are declared by being imported
    SQLModel.metadata.create_all(connection)
    connection.execute(
        text(
            "CREATE TABLE alembic_version (version_num VARCHAR(32) NOT NULL,"
            " CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num))"
        )
    )
    connection.execute(
        text("INSERT INTO alembic_version (version_num) VALUES (:head)"), {"head": HEAD}
    )


def migrate(engine: Engine, to: str = "head") -> None:
    """Run the migrations up to `to`. Raises NewerStoreError when the store is ahead of us."""
    from alembic import command
    from alembic.config import Config
    from alembic.script import ScriptDirectory

    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS))
    known = {script.revision for script in ScriptDirectory.from_config(config).walk_revisions()}
    with writing_alone(engine) as connection:
        if engine.dialect.name == "postgresql":
            connection.execute(text(f"SELECT pg_advisory_xact_lock({_ADVISORY_LOCK})"))
        found = stamp(connection)
        if found is not None and found not in known:
            raise NewerStoreError(
                f"The store is at version {found}, but this program knows up to {HEAD}:"
                " it was written by a later Pailtext. Run that one, or a newer."
            )
        config.attributes["connection"] = connection
        command.upgrade(config, to)
