"""Keep the sums of each season beside its records.

There is no way down: a store is restored from its backup instead.
"""

from __future__ import annotations

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

# What shares a sum, by side: written as of this migration, whatever becomes of the ledger.
_SIDES = {"brix": "brix", "day": '"on"', "lot": "lot", "tree": "tree"}


def upgrade() -> None:
    kept = op.create_table(
        "season_sum",
        sa.Column("sugarbush_id", sa.Integer(), nullable=False),
        sa.Column("season", sa.Integer(), nullable=False),
        sa.Column("side", sa.String(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("records", sa.Integer(), nullable=False),
        sa.Column("last_on", sa.Date(), nullable=False),
        sa.Column("gallons", sa.Float(), nullable=True),
        sa.Column("dollars", sa.Float(), nullable=True),
        sa.Column("cords", sa.Float(), nullable=True),
        sa.Column("propane_lb", sa.Float(), nullable=True),
        sa.Column("brix", sa.Float(), nullable=True),
        sa.Column("tested_gallons", sa.Float(), nullable=True),
        sa.Column("sugar", sa.Float(), nullable=True),
        sa.ForeignKeyConstraint(
            ["sugarbush_id"], ["sugarbush.id"], name=op.f("fk_season_sum_sugarbush_id_sugarbush")
        ),
        sa.PrimaryKeyConstraint(
            "sugarbush_id", "season", "side", "kind", "name", name=op.f("pk_season_sum")
        ),
    )
    with op.batch_alter_table("record", schema=None) as batch_op:
        batch_op.drop_index("ix_record_latest")
        batch_op.create_index(
            "ix_record_latest",
            ["sugarbush_id", "kind", "at_local", "on", "season", "gallons", "id"],
            unique=False,
        )
    connection = op.get_bind()
    for side, column in _SIDES.items():
        only = "" if side in ("brix", "day") else f"AND {column} IS NOT NULL"
        found = connection.execute(
            sa.text(
                f"""
                SELECT sugarbush_id, season, kind, {column} AS name, count(*) AS records,
                    max("on") AS last_on, sum(gallons) AS gallons, sum(dollars) AS dollars,
                    sum(cords) AS cords, sum(propane_lb) AS propane_lb, sum(brix) AS brix,
                    sum(CASE WHEN brix IS NOT NULL THEN gallons END) AS tested_gallons,
                    sum(gallons * brix) AS sugar
                FROM record
                WHERE kind != 'undo' {only} AND id NOT IN
                    (SELECT replaces_id FROM record WHERE replaces_id IS NOT NULL)
                GROUP BY sugarbush_id, season, kind, {column}
                """
            ).columns(last_on=sa.Date())
        )
        while rows := found.fetchmany(1000):
            op.bulk_insert(kept, [_row(side, row._mapping) for row in rows])


def _row(side: str, found: Any) -> dict[str, Any]:
    name = found["name"]
    if side == "brix":
        name = "" if name is None else repr(float(name))
    return {**found, "side": side, "name": str(name)}
