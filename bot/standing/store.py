"""The sap that waits to be boiled, out of what was gathered, boiled and poured out."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Sequence
from datetime import date, datetime, timedelta
from itertools import groupby
from typing import Final

from bot.entry import Entry
from bot.ledger import Book, TimedSap
from bot.reckoning.balance import sap_per_syrup
from bot.reckoning.storage import Stored, StoredLot, measured, stored, take_oldest
from bot.standing.boils import Boil, boils_of

# Sap older than this has been used or lost, whatever the records say (our own: twice the
# longest that it keeps).
WINDOW_DAYS = 14
_OTHERS: Final = ("poured_out", "boil", "syrup", "store_temp")


def stored_sap(
    book: Book, sugarbush_id: int, season: int, today: date, sap_brix: float, syrup_brix: float
) -> Stored:
    """The sap of a sugarbush that waits on a local day, with the days to boil it by."""
    since = today - timedelta(days=WINDOW_DAYS)
    sap = book.sums.sap_since(sugarbush_id, season, since)
    others = book.records.of_kinds(sugarbush_id, _OTHERS, season, since) if sap else []
    return stored(sap_on_hand(sap, others, today, sap_brix, syrup_brix), today)


def sap_on_hand(
    sap: Sequence[TimedSap],
    others: Sequence[Entry],
    today: date,
    sap_brix: float,
    syrup_brix: float,
) -> tuple[StoredLot, ...]:
    """The lots of sap that still wait, oldest first; both sequences in wall-clock order.

    What is boiled or poured out goes oldest first. A boil that tells no amount took all there
    was; syrup that no boil accounts for took the sap that it is made of, at `sap_brix`. Only
    the last 14 days count, and nothing later than `today`.
    """
    first = today - timedelta(days=WINDOW_DAYS)
    gathered = [one for one in sap if first <= one.on <= today and one.gallons > 0]
    recent = [entry for entry in others if first <= entry.on <= today]
    boils = boils_of(entry for entry in recent if entry.kind == "boil")
    moves: list[tuple[datetime, _Move]] = [
        (boil.ended_at, _burn(boil)) for boil in boils if boil.ended_at is not None
    ]
    # What went into a pan that boils still, or will, waits no more.
    moves += [
        (boil.began_at, _burn(boil))
        for boil in boils
        if boil.is_open and boil.began_at is not None and boil.gallons is not None
    ]
    for entry in recent:
        move = _other(entry, boils, sap_brix, syrup_brix)
        if move is not None:
            moves.append((entry.at_local, move))
    moves.sort(key=lambda one: one[0])
    lots: tuple[StoredLot, ...] = ()
    done = 0
    for at_local, change in moves:
        upto = bisect_right(gathered, at_local, lo=done, key=lambda one: one.at_local)
        lots = change(_gathered(lots, gathered[done:upto]))
        done = upto
    return _gathered(lots, gathered[done:])


_Lots = tuple[StoredLot, ...]
_Move = Callable[[_Lots], _Lots]


def _burn(boil: Boil) -> _Move:
    gallons = boil.gallons
    return (lambda lots: ()) if gallons is None else (lambda lots: take_oldest(lots, gallons))


def _other(entry: Entry, boils: Sequence[Boil], sap_brix: float, syrup_brix: float) -> _Move | None:
    """What an entry does to the stored sap, None if nothing."""
    if entry.kind == "poured_out":
        poured = entry.gallons
        return (lambda lots: ()) if poured is None else (lambda lots: take_oldest(lots, poured))
    if entry.kind == "store_temp" and entry.fahrenheit is not None:
        fahrenheit = entry.fahrenheit
        return lambda lots: measured(lots, fahrenheit)
    if entry.kind == "syrup" and entry.gallons and not _accounts_for(boils, entry):
        used = entry.gallons * sap_per_syrup(sap_brix, syrup_brix)
        return lambda lots: take_oldest(lots, used)
    return None


def _gathered(lots: _Lots, sap: Sequence[TimedSap]) -> _Lots:
    """The lots with more sap: one lot a day, as far as nobody has measured it in between."""
    for on, together in groupby(sap, key=lambda one: one.on):
        gallons = sum(one.gallons for one in together)
        if lots and lots[-1].gathered_on == on and lots[-1].fahrenheit is None:
            lots = (*lots[:-1], StoredLot(lots[-1].gallons + gallons, on))
        else:
            lots = (*lots, StoredLot(gallons, on))
    return lots


def _accounts_for(boils: Sequence[Boil], syrup: Entry) -> bool:
    """Whether some boil burned on the day the syrup was drawn, or the day before."""
    for boil in boils:
        at = boil.ended_at or boil.began_at
        if at is not None and 0 <= (syrup.on - at.date()).days <= 1:
            return True
        if boil.began_at is not None and boil.began_at.date() == syrup.on:
            return True
    return False
