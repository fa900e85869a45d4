"""Sap dumped, spilled, spoiled, or frozen and thrown."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.volumes import _into_store, role
from bot.reading.kinds.base import Reading

if TYPE_CHECKING:
    from bot.reading.clauses import Clause
    from bot.reading.notes import Notes
    from bot.reading.items import Item

CUES = {
    "POUR": (
        "dumped dump dumping poured poured_out pour pour_out spilled spilt spill spilling "
        "threw_out threw_away throw_out throw_away thrown_out thrown_away tossed "
        "tossed_out toss chucked ditched lost knocked_over kicked_over tipped_over tipped "
        "dump_out dumped_out discarded discard had_to_dump emptied_onto_the_ground leaked "
        "leaked_out went_bad gone_bad spoiled went_sour blew_over wasted down_the_drain "
        "on_the_ground threw_it_out threw_it_away poured_it_out dumped_it"
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class PouredOut(Reading):
    """Sap dumped, spilled, spoiled, or frozen and thrown."""

    kind: ClassVar[str] = "poured_out"

    on: date
    gallons: float | None = None


def find(clause: Clause, notes: Notes) -> None:
    """What is poured out, with its amount where there is one."""
    if not clause.about("POUR") or _into_store(clause):
        return
    if not clause.has("POUR") and not clause.free("volume", "number"):
        return
    poured = [item for item in clause.free("volume") if role(clause, item) == "poured_out"]
    if not poured:
        poured = _gallons_unsaid(clause, notes)
    for item in poured:
        item.used = True
        if item.low is not None or item.vague or item.negative:
            notes.ask("How many gal did you pour out?", fill="dumped {} gal")
            continue
        gallons = item.gallons if item.sort == "volume" else _in_gallons(item, notes)
        if gallons is None:
            notes.ask(f"{item.value:g} buckets poured out: how many gal?", fill="dumped {} gal")
            continue
        notes.add(PouredOut(gallons=gallons, on=notes.day(clause)), item.start)
    if poured or notes.all(PouredOut):
        return
    _without_amount(clause, notes)


_BEFORE_IT = frozenset("dumped dump tossed lost spilled ditched about out away poured over".split())


def _gallons_unsaid(clause: Clause, notes: Notes) -> list[Item]:
    """`14 gal, dumped 3 that went bad`: a bare number after the deed, or vessels."""
    vessels = clause.free("vessels")
    if vessels:
        return vessels
    spoke_of_gallons = any(
        item.sort == "volume" for other in notes.clauses for item in other.items
    )
    if not spoke_of_gallons:
        return []
    return [
        item for item in clause.free("number")
        if any("POUR" in each.tags or "ABOUT" in each.tags for each in clause.preceding(item, 1))
    ][:1]


def _in_gallons(item: Item, notes: Notes) -> float | None:
    if item.sort == "number":
        return item.value
    size = notes.profile.bucket_gallons
    return None if size is None else item.value * size


_SAID_ALONE = frozenset("lost leaked spoiled wasted spill spilling tipped".split())


def _without_amount(clause: Clause, notes: Notes) -> None:
    deed = clause.first("POUR")
    if deed is None or deed.text in _SAID_ALONE and not clause.has("SAP", "BUCKET", "STORE"):
        return
    if clause.free("number"):
        number = clause.free("number")[0]
        number.used = True
        notes.ask(f"{number.value:g} what did you pour out: gal?", ("gal|gallons|ok", f"dumped {number.value:g} gal"), fill="dumped {} gal")
        return
    if clause.has("SAP", "BUCKET", "STORE") or {"it", "all", "everything", "rest"} & set(clause.words()):
        notes.add(PouredOut(on=notes.day(clause)), deed.start)
