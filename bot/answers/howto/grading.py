"""Grades by colour and taste, and what a text can't tell."""

from __future__ import annotations

from typing import Final

from bot.answers.howto.known import Known
from bot.answers.howto.told import Told
from bot.answers.howto.whom import agriculture, in_canada
from bot.figures import GRADE_A_CLASSES
from bot.reckoning.law import legal_density

SOURCES: Final = (
    "USDA AMS, US Standards for Grades of Maple Syrup, 2015: the four classes, Processing Grade",
    "Canadian Grade Compendium, volume 7; 1 NYCRR 270.1; O. Reg. 119/11: the same classes",
    "the legal density of the region, as in reckoning.law",
    "from memory: the older names Fancy, Medium Amber, Grade B",
    "common practice, no source: what makes syrup dark",
)


def answer(known: Known) -> Told:
    """The classes by light, why a kit is needed, what darkens syrup, and rules for selling."""
    first = (
        "I can't grade by text: it takes a color kit and your tongue. Light that passes:"
        f" {_classes()}. All four are Grade A if density and taste are right."
    )
    tastes = ", ".join(f"{name} {taste}" for _, name, taste in GRADE_A_CLASSES)
    names = (
        f"Taste goes with it: {tastes}. Older names: Fancy is about Golden, Medium Amber about"
        " Amber, Grade B about Dark or Very Dark. An off taste (buddy, sour, scorched) is not"
        " Grade A, whatever the color."
    )
    dark = (
        "Darker: late, warm or old sap, a long slow boil, a scorched spot. Lighter: cold fresh"
        " sap, clean gear, a shallow pan and a fast boil. Dark is not bad: many like it best."
    )
    return Told(first, (names, dark, _selling(known)))


def _classes() -> str:
    """The classes with the light that each lets through: "Golden 75% up, Amber 50 to 75"."""
    said = []
    above: float | None = None
    for least, name, _ in GRADE_A_CLASSES:
        if above is None:
            said.append(f"{name} {least:g}% up")
        elif least == 0:
            said.append(f"{name} under {above:g}")
        else:
            said.append(f"{name} {least:g} to {above:g}")
        above = least
    return ", ".join(said)


def _selling(known: Known) -> str:
    line = legal_density(known.region)
    where = line.name if known.region is not None else "US law"
    most = "" if line.max_brix is None else f" to {line.max_brix:g}"
    kind = "Grade and label words" if not in_canada(known.region) else "Grade words, label, size"
    return (
        f"To sell: as I know it {where} asks {line.min_brix:g}{most} Brix. {kind}, licence and"
        f" scales have rules of their own, and rules change: ask {agriculture(known.region)}"
        " before you print a label. I promise no grade."
    )
