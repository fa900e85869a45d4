"""Where plain water boils, by this thermometer, here."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.notes import Notes

NEEDS = ("temp", "number")
CUES = {
    "WATERN": "h2o waterboils waters water water's plain_water tap_water boiling_point",
}

LEAST_F = 200.0
MOST_F = 214.5
"""From about 6,500 ft up to the highest barometer at sea level, by IAPWS-95 (computed)."""
SURELY_A_TEMPERATURE = 60.0
CELSIUS_BELOW = 120.0


@dataclass(frozen=True, slots=True, kw_only=True)
class WaterBoils(Reading):
    """Where plain water boils, by this thermometer, here."""

    kind: ClassVar[str] = "water_boils"

    fahrenheit: float
    on: date


def find(clause: Clause, notes: Notes) -> None:
    """A temperature at which plain water boils."""
    if clause.has("DRAW") or not _of_water(clause, notes):
        return
    item = next(
        (
            each
            for each in clause.free("temp", "number")
            if not each.article and each.value > SURELY_A_TEMPERATURE
        ),
        None,
    )
    if item is None:
        return
    item.used = True
    degrees = item.degrees_f(CELSIUS_BELOW)
    if not LEAST_F <= degrees <= MOST_F:
        notes.ask(
            f"Water boiling at {item.value:g}? It boils between 200 and 214. "
            "What did it read, in F?",
            fill="water boils at {}",
        )
        return
    notes.add(WaterBoils(fahrenheit=degrees, on=notes.day(clause)), item.start)


def _of_water(clause: Clause, notes: Notes) -> bool:
    """Does it speak of boiling water, here or (`did the water test, 209.2`) just before?"""
    if clause.has("WATERN") and (clause.has("BOIL") or "boiling point" in clause.text):
        return True
    of_sap = clause.has("PANN", "SAP", "STORE", "GATHER") and "plain water" not in clause.text
    if (
        clause.has("WATERN")
        and not of_sap
        and {"rolling", "rolled", "rolls", "bubbling", "thermometer", "comes", "came"}
        & set(clause.words())
    ):
        return True
    before = notes.clause_before()
    if before is not None and before.sentence == clause.sentence and not of_sap:
        tested = before.has("WATERN") and (before.has("BOIL") or "test" in before.text)
        if tested and (clause.has("BOIL", "IS") or len(clause.items) <= _BARE):
            return True  # "boiled a pot of plain water, it topped out at 211.4"
    if not clause.near("WATERN"):
        return False
    here = notes.sentence(clause)
    water = any(other.has("WATERN") for other in here)
    boils = any(
        other.has("BOIL") or "boiling point" in other.text or "waterboils" in other.text
        for other in here
    )
    vessel = any(other.has("SAP", "STORE") for other in here) or any(
        other.has("PANN") and not _POT_OF_WATER.search(other.text) for other in here
    )
    return water and boils and not vessel


_BARE = 3
"""Items of a clause that tells little more than its figure (our own)."""
_POT_OF_WATER = re.compile(r"\b(?:pot|kettle|pan) of (?:\w+ )*water\b")
