"""A sign of the season: buds, cloudy_sap, yellow_sap, off_smell or moths."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.notes import Notes

CUES = {
    "BUDS": (
        "buds budding budded bud_break budbreak red_haze leafing leafed leaf_out leafing_out "
        "starting_to_bud starting_to_bud_out about_to_bud bud_out "
        "in_bud in_buds are_in_bud "
        "buds_swelling blooming bloomed in_bloom flowering in_flower "
    ),
    "CLOUDY": (
        "skim_milk like_milk like_dishwater clouded clouding clouded_up cloudy milky hazy "
        "cloudiness murky "
    ),
    "YELLOW": "yellow yellowish yellowing yellowed",
    "SMELL": (
        "tastes_buddy tastes_off tastes_sour tastes_funny tasting_buddy smell smells smelled "
        "smelly stinks stink stinky stunk sour soured funky ropy ropey buddy_smell off_smell "
        "odor odour odors smelling skunky fermented vinegary musty reeks foul rotten "
    ),
    "MOTHS": "moth moths millers miller_moths sap_moths",
    "OFFSMELL": (
        "ripe funky iffy questionable yeasty wrong funny off bad buddy sour weird "
        "odd like old socks "
        "rank feet strange cabbage buggy musty skunky "
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Sign(Reading):
    """A sign of the season: buds, cloudy_sap, yellow_sap, off_smell or moths."""

    kind: ClassVar[str] = "sign"

    sign: str
    on: date


_SHUT = frozenset("tight closed dormant shut small still".split())
_AT_WORK = frozenset("running drip dripping dripped run trees".split())
_SIGNS = (
    ("BUDS", "buds"),
    ("CLOUDY", "cloudy_sap"),
    ("YELLOW", "yellow_sap"),
    ("MOTHS", "moths"),
    ("SMELL", "off_smell"),
)
NEEDS = tuple(tag for tag, _ in _SIGNS)


def find(clause: Clause, notes: Notes) -> None:
    """Signs of the season that were seen, and not those that were not."""
    if clause.negated or clause.has("OTHERS") or clause.has("NONE"):
        return
    for tag, name in _SIGNS:
        seen = clause.first(tag)
        if seen is None or not _meant(tag, seen.text, clause, notes):
            continue
        if any(noted.reading.as_dict().get("sign") == name for noted in notes.all(Sign)):
            continue
        notes.add(Sign(sign=name, on=notes.day(clause)), seen.start)


def _meant(tag: str, word: str, clause: Clause, notes: Notes) -> bool:
    words = set(clause.words())
    if words & _ONLY_FEARED or "looking for" in clause.text:
        return False
    if tag == "BUDS" and _FRIENDS.search(clause.text):
        return False
    if tag == "BUDS" and word in _FLOWERS and not words & _OUR_TREES and not clause.has("SPECIES"):
        return False  # "the crocus is blooming"
    if tag == "BUDS":
        return not words & _SHUT and not words & _OTHER_PLANTS
    if tag == "MOTHS":
        clothes = {"sweater", "sweaters", "closet", "wool", "coat", "coats", "clothes"}
        clothes |= {
            "flour",
            "bin",
            "pantry",
            "cupboard",
            "cereal",
            "oats",
            "lamp",
            "window",
            "rice",
        }
        return "moth balls" not in clause.text and not words & clothes
    sappy = (
        clause.has("SAP", "BUCKET", "STORE")
        or _sap_in_sentence(clause, notes)
        or bool(words & _AT_WORK)
    )
    anew = clause.has("SAP", "STORE") and not clause.has("POUR", "BOTTLE", "DRAW")
    if clause.about("POUR") and not anew:
        return False
    if (clause.about("BOTTLE", "DRAW") and not anew) or (
        clause.has("SYRUP") and not clause.has("SAP")
    ):
        return False
    if tag == "CLOUDY" or tag == "YELLOW":
        seen = clause.first(tag)
        thing = clause.following(seen, 1) if seen is not None else []
        if thing and thing[0].tags & {"BUCKET", "STORE", "TAPN", "PANN"}:
            return False
        told = clause.has("SAP", "BUCKET", "STORE")
        return sappy and (told or not words & _SKY) and (told or not _windy_beside(clause, notes))
    if tag == "SMELL":
        bad = clause.has("OFFSMELL") or word not in ("smell", "smells", "smelled", "smelling")
        sappy = sappy or clause.has("PANN", "BOIL") or "steam" in words
        return (
            sappy and bad and not words & {"good", "great", "sweet", "amazing", "wonderful", "fine"}
        )
    return False


def _windy_beside(clause: Clause, notes: Notes) -> bool:
    """`cloudy and warm today, 8 gal`: the sky's, where the next words are of the weather too."""
    return any(
        not _SKY.isdisjoint(other.words()) and not other.has("SAP", "BUCKET", "STORE")
        for other in notes.sentence(clause)
        if other is not clause
    )


_FRIENDS = re.compile(
    r"\b(?:my|the|with|his|our|her) (?:\w+ )?buds (?:at|and|for|over|came|are coming"
    r"|is coming|helped|help|will|said|say|dropped|stopped|show|showed|want|wanted|love|loved"
    r"|think)\b"
    r"|\bbuds (?:\w+ ){0,2}(?:coming over|to help|helped|came over|stopped by)\b"
)
"""`meeting my buds at seven`, `my buds are coming over`: no buds of trees."""
_OTHER_PLANTS = frozenset(
    "lilac lilacs apple apples willow willows poplar poplars popple aspen aspens forsythia cherry "
    "pear magnolia dogwood".split()
)
_FLOWERS = frozenset(("blooming", "bloomed", "in bloom", "flowering", "in flower"))
_OUR_TREES = frozenset("maple maples tree trees".split())
_ONLY_FEARED = frozenset(
    "worried afraid scared feared watching watch thought expecting dreading".split()
)
_SKY = frozenset(
    "sky skies day weather morning snow windy wind warm sunny sun rain rainy cold "
    "outside out".split()
)


def _sap_in_sentence(clause: Clause, notes: Notes) -> bool:
    return any(
        other.has("SAP", "BUCKET", "STORE") or other.holds("volume")
        for other in notes.sentence(clause)
    )
