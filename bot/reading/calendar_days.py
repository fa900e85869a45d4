"""A day of the calendar that a phrase of some tokens means.

A clean fragment goes to dateparser; nothing else does, since libraries that search for dates in
whole messages find years in gallons.
"""

from __future__ import annotations

import warnings
from dataclasses import dataclass
from datetime import date
from functools import lru_cache

FURTHEST_BACK_DAYS = 60
"""A stated day longer ago than that is asked about: most likely a slip."""


@dataclass(frozen=True, slots=True)
class DateHit:
    """A date phrase of `length` tokens. `on` is None where the day is ahead and unknown
    (next week), or where there is no such day (feb 30); `ahead` says that the day lies after
    the day it was sent."""

    on: date | None
    length: int
    ahead: bool = False


def month_day(month: int, day: int, length: int, today: date) -> DateHit | None:
    """A day with a month and no year: the nearest one, so that a slip about the future shows."""
    candidates = []
    for year in (today.year - 1, today.year, today.year + 1):
        hit = clean(f"{year:04d}-{month:02d}-{day:02d}", length, today)
        if hit is not None and hit.on is not None:
            candidates.append(hit)
    if not candidates:
        return DateHit(None, length)
    return min(candidates, key=lambda hit: abs(((hit.on or today) - today).days))


def is_of_late(hit: DateHit | None, today: date) -> bool:
    """Whether it is a day of the last weeks, as records are of."""
    if hit is None or hit.on is None:
        return False
    return 0 <= (today - hit.on).days <= FURTHEST_BACK_DAYS


def clean(fragment: str, length: int, today: date) -> DateHit | None:
    """The day of a fragment like `2027-03-07`; None where there is no such day."""
    on = _parsed(fragment)
    return None if on is None else DateHit(on, length, ahead=on > today)


@lru_cache(maxsize=1024)
def _parsed(fragment: str) -> date | None:
    """A clean fragment by dateparser, None where there is no such day (feb 30)."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)
        import dateparser

    found = dateparser.parse(
        fragment, languages=["en"], date_formats=["%Y-%m-%d"],
        settings={"STRICT_PARSING": True},
    )  # fmt: skip
    return None if found is None else found.date()
