"""Temperature of the stored sap."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading
from bot.reading.kinds.sugar import MOST_BRIX
from bot.reading.signs import Sought

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

NEEDS = ("temp", "number")
CUES = {
    "IS": (
        "down_to up_to hit got_to got_up_to climbed_to dropped_to to down its is at was reads "
        "reading holding sitting stands_at stand_at standing_at says showing steady now are "
        "sits it's "
    ),
}

COLDEST_F = 27.0
WARMEST_F = 100.0
"""2 Brix sap freezes at 31.8 F (computed, trade figures): well below that it is ice, and well
above 100 F it is no longer stored."""
NEVER = float("-inf")
CELSIUS_BELOW = 27.0
"""A metric person's bare figure below this is in Celsius: sap is never kept at 27 F."""


_COWS = Sought("milk ", r"\bmilk (?:in|is|was|at|temp)\b")
"""`milk in the bulk tank is 36`: no sap; but `the milk tank is at 36` may be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StoreTemp(Reading):
    """Temperature of the stored sap."""

    kind: ClassVar[str] = "store_temp"

    fahrenheit: float
    on: date


def find(clause: Clause, notes: Notes) -> None:
    """A temperature said of stored sap."""
    if clause.has("WATERN", "OTHERS") or clause.has("BOIL", "FIRE"):
        return
    if _COWS.search(clause.text) and not clause.has("SAP"):
        return
    if (clause.has("PANN") and not clause.has("STORE")) or (
        clause.has("PORCH") and not clause.has("STORE", "SAP")
    ):
        return
    told_before = clause.near("STORE") and not clause.near("PANN", "PORCH")
    stored = (
        clause.has("STORE")
        or (clause.has("SAP") and bool(clause.free("temp")))
        or (
            told_before
            and bool(
                clause.free("temp")
                or clause.has("TEMPN")
                or _sap_at(clause)
                or _again(clause, notes)
            )
        )
    )
    if not stored:
        return
    item = next(iter(clause.free("temp")), None) or _unsaid(clause, notes)
    if item is None or clause.holds("mass"):
        return
    item.used = True
    degrees = item.degrees_f(CELSIUS_BELOW if notes.profile.units == "metric" else NEVER)
    if not COLDEST_F <= degrees <= WARMEST_F:
        notes.ask(
            f"Sap at {item.text.strip()}? What does it read, in F?", fill="sap in the tank is {} F"
        )
        return
    notes.add(StoreTemp(fahrenheit=degrees, on=notes.day(clause)), item.start)


def _again(clause: Clause, notes: Notes) -> bool:
    """`tank temp 36 last night, | 41 now`."""
    return "now" in clause.words() and notes.last(StoreTemp) is not None and len(clause.items) <= 3


def _sap_at(clause: Clause) -> bool:
    """`garage barrel, | sap at thirty nine`, `sap temp 37`."""
    return clause.has("SAP") and clause.has("IS", "TEMPN") and not clause.has("SUGAR", "GATHER")


def _unsaid(clause: Clause, notes: Notes) -> Item | None:
    """`tank is 38`, `sap was 37 in the tank`: a bare number said of what is in store."""
    if (
        not (clause.has("STORE") or _sap_at(clause))
        or clause.about("POUR")
        or (clause.has("INTO") and clause.has("GATHER"))
    ):
        return None
    for item in clause.free("number"):
        if item.part or item.article:
            continue
        tested = clause.has("SUGAR") or clause.holds("volume")
        if item.value <= MOST_BRIX and tested:
            continue  # "21 gallons in the tank at 2.2" tells the sugar
        before = clause.preceding(item, 3)
        after = clause.following(item, 1)
        if after and after[0].tags & {"TAPN", "BUCKET", "JARN", "TOTAL"}:
            continue
        said_is = bool(before) and notes.text[before[0].start : before[0].end].endswith("'s")
        right_behind = (
            bool(before)
            and "STORE" in before[0].tags
            and (said_is or clause.has("PANN", "PANTEMP"))
        )
        told = any("IS" in each.tags for each in before) or clause.has("TEMPN") or right_behind
        if told:
            return item
    return None
