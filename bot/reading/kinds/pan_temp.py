"""Temperature of the boiling pan."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

NEEDS = ("temp", "number")
CUES = {
    "PANTEMP": "pan_temp pan_temperature",
    "TEMPN": "candy_thermometer temperature temp thermometer degrees reads reading",
}

LEAST_F = 120.0
MOST_F = 240.0
"""From a pan that warms up to well past soft candy (common practice, no source)."""
CELSIUS_BELOW = 119.0


@dataclass(frozen=True, slots=True, kw_only=True)
class PanTemp(Reading):
    """Temperature of the boiling pan."""

    kind: ClassVar[str] = "pan_temp"

    fahrenheit: float
    on: date


def find(clause: Clause, notes: Notes) -> None:
    """A temperature said of the boiling pan."""
    if (
        clause.has("WATERN", "OTHERS", "PORCH", "FOREIGN", "BUY", "COSTV")
        or "canner" in clause.words()
    ):
        return
    if clause.near("BOTTLE"):
        return  # "bottled at 190"
    item = next(
        (each for each in clause.free("temp", "number") if _likely(clause, each, notes)), None
    )
    if item is None or _WAITED_FOR.search(clause.text):
        return  # "waiting on 219"
    item.used = True
    if "water" in clause.text or _after_water(notes):
        notes.ask("Of plain water, or of the pan? Text it like: water boils at 210.6.")
        return
    degrees = item.degrees_f(CELSIUS_BELOW)
    if not LEAST_F <= degrees <= MOST_F:
        notes.ask(f"The pan at {item.value:g}? What does it read, in F?", fill="pan at {} F")
        return
    notes.add(PanTemp(fahrenheit=degrees, on=notes.day(clause)), item.start)


def _after_water(notes: Notes) -> bool:
    """`rolled a pot of plain water, | 210.6`."""
    before = notes.clause_before()
    here = notes.clauses[notes.clause_number]
    return (
        before is not None
        and before.sentence == here.sentence
        and "water" in before.text
        and not here.has("PANN", "PANTEMP")
    )


_WAITED_FOR = re.compile(
    r"\b(?:waiting (?:on|for)|looking for|needs?|until|till|finish at|shooting for|wants?"
    r"|going for|draw(?:ing)?(?: off)? at|below|not even|under)\b"
)


def _likely(clause: Clause, item: Item, notes: Notes) -> bool:
    counted = [each.tags & {"TAPN", "BUCKET", "JARN"} for each in clause.following(item, 1)]
    if item.article or item.part or any(counted):
        return False
    near = _in_sentence(clause, notes) and not clause.has("STORE", "WATERN")
    hot = LEAST_F <= item.value <= MOST_F
    hot_c = 85 <= item.value <= 119
    if clause.has("PANN", "PANTEMP") or (near and not clause.free("volume")):
        if item.sort == "temp":
            return True
        if any("PANN" in each.tags for each in clause.preceding(item, 1)) and clause.has(
            "BOIL", "START"
        ):
            return hot
        return hot or item.value > MOST_F or (hot_c and notes.profile.units == "metric")
    if item.sort == "temp" and (hot or (item.unit == "degC" and hot_c)):
        return not clause.has("STORE")
    syrupy = clause.about("SYRUP", "BOIL", "FIRE") or notes.profile.boiling
    return (
        item.sort == "number"
        and PAN_F[0] <= item.value <= PAN_F[1]
        and syrupy
        and not clause.free("volume", "money")
        and clause.has("IS", "TEMPN", "SYRUP", "ABOUT", "BOIL")
    )


PAN_F = (205.0, 235.0)
PAN_C = (96.0, 113.0)
"""Between these a bare figure beside syrup or fire is the heat of the pan."""


def drawn_at(value: float, measure: str) -> bool:
    """Can a bare figure beside syrup be the heat that it was drawn at, in F or (metric) C?"""
    in_c = measure == "metric" and PAN_C[0] <= value <= PAN_C[1]
    return in_c or PAN_F[0] <= value <= PAN_F[1]


def _in_sentence(clause: Clause, notes: Notes) -> bool:
    return any(
        other.has("PANN")
        for other in notes.sentence(clause)
        if other is not clause and not other.free("volume")
    )
