"""Lay the first tables.

There is no way down: a store is restored from its backup instead.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "inbox",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("door", sa.String(), nullable=False),
        sa.Column("provider_id", sa.String(), nullable=False),
        sa.Column("sender", sa.String(), nullable=False),
        sa.Column("to", sa.String(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.Column("media", sa.Integer(), nullable=False),
        sa.Column("opt_out", sa.String(), nullable=True),
        sa.Column("arrived_utc", sa.DateTime(timezone=True), nullable=False),
        sa.Column("tries", sa.Integer(), nullable=False),
        sa.Column("read_utc", sa.DateTime(timezone=True), nullable=True),
        sa.Column("reply", sa.Text(), nullable=True),
        sa.Column("reply_owed", sa.Boolean(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_inbox")),
        sa.UniqueConstraint("door", "provider_id", name=op.f("uq_inbox_door_provider_id")),
    )
    with op.batch_alter_table("inbox", schema=None) as batch_op:
        batch_op.create_index(
            "ix_inbox_sender_arrived_utc", ["sender", "arrived_utc"], unique=False
        )
        batch_op.create_index(
            "ix_inbox_unread",
            ["id"],
            unique=False,
            sqlite_where=sa.text("read_utc IS NULL"),
            postgresql_where=sa.text("read_utc IS NULL"),
        )

    op.create_table(
        "person",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("units", sa.String(), nullable=True),
        sa.Column("met_utc", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_person")),
    )
    op.create_table(
        "sugarbush",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("made_utc", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_sugarbush")),
    )
    op.create_table(
        "address",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("address", sa.String(), nullable=False),
        sa.Column("linked_utc", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_address_person_id_person")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_address")),
        sa.UniqueConstraint("address", name=op.f("uq_address_address")),
    )
    with op.batch_alter_table("address", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_address_person_id"), ["person_id"], unique=False)

    op.create_table(
        "consent",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("said", sa.String(), nullable=False),
        sa.Column("how", sa.String(), nullable=False),
        sa.Column("text_id", sa.Integer(), nullable=True),
        sa.Column("at_utc", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_consent_person_id_person")
        ),
        sa.ForeignKeyConstraint(["text_id"], ["inbox.id"], name=op.f("fk_consent_text_id_inbox")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_consent")),
    )
    with op.batch_alter_table("consent", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_consent_person_id"), ["person_id"], unique=False)

    op.create_table(
        "member",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("sugarbush_id", sa.Integer(), nullable=False),
        sa.Column("role", sa.String(), nullable=False),
        sa.Column("address", sa.String(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=True),
        sa.Column("invited_by_id", sa.Integer(), nullable=True),
        sa.Column("invited_utc", sa.DateTime(timezone=True), nullable=True),
        sa.Column("joined_utc", sa.DateTime(timezone=True), nullable=True),
        sa.Column("left_utc", sa.DateTime(timezone=True), nullable=True),
        sa.ForeignKeyConstraint(
            ["invited_by_id"], ["person.id"], name=op.f("fk_member_invited_by_id_person")
        ),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_member_person_id_person")
        ),
        sa.ForeignKeyConstraint(
            ["sugarbush_id"], ["sugarbush.id"], name=op.f("fk_member_sugarbush_id_sugarbush")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_member")),
    )
    with op.batch_alter_table("member", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_member_address"), ["address"], unique=False)
        batch_op.create_index(batch_op.f("ix_member_sugarbush_id"), ["sugarbush_id"], unique=False)
        batch_op.create_index(
            "uq_member_person_id_current",
            ["person_id"],
            unique=True,
            sqlite_where=sa.text("joined_utc IS NOT NULL AND left_utc IS NULL"),
            postgresql_where=sa.text("joined_utc IS NOT NULL AND left_utc IS NULL"),
        )

    op.create_table(
        "pending",
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("text_id", sa.Integer(), nullable=False),
        sa.Column("question", sa.JSON(), nullable=False),
        sa.Column("asked_utc", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_pending_person_id_person")
        ),
        sa.ForeignKeyConstraint(["text_id"], ["inbox.id"], name=op.f("fk_pending_text_id_inbox")),
        sa.PrimaryKeyConstraint("person_id", name=op.f("pk_pending")),
    )
    op.create_table(
        "record",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("sugarbush_id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("text_id", sa.Integer(), nullable=False),
        sa.Column("made_by_text_id", sa.Integer(), nullable=False),
        sa.Column("replaces_id", sa.Integer(), nullable=True),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("at_local", sa.DateTime(), nullable=False),
        sa.Column("season", sa.Integer(), nullable=False),
        sa.Column("gallons", sa.Float(), nullable=True),
        sa.Column("brix", sa.Float(), nullable=True),
        sa.Column("count", sa.Integer(), nullable=True),
        sa.Column("hours", sa.Float(), nullable=True),
        sa.Column("dollars", sa.Float(), nullable=True),
        sa.Column("fahrenheit", sa.Float(), nullable=True),
        sa.Column("cords", sa.Float(), nullable=True),
        sa.Column("propane_lb", sa.Float(), nullable=True),
        sa.Column("tree", sa.String(), nullable=True),
        sa.Column("lot", sa.String(), nullable=True),
        sa.Column("detail", sa.JSON(), nullable=False),
        sa.Column("stored_utc", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(
            ["made_by_text_id"], ["inbox.id"], name=op.f("fk_record_made_by_text_id_inbox")
        ),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_record_person_id_person")
        ),
        sa.ForeignKeyConstraint(
            ["replaces_id"], ["record.id"], name=op.f("fk_record_replaces_id_record")
        ),
        sa.ForeignKeyConstraint(
            ["sugarbush_id"], ["sugarbush.id"], name=op.f("fk_record_sugarbush_id_sugarbush")
        ),
        sa.ForeignKeyConstraint(["text_id"], ["inbox.id"], name=op.f("fk_record_text_id_inbox")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_record")),
    )
    with op.batch_alter_table("record", schema=None) as batch_op:
        batch_op.create_index(
            "ix_record_latest", ["sugarbush_id", "kind", "at_local"], unique=False
        )
        batch_op.create_index(
            "ix_record_lot",
            ["sugarbush_id", "season", "lot", "kind", "brix", "gallons", "on", "id"],
            unique=False,
            sqlite_where=sa.text("lot IS NOT NULL"),
            postgresql_where=sa.text("lot IS NOT NULL"),
        )
        batch_op.create_index(
            "ix_record_lot_names",
            ["sugarbush_id", "lot"],
            unique=False,
            sqlite_where=sa.text("lot IS NOT NULL"),
            postgresql_where=sa.text("lot IS NOT NULL"),
        )
        batch_op.create_index("ix_record_person_text", ["person_id", "text_id"], unique=False)
        batch_op.create_index(
            "ix_record_season",
            [
                "sugarbush_id",
                "season",
                "kind",
                "brix",
                "on",
                "gallons",
                "dollars",
                "cords",
                "propane_lb",
                "id",
            ],
            unique=False,
        )
        batch_op.create_index(
            "ix_record_tree",
            ["sugarbush_id", "season", "tree", "kind", "brix", "gallons", "on", "id"],
            unique=False,
            sqlite_where=sa.text("tree IS NOT NULL"),
            postgresql_where=sa.text("tree IS NOT NULL"),
        )
        batch_op.create_index(
            "ix_record_tree_names",
            ["sugarbush_id", "tree"],
            unique=False,
            sqlite_where=sa.text("tree IS NOT NULL"),
            postgresql_where=sa.text("tree IS NOT NULL"),
        )
        batch_op.create_index(
            "uq_record_replaces",
            ["sugarbush_id", "replaces_id"],
            unique=True,
            sqlite_where=sa.text("replaces_id IS NOT NULL"),
            postgresql_where=sa.text("replaces_id IS NOT NULL"),
        )

    op.create_table(
        "said",
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("what", sa.String(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_said_person_id_person")
        ),
        sa.PrimaryKeyConstraint("person_id", "what", name=op.f("pk_said")),
    )
