"""Tells alembic which tables there are and which connection to use."""

from __future__ import annotations

from alembic import context
from sqlmodel import SQLModel

from bot.ledger import tables

assert tables.Record.__tablename__  # the tables are declared by being imported

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=SQLModel.metadata,
    # SQLite cannot alter a table in place; batches copy it.
    render_as_batch=True,
    compare_type=True,
)
with context.begin_transaction():
    context.run_migrations()
