"""What one bucket holds."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading
from bot.reading.kinds.sap import Sap, most_gallons
from bot.reading.volumes import role

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

NEEDS = ("volume",)
CUES = {
    "HOLD": (
        "can_take can_hold takes fits hold holds holding_capacity capacity bucket_size size "
        "bucket_capacity pail_capacity "
    ),
}

LEAST_GALLONS = 0.25
MOST_GALLONS = 60.0
"""From a milk jug's quarter to a drum: beyond that it is no bucket (common practice, no source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BucketSize(Reading):
    """What one bucket holds."""

    kind: ClassVar[str] = "bucket_size"

    gallons: float


def find(clause: Clause, notes: Notes) -> None:
    """What one bucket holds."""
    _beside_taps(clause, notes)
    for item in clause.free("volume"):
        aside = notes.is_letter and not clause.has("HOLD")
        if aside and not {"my", "our"} & set(clause.words()):
            continue  # in a letter pails are spoken of for other reasons
        if role(clause, item) != "bucket" or (clause.plan and not clause.has("HOLD")):
            continue
        before = clause.preceding(item, 2)
        if _given_up(clause, item, notes):
            item.used = True
            continue
        theirs = not _OTHERS.isdisjoint(clause.words())
        if theirs or (before and before[0].text.endswith("'s")):
            continue  # "dad's 2 gal pail finally rusted out"
        count = (
            before[0] if before and before[0].sort == "number" and not before[0].article else None
        )
        one = bool(before) and before[0].text in ("a", "one") and not clause.has("HOLD")
        contents = _tells_of_contents(clause, notes, counted=count is not None or one)
        item.used = True
        if contents or (count is not None and count.part):
            if count is not None:
                count.used = True
            both = bool(before) and before[0].text == "both"
            share = count.value if count is not None else 2.0 if both else 1.0
            _filled(clause, notes, item, share)
            continue
        if _of_jugs(clause, item):
            notes.ask("Sap, or syrup? Text it like: got 12 gal. Or: bottled 6 pints.")
            continue
        if not LEAST_GALLONS <= item.gallons <= MOST_GALLONS:
            notes.ask("How many gal does one bucket hold?", fill="my buckets hold {} gal")
            continue
        if clause.about("POUR", "COSTV", "BUY") or clause.free("money"):
            continue
        if _SAT_ON.search(clause.text):
            continue
        if clause.has("BROKEN") or not _HURT.isdisjoint(clause.words()):
            continue  # "the 5 gal bucket has a crack in it"
        if count is not None:
            count.used = True
            if not (clause.has("SETV", "HAVE", "BUY") or clause.near("TAPN")):
                notes.ask(
                    f"{count.value:g} x {item.text}: full of sap, or what your buckets hold?",
                    ("sap|full", f"{count.value * item.value:g} {item.text.split()[-1]} of sap"),
                    ("hold|buckets|size|what they hold", f"my buckets hold {item.text}"),
                )
                continue
        notes.add(BucketSize(gallons=item.gallons), item.start)


def _of_jugs(clause: Clause, item: Item) -> bool:
    """`five quart jugs`: as likely what syrup was put up in."""
    jugs = any(each.text in ("jug", "jugs") for each in clause.following(item, 2))
    return jugs and not clause.has("HOLD", "HAVE", "SETV") and _OURS.isdisjoint(clause.words())


_OURS = frozenset("my our use using catch with".split())


def _given_up(clause: Clause, item: Item, notes: Notes) -> bool:
    """`swapped the 2 gal pails for 5 gal ones`: those that were before."""
    deed = next((each for each in clause.items if each.text in _GIVES_UP), None)
    behind = any(
        each.sort == "volume" and each.start > item.start for each in notes.items_beside(clause)
    )
    return deed is not None and deed.start < item.start and behind


_SAT_ON = re.compile(
    r"\bfor an? (?:seat|stool|chair|step|table|drum|hat|sled|helmet)\b"
    r"|\bto (?:sit|stand) on\b"
)
"""`used a 5 gallon pail for a seat`."""
_HURT = frozenset("crack cracks cracked hole holes leave left missing".split())
_GIVES_UP = frozenset("swapped traded replaced switched changed upgraded".split())
_OTHERS = frozenset("his her their".split())


def _beside_taps(clause: Clause, notes: Notes) -> None:
    """`set 20 taps; buckets 2 gal`: what one holds, or what was in them all?"""
    bare = len(clause.items) == 2 and "BUCKET" in clause.items[0].tags
    volumes = clause.free("volume")
    set_up = any(noted.reading.kind == "place" for noted in notes.noted)
    if (
        bare
        and volumes
        and not set_up
        and any(other.has("SETV", "PUTIN") for other in notes.clauses)
    ):
        volumes[0].used = True
        said = volumes[0].text
        notes.ask(
            f"{said}: does one bucket hold that, or is it sap?",
            ("bucket|holds|hold|size|each|one", f"my buckets hold {said}"),
            ("sap|gathered", f"{said} of sap"),
        )


def _tells_of_contents(clause: Clause, notes: Notes, *, counted: bool) -> bool:
    """`2 five gallon pails full of sap`: not what they hold, but what was in them."""
    if clause.has("HOLD"):
        return False
    if clause.near("SAP") and not clause.has("HAVE", "SETV", "BUY"):
        return True  # "a five gal pail and a half of sap"
    full = clause.has("FULL") or any(
        other.has("FULL") and not other.negated and not {"never", "ever"} & set(other.words())
        for other in notes.sentence(clause)
    )
    from_trees = clause.lot is not None or not {"from", "off"}.isdisjoint(clause.words())
    gathered = clause.has("GATHER") and not clause.has("HAVE", "SETV") and counted
    gathered = gathered or (counted and from_trees and not clause.has("BUY", "SETV"))
    return full or clause.has("SAP") or gathered


def _filled(clause: Clause, notes: Notes, item: Item, share: float) -> None:
    """`2 five gallon pails full of sap` is sap."""
    if clause.about("POUR"):
        item.used = False
        return
    if _SHARE_LATER.search(notes.text[item.end :]):
        notes.ask("How many gal of sap was that in all?", fill="{} gal of sap")
        return  # "a 5 gal pail from the ridge, 3/4 full"
    gallons = item.gallons * share * _fullness(clause)
    if gallons > most_gallons(notes.profile.taps):
        notes.ask("That is a lot of sap for a day. How many gal was it?", fill="{} gal of sap")
        return
    notes.add(
        Sap(gallons=gallons, on=notes.day(clause), tree=clause.tree, lot=clause.lot), item.start
    )


_SHARE_LATER = re.compile(r"[,.;-] *(?:about |only )?(?:\d/\d|half|a third|a quarter) full\b")


def _fullness(clause: Clause) -> float:
    full = clause.first("FULL")
    if full is None:
        return 1.0
    before = clause.preceding(full, 1)
    return (
        before[0].value
        if before and before[0].sort == "number" and 0 < before[0].value < 1
        else 1.0
    )
