"""How long a boil takes, when to light the fire, and how far along it is.

The rates of pans are rules of thumb; a person's own past boils are worth more, once there are
three of them.
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Literal

from bot import figures
from bot.reckoning.checks import not_negative, positive

Basis = Literal["own boils", "pan"]


@dataclass(frozen=True, slots=True)
class Rate:
    """Gallons of sap (or water) gone in an hour: the usual, and a low and a high figure."""

    gallons_per_hour: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class BoilTime:
    """Hours that a boil takes: the usual, the shortest and the longest, and from what it was
    worked out."""

    hours: float
    shortest_hours: float
    longest_hours: float
    basis: Basis


@dataclass(frozen=True, slots=True)
class Progress:
    """How far an open boil is. `hours_left` is 0 when it should be over, and `over_hours` then
    says by how much."""

    share: float
    water_gone_gallons: float
    hours_left: float
    over_hours: float


def pan_ft2(length_in: float, width_in: float) -> float:
    """Surface of a flat pan in square feet, from its sides in inches."""
    positive("The pan's length", length_in, "in")
    positive("The pan's width", width_in, "in")
    return length_in * width_in / figures.SQUARE_INCHES_PER_FT2


def round_pan_ft2(diameter_in: float) -> float:
    """Surface of a round pot in square feet, from its diameter in inches."""
    positive("The pot's diameter", diameter_in, "in")
    return math.pi / 4 * diameter_in**2 / figures.SQUARE_INCHES_PER_FT2


def flat_pan_rate(surface_ft2: float) -> Rate:
    """Rate of a flat pan, gallons of water an hour: a rule of thumb, 1 gallon for each square
    foot at a full boil, 0.6 to 1.5 by the fire (common practice, no source)."""
    positive("The pan", surface_ft2, "square feet")
    return Rate(
        surface_ft2 * figures.FLAT_PAN_RATE,
        surface_ft2 * figures.FLAT_PAN_RATE_LEAST,
        surface_ft2 * figures.FLAT_PAN_RATE_MOST,
    )


def ring_rate() -> Rate:
    """Rate of a round pot on a propane ring, gallons of water an hour: a rule of thumb, 1 to 2
    (common practice, no source)."""
    low, high = figures.RING_RATE_LEAST, figures.RING_RATE_MOST
    return Rate((low + high) / 2, low, high)


def own_rate(boils: Sequence[tuple[float, float]]) -> Rate | None:
    """A person's own rate, gallons of sap an hour, from their boils as (gallons, hours).

    The median of the boils' rates, with the quarter below and the quarter above as its low and
    high, so that one wrongly written boil does not move it. None below three boils: then the
    pan's rule of thumb is as good. Raises ValueError for a boil of no sap or no time.
    """
    rates = [
        positive("Sap boiled", gallons, "gal") / positive("A boil", hours, "hours")
        for gallons, hours in boils
    ]
    if len(rates) < figures.BOILS_ENOUGH:
        return None
    low, middle, high = statistics.quantiles(rates, n=4, method="inclusive")
    return Rate(middle, low, high)


def boil_time(
    sap_gallons: float,
    syrup_gallons: float,
    surface_ft2: float | None = None,
    boils: Sequence[tuple[float, float]] = (),
) -> BoilTime | None:
    """Hours to boil sap down to syrup, from the person's own boils, else from the pan.

    Own rates are in gallons of sap, the pan's in gallons of water. None when there are too few
    boils and the pan's surface is not known: then there is nothing to go by. Raises ValueError
    when there would be more syrup than sap, or less than nothing.
    """
    water_gallons = _water(sap_gallons, syrup_gallons)
    own = own_rate(boils)
    if own is not None:
        return _time(sap_gallons, own, "own boils")
    if surface_ft2 is not None:
        return _time(water_gallons, flat_pan_rate(surface_ft2), "pan")
    return None


def _time(gallons: float, rate: Rate, basis: Basis) -> BoilTime:
    return BoilTime(
        hours=gallons / rate.gallons_per_hour,
        shortest_hours=gallons / rate.high,
        longest_hours=gallons / rate.low,
        basis=basis,
    )


def start_by(finish: datetime, hours: float) -> datetime:
    """When to light the fire for a boil of so many hours to end at `finish`.

    With a time zone the hours are real hours, also over the change of clocks; without one they
    are hours of the wall clock. Raises ValueError for a negative length.
    """
    length = timedelta(hours=not_negative("A boil", hours, "hours"))
    if finish.tzinfo is None:
        return finish - length
    return (finish.astimezone(UTC) - length).astimezone(finish.tzinfo)


def progress(
    sap_gallons: float, syrup_gallons: float, boil_hours: float, hours_gone: float
) -> Progress:
    """How far a boil of `boil_hours` is after `hours_gone`, the fire taken as even.

    A rule of thumb: the pan's thermometer knows better, near the end above all.
    """
    water_gallons = _water(sap_gallons, syrup_gallons)
    positive("The boil", boil_hours, "hours")
    not_negative("Time gone", hours_gone, "hours")
    share = min(1.0, hours_gone / boil_hours)
    return Progress(
        share=share,
        water_gone_gallons=share * water_gallons,
        hours_left=max(0.0, boil_hours - hours_gone),
        over_hours=max(0.0, hours_gone - boil_hours),
    )


def _water(sap_gallons: float, syrup_gallons: float) -> float:
    """Water to boil off, in gallons."""
    not_negative("Sap", sap_gallons, "gal")
    not_negative("Syrup", syrup_gallons, "gal")
    if syrup_gallons > sap_gallons:
        raise ValueError(
            f"Syrup is {syrup_gallons:.6g} gal, but should be no more than"
            f" the {sap_gallons:.6g} gal of sap"
        )
    return sap_gallons - syrup_gallons
