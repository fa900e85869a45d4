"""Hourly temperatures as text: CSV lines `time_local,temp_f`."""

from __future__ import annotations

import csv
from collections.abc import Iterable, Iterator
from datetime import datetime

from bot.reckoning.hourly import Hour

MISSING = frozenset({"", "na", "nan", "null", "none", "m"})
"""What files write, in small letters, for an hour nobody measured."""


class UnreadableHoursError(ValueError):
    """The hours cannot be read: the message names the line, what stands there, what was wanted."""


def read_hours(lines: Iterable[str]) -> Iterator[Hour]:
    """The hours of a CSV file with a heading line that names `time_local` and `temp_f`.

    time_local: wall clock, ISO 8601, as `2013-03-18T06:00` or with a space; an offset at its end
    is left off, since it is the wall clock that counts. temp_f: F; empty, NA and the like are an
    hour nobody measured and give nothing. Other columns are passed over.
    Raises UnreadableHoursError for a missing heading, a time or a temperature that is none.
    """
    rows = csv.reader(line.lstrip("\ufeff") for line in lines)
    heading = [name.strip().lower() for name in next(rows, [])]
    if "time_local" not in heading or "temp_f" not in heading:
        raise UnreadableHoursError(
            f"line 1 is {','.join(heading)!r}, wanted a heading with time_local and temp_f"
        )
    time_at, temp_at = heading.index("time_local"), heading.index("temp_f")
    for row in rows:
        if not any(cell.strip() for cell in row):
            continue
        if len(row) <= max(time_at, temp_at):
            raise UnreadableHoursError(
                f"line {rows.line_num} has {len(row)} columns, wanted {len(heading)}"
            )
        temp = row[temp_at].strip()
        if temp.lower() in MISSING:
            continue
        try:
            at_local = datetime.fromisoformat(row[time_at].strip()).replace(tzinfo=None)
            yield Hour(at_local, float(temp))
        except ValueError as error:
            raise UnreadableHoursError(f"line {rows.line_num}: {error}") from error
