"""How spiles come out, and what becomes of the hole."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import HOLE_CLOSES_YEARS
from bot.answers.howto.known import Known
from bot.answers.howto.measures import bit
from bot.answers.howto.seasons import month_name, part_of_year
from bot.answers.howto.told import Told
from bot.figures import BIT_OLDER_BUCKET_IN, BIT_TODAY_IN

SOURCES: Final = (
    "UVM Extension: a hole closes in 2 to 3 years in a healthy tree",
    "M. Farrell, Northern Woodlands: smaller holes close sooner",
    "University of Wisconsin Extension, End-of-Season Cleanup, 2023: wash with hot water, dry",
    "common practice, no source: gently, all at once, no plug; stuck and broken spiles",
)


def answer(known: Known) -> Told:
    """Gently, all the same day, no plug; stuck ones, healing, washing. In mid season, a word
    that a pulled hole is done."""
    years = f"{HOLE_CLOSES_YEARS[0]} to {HOLE_CLOSES_YEARS[1]} years"
    how_many = "Pull all of them" if known.taps is None else f"Pull all {known.taps}"
    if known.taps == 1:
        how_many = "Pull it"
    first = (
        f"{how_many} in one day: light taps from the sides, then twist straight out. No plug, no"
        f" paint: a healthy tree closes the hole in {years}."
    )
    if part_of_year(known) in ("before", "soon", "running"):
        when = (
            f"In {month_name(known)} be sure it is over: a spile once out is not worth putting"
            " back, and a second hole costs the tree. A dry week is not yet the finish: more frost"
            " nights may bring more."
        )
    else:
        when = (
            "The sooner the better: a spile left in keeps the hole open, rots"
            " the wood and is grown over. The hole may drip a while after: that does no harm."
        )
    stuck = (
        "Stuck: tap it up, down and sideways, then twist with pliers close to the bark, never"
        " lever against the tree. Broken off inside: grip and draw what shows; if it won't come"
        " leave it, don't drill it out, and mark the spot to keep saws and taps off."
    )
    healing = f"{_by_bit(known)} Mark old holes, so that you stay off them next year."
    washing = (
        "The same week: scrub spiles, pails and lids with hot water, rinse, dry right through,"
        " store upside down away from mice. Empty and drain lines. Mind your hands: old spiles"
        " have sharp edges."
    )
    return Told(first, (when, stuck, healing, washing))


def _by_bit(known: Known) -> str:
    today = bit(BIT_TODAY_IN, known.units)
    if known.bit_in is not None and known.bit_in >= BIT_OLDER_BUCKET_IN:
        return (
            f"Your {bit(known.bit_in, known.units)} holes take longer to close than {today} ones:"
            " think of the smaller spile next year, and rest a tree whose holes stay open."
        )
    return (
        f"Small holes ({today}) close sooner than older, wider ones. One still open after three"
        " summers says the tree is weak: rest it."
    )
