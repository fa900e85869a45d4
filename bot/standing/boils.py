"""Boils out of what was texted about them: lit, out, and what was told in between."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from bot.entry import Entry

# A fire that was lit longer ago than this was forgotten, not tended (our own).
BOIL_IS_STALE = timedelta(hours=20)
# What is told of a boil this soon after it ended is told of the same boil (our own).
_STILL_ABOUT_IT = timedelta(hours=6)


@dataclass(frozen=True, slots=True)
class Boil:
    """One boil, by the wall clock. `hours` is None when it cannot be told; `hours_told` says
    that a text gave it. `gallons` is the sap that went in, None when untold. `is_lit`: False while
    there is sap in the pan and nobody has told of the fire."""

    began_at: datetime | None
    ended_at: datetime | None
    hours: float | None = None
    hours_told: bool = False
    gallons: float | None = None
    is_lit: bool = True

    @property
    def is_open(self) -> bool:
        """True while the fire burns."""
        return self.ended_at is None


def boils_of(entries: Iterable[Entry]) -> list[Boil]:
    """The boils of a season out of its `boil` entries, which come in wall-clock order.

    1. "Lit" opens a boil, and so does sap that is put into the pan before. Lit again while one
       is open is the same fire; a stale one is given up, but sap in the pan stays there.
    2. "Out", or an amount or hours boiled, ends the open one: its hours are those told, else
       the time between. An amount that is told as going in leaves it open; "the rest" is all
       that waits, and a boil of its own where none is open.
    3. With none open, what is told soon after a boil ended is told of that boil (the fire out
       at 9, "boiled 40 gal in 7 hrs" at 10); anything else is a boil of its own.
    """
    boils: list[Boil] = []
    for entry in entries:
        last = boils[-1] if boils else None
        if last is not None and last.is_open and _is_stale(last, entry.at_local):
            if last.is_lit:
                boils.pop()
            else:
                boils[-1] = replace(last, ended_at=last.began_at)
            last = boils[-1] if boils else None
        starts = entry.detail.get("state") == "start"
        if (starts or goes_in(entry)) and (last is None or not last.is_open):
            boils.append(Boil(entry.at_local, None, gallons=entry.gallons, is_lit=starts))
        elif starts and last is not None and not last.is_lit:
            boils[-1] = replace(_with_more(last, entry), began_at=entry.at_local, is_lit=True)
        elif entry.detail.get("manner") == "rest":
            open_one = replace(last, gallons=None) if last is not None and last.is_open else None
            boils[len(boils) - (open_one is not None) :] = [
                _ended(open_one or Boil(None, None), entry)
            ]
        elif last is not None and last.is_open and (starts or goes_in(entry)):
            boils[-1] = _with_more(last, entry)
        elif last is not None and (last.is_open or _is_told_of(last, entry)):
            boils[-1] = _ended(last, entry)
        else:
            boils.append(_ended(Boil(None, None), entry))
    return boils


def open_boil(entries: Iterable[Entry], now_local: datetime) -> Boil | None:
    """The boil that burns now by the wall clock, None if none does or it was forgotten.

    entries: the last `boil` entries, in wall-clock order, from one that starts or ends a boil on.
    """
    boils = boils_of(entries)
    if not boils or not boils[-1].is_open or _is_stale(boils[-1], now_local):
        return None
    return boils[-1] if boils[-1].is_lit else None


@dataclass(frozen=True, slots=True)
class BoilSums:
    """Boils that are over: how many, their hours, and the sap that went in where it was told."""

    boils: int
    hours: float
    gallons: float


def boil_sums(boils: Iterable[Boil]) -> BoilSums:
    """What the boils that are over add up to."""
    over = [boil for boil in boils if not boil.is_open]
    return BoilSums(
        boils=len(over),
        hours=sum(boil.hours or 0.0 for boil in over),
        gallons=sum(boil.gallons or 0.0 for boil in over),
    )


def _with_more(boil: Boil, entry: Entry) -> Boil:
    if entry.gallons is None:
        return boil
    return replace(boil, gallons=(boil.gallons or 0.0) + entry.gallons)


def goes_in(entry: Entry) -> bool:
    """Sap that goes into the pan, of which nobody says that the boil is over."""
    return entry.detail.get("manner") == "in"


def _is_stale(boil: Boil, at: datetime) -> bool:
    return boil.began_at is not None and at - boil.began_at > BOIL_IS_STALE


def _is_told_of(boil: Boil, entry: Entry) -> bool:
    """Whether `entry` adds to a boil that has ended, and does not contradict it."""
    if boil.ended_at is None or entry.at_local - boil.ended_at > _STILL_ABOUT_IT:
        return False
    adds_hours = entry.hours is None or not boil.hours_told
    adds_gallons = entry.gallons is None or boil.gallons is None
    return adds_hours and adds_gallons


def _ended(boil: Boil, entry: Entry) -> Boil:
    gallons = boil.gallons if entry.gallons is None else entry.gallons
    if entry.hours is not None:
        return replace(
            boil, ended_at=entry.at_local, hours=entry.hours, hours_told=True, gallons=gallons
        )
    if boil.hours_told:
        return replace(boil, ended_at=entry.at_local, gallons=gallons)
    hours = boil.hours
    if boil.began_at is not None and entry.at_local >= boil.began_at:
        hours = (entry.at_local - boil.began_at) / timedelta(hours=1)
    return replace(boil, ended_at=entry.at_local, hours=hours, gallons=gallons)
