"""A table for whoever has the room: lines of plain text, which a mail's HTML part shows as one.

Cells stand in columns between bars, the headings in the first line:

    Tree | Sap     | Sugar
    7    | 4.5 gal | 2.4%
"""

from __future__ import annotations

from collections.abc import Sequence

_BAR = " | "
Row = tuple[str, ...]


def lines(heads: Row, rows: Sequence[Row]) -> str:
    """The table as text; "" for one without rows. All rows are as long as `heads`."""
    if not rows:
        return ""
    table = [tuple(cell.replace("|", "/") for cell in row) for row in (heads, *rows)]
    widths = [max(map(len, column)) for column in zip(*table, strict=True)]
    return "\n".join(
        _BAR.join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in table
    )


def blocks(text: str) -> list[str | list[Row]]:
    """A text taken apart into what is said and the tables in it, in order."""
    found: list[str | list[Row]] = []
    said: list[str] = []
    for piece in text.split("\n\n"):
        rows = [tuple(cell.strip() for cell in line.split("|")) for line in piece.split("\n")]
        if len(rows) > 1 and len(rows[0]) > 1 and len({len(row) for row in rows}) == 1:
            if said:
                found.append("\n\n".join(said))
            said = []
            found.append(rows)
        else:
            said.append(piece)
    return [*found, "\n\n".join(said)] if said else found
