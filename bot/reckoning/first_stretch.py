"""When to tap: the start of the first real stretch of run days, not a lone warm day.

A gravity hole runs little over 30 days, so a hole drilled for one warm day in a cold month is a
hole half used (Ohio State University Extension).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from bot.reckoning.outlook import Outlook
from bot.reckoning.outlook_figures import STRETCH_DAYS, STRETCH_RUN_DAYS


@dataclass(frozen=True, slots=True)
class Stretch:
    """A real stretch. begins: its first run day; run_days: how many of its `of_days` days are
    likely or big."""

    begins: date
    run_days: int
    of_days: int


def first_stretch(days: Sequence[Outlook]) -> Stretch | None:
    """The first run day with at least three run days in the five that begin with it.

    days: in order, only those whose afternoon is known count. None if the known days show no
    such stretch: near the end of a forecast the last days are too few to tell.
    """
    run_dates = {day.date for day in days if _runs(day)}
    for begins in sorted(run_dates):
        of_five = {begins + timedelta(days=ahead) for ahead in range(STRETCH_DAYS)}
        run_days = len(of_five & run_dates)
        if run_days >= STRETCH_RUN_DAYS:
            return Stretch(begins, run_days, STRETCH_DAYS)
    return None


def lone_run_day(days: Sequence[Outlook]) -> date | None:
    """The first run day, if a known week holds no stretch for it to begin: worth telling, not
    worth drilling for. None if there is no run day, or if there is a stretch."""
    if first_stretch(days) is not None:
        return None
    return next((day.date for day in days if _runs(day)), None)


def _runs(day: Outlook) -> bool:
    return day.complete and day.outlook in ("likely", "big")
