"""What somebody boils, taps and measures with: told once, and kept like any other record.

Each thing is a kind of record of its own ("pan", "elevation", ...), so that the latest counts, an
undo brings the one before back, and nothing is overwritten.
"""

from __future__ import annotations

from dataclasses import dataclass
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


@dataclass(frozen=True, slots=True)
class Kit:
    """The gear of a sugarbush as last told, each None until it is.

    pan_ft2: square feet, and `pan` as it was said; elevation_ft; bit_in; stem_f: degrees F that
    the sap hydrometer is made for; fire: "wood" or "propane"; barometer_inhg: told on the day
    that is asked for, reduced to sea level; price: dollars a gallon.
    """

    pan_ft2: float | None = None
    pan: str | None = None
    elevation_ft: float | None = None
    bit_in: float | None = None
    stem_f: float | None = None
    fire: str | None = None
    barometer_inhg: float | None = None
    price: float | None = None


def kit_of(book: Book, sugarbush_id: int, now_local: datetime) -> Kit:
    """The gear of a sugarbush at a naive local time."""
    latest = {entry.kind: entry for entry in book.records.standing(sugarbush_id, KINDS)}
    told: dict[str, Any] = {KINDS[kind]: entry.detail["value"] for kind, entry in latest.items()}
    if "barometer" in latest and latest["barometer"].on != now_local.date():
        # The weather has moved on.
        del told["barometer_inhg"]
    if "pan" in latest:
        told["pan"] = latest["pan"].detail.get("said")
    return Kit(**told)


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
