"""Words around the know-how: which of two is meant, and what an instrument's figures come to."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from bot.figures import BOTTLE_F, BOTTLE_F_LEAST, BOTTLE_F_MOST
from bot.wording import amounts
from bot.wording.style import Style

NOT_KNOWN = (
    "I have no how-to on that. Ask of tapping, drilling, spiles, buckets, storing, boiling,"
    " finishing, filtering, bottling, grades or safety."
)
# First aid for a burn: cool running water is from memory; it defers to 911 and a doctor.
FIRE = (
    "Fire where it should not be: everybody out, call 911. No water on burning syrup, fat or foam:"
    " a lid if you can reach it safely, the burner or damper shut. Don't go back in."
)
HARM = (
    "Call 911 now. Out into the air, if you can do it safely; wet clothes off, keep them warm."
    " Not breathing: do what the dispatcher tells you. Fumes or an alarm: everybody out first."
)
BURN = (
    "A burn: cool running water at once, 10 minutes or more. Rings and wet cloth off, no ice, no"
    " butter. A child, a face, a hand, or bigger than a palm: call 911 or a doctor now."
)
ALL_TOLD = "That is all I have on it. Ask it another way, or something else."


@dataclass(frozen=True, slots=True)
class Name:
    """What a how-to is called when two are offered: its words, the one word that picks it, other
    words that do, and the question that asks for it."""

    words: str
    word: str
    also: tuple[str, ...]
    asked: str


NAMES: Final[dict[str, Name]] = {
    "identify_tree": Name(
        "telling the trees apart", "trees", ("tree", "identify"), "how do i identify a maple tree"
    ),
    "when_to_tap": Name("when to tap", "when", ("tap", "tapping"), "when should i tap"),
    "where_to_drill": Name(
        "where to drill", "where", ("drill", "drilling"), "where on the tree do i drill the hole"
    ),
    "how_deep": Name("how deep to drill", "deep", ("depth",), "how deep should i drill the hole"),
    "which_bit": Name("which bit", "bit", ("bits", "drill bit"), "which size drill bit do i use"),
    "setting_spile": Name(
        "setting spiles", "spiles", ("setting", "spile", "set"), "how do i set a spile in the hole"
    ),
    "containers": Name(
        "what to gather in",
        "buckets",
        ("containers", "pails", "bucket", "gather", "gathering"),
        "what kind of buckets or containers can i use",
    ),
    "cleaning": Name(
        "cleaning gear", "cleaning", ("clean", "wash", "washing"), "how do i clean my buckets"
    ),
    "storing": Name(
        "keeping sap", "storing", ("keeping", "store", "storage", "sap"), "how do i store sap"
    ),
    "boiling": Name("boiling", "boiling", ("boil",), "how do i boil sap"),
    "finishing": Name(
        "knowing when it is syrup",
        "finishing",
        ("finish", "syrup", "done"),
        "how do i finish syrup and know when it is done",
    ),
    "filtering": Name("filtering", "filtering", ("filter", "filters"), "how do i filter syrup"),
    "bottling": Name(
        "bottling and keeping syrup",
        "bottling",
        ("bottle", "jars", "canning"),
        "how do i bottle syrup",
    ),
    "grading": Name(
        "grades and color", "grades", ("grade", "grading", "color"), "how is syrup graded by color"
    ),
    "season_end": Name(
        "when the season ends",
        "over",
        ("season", "season over"),
        "how do i know the season is over",
    ),
    "pulling_spiles": Name(
        "pulling spiles", "pulling", ("pull", "holes"), "how do i pull the spiles"
    ),
    "safety": Name("safety", "safety", ("safe", "danger"), "is sugaring dangerous, safety tips"),
    "other_species": Name(
        "other kinds of tree",
        "species",
        ("kinds", "other", "others"),
        "can i tap other species like birch or walnut",
    ),
}


def which(first: Name, second: Name) -> str:
    """Two how-tos are nearly as likely."""
    return f"Do you ask about {first.words}, or {second.words}? Text {first.word} or {second.word}."


def light(percent: float, colour: str, taste: str) -> str:
    """The class that a measured light transmission belongs to; no grade is promised."""
    return (
        f"{amounts.number(percent)}% light is the {colour} class, {taste} taste, if a kit or meter"
        " read it right. Grade A wants density and clean taste too: I promise no grade."
    )


Advice = Literal["reheat", "fill now", "fill", "too hot"]


def bottling(at_f: float, advice: Advice, style: Style) -> str:
    """Whether syrup is hot enough to be bottled."""
    now = amounts.temperature(at_f, style)
    least, wanted, most = (
        amounts.temperature(heat, style) for heat in (BOTTLE_F_LEAST, BOTTLE_F, BOTTLE_F_MOST)
    )
    said = {
        "reheat": f"{now} is too cool: reheat to {wanted}. Under {least} it may not keep.",
        "fill now": f"{now} will do if you cap at once: it must be {least} or more under the cap.",
        "fill": f"{now} is right: fill and cap at once, never under {least}.",
        "too hot": f"{now} is hot: over {most} it darkens. Let it come down to {wanted}.",
    }[advice]
    return f"{said} Gloves: it burns."


def too_thick(
    gallons: float,
    brix: float,
    wanted_brix: float,
    water_gallons: float,
    ends_gallons: float,
    style: Style,
) -> str:
    """Water that thick syrup takes."""
    ends = amounts.volume(ends_gallons, style)
    return (
        f"{amounts.syrup(gallons, style)} at {amounts.brix(brix)}: stir in"
        f" {amounts.fluid(water_gallons, style)} of hot water or sap for {wanted_brix:g} Brix,"
        f" reheat and test. Ends with {ends}. It spits: gloves."
    )


def too_thin(
    gallons: float,
    brix: float,
    wanted_brix: float,
    water_gallons: float,
    ends_gallons: float,
    style: Style,
) -> str:
    """Water that thin syrup still has to lose."""
    return (
        f"{amounts.syrup(gallons, style)} at {amounts.brix(brix)}: boil off about"
        f" {amounts.fluid(water_gallons, style)} for {wanted_brix:g} Brix, then test. Ends with"
        f" {amounts.volume(ends_gallons, style)}. It is quick at the end: watch it."
    )


def thin_it(water_gallons: float, wanted_brix: float, style: Style) -> str:
    """What to do with the thick syrup just told."""
    return (
        f"Thick: crystals may come. Stir in {amounts.fluid(water_gallons, style)} of hot water or"
        f" sap for {wanted_brix:g}, reheat, test. It spits: gloves."
    )


def boil_on(water_gallons: float, wanted_brix: float, style: Style) -> str:
    """What to do with the thin syrup just told."""
    return (
        f"Thin: under {wanted_brix:g} it may sour. Boil off about"
        f" {amounts.fluid(water_gallons, style)} more and test again."
    )


def as_it_should_be(brix: float, verdict: str) -> str:
    """Neither too thick nor too thin."""
    return f"{amounts.brix(brix)} Brix is right as it is. {verdict}"
