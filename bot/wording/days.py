"""Days as people say them."""

from __future__ import annotations

from datetime import date

_WEEK = 7
_WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def day(on: date, today: date) -> str:
    """The weekday within a week of today, else "Mar 4", else "Mar 4 2026"."""
    if abs((on - today).days) < _WEEK:
        return _WEEKDAYS[on.weekday()]
    said = date_of_year(on)
    return said if on.year == today.year else f"{said} {on.year}"


def date_of_year(on: date) -> str:
    """The date without its year: "Mar 4"."""
    return f"{_MONTHS[on.month - 1]} {on.day}"
