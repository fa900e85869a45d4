"""The command `pailtext outlook`: CSV lines in, one JSON line a local day out."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator

from bot.reckoning.hours_csv import read_hours
from bot.reckoning.outlook import outlook_by_day


def outlook_lines(lines: Iterable[str]) -> Iterator[str]:
    """One line a day: {"date", "outlook", "score", "why"}; `read_hours` says what is read and what
    it raises."""
    for day in outlook_by_day(read_hours(lines)):
        yield json.dumps(
            {
                "date": day.date.isoformat(),
                "outlook": day.outlook,
                "score": day.score,
                "why": day.why,
            }
        )
