"""What sap and syrup weigh: density, specific gravity, Baume and pounds, from Brix.

Pure sucrose in water at 20 C (68 F), from a fit to the CRC Handbook table that is good to
0.0002 g/mL from 0 to 84 Brix (see `figures`). Every function raises ValueError outside that.
"""

from __future__ import annotations

from bot import figures
from bot.reckoning.checks import within


def density_g_ml(brix: float) -> float:
    """Density in grams per millilitre at 20 C."""
    within("Sugar", brix, figures.BRIX_LEAST, figures.BRIX_MOST, "Brix")
    density = 0.0
    for coefficient in reversed(figures.SUCROSE_DENSITY_COEFFICIENTS):
        density = density * brix + coefficient
    return density


def specific_gravity(brix: float) -> float:
    """Density over that of water, both at 20 C (SG 20/20)."""
    return density_g_ml(brix) / figures.WATER_DENSITY_G_ML


def baume(brix: float) -> float:
    """Degrees Baume on the American scale (modulus 145) that a syrup hydrometer shows."""
    return figures.BAUME_MODULUS - figures.BAUME_MODULUS / specific_gravity(brix)


def pounds_per_gallon(brix: float) -> float:
    """Weight of a US gallon in pounds, in vacuum; in air it is about 0.1 % less."""
    return density_g_ml(brix) * figures.POUNDS_PER_GALLON_AT_UNIT_DENSITY


def sugar_pounds(gallons: float, brix: float) -> float:
    """Pounds of sugar in so many gallons at so many Brix."""
    return gallons * pounds_per_gallon(brix) * brix / 100


def brix_from_baume(degrees_baume: float) -> float:
    """Brix for degrees Baume on the American scale: `baume` the other way round.

    Raises ValueError for Baume outside 0 to what 84 Brix shows (44.9).
    """
    most = baume(figures.BRIX_MOST)
    within("Baume", degrees_baume, 0.0, most, "degrees")
    low, high = figures.BRIX_LEAST, figures.BRIX_MOST
    # Baume rises with Brix, so halving finds it: forty halvings of 84 leave nothing over.
    for _ in range(40):
        middle = (low + high) / 2
        if baume(middle) < degrees_baume:
            low = middle
        else:
            high = middle
    return (low + high) / 2
