"""Is my sap still good: how much waits, what goes first, and by when it should be boiled."""

from __future__ import annotations

import re

from bot import figures
from bot.answers.answer import Answer
from bot.answers.asked import Asked
from bot.reckoning.storage import keeps_days
from bot.units import fahrenheit
from bot.wording import storage as wording

# Bare figures that can be the heat of stored sap, F and C (our own).
_SAP_F = (25.0, 90.0)
_SAP_C = (-3.0, 32.0)
_DAYS_OLD = re.compile(r"\b(?P<days>\d{1,2}|one|two|three|four|five|six|seven|a) days?(?: old)?\b")
_NUMBERS = {"a": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7}


def answer(asked: Asked) -> Answer:
    """By a rule of thumb from age and temperature, told here or kept; the nose overrules it."""
    named_f = heat_named(asked)
    if named_f is not None:
        return Answer(supposed(asked, named_f))
    store = asked.store
    if store.boil_by is None:
        return Answer(wording.nothing_waits(figures.STORE_COLD_F, asked.style))
    lots = [dated.lot for dated in store.lots]
    warmest = [lot.fahrenheit for lot in lots if lot.fahrenheit is not None]
    said = wording.waiting(
        store.gallons,
        min(lot.gathered_on for lot in lots),
        store.boil_by,
        max(warmest) if warmest else None,
        store.overdue_gallons,
        asked.style,
    )
    if len(store.lots) == 1:
        return Answer(said)
    row = [(one.lot.gallons, one.lot.gathered_on, one.boil_by) for one in store.lots]
    return Answer(said, (wording.in_order(row, asked.style),))


def supposed(asked: Asked, sap_f: float) -> str:
    """How long sap of a named temperature keeps, and what of sap that is some days old."""
    return wording.keeps_at(sap_f, keeps_days(sap_f), _days_old(asked), asked.style)


def heat_named(asked: Asked) -> float | None:
    """The temperature of sap in the question, degrees F, None where it names none."""
    without_days = {
        int(found["days"]) for found in _DAYS_OLD.finditer(asked.plain) if found["days"].isdigit()
    }
    for one in asked.figures:
        if one.sort == "temp" and not one.bare_degrees:
            return one.value
        if one.sort not in ("number", "temp") or one.value in without_days:
            continue
        if asked.style.is_metric and _SAP_C[0] <= one.value <= _SAP_C[1]:
            return fahrenheit(one.value)
        if _SAP_F[0] <= one.value <= _SAP_F[1]:
            return one.value
    return None


def _days_old(asked: Asked) -> int | None:
    found = _DAYS_OLD.search(asked.plain)
    if found is None:
        return None
    said = found["days"]
    return int(said) if said.isdigit() else _NUMBERS[said]
