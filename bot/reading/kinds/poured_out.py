"""Sap dumped, spilled, spoiled, or frozen and thrown."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot import units
from bot.reading.kinds.base import Reading
from bot.reading.kinds.sap import Sap, most_gallons
from bot.reading.volumes import CONTAINER_UNITS, into_the_pan, is_gone, role

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

NEEDS = ("volume", "POUR")
CUES = {
    "POUR": (
        "there_go there_goes there_went got_rid_of get_rid_of getting_rid_of out_went pitched "
        "cost_us cost_me dropped_a dumped "
        "dump dumping poured poured_out pour "
        "pour_out spilled spilt spill spilling threw_out threw_away throw_out throw_away "
        "thrown_out thrown_away tossed tossed_out toss chucked ditched lost knocked_over "
        "kicked_over tipped_over tipped dump_out dumped_out discarded discard had_to_dump "
        "emptied_onto_the_ground leaked leaked_out went_bad gone_bad spoiled spoilt "
        "went_sour got_away "
        "split_the_jug split_the_bucket split_the_pail on_the_snow blew_over wasted "
        "all_over_the_floor all_over_the_ground all_over_the_deck on_the_floor "
        "over_the_floor to_the_lawn on_the_lawn fed_it_to "
        "threw_it_all_out threw_all_of_it_out tossed_it_all dumped_it_all poured_it_all_out "
        "dribbled_away "
        "sprang_a_leak sprung_a_leak springing_a_leak "
        "heave_out heaved_out heaving_out slopped_out sloshed_out "
        "slopped_over sloshed_over down_the_gutter "
        "down_the_sink down_the_sewer down_the_bank_it_went "
        "down_the_drain on_the_ground threw_it_out threw_it_away poured_it_out dumped_it "
    ),
}

DAYS_OF_SAP = 7
"""No more is poured out at once than a week's biggest runs give."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PouredOut(Reading):
    """Sap dumped, spilled, spoiled, or frozen and thrown."""

    kind: ClassVar[str] = "poured_out"

    on: date
    gallons: float | None = None


def find(clause: Clause, notes: Notes) -> None:
    """What is poured out, with its amount where there is one."""
    gone = any(is_gone(clause, item) for item in clause.free("volume"))
    if not (clause.about("POUR") or gone) or clause.kept:
        return
    if not clause.has("POUR") and not clause.free("volume", "number"):
        return
    deeds = {item.text for item in clause.items if "POUR" in item.tags}
    if deeds and deeds <= _COST_US and not clause.free("volume"):
        return  # "wood cost me 120"
    if _into_the_fire_pan(clause, notes) or (into_the_pan(clause) and clause.has("SAP")):
        return
    if "steam" in clause.words() or "lids" in clause.words():
        return  # "lost a gallon to steam"
    poured = [item for item in clause.free("volume") if role(clause, item) == "poured_out"]
    if not poured:
        poured = _some_of_it(clause) or _gallons_unsaid(clause, notes)
    for item in poured:
        item.used = True
        drawn = clause.near("DRAW") and item.unit in CONTAINER_UNITS and not clause.has("SAP")
        jarred = clause.near("JARN") and not clause.has("SAP") and item.unit in CONTAINER_UNITS
        if clause.has("SYRUP") or drawn or jarred or item.unit == "half_pint":
            said = item.text
            notes.ask(
                f"{said} of syrup lost? I keep sap alone: put right what was drawn or bottled,"
                " like: no, 5 pints."
            )
            continue
        if item.unit == "pint" and not (clause.has("SAP", "BUCKET") or clause.tree or clause.lot):
            said = item.text
            notes.ask(
                f"{said} of sap lost, or of syrup?",
                ("sap", f"dumped {said} of sap"),
                ("syrup|jar|jars", ""),
            )
            continue
        gallons = item.gallons if item.sort == "volume" else _in_gallons(item, notes)
        if gallons is None:
            what = "bucket" if item.value == 1 else "buckets"
            notes.ask(f"{item.value:g} {what} poured out: how many gal?", fill="dumped {} gal")
            continue
        if gallons > DAYS_OF_SAP * most_gallons(notes.profile.taps):
            notes.ask(f"{gallons:g} gal poured out? How many was it?", fill="dumped {} gal")
            continue
        _forget_unmeasured(notes)
        notes.add(PouredOut(gallons=gallons, on=notes.day(clause)), item.start)
    if poured or notes.all(PouredOut):
        return
    if clause.has("NONE"):
        return  # "one wipeout, zero spilled"
    number = next((item for item in clause.free("number") if not item.part), None)
    if number is not None and not clause.has("POUR") and len(clause.items) <= MOST_BESIDE:
        _what_was_it(notes, number)  # "dumped the cloudy stuff, all 14"
        return
    before = notes.clause_before()
    if (
        before is not None
        and before.sentence == clause.sentence
        and any(not i.part and not i.used and i.sort == "number" for i in before.items)
        and clause.about("POUR")
        and len(clause.items) <= MOST_BESIDE
    ):
        number = next(i for i in before.of_sort("number") if not i.used)
        _what_was_it(notes, number)  # "20 of that was rain water, dumped it"
        return
    measured = any(
        other.about("POUR") and other.holds("volume") for other in notes.sentence(clause)
    )
    vessels = [
        item
        for item in ([] if measured else clause.free("vessels"))
        if not item.article and item.value > 1 and not _is_the_whole(clause, item)
    ]
    if vessels:
        for item in vessels:
            item.used = True
        notes.ask(f"{vessels[0].text} poured out: how many gal?", fill="dumped {} gal")
        return
    if measured and "one" in clause.each_word:
        return  # "tipped one, we lost a gallon"
    if not _said_before(clause, notes):
        _without_amount(clause, notes)


MOST_BESIDE = 3
"""Items of a clause that only tells how much (our own)."""


def _what_was_it(notes: Notes, number: Item) -> None:
    number.used = True
    if number.vague:
        notes.ask("How many gal was that?", fill="dumped {} gal")
        return
    metric = notes.profile.units == "metric"
    unit, words = ("L", "l|litres|liters") if metric else ("gal", "gal|gallons")
    notes.ask(
        f"{number.value:g} what did you pour out: {unit}?",
        (f"{words}|sap|ok", f"dumped {number.value:g} {unit}"),
        fill=f"dumped {{}} {unit}",
    )


def _forget_unmeasured(notes: Notes) -> None:
    """The same deed told twice, the second time with its amount, is one."""
    for noted in notes.all(PouredOut):
        if isinstance(noted.reading, PouredOut) and noted.reading.gallons is None:
            notes.noted.remove(noted)


def _gallons_unsaid(clause: Clause, notes: Notes) -> list[Item]:
    """`14 gal, dumped 3 that went bad`: a bare number after the deed, or vessels."""
    if clause.near("BOTTLE", "JARN", "DRAW") and not clause.has("SAP"):
        return []  # "bottled 10 pints, lost 2"
    vessels = clause.free("vessels")
    if vessels:
        told = any(
            item.sort == "volume"
            for other in notes.clauses
            for item in other.items
            if abs(other.sentence - clause.sentence) <= 1
        )
        return [] if told else vessels
    spoke_of_gallons = any(other.holds("volume") for other in notes.clauses)
    if not spoke_of_gallons:
        return []
    bare = [item for item in clause.free("number") if not item.part]
    told_beside = any(
        other is not clause and other.has("POUR") and other.holds("volume")
        for other in notes.clauses
    )
    if bare and bare[0].text == "one" and clause.has("POUR") and told_beside:
        bare.pop(0).used = True  # "tipped one, we lost a gallon": a pail
    return [
        item
        for item in bare
        if any(
            not each.tags.isdisjoint(("POUR", "ABOUT", "MORE"))
            for each in clause.preceding(item, 1)
        )
        or (
            clause.has("POUR")
            and any(each.text in ("out", "away") for each in clause.preceding(item, 1))
        )
    ][:1]


def _some_of_it(clause: Clause) -> list[Item]:
    """`16 gal, 2 of it spilled`: of what was told, in its unit."""
    return [
        item
        for item in clause.free("number")
        if [each.text for each in clause.following(item, 2)] in _OF_IT and not item.part
    ][:1]


_OF_IT = (["of", "it"], ["of", "that"], ["of", "them"], ["of", "those"])


def _said_before(clause: Clause, notes: Notes) -> bool:
    """`6 gal went cloudy so dumped it`: the amount stands before the deed. Sap that was
    gathered in the same breath stays gathered."""
    before = notes.last(Sap)
    if (
        before is None
        or not isinstance(before.reading, Sap)
        or before.clause != notes.clause_number - 1
    ):
        return False
    told = notes.clauses[before.clause]
    if told.sentence != clause.sentence or told.has("GATHER") or before.reading.brix is not None:
        return False
    if {"some", "rest", "old", "other"} & set(clause.words()) or clause.has("BUCKET"):
        return False
    if any(not item.part for item in clause.free("number")):
        return False  # "25 gal today, dumped another 4"
    if not _ALL_OF_IT & clause.each_word and len(clause.items) > 1:
        return False  # "14 gal, threw out the ice", "14 gal, lost a spile"
    notes.noted.remove(before)
    if _A_SHARE & clause.each_word:
        notes.ask("How many gal of sap did you keep?", fill="{} gal of sap")
        return True
    notes.add(PouredOut(gallons=before.reading.gallons, on=before.reading.on), before.at)
    return True


def _is_the_whole(clause: Clause, item: Item) -> bool:
    """`2 of the 40 buckets blew off`: of how many, and what was in them is not said to be lost."""
    before = [each.text for each in clause.preceding(item, 2)]
    return "of" in before and "FULL" not in clause.tags


_ALL_OF_IT = frozenset("it all that them everything".split())
_INTO = re.compile(
    r"\b(?:poured|dumped|put|pour|dump) (?:the |all |it |all the )*(?:rest|it|all)\b.*\bin(?:to)?\b"
)


def _into_the_fire_pan(clause: Clause, notes: Notes) -> bool:
    """`poured the rest in`, `dumped the rest in the pan`: it goes on to boil."""
    if _INTO.search(clause.text) is None or clause.free("volume") or clause.has("STORE"):
        return False
    if not (clause.has("PANN", "FIRE") or clause.items[-1].text in ("in", "all in", "rest in")):
        return False
    notes.ask("How many gal went into the pan?", fill="poured {} gal into the pan")
    return True


_COST_US = frozenset(("cost us", "cost me"))
_A_SHARE = frozenset("half most part third quarter".split())
"""`20 gal but half was ice that I tossed`."""


def _in_gallons(item: Item, notes: Notes) -> float | None:
    if item.sort == "number":
        return item.value * _in_its_unit(notes)
    size = notes.profile.bucket_gallons
    return None if size is None else item.value * size


def _in_its_unit(notes: Notes) -> float:
    """Gallons in the unit that the text measured in before: `40 L today, spilled 2`."""
    volumes = [i for c in notes.clauses for i in c.of_sort("volume") if i.value]
    metric = bool(volumes) and volumes[0].unit in ("liter", "milliliter")
    return units.factor("liter", "gallon") if metric else 1.0


_ALL_TOLD = frozenset("it all everything rest whole".split())
_IN_GENERAL = frozenset(("leak", "leaks", "leaking"))
_SAID_ALONE = frozenset("lost leaked spoiled wasted spill spilling tipped".split())


def _without_amount(clause: Clause, notes: Notes) -> None:
    deed = clause.first("POUR") or (clause.items[0] if clause.has("POUR") else None)
    if clause.has("FOREIGN", "BROKEN", "ITEMS"):
        return
    if {"one", "ones"} & clause.each_word and not clause.free("number", "volume"):
        notes.ask("How many gal was that?", fill="dumped {} gal")
        return  # "threw out the yellow one"
    named = clause.tree is not None or clause.holds("tree")
    one = any(i.sort == "tree" for c in notes.clauses for i in c.items if c.near("BUCKET"))
    if named or one:
        notes.ask("How many gal was that?", fill="dumped {} gal")
        return  # "moth in bucket A5 so tossed it": not all that there is
    if deed is not None and deed.text in _IN_GENERAL:
        return  # "those jugs leak"
    if deed is None or (deed.text in _SAID_ALONE and not clause.near("SAP", "BUCKET", "STORE")):
        return
    if clause.free("number"):
        _what_was_it(notes, clause.free("number")[0])
        return
    if clause.has("SAP", "BUCKET", "STORE") or _ALL_TOLD & clause.each_word:
        notes.add(PouredOut(on=notes.day(clause)), deed.start)
