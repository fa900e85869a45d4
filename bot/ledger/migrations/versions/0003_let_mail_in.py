"""Let mail in: threads, codes that link addresses, and how each one wants to be reached.

There is no way down: a store is restored from its backup instead.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "letter",
        sa.Column("text_id", sa.Integer(), nullable=False),
        sa.Column("message_id", sa.String(), nullable=False),
        sa.Column("subject", sa.String(), nullable=False),
        sa.Column("message_ids", sa.Text(), nullable=False),
        sa.Column("attach", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(["text_id"], ["inbox.id"], name=op.f("fk_letter_text_id_inbox")),
        sa.PrimaryKeyConstraint("text_id", name=op.f("pk_letter")),
    )
    op.create_table(
        "link_code",
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("address", sa.String(), nullable=True),
        sa.Column("code", sa.String(), nullable=False),
        sa.Column("tries", sa.Integer(), nullable=False),
        sa.Column("expires_utc", sa.DateTime(timezone=True), nullable=False),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_link_code_person_id_person")
        ),
        sa.PrimaryKeyConstraint("person_id", name=op.f("pk_link_code")),
    )
    op.create_table(
        "stranger",
        sa.Column("address", sa.String(), nullable=False),
        sa.Column("since_utc", sa.DateTime(timezone=True), nullable=False),
        sa.Column("tries", sa.Integer(), nullable=False),
        sa.Column("is_answered", sa.Boolean(), nullable=False),
        sa.PrimaryKeyConstraint("address", name=op.f("pk_stranger")),
    )
    op.create_table(
        "secret",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("value", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("name", name=op.f("pk_secret")),
    )
    with op.batch_alter_table("link_code", schema=None) as batch_op:
        batch_op.create_index("ix_link_code_code", ["code"], unique=False)
    with op.batch_alter_table("stranger", schema=None) as batch_op:
        batch_op.create_index("ix_stranger_since_utc", ["since_utc"], unique=False)
    # Adding a column at the end needs no copy of the table, on either database.
    op.add_column("person", sa.Column("alerts_by", sa.String(), nullable=True))
    op.add_column("person", sa.Column("hears_helpers", sa.Boolean(), nullable=True))
    op.add_column("address", sa.Column("muted_utc", sa.DateTime(timezone=True), nullable=True))
