"""Where the sugar goes: sap into syrup, sap into sap, ice out.

All by mass balance, the sugar staying and only water leaving. A sap hydrometer is good to
0.1 Brix, which is 5 % at 2 Brix, so say the results in two figures. The rules of 86 are here
for comparison and answer nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from bot import figures
from bot.reckoning.checks import not_negative, positive, within
from bot.reckoning.density import density_g_ml


class Lot(NamedTuple):
    """So much liquid at so much sugar."""

    gallons: float
    brix: float


class LotRange(NamedTuple):
    """So much liquid, its sugar between two figures."""

    gallons: float
    low_brix: float
    high_brix: float


def sap_per_syrup(sap_brix: float, syrup_brix: float) -> float:
    """Gallons of sap that make one gallon of syrup.

    Raises ValueError for sap without sugar, or sap that is thicker than the syrup.
    """
    positive("Sap sugar", sap_brix, "Brix")
    return _sugar_g_ml(syrup_brix) / _sugar_of_sap(sap_brix, syrup_brix)


def syrup_gallons(sap_gallons: float, sap_brix: float, syrup_brix: float) -> float:
    """Gallons of syrup in so much sap. Zero sap, or sap without sugar, makes zero.

    Raises ValueError for a negative amount, or sap that is thicker than the syrup.
    """
    not_negative("Sap", sap_gallons, "gal")
    return sap_gallons * _sugar_of_sap(sap_brix, syrup_brix) / _sugar_g_ml(syrup_brix)


def mixed_brix(parts: Sequence[tuple[float, float]]) -> float:
    """Brix of several lots of (gallons, brix) poured together, weighted by their sugar.

    The sum of g*rho*B over the sum of g*rho. A lot of zero gallons counts for nothing. Raises
    ValueError when there is nothing to mix, or a lot is negative.
    """
    mass = sugar = 0.0
    filled: list[float] = []
    for gallons, brix in parts:
        not_negative("A lot", gallons, "gal")
        part = gallons * density_g_ml(brix)
        mass += part
        sugar += part * brix
        if part > 0:
            filled.append(brix)
    if not filled:
        raise ValueError("Nothing to mix: the lots hold 0 gal, but should hold more than 0")
    # Rounding must not carry a mix outside the lots that made it.
    return min(max(sugar / mass, min(filled)), max(filled))


def left_at(gallons: float, sap_brix: float, pan_brix: float) -> float:
    """Gallons left of so much sap when it has boiled down to `pan_brix`."""
    return syrup_gallons(gallons, sap_brix, pan_brix)


def after_ice(
    gallons: float,
    sap_brix: float,
    ice_gallons: float,
    ice_brix: float = figures.ICE_BRIX_PURE,
) -> Lot:
    """The sap that stays when ice (measured as melted gallons) is thrown away.

    Weighted by gallons, which is good to 0.01 Brix at sap strength. Raises ValueError when all
    the sap would be ice, or the ice would hold more sugar than the sap has.
    """
    positive("Sap", gallons, "gal")
    not_negative("Sap sugar", sap_brix, "Brix")
    not_negative("Ice", ice_gallons, "gal")
    within("Sugar in the ice", ice_brix, 0.0, sap_brix, "Brix")
    if ice_gallons >= gallons:
        raise ValueError(
            f"Ice is {ice_gallons:.6g} gal, but should be less than the {gallons:.6g} gal of sap"
        )
    left = gallons - ice_gallons
    return Lot(left, (gallons * sap_brix - ice_gallons * ice_brix) / left)


def after_ice_range(gallons: float, sap_brix: float, ice_gallons: float) -> LotRange:
    """What stays when ice is thrown away, between ice that holds some sugar and none.

    A rule of thumb: makers report 0.2 to 1 Brix in the ice (common practice, no source); 0.5
    and 0 are taken here.
    """
    usual = min(figures.ICE_BRIX_USUAL, sap_brix)
    low = after_ice(gallons, sap_brix, ice_gallons, usual)
    high = after_ice(gallons, sap_brix, ice_gallons, figures.ICE_BRIX_PURE)
    return LotRange(low.gallons, low.brix, high.brix)


def too_much_ice(gallons: float, ice_gallons: float) -> bool:
    """True when more than a third of the sap would be thrown away as ice.

    A rule of thumb (common practice, no source): the sugar that goes with it is not worth it.
    """
    positive("Sap", gallons, "gal")
    return not_negative("Ice", ice_gallons, "gal") > gallons * figures.ICE_SHARE_MOST


def rule_of_86(sap_brix: float) -> float:
    """Gallons of sap for one of syrup by the old rule of thumb, 86 over Brix (C. H. Jones)."""
    return figures.RULE_OF_86 / positive("Sap sugar", sap_brix, "Brix")


def revised_rule(sap_brix: float, syrup_brix: float) -> float:
    """Gallons of sap for one of syrup by the revised rule of thumb (Perkins and Isselhardt).

    Published for syrup of 66.0 and 66.9 Brix only; ValueError for any other. Both constants lie
    below the mass balance (0.4 % and 0.9 %); the constant -0.32 beside 88.2 is from memory.
    """
    positive("Sap sugar", sap_brix, "Brix")
    for brix, a, b in figures.REVISED_RULE:
        if brix == syrup_brix:
            return a / sap_brix - b
    raise ValueError(
        f"Syrup is {syrup_brix:.6g} Brix, but the revised rule is published for 66.0 and 66.9"
    )


def _sugar_g_ml(brix: float) -> float:
    """Grams of sugar in 100 mL: density times Brix."""
    return density_g_ml(positive("Syrup sugar", brix, "Brix")) * brix


def _sugar_of_sap(sap_brix: float, syrup_brix: float) -> float:
    if sap_brix > syrup_brix:
        raise ValueError(
            f"Sap sugar is {sap_brix:.6g} Brix, but should be no more than"
            f" the {syrup_brix:.6g} Brix it is boiled down to"
        )
    return density_g_ml(sap_brix) * sap_brix
