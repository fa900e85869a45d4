"""The sap that waits to be boiled, out of what was gathered, boiled and poured out."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Final

from bot.entry import Entry
from bot.reckoning.balance import sap_per_syrup
from bot.reckoning.storage import StoredLot, measured, take_oldest
from bot.standing.boils import Boil, boils_of

# Sap older than this has been used or lost, whatever the records say (our own: twice the
# longest that it keeps).
WINDOW_DAYS = 14
KINDS: Final = ("sap", "poured_out", "boil", "syrup", "store_temp")


def sap_on_hand(
    entries: Sequence[Entry], today: date, sap_brix: float, syrup_brix: float
) -> tuple[StoredLot, ...]:
    """The lots of sap that still wait, oldest first, out of a season's entries.

    `entries` hold the kinds in KINDS, in wall-clock order. What is boiled or poured out goes
    oldest first. A boil that tells no amount took all there was; syrup that no boil accounts
    for took the sap that it is made of, at `sap_brix`. Only the last 14 days count.
    """
    first = today - timedelta(days=WINDOW_DAYS)
    recent = [entry for entry in entries if first <= entry.on <= today]
    boils = boils_of(entry for entry in recent if entry.kind == "boil")
    ended = [boil for boil in boils if boil.ended_at is not None]
    lots: tuple[StoredLot, ...] = ()
    for entry in recent:
        while ended and ended[0].ended_at is not None and ended[0].ended_at <= entry.at_local:
            lots = _boiled(lots, ended.pop(0))
        if entry.kind == "sap":
            if entry.gallons:
                lots = (*lots, StoredLot(entry.gallons, entry.on))
        elif entry.kind == "poured_out":
            lots = () if entry.gallons is None else take_oldest(lots, entry.gallons)
        elif entry.kind == "store_temp" and entry.fahrenheit is not None:
            lots = measured(lots, entry.fahrenheit)
        elif entry.kind == "syrup" and entry.gallons and not _accounts_for(boils, entry):
            lots = take_oldest(lots, entry.gallons * sap_per_syrup(sap_brix, syrup_brix))
    for boil in ended:
        lots = _boiled(lots, boil)
    return lots


def _boiled(lots: tuple[StoredLot, ...], boil: Boil) -> tuple[StoredLot, ...]:
    return () if boil.gallons is None else take_oldest(lots, boil.gallons)


def _accounts_for(boils: Sequence[Boil], syrup: Entry) -> bool:
    """Whether some boil burned on the day the syrup was drawn, or the day before."""
    for boil in boils:
        at = boil.ended_at or boil.began_at
        if at is not None and 0 <= (syrup.on - at.date()).days <= 1:
            return True
        if boil.began_at is not None and boil.began_at.date() == syrup.on:
            return True
    return False
