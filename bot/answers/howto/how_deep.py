"""How deep the hole goes, and at what slant."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import (
    SAP_AT_ONE_INCH_SHARE,
    SAP_AT_TWO_INCHES_SHARE,
    SLANT_DEGREES,
)
from bot.answers.howto.known import Known
from bot.answers.howto.measures import bit, length
from bot.answers.howto.told import Told
from bot.figures import TAP_DEPTH_IN, TAP_DEPTH_IN_MOST

SOURCES: Final = (
    "Ohio State University Extension, 2025: 1 1/2 in, no more than 2; two hands, firm footing;"
    " straight in",
    "UVM Extension: 1 1/2 to 2 in into white wood; straight in",
    "University of Vermont, on vacuum: sap from holes of 1, 1 1/2 and 2 in; deeper gave no more",
    "Ontario Maple Syrup Producers Association, How to Tap: slant of 5 to 10 degrees, tape or"
    " tube on the bit, one movement in and out",
    "common practice, no source: brown shavings are dead wood; shallow in a slow-growing tree",
)


def answer(known: Known) -> Told:
    """The depth, with the person's own bit; then what depth gives, slant and shavings."""
    tool = "the bit" if known.bit_in is None else f"your {bit(known.bit_in, known.units)} bit"
    depth = length(TAP_DEPTH_IN, known.units)
    most = length(TAP_DEPTH_IN_MOST, known.units)
    first = (
        f"{depth} into the wood, {most} at most. Mark {tool} with tape. White shavings are good;"
        " brown: move. Two hands on the drill."
    )
    gain = (
        f"On vacuum, Vermont found that a hole of {length(1.0, known.units)} gave"
        f" {SAP_AT_ONE_INCH_SHARE:.0%} of what {depth} gave, and one of"
        f" {length(2.0, known.units)} {SAP_AT_TWO_INCHES_SHARE - 1:.0%} more. Deeper gave"
        " nothing more, and hurts the tree. Thin or slow-growing tree: stay shallow."
    )
    slant = (
        "Straight in is Vermont's and Ohio's advice; Ontario's makers angle it up"
        f" {SLANT_DEGREES[0]} to {SLANT_DEGREES[1]} degrees so that it drains. Either way drill"
        " in and out in one go, so that the hole stays round. Never overhead; stand firm on"
        " clear ground."
    )
    return Told(first, (gain, slant))
