"""How sap is boiled, and how not to get hurt or scorch a pan."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.known import Known
from bot.answers.howto.measures import degrees, heat_to_a_tenth, length, volume
from bot.answers.howto.told import Told
from bot.figures import (
    DRAW_RISE_F,
    FLAT_PAN_RATE,
    PAN_DEPTH_IN,
    PAN_DEPTH_IN_LEAST,
    RING_RATE_LEAST,
    RING_RATE_MOST,
)
from bot.reckoning.finish import finish_f
from bot.reckoning.law import legal_density

SOURCES: Final = (
    "Ohio State University Extension: about 2 in over the pan; foam, and fat or defoamer",
    "Michigan State University Extension: gallons of steam an hour, so outdoors or vented",
    "US EPA and Consumer Product Safety Commission, as quoted: carbon monoxide",
    "computed: the temperature to finish at, as in reckoning.finish",
    "common practice, no source: least depth, rates, adding sap, a smaller pot for the end",
)


def answer(known: Known) -> Told:
    """Where, how deep, never leave it; then adding sap, foam, the end of the boil, speed."""
    units = known.units
    first = (
        "Outdoors or well vented, at a full boil, with about"
        f" {length(PAN_DEPTH_IN, units)} of sap in the pan, never under"
        f" {length(PAN_DEPTH_IN_LEAST, units)}: a dry pan burns in minutes. Never leave it. Hot"
        " syrup sticks and burns: gloves, no children near."
    )
    adding = (
        "Add sap little by little, best preheated, so that the boil never dies: a trickle beats a"
        " pailful. Skim the scum. Dry split wood, small and often. No fire or burner in a house,"
        " tent or shut garage: the fumes kill. Ask your town about burn permits and local codes."
    )
    foam = (
        "Foam climbing: touch it with a drop of fat or a trace of defoamer. Butter and cream are"
        " milk, so tell those who eat it; plain safflower oil is not. Don't lean over it;"
        " turn a burner down, or leave the fire door open a while."
    )
    speed = (
        f"A flat pan boils off about {volume(FLAT_PAN_RATE, units)} an hour for each"
        f" {'square foot' if units == 'us' else '30 by 30 cm'} of bottom, a pot on a ring"
        f" {_ring(known)}, as rules of thumb. A wide pan, dry wood and a good draft are what"
        " speed it. For your own sap ask how long it will take."
    )
    return Told(first, (adding, foam, _the_end(known), speed))


def _the_end(known: Known) -> str:
    line = legal_density(known.region)
    rise_f = dict(DRAW_RISE_F)[line.min_brix]
    if known.water_boils_f is None:
        at = f"{degrees(rise_f, known.units)} above where plain water boils that day"
    else:
        finish = heat_to_a_tenth(finish_f(known.water_boils_f, line.min_brix), known.units)
        at = f"about {finish}, by the water you boiled"
    return (
        "Near the end move it to a smaller pot over a fire you can turn down, and watch: the last"
        f" minutes go fast. Draw at {at}, and check with a hydrometer. Stopping for the night:"
        " leave the pan deep, and the fire dead out."
    )


def _ring(known: Known) -> str:
    low, high = volume(RING_RATE_LEAST, known.units), volume(RING_RATE_MOST, known.units)
    return f"{low.split()[0]} to {high}"
