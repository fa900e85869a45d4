"""How many taps hang, out of what was put in, stated and pulled."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from bot.entry import Entry

SEASON_OVER: Final = "season_over"
"""The kind of a record that says that the season is over."""


@dataclass(frozen=True, slots=True)
class Taps:
    """Taps by lot (None: no lot named), and all together."""

    by_lot: Mapping[str | None, int]

    @property
    def count(self) -> int:
        """All taps that hang."""
        return sum(self.by_lot.values())


def taps_of(entries: Iterable[Entry]) -> Taps | None:
    """The taps of a season out of its `taps_set` and `taps_pulled` entries, in wall-clock order.

    Manner "add" adds to the lot, "total" states it; a total without a lot states all of them,
    the named lots standing if they fit into it. None when nothing was ever told.
    """
    by_lot: dict[str | None, int] = {}
    told = False
    for entry in entries:
        told = True
        if entry.kind == "taps_pulled":
            _pull(by_lot, entry)
        elif entry.detail.get("manner") == "total":
            _state(by_lot, entry)
        else:
            by_lot[entry.lot] = by_lot.get(entry.lot, 0) + (entry.count or 0)
    return Taps(by_lot) if told else None


def _state(by_lot: dict[str | None, int], entry: Entry) -> None:
    count = entry.count or 0
    if entry.lot is not None:
        by_lot[entry.lot] = count
        return
    named = sum(taps for lot, taps in by_lot.items() if lot is not None)
    if named > count:
        by_lot.clear()
        named = 0
    by_lot[None] = count - named


def _pull(by_lot: dict[str | None, int], entry: Entry) -> None:
    if entry.lot is not None and entry.lot in by_lot:
        hung = by_lot[entry.lot]
        by_lot[entry.lot] = 0 if entry.count is None else max(hung - entry.count, 0)
        return
    if entry.count is None:
        by_lot.clear()
        return
    left = entry.count
    for lot in sorted(by_lot, key=lambda name: (name is not None, name or "")):
        pulled = min(left, by_lot[lot])
        by_lot[lot] -= pulled
        left -= pulled
