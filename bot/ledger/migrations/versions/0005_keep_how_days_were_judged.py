"""Keep how the days of each area of the weather were judged, longer than their hours.

There is no way down: a store is restored from its backup instead.
"""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "weather_day",
        sa.Column("area", sa.String(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("score", sa.Float(), nullable=False),
        sa.Column("low_f", sa.Float(), nullable=False),
        sa.Column("high_f", sa.Float(), nullable=False),
        sa.PrimaryKeyConstraint("area", "on", name=op.f("pk_weather_day")),
    )
