"""What to catch, carry and store sap in."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import LEAD_SOLDER_BEFORE
from bot.answers.howto.known import Known
from bot.answers.howto.told import Told
from bot.answers.howto.whom import extension

SOURCES: Final = (
    "University of Maine Cooperative Extension, Bulletin 7038: lead, terne plate, galvanized",
    "Northern Woodlands, Get the Lead Out: solder in older metal gear",
    "OMAFRA, Best Production Practices for Producing Safe, Quality Maple Syrup: solder before"
    " 1994 and 1995, brass, bronze, terne plate",
    "Ontario Maple Syrup Producers Association: lead test kits, lead gear out",
    "common practice, no source: food pails, milk jugs, bags, lids, barrels, no garden hose",
)


def answer(known: Known) -> Told:
    """What is fit, what is not, and the caution about lead in old metal."""
    first = (
        "Food grade, clean, covered: food pails, milk jugs, sap buckets or bags. No pickle,"
        " paint or chemical pails. Old metal may hold lead: test it first."
    )
    lead = (
        f"Metal soldered before {LEAD_SOLDER_BEFORE}, terne plate (old cans and pails, shinier"
        " bottoms), brass and bronze may leave lead in sap, worst for children. A kit for paint"
        " or maple gear shows it; if it does, don't use the piece. In doubt ask"
        f" {extension(known.region)}."
    )
    galvanized = (
        "Galvanized pails: only sound, bright ones without lead solder, for cold fresh sap,"
        " emptied daily. Warm or sour sap eats the zinc. Plastic or stainless is easier to"
        " trust. Rust flakes or a dull, pitted inside: hang it as a flower pot."
    )
    store = (
        "For storing: a food-grade barrel or tote that held food and nothing else, lid on, in"
        " the shade, easy to scrub. Trash cans and garden hose are seldom food grade: use a"
        " food liner, and hose sold for drinking water. Tubing the same: sold for sap or food."
    )
    return Told(first, (lead, galvanized, store))
