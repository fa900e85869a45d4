"""Where on the trunk the hole goes: sound wood, away from old holes."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.known import Known
from bot.answers.howto.measures import heights, length
from bot.answers.howto.told import Told
from bot.figures import BESIDE_OLD_HOLE_IN, FROM_OLD_HOLE_IN, TAP_HEIGHT_IN

SOURCES: Final = (
    "Perkins, UVM Proctor Maple Research Center, 2024: 2 to 4 in sideways and 6 to 12 in up or"
    " down from an old hole",
    "Ohio State University Extension, 2025: 2 to 4 in and about 6; not overhead, firm footing",
    "Ontario, 2014 (Leuty): 1 in and 12 in",
    "University of Maine Cooperative Extension: 6 in and 24 in, as quoted by others",
    "M. Farrell, Northern Woodlands, Tricks of the Trade: the dark wood above and below old"
    " holes carries no sap",
    "UVM Extension: 6 in to the side of any open hole",
    "common practice, no source: height; side and roots don't matter; no tap in a sick or"
    " cracked tree",
)

# Vermont's distances, the cautious end of what it advises, except where the region's own keeps
# still farther away.
_USUAL: Final = "Vermont"
_FARTHER: Final = {"ME": "Maine"}


def answer(known: Known) -> Told:
    """Height, and distance from old holes on the cautious side; the other guides named."""
    guideline = _FARTHER.get(known.region or "", _USUAL)
    sideways, up = (length(inches, known.units) for inches in FROM_OLD_HOLE_IN[guideline])
    height = heights(TAP_HEIGHT_IN, known.units)
    first = (
        f"Any side, {height} up, in sound wood: {sideways} to the side of any old hole and {up}"
        " above or below it. Two hands on the drill, feet firm."
    )
    others = ", ".join(
        f"{name} {_pair(name, known)}"
        for name in ("Vermont", "Ohio", "Ontario", "Maine")
        if name != guideline
    )
    spread = (
        "The wood right above and below an old hole is dead and gives nothing. At the same"
        f" height keep {length(BESIDE_OLD_HOLE_IN, known.units)} away. Use the whole trunk, year by"
        f" year. Other guides, sideways and up: {others}."
    )
    side = (
        "The south side only starts earlier; over a season no side gives more. Above a root or"
        " under a limb makes no difference worth a hole. Allow for the snow melting under the"
        " pail, and never drill overhead or from a ladder."
    )
    stay_off = (
        "Stay off cracks, seams, dead bark and rot, and don't tap a sick or newly hurt tree."
        " Brown shavings mean dead wood: no spile there, drill elsewhere in white wood."
    )
    return Told(first, (spread, side, stay_off))


def _pair(guideline: str, known: Known) -> str:
    sideways, up = (length(inches, known.units) for inches in FROM_OLD_HOLE_IN[guideline])
    return f"{sideways} and {up}"
