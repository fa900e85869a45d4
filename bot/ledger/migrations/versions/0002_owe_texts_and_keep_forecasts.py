"""Owe texts, keep forecasts, and log by which address consent came.

There is no way down: a store is restored from its backup instead.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "outbox",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("door", sa.String(), nullable=False),
        sa.Column("address", sa.String(), nullable=False),
        sa.Column("sent_from", sa.String(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("key", sa.String(), nullable=False),
        sa.Column("local_date", sa.Date(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("segments", sa.Integer(), nullable=False),
        sa.Column("made_utc", sa.DateTime(timezone=True), nullable=False),
        sa.Column("due_utc", sa.DateTime(timezone=True), nullable=False),
        sa.Column("useless_after_utc", sa.DateTime(timezone=True), nullable=False),
        sa.Column("look_utc", sa.DateTime(timezone=True), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("reason", sa.String(), nullable=True),
        sa.Column("tries", sa.Integer(), nullable=False),
        sa.Column("trying_since_utc", sa.DateTime(timezone=True), nullable=True),
        sa.Column("sent_utc", sa.DateTime(timezone=True), nullable=True),
        sa.Column("provider_id", sa.String(), nullable=True),
        sa.Column("status", sa.String(), nullable=True),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_outbox_person_id_person")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_outbox")),
        sa.UniqueConstraint(
            "person_id", "key", "local_date", name=op.f("uq_outbox_person_id_key_local_date")
        ),
    )
    with op.batch_alter_table("outbox", schema=None) as batch_op:
        batch_op.create_index(
            "ix_outbox_look",
            ["look_utc", "id"],
            unique=False,
            sqlite_where=sa.text("state IN ('owed', 'trying', 'unclear')"),
            postgresql_where=sa.text("state IN ('owed', 'trying', 'unclear')"),
        )
        batch_op.create_index(
            "ix_outbox_person_id_sent_utc", ["person_id", "sent_utc"], unique=False
        )
        batch_op.create_index("ix_outbox_provider_id", ["provider_id"], unique=False)

    op.create_table(
        "forecast",
        sa.Column("source", sa.String(), nullable=False),
        sa.Column("cell_key", sa.String(), nullable=False),
        sa.Column("fetched_utc", sa.DateTime(timezone=True), nullable=False),
        sa.Column("told", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("source", "cell_key", name=op.f("pk_forecast")),
    )
    op.create_table(
        "forecast_cell",
        sa.Column("source", sa.String(), nullable=False),
        sa.Column("place_key", sa.String(), nullable=False),
        sa.Column("cell_key", sa.String(), nullable=True),
        sa.Column("zone", sa.String(), nullable=True),
        sa.Column("asked_utc", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("source", "place_key", name=op.f("pk_forecast_cell")),
    )
    op.create_table(
        "mark",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("done_until_utc", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("name", name=op.f("pk_mark")),
    )
    # Adding a column at the end needs no copy of the table, on either database.
    op.add_column("consent", sa.Column("address", sa.String(), nullable=True))
