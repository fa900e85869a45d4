"""How long gathered sap keeps, and what to boil first.

No published table of days by temperature was found: at or under 38 F and 7 days at most is what
many extension pages say, rapid growth above 50 F is Ohio State's, and the rows between are our
own judgement. So all of it is a rule of thumb; a nose over the barrel overrules it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Literal

from bot import figures
from bot.reckoning.checks import not_negative, within

Care = Literal["keep cold", "boil at once", "pour out"]


@dataclass(frozen=True, slots=True)
class StoredLot:
    """Sap that waits: how much, the local day it was gathered, and how warm it is stored, or
    None where nobody has measured."""

    gallons: float
    gathered_on: date
    fahrenheit: float | None = None


@dataclass(frozen=True, slots=True)
class DatedLot:
    """A stored lot with the last day to boil it, and the days left (negative: past it)."""

    lot: StoredLot
    boil_by: date
    days_left: int


@dataclass(frozen=True, slots=True)
class Stored:
    """All that waits: what must go first stands first."""

    lots: tuple[DatedLot, ...]
    gallons: float
    boil_by: date | None
    due_gallons: float
    overdue_gallons: float


def keeps_days(fahrenheit: float | None) -> int:
    """Days from gathering to boiling, 0 for today, by the warmest that the sap is stored at.

    None (nobody has measured) counts 3 days. Raises ValueError outside -40 to 120 F.
    """
    if fahrenheit is None:
        return figures.SAP_KEEPS_DAYS_UNMEASURED
    within("Stored sap", fahrenheit, figures.STORE_F_LEAST, figures.STORE_F_MOST, "F")
    for warmest, days in figures.SAP_KEEPS_DAYS:
        if fahrenheit <= warmest:
            return days
    return figures.SAP_KEEPS_DAYS_WARMER


def boil_by(gathered_on: date, fahrenheit: float | None = None) -> date:
    """The last local day to boil sap that was gathered on a day and is stored at so many F."""
    return gathered_on + timedelta(days=keeps_days(fahrenheit))


def stored(lots: Iterable[StoredLot], today: date) -> Stored:
    """All lots, the one to boil first standing first (the nearest boil-by day, then the oldest),
    with what is due today and what is overdue.

    Lots of 0 gallons are left out; with nothing stored `boil_by` is None. Warm sap is never
    overdue on the day it is gathered. Raises ValueError for a negative lot, or one that is
    gathered after today.
    """
    dated: list[DatedLot] = []
    for lot in lots:
        if not_negative("A stored lot", lot.gallons, "gal") == 0:
            continue
        if lot.gathered_on > today:
            raise ValueError(
                f"A lot was gathered on {lot.gathered_on}, but should be no later than {today}"
            )
        last = boil_by(lot.gathered_on, lot.fahrenheit)
        dated.append(DatedLot(lot, last, (last - today).days))
    dated.sort(key=lambda one: (one.boil_by, one.lot.gathered_on))
    return Stored(
        lots=tuple(dated),
        gallons=sum(one.lot.gallons for one in dated),
        boil_by=dated[0].boil_by if dated else None,
        due_gallons=sum(one.lot.gallons for one in dated if one.days_left == 0),
        overdue_gallons=sum(one.lot.gallons for one in dated if one.days_left < 0),
    )


def take_oldest(lots: Sequence[StoredLot], gallons: float) -> tuple[StoredLot, ...]:
    """What is left of the lots when so many gallons are boiled or poured out, oldest first.

    Taking more than there is leaves nothing: records of sap are seldom complete. The order of
    the lots that stay is by day. Raises ValueError for a negative amount.
    """
    not_negative("Sap taken", gallons, "gal")
    left: list[StoredLot] = []
    for lot in sorted(lots, key=lambda one: one.gathered_on):
        taken = min(lot.gallons, gallons)
        gallons -= taken
        if lot.gallons > taken:
            left.append(replace(lot, gallons=lot.gallons - taken))
    return tuple(left)


def measured(lots: Sequence[StoredLot], fahrenheit: float) -> tuple[StoredLot, ...]:
    """The lots with a temperature that was measured in the barrel they share.

    A lot that was ever warmer keeps its warmer figure: cooling does not undo the growth.
    """
    return tuple(
        replace(
            lot,
            fahrenheit=fahrenheit if lot.fahrenheit is None else max(lot.fahrenheit, fahrenheit),
        )
        for lot in lots
    )


def care(sign: str) -> Care:
    """What to do with stored sap that shows a sign.

    Clear and cold: keep; cloudy or yellow: boil at once, for darker syrup; sour, ropy or
    smelling: pour out (Cornell, "Reducing Maple Sap Spoilage", 2025; yellow from common
    practice). Signs of the trees (`buds`, `moths`) say nothing of the barrel: keep cold. Raises
    ValueError for an unknown sign.
    """
    found = _CARE.get(sign)
    if found is None:
        raise ValueError(f"The sign is {sign!r}, but should be one of: {', '.join(sorted(_CARE))}")
    return found


_CARE: dict[str, Care] = {
    "clear": "keep cold",
    "buds": "keep cold",
    "moths": "keep cold",
    "cloudy_sap": "boil at once",
    "yellow_sap": "boil at once",
    "sour": "pour out",
    "ropy": "pour out",
    "off_smell": "pour out",
}
