"""What somebody boils, taps and measures with: told once, and kept like any other record.

Each thing is a kind of record of its own ("pan", "elevation", ...), so that the latest counts, an
undo brings the one before back, and nothing is overwritten.
"""

from __future__ import annotations

from datetime import datetime
from typing import Any, Final

from bot.entry import Entry
from bot.ledger import Book
from bot.reading.kinds import Gear

# Kind of record: the field of the reading that it keeps as "value" in its detail.
KINDS: Final = {
    "pan": "pan_ft2",
    "elevation": "elevation_ft",
    "bit": "bit_in",
    "stem": "stem_f",
    "fire": "fire",
    "barometer": "barometer_inhg",
    "price": "price",
}


def gear_of(book: Book, sugarbush_id: int, now_local: datetime) -> Gear:
    """The gear of a sugarbush as last told, at a naive local time: a barometer counts for the day
    that it was told on."""
    latest = {entry.kind: entry for entry in book.records.standing(sugarbush_id, KINDS)}
    told: dict[str, Any] = {KINDS[kind]: entry.detail["value"] for kind, entry in latest.items()}
    if "barometer" in latest and latest["barometer"].on != now_local.date():
        # The weather has moved on.
        del told["barometer_inhg"]
    if "pan" in latest:
        told["pan"] = latest["pan"].detail.get("said")
    return Gear(**told)


def entries_of(gear: Gear, at_local: datetime) -> list[Entry]:
    """The records that keep what was told of one's gear."""
    entries = []
    for kind, name in KINDS.items():
        value = getattr(gear, name)
        if value is None:
            continue
        detail = {"value": value}
        if kind == "pan":
            detail["said"] = gear.pan
        entries.append(Entry(kind=kind, on=at_local.date(), at_local=at_local, detail=detail))
    return entries
