"""Read between the rows of a table."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

Rows = Sequence[tuple[float, float]]


def between_rows(rows: Rows, x: float) -> float:
    """The second column at `x` of the first, by straight lines between the rows.

    The first column must rise from row to row. Raises ValueError outside the table: a value is
    never drawn out past the last row.
    """
    if not rows[0][0] <= x <= rows[-1][0]:
        raise ValueError(
            f"{x:.6g} is outside the table, which runs from {rows[0][0]:.6g} to {rows[-1][0]:.6g}"
        )
    for (x0, y0), (x1, y1) in pairwise(rows):
        if x <= x1:
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
    raise AssertionError("unreachable: x is within the first and last rows")


def turned(rows: Rows) -> tuple[tuple[float, float], ...]:
    """The same table read the other way: second column first, rising."""
    return tuple(sorted((y, x) for x, y in rows))
