"""How one knows that it is syrup, and mends it when it is thin, thick or crystallised."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.known import Known
from bot.answers.howto.measures import degrees, heat_to_a_tenth
from bot.answers.howto.told import Told
from bot.figures import BRIX_PER_F_NEAR_FINISH, CRYSTALS_BRIX, DRAW_RISE_F
from bot.reckoning.finish import finish_f, standard_water_boils_f
from bot.reckoning.law import legal_density
from bot.reckoning.thickness import water_to_add
from bot.units import factor
from bot.wording.amounts import two_figures

SOURCES: Final = (
    "the legal density of the region, as in reckoning.law",
    "computed: the temperature to finish at, as in reckoning.finish",
    "OMAFRA, Maple syrup density to please customers, 2013: thin syrup spoils, over 67 to 68"
    " Brix crystals come in the cold",
    "UVM Extension, Maple Minute videos, 2022, and Vermont's rule: syrup hydrometer, hot line",
    "Ohio State University Extension: hydrometers tested, 3 to 4 of 10 read light",
    "common practice, no source: aproning, small finishing pot, water or sap to thin it",
)

# Thick syrup for the example of thinning it, Brix (our own).
_THICK_BRIX: Final = 70.0


def answer(known: Known) -> Told:
    """By heat above boiling water and by hydrometer; then aproning, thin, thick, crystals."""
    first = (
        f"{_by_heat(known)} Then check with a hydrometer: heat alone is only near. Syrup this"
        " hot sticks and burns: gloves, no children by."
    )
    hydrometer = (
        "Hydrometer: clean glass, cup full and hot from the pan, read at once with your eye level"
        " with the syrup: the hot line is for about boiling heat, the other for cold. Floats"
        " above its line, too thick; below, boil on. Its paper scale may have slipped: check it"
        " once against another."
    )
    degree = "F" if known.units == "us" else "C"
    eye = (
        "By eye: off a cold scoop syrup aprons, hangs in a sheet; water falls in drops; bubbles"
        f" turn small and golden. That brings you near, no more. One degree {degree} is some"
        f" {_brix_per_degree(known):g} Brix, so a thermometer alone can't judge it."
    )
    thin = (
        f"Too thin (under {legal_density(known.region).min_brix:g} Brix): it sours and molds."
        " Boil it on and test again. Too thick: heat it, stir in hot water or sap by the spoonful,"
        f" test again: {_thinning(known)}. Mind that it foams up and spits."
    )
    crystals = (
        f"Hard clear crystals in the jar: it was thick, over {CRYSTALS_BRIX:g} Brix or kept cold."
        " They are sugar and harmless. Stand the jar in hot water, pour the syrup off, melt"
        " the crystals in a little water. Set to taffy in the pan: off the heat, then thin it"
        " slowly."
    )
    return Told(first, (eye, hydrometer, thin, crystals))


def _by_heat(known: Known) -> str:
    """The temperature to draw at, from the person's own water, else from their height."""
    line = legal_density(known.region)
    law = f"{line.min_brix:g} Brix"
    rise = degrees(dict(DRAW_RISE_F)[line.min_brix], known.units)
    if known.water_boils_f is not None:
        finish = heat_to_a_tenth(finish_f(known.water_boils_f, line.min_brix), known.units)
        water = heat_to_a_tenth(known.water_boils_f, known.units)
        return f"By your water at {water} it is syrup at {finish} ({law}), if that was today."
    above = f"It is syrup ({law}) {rise} above boiling water: boil some in the same room today."
    if known.elevation_ft is None:
        return above
    guess_f = finish_f(standard_water_boils_f(known.elevation_ft), line.min_brix)
    return f"{above} At your height about {heat_to_a_tenth(guess_f, known.units)}."


def _thinning(known: Known) -> str:
    """An example: what a gallon or a litre of thick syrup takes."""
    water = water_to_add(1.0, _THICK_BRIX, legal_density(known.region).min_brix)
    if known.units == "us":
        return f"a gallon at {_THICK_BRIX:g} takes some {two_figures(water.fluid_ounces)} fl oz"
    return f"a litre at {_THICK_BRIX:g} takes some {two_figures(water.gallons * 1000)} mL"


def _brix_per_degree(known: Known) -> float:
    """What a degree of the person's own scale is worth near the finish, in Brix."""
    per_f = BRIX_PER_F_NEAR_FINISH
    return per_f if known.units == "us" else per_f * factor("delta_degC", "delta_degF")
