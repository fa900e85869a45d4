"""Syrup too thick or too thin: what to add, or what to boil off.

By mass balance: the sugar stays, only water comes or goes. Amounts of water are given in
gallons, cups and fluid ounces, for measuring in the kitchen.
"""

from __future__ import annotations

from dataclasses import dataclass

from bot import figures
from bot.reckoning.checks import positive, within
from bot.reckoning.density import pounds_per_gallon


@dataclass(frozen=True, slots=True)
class Water:
    """Water to add or to boil off, and the gallons of syrup that it ends with."""

    gallons: float
    cups: float
    fluid_ounces: float
    pounds: float
    ends_gallons: float


def water_to_add(syrup_gallons: float, syrup_brix: float, wanted_brix: float) -> Water:
    """Water that thins syrup to `wanted_brix`: W * (B / T - 1) pounds.

    Add it hot (sap does too), stir, reheat and test again. Raises ValueError when the syrup is
    thinner than what is wanted.
    """
    _checked(syrup_gallons, syrup_brix, wanted_brix)
    if syrup_brix < wanted_brix:
        raise ValueError(
            f"Syrup is {syrup_brix:.6g} Brix, but should be {wanted_brix:.6g} or more"
            " for water to be added"
        )
    pounds = syrup_gallons * pounds_per_gallon(syrup_brix) * (syrup_brix / wanted_brix - 1)
    return _water(pounds, syrup_gallons, syrup_brix, wanted_brix)


def water_to_boil_off(syrup_gallons: float, syrup_brix: float, wanted_brix: float) -> Water:
    """Water to boil off for syrup to reach `wanted_brix`: W * (1 - B / T) pounds.

    Raises ValueError when the syrup is already thicker than what is wanted.
    """
    _checked(syrup_gallons, syrup_brix, wanted_brix)
    if syrup_brix > wanted_brix:
        raise ValueError(
            f"Syrup is {syrup_brix:.6g} Brix, but should be {wanted_brix:.6g} or less"
            " for water to be boiled off"
        )
    pounds = syrup_gallons * pounds_per_gallon(syrup_brix) * (1 - syrup_brix / wanted_brix)
    return _water(pounds, syrup_gallons, syrup_brix, wanted_brix)


def _checked(syrup_gallons: float, syrup_brix: float, wanted_brix: float) -> None:
    positive("Syrup", syrup_gallons, "gal")
    # Below 40 Brix it is sap on its way, and boiling is reckoned by the hour, not by the cup.
    for thing, brix in (("Syrup", syrup_brix), ("The density wanted", wanted_brix)):
        within(thing, brix, figures.THICKNESS_BRIX_LEAST, figures.BRIX_MOST, "Brix")


def _water(pounds: float, syrup_gallons: float, syrup_brix: float, wanted_brix: float) -> Water:
    gallons = pounds / pounds_per_gallon(0.0)
    sugar = syrup_gallons * pounds_per_gallon(syrup_brix) * syrup_brix
    return Water(
        gallons=gallons,
        cups=gallons * figures.CUPS_PER_GALLON,
        fluid_ounces=gallons * figures.FL_OZ_PER_GALLON,
        pounds=pounds,
        ends_gallons=sugar / (pounds_per_gallon(wanted_brix) * wanted_brix),
    )
