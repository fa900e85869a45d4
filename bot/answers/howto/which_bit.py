"""Which bit to drill with: the one that the spile is made for."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import BIT_SMALLER_IN
from bot.answers.howto.known import Known
from bot.answers.howto.measures import bit
from bot.answers.howto.told import Told
from bot.figures import BIT_OLDER_BUCKET_IN, BIT_TODAY_IN

SOURCES: Final = (
    "G. Cook, UVM Extension: 5/16 in today, 7/16 for older bucket spiles; match bit to spile",
    "Cornell trial, 1999 and 2000: no significant difference in sap or sugar between the two",
    "M. Farrell, Northern Woodlands: 5/16 and 19/64 in spouts; small holes close sooner and may"
    " give slightly less",
    "Ontario Maple Syrup Producers Association, How to Tap: sharp bit, firm hold, round hole",
    "common practice, no source: clean wood bit, spade bits tear",
)

# Bits closer than this are the same bit, inches: drill sets go by sixty-fourths.
_SAME_IN: Final = 1 / 128


def answer(known: Known) -> Told:
    """What to drill for the spiles there are, or what the person's own bit is good for."""
    units = known.units
    today, older = bit(BIT_TODAY_IN, units), bit(BIT_OLDER_BUCKET_IN, units)
    if known.bit_in is None:
        first = (
            f"Match the spile: {today} for most of today's, {older} for older bucket spiles. A"
            " sharp, clean wood bit; two hands on the drill."
        )
    elif _same(known.bit_in, BIT_OLDER_BUCKET_IN):
        first = (
            f"Your {older} bit suits older bucket spiles. Today's take {today}, and the smaller"
            " hole closes sooner. Sharp and clean, two hands."
        )
    elif _same(known.bit_in, BIT_TODAY_IN):
        first = (
            f"Your {today} bit is right for today's spiles; older bucket spiles want {older}."
            " Match bit to spile. Sharp and clean, two hands."
        )
    elif _same(known.bit_in, BIT_SMALLER_IN):
        first = (
            f"Your {bit(BIT_SMALLER_IN, units)} bit is right only for spiles made for it. Most"
            f" of today's want {today}, older ones {older}."
        )
    else:
        first = (
            f"Your {bit(known.bit_in, units)} bit fits no common spile: most take {today}, older"
            f" bucket ones {older}. A spile must fill its hole."
        )
    which = (
        "Not sure which your spiles are? Drill both sizes in a scrap of wood: the spile should"
        " go in by hand part way and sit snug after light taps. In a trial by Cornell the two"
        " sizes gave no clear difference in sap or sugar."
    )
    kind = (
        "A twist or brad-point wood bit, or one made for tapping; a spade bit tears, and a dull"
        " one leaves fuzz that sheds sap and microbes. Wipe it clean between trees. A brace"
        " does as well as a cordless drill. Hold it firm: a wobbly hole is oval and leaks."
    )
    return Told(first, (which, kind))


def _same(bit_in: float, other_in: float) -> bool:
    return abs(bit_in - other_in) < _SAME_IN
