"""How gear is washed: hot water and a brush, bleach only weak and well rinsed."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import BLEACH_PERCENT, BLEACH_WATER_PARTS
from bot.answers.howto.known import Known
from bot.answers.howto.seasons import part_of_year
from bot.answers.howto.told import Told
from bot.answers.howto.whom import in_canada

SOURCES: Final = (
    "University of Maine Cooperative Extension, Bulletin 7038: hot water and a brush, no"
    " detergent, scent or iodine; 1 part unscented 5.25 % bleach to 20 of water, never left"
    " standing in galvanized, flushed with clean water",
    "mapleresearch.org: isopropyl alcohol for tubing is illegal in the US",
    "University of Wisconsin Extension, End-of-Season Cleanup, 2023: hot water, vinegar for"
    " pans, dry before storing",
    "from memory: bleach and acid give off chlorine gas; much bleach today is over 5.25 %",
    "common practice, no source: filters in hot water only",
)


def answer(known: Known) -> Told:
    """What to wash with and the caution about bleach; the month says what is at hand."""
    first = (
        "Hot water and a brush, no soap or scent. Stubborn: 1 part plain"
        f" {BLEACH_PERCENT:g}% bleach to {BLEACH_WATER_PARTS} water, rinse well. Never mix bleach"
        " with anything else."
    )
    bleach = (
        "Check the label: much bleach today is stronger, so use less of it. Gloves, open air,"
        " mind your eyes. Never leave it standing in galvanized. Rinse with clean"
        " water until no smell is left: it spoils the syrup's taste."
    )
    pan = (
        "Pan: hot water and a soft brush; scale from sugar sand loosens in white vinegar, left"
        " to soak, then rinsed twice. No vinegar where bleach has been, nor on lead-soldered"
        " pans. Felt and paper filters: hot water only, never soap, squeezed flat, not wrung."
    )
    return Told(first, (bleach, pan, _when(known), _tubing(known)))


def _when(known: Known) -> str:
    if part_of_year(known) in ("late", "over"):
        return (
            "At the season's close wash everything the week the taps come out, before it dries"
            " on. Let it dry right through, then stack it upside down, away from mice."
        )
    return (
        "In the season rinse pails when they smell or feel slick, and after each warm spell."
        " Scrub and rinse all of it once before the first run; dust and mouse dirt are enough"
        " to sour sap."
    )


def _tubing(known: Known) -> str:
    if in_canada(known.region):
        return (
            "Tubing: flush with clean water while the sap is fresh, drain, let dry. What else"
            " may be used in lines differs by province: ask before you use alcohol."
        )
    return (
        "Tubing: flush with clean water while the sap is fresh, drain, let dry. Rubbing alcohol"
        " (isopropyl) is not allowed for lines in the US."
    )
