"""How a spile is set and a pail is hung."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.howto_figures import TRUNK_F_LEAST
from bot.answers.howto.known import Known
from bot.answers.howto.measures import heat_at_least, volume, weight
from bot.answers.howto.told import Told
from bot.reckoning.density import pounds_per_gallon

SOURCES: Final = (
    "Ontario Maple Syrup Producers Association, How to Tap: gently, until the sound changes",
    "OMAFRA, 2015: not in a trunk under -5 C, the bark splits",
    "computed: what a full pail weighs, by the density of sap",
    "common practice, no source: hook, lid, shavings, what to do about a leak",
)

# What sap usually tests, Brix, for the weight of a pail (common practice, no source).
_USUAL_SAP_BRIX: Final = 2.0


def answer(known: Known) -> Told:
    """How hard, how far, and what leaks tell; with the weight of the person's own pail."""
    warm = heat_at_least(TRUNK_F_LEAST, known.units)
    first = (
        "Clear the shavings, tap it in with light blows until the sound dulls and it sits snug."
        f" Don't pound: bark splits and leaks. Not in wood under {warm}."
    )
    leak = (
        "Sap running down the bark: give the spile one or two light taps more. If it still"
        " leaks the hole is oval or the bark split: leave it, and set a new spile in a new hole"
        " only if the tree can bear one. No wax, glue or tape in the hole."
    )
    return Told(first, (_pail(known), leak))


def _pail(known: Known) -> str:
    hang = (
        "Hook under the spout, spout down, pail level, lid on against rain and bark. Set each"
        " spile as soon as its hole is drilled, so that nothing gets in."
    )
    if known.bucket_gallons is None:
        return f"{hang} A full pail is heavy: try the spile with your hand before you trust it."
    full = weight(known.bucket_gallons * pounds_per_gallon(_USUAL_SAP_BRIX), known.units)
    return (
        f"{hang} Your {volume(known.bucket_gallons, known.units)} pail holds {full} of sap when"
        " full: try the spile with your hand before you trust it, and lift with your legs."
    )
