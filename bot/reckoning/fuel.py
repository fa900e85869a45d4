"""Heat for a boil, and the wood or propane that gives it, both ways round.

The share of the fire that reaches the sap is the great unknown: 15 to 30 % over a bare block
arch, 40 to 60 % in an evaporator. So amounts of fuel are given for an efficiency, or as the
range of the efficiencies that `figures` lists for a kind of fire.
"""

from __future__ import annotations

from dataclasses import dataclass

from bot import figures
from bot.reckoning.balance import sap_per_syrup, syrup_gallons
from bot.reckoning.checks import not_negative, positive, within
from bot.reckoning.density import pounds_per_gallon


@dataclass(frozen=True, slots=True)
class Wood:
    """Cords of 128 cubic feet, and face cords, a third of that each."""

    cords: float
    face_cords: float


@dataclass(frozen=True, slots=True)
class Propane:
    """Propane in pounds, gallons of liquid, and full 20 lb cylinders."""

    pounds: float
    gallons: float
    cylinders: float


def heat_btu(sap_gallons: float, sap_brix: float, syrup_brix: float) -> float:
    """Heat, BTU, to bring sap from 38 F to the boil and boil it down to syrup, before losses.

    Computed from IAPWS-95: 174 BTU to heat each pound of sap and 970 to boil away each pound of
    water.
    """
    sap_lb = sap_gallons * pounds_per_gallon(sap_brix)
    syrup_lb = syrup_gallons(sap_gallons, sap_brix, syrup_brix) * pounds_per_gallon(syrup_brix)
    return (
        sap_lb * figures.HEAT_TO_BOIL_BTU_PER_LB
        + (sap_lb - syrup_lb) * figures.HEAT_TO_EVAPORATE_BTU_PER_LB
    )


def heat_btu_per_syrup_gallon(sap_brix: float, syrup_brix: float) -> float:
    """Heat, BTU, for one gallon of syrup, before losses."""
    return heat_btu(sap_per_syrup(sap_brix, syrup_brix), sap_brix, syrup_brix)


def wood_for(heat: float, efficiency: float, species: str = "sugar maple") -> Wood:
    """Dry wood (20 % moisture) that brings `heat` BTU into the sap. Green wood takes far more.

    Raises ValueError for a species that the table does not have, or an efficiency that is not
    between 0.05 and 1.
    """
    not_negative("Heat", heat, "BTU")
    cords = heat / (_cord_btu(species) * _efficiency(efficiency))
    return Wood(cords, cords * figures.FACE_CORDS_PER_CORD)


def propane_for(heat: float, efficiency: float) -> Propane:
    """Propane that brings `heat` BTU into the sap. Raises ValueError as `wood_for` does."""
    not_negative("Heat", heat, "BTU")
    pounds = heat / (figures.PROPANE_BTU_PER_LB * _efficiency(efficiency))
    return Propane(
        pounds,
        pounds / figures.PROPANE_LB_PER_GALLON,
        pounds / figures.PROPANE_LB_PER_CYLINDER,
    )


def syrup_from_wood(
    cords: float,
    efficiency: float,
    sap_brix: float,
    syrup_brix: float,
    species: str = "sugar maple",
) -> float:
    """Gallons of syrup that so many cords of dry wood boil down."""
    not_negative("Wood", cords, "cords")
    heat = cords * _cord_btu(species) * _efficiency(efficiency)
    return heat / heat_btu_per_syrup_gallon(sap_brix, syrup_brix)


def syrup_from_propane(
    propane_lb: float, efficiency: float, sap_brix: float, syrup_brix: float
) -> float:
    """Gallons of syrup that so many pounds of propane boil down."""
    not_negative("Propane", propane_lb, "lb")
    heat = propane_lb * figures.PROPANE_BTU_PER_LB * _efficiency(efficiency)
    return heat / heat_btu_per_syrup_gallon(sap_brix, syrup_brix)


def wood_efficiency(cords: float, heat: float, species: str = "sugar maple") -> float:
    """Share of the wood's heat that went into the sap, from a boil that is over.

    More than 1 means that the wood, the sap or its sugar was written down wrongly, or that the
    wood was better than the table's. Raises ValueError for no wood.
    """
    positive("Wood", cords, "cords")
    return not_negative("Heat", heat, "BTU") / (cords * _cord_btu(species))


def _efficiency(efficiency: float) -> float:
    return within("Efficiency", efficiency, 0.05, 1.0, "(as a share)")


def _cord_btu(species: str) -> float:
    btu = figures.CORD_BTU.get(species)
    if btu is None:
        raise ValueError(
            f"Wood is {species!r}, but should be one of: {', '.join(sorted(figures.CORD_BTU))}"
        )
    return btu
