"""One thing worth keeping: what a record says, apart from who wrote it and when it was stored."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, fields
from datetime import date, datetime
from typing import Any

from bot.clock import season_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """What one record says.

    kind: the name of the reading it came from ("sap", "boil", ...).
    on: the local day it is about. at_local: the wall clock it is about (naive), which sorts
    the entries of a day.
    The amounts are in the units of their names; `dollars` are US dollars, a cord is 128 cubic
    feet. What a kind says beyond them is plain JSON in `detail`. None is "not told", never zero.
    """

    kind: str
    on: date
    at_local: datetime
    gallons: float | None = None
    brix: float | None = None
    count: int | None = None
    hours: float | None = None
    dollars: float | None = None
    fahrenheit: float | None = None
    cords: float | None = None
    propane_lb: float | None = None
    tree: str | None = None
    lot: str | None = None
    detail: Mapping[str, Any] = field(default_factory=dict)

    @property
    def season(self) -> int:
        """The season it belongs to, named by the spring's year."""
        return season_of(self.on)


ENTRY_FIELDS = tuple(spec.name for spec in fields(Entry))
# The columns that hold an amount or a name; the other fields are kind, on, at_local and detail.
AMOUNT_FIELDS = tuple(
    name for name in ENTRY_FIELDS if name not in {"kind", "on", "at_local", "detail"}
)
