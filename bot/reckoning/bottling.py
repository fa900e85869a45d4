"""Jars, hot filling, and what the syrup cost."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from bot import figures
from bot.reckoning.checks import not_negative, positive, within
from bot.reckoning.tables import between_rows

FillAdvice = Literal["reheat", "fill now", "fill", "too hot"]


@dataclass(frozen=True, slots=True)
class JarCount:
    """So many jars of one size."""

    count: int
    gallons_each: float


@dataclass(frozen=True, slots=True)
class JarPlan:
    """Jars that a batch fills, largest size first, and what is left over.

    `last_share` is how full the smallest jar gets that the rest goes into, 0 when nothing is
    left; under 0.9 it is not for the shelf (CFIA) but for the table.
    """

    jars: tuple[JarCount, ...]
    rest_gallons: float
    last_share: float


@dataclass(frozen=True, slots=True)
class Cost:
    """Dollars for a gallon and for a pint of syrup."""

    per_gallon: float
    per_pint: float


def jars_gallons(jars: Sequence[tuple[int, float]]) -> float:
    """Gallons in jars given as (count, gallons each), all full. Zero jars hold zero."""
    total = 0.0
    for count, gallons_each in jars:
        not_negative("Jars", count, "in number")
        total += count * positive("A jar", gallons_each, "gal")
    return total


def jars_for(syrup_gallons: float, sizes_gallons: Sequence[float]) -> JarPlan:
    """Jars of the given sizes that a batch fills: as many of the largest as go, then the next.

    Raises ValueError for no sizes, or an amount below zero.
    """
    not_negative("Syrup", syrup_gallons, "gal")
    if not sizes_gallons:
        raise ValueError("Jar sizes are missing, but should be one or more, in gallons")
    rest = syrup_gallons
    jars: list[JarCount] = []
    sizes = sorted({positive("A jar", size, "gal") for size in sizes_gallons}, reverse=True)
    for size in sizes:
        # A hair is added so that 3 pints fill three pint jars in spite of binary fractions.
        count = math.floor(rest / size + 1e-9)
        if count:
            jars.append(JarCount(count, size))
            rest = max(0.0, rest - count * size)
    rest = 0.0 if rest < 1e-9 * max(1.0, syrup_gallons) else rest
    return JarPlan(tuple(jars), rest, rest / sizes[-1])


def fill_advice(syrup_f: float) -> FillAdvice:
    """What to do with syrup of so many degrees F that stands ready to be bottled.

    Below 180 reheat to 185; from 180 to 185 fill now, before it cools; to 200 fill; hotter
    darkens it, let it cool (CFIA, OMAFRA; the upper figure as quoted from MSU Extension).
    Raises ValueError outside 32 to 250 F.
    """
    within("Syrup", syrup_f, 32.0, 250.0, "F")
    if syrup_f < figures.BOTTLE_F_LEAST:
        return "reheat"
    if syrup_f < figures.BOTTLE_F:
        return "fill now"
    if syrup_f <= figures.BOTTLE_F_MOST:
        return "fill"
    return "too hot"


def cold_gallons(hot_gallons: float, syrup_f: float) -> float:
    """What syrup that was measured hot comes to when it is cold, in gallons at 60 F.

    Computed for 66.9 Brix from Bubnik and others (see `figures`): 3 % less from 185 F. Raises
    ValueError outside 60 to 212 F.
    """
    not_negative("Syrup", hot_gallons, "gal")
    rows = figures.HOT_SYRUP_SHRINKS_TO
    within("Syrup", syrup_f, rows[0][0], rows[-1][0], "F")
    return hot_gallons * between_rows(rows, syrup_f)


def may_crystallize(syrup_brix: float) -> bool:
    """True when syrup is so thick that crystals are likely in the cold (OMAFRA: over 67 to 68).

    A rule of thumb: refrigerated, even 66.9 may seed.
    """
    within("Syrup", syrup_brix, figures.BRIX_LEAST, figures.BRIX_MOST, "Brix")
    return syrup_brix > figures.CRYSTALS_BRIX


def cost_of(dollars: float, syrup_gallons: float) -> Cost | None:
    """What a gallon and a pint cost. None while there is no syrup to divide by.

    Nothing spent is a cost of 0. Raises ValueError for amounts below zero.
    """
    not_negative("Money spent", dollars, "dollars")
    if not_negative("Syrup", syrup_gallons, "gal") == 0:
        return None
    per_gallon = dollars / syrup_gallons
    return Cost(per_gallon, per_gallon / figures.PINTS_PER_GALLON)


def worth_dollars(syrup_gallons: float, dollars_per_gallon: float) -> float:
    """What so much syrup is worth at a price that the person gives."""
    not_negative("Syrup", syrup_gallons, "gal")
    return syrup_gallons * not_negative("The price", dollars_per_gallon, "dollars a gallon")
