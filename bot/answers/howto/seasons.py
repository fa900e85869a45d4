"""What part of the sugaring year a month is, where this person is."""

from __future__ import annotations

from typing import Final, Literal

from bot.answers.howto.howto_figures import EARLY_REGIONS, SAP_DAYS
from bot.answers.howto.known import Known

Part = Literal["before", "soon", "running", "late", "over"]

# The part of the year by month, January first (common practice, no source). Days differ by
# weeks from year to year: the forecast decides, not the month.
_USUAL: Final[tuple[Part, ...]] = (
    ("soon", "running", "running", "late") + ("over",) * 6 + ("before", "before")
)
_EARLY: Final[tuple[Part, ...]] = (
    ("running", "running", "late", "over") + ("over",) * 6 + ("before", "running")
)
_MONTHS: Final = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
# Months in which maples here bear leaves (common practice, no source).
_IN_LEAF: Final = frozenset({5, 6, 7, 8, 9, 10})


def part_of_year(known: Known) -> Part:
    """Before the season, soon, running, late, or over, by month and region."""
    year = _EARLY if known.region in EARLY_REGIONS else _USUAL
    return year[known.month - 1]


def in_leaf(known: Known) -> bool:
    """Whether trees have their leaves."""
    return known.month in _IN_LEAF


def month_name(known: Known) -> str:
    """The month in which the person asks."""
    return _MONTHS[known.month - 1]


def usual_start(region: str | None) -> str | None:
    """When sap began in this state, as "Feb 11 to 14"; None where there is no survey."""
    return None if region not in SAP_DAYS else _days(SAP_DAYS[region][0])


def usual_last(region: str | None) -> str | None:
    """When the last sap came in this state, as "Mar 16 to 27"; None where there is no survey."""
    return None if region not in SAP_DAYS else _days(SAP_DAYS[region][1])


def _days(days: tuple[tuple[int, int], ...]) -> str:
    (first_month, first_day), (last_month, last_day) = min(days), max(days)
    first = f"{_MONTHS[first_month - 1][:3]} {first_day}"
    if (first_month, first_day) == (last_month, last_day):
        return first
    if first_month == last_month:
        return f"{first} to {last_day}"
    return f"{first} to {_MONTHS[last_month - 1][:3]} {last_day}"
