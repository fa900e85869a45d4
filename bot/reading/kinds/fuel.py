"""Wood or propane burned. A cord is 128 cubic feet."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot import units
from bot.figures import PROPANE_LB_PER_GALLON
from bot.reading.kinds.base import Reading
from bot.reading.volumes import is_rate

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

NEEDS = ("cords", "mass", "number", "PROPANE", "WOOD", "BURN")
CUES = {
    "BURNISH": "took thru through chimney arch finish up go",
    "BURN": (
        "burned burnt burning burn used went_through used_up ran_through fed consumed gone "
        "emptied go_through ate_up "
    ),
    "WOOD": "wood firewood slabs slabwood slab_wood cordwood kindling pine hemlock",
    "PROPANE": "propane lp lp_gas cylinder cylinders propane_tank propane_tanks",
    "STACK": (
        "split stacked cut stack bucked delivered hauled_in seasoned splitting cutting stacking "
        "need needs have got dry left ready refilled refill swapped "
    ),
}

MOST_CORDS = 15.0
MOST_PROPANE_LB = 2000.0
"""More than 300 taps' sap of a week boils away: most likely a slip."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fuel(Reading):
    """Wood or propane burned. A cord is 128 cubic feet."""

    kind: ClassVar[str] = "fuel"

    on: date
    cords: float | None = None
    propane_lb: float | None = None


def find(clause: Clause, notes: Notes) -> None:
    """Cords of wood and pounds of propane that were burned."""
    _cords(clause, notes)
    _propane(clause, notes)


def _cords(clause: Clause, notes: Notes) -> None:
    if not clause.free("cords"):
        _in_other_loads(clause, notes)
    for item in clause.free("cords"):
        if is_rate(clause, item):
            item.used = True
            continue
        burned = (
            clause.has("BURN", "BOIL", "THROUGH")
            or (clause.has("BURNISH") and _CUT.isdisjoint(clause.words()))
            or _boil_told(notes)
            or clause.about("BOIL", "FIRE", "BURN", "DRAW", "SYRUP")
        )
        paid = any(each.sort == "money" for each in notes.items_beside(clause))
        bought = paid and not clause.has("BURN", "BOIL", "BURNISH")
        if bought or clause.has("BUY", "PRICE", "COSTV") or clause.plan:
            continue
        item.used = True
        behind = [each.text for each in clause.following(item, 2)]
        if burned and (behind[:1] in (["left"], ["ready"]) or behind == ["to", "go"]):
            continue  # "boiled 20 gal, half a cord left"
        if not burned and (not clause.has("WOOD") or _still_there(clause)):
            notes.ask(
                f"{item.text}: burned?",
                ("burned|ok|yeah|yep", f"burned {item.text} of wood"),
                ("no|nope|not yet|left|stacked|have", ""),
            )
            continue
        cords = item.value * units.factor(item.unit, "cord")
        if not 0 < cords <= MOST_CORDS:
            notes.ask(
                "How many cords did you burn? A face cord is a third.",
                fill="burned {} cord",
                number_only=False,
            )
            continue
        notes.add(Fuel(on=notes.day(clause), cords=cords), item.start)


def _still_there(clause: Clause) -> bool:
    """`half a cord of wood left`, `down to the last face cord`, `stacked 3 cords of wood`."""
    there = re.search(r"\b(?:by the|in the|stacked|brought up|delivered)\b", clause.text)
    return clause.has("STACK") or there is not None or not _LEFT.isdisjoint(clause.words())


_CUT = frozenset("bucked split stacked stacking piled hauled sawed".split())
"""What is done to wood that is not burned yet."""
_LEFT = frozenset(("down to", "last", "remaining", "only"))


def _in_other_loads(clause: Clause, notes: Notes) -> None:
    """`burned 2 wheelbarrows of wood`: how much that is, nobody knows."""
    loads = [item for item in clause.free("number") if not item.part]
    burned = clause.has("BURN") and clause.has("WOOD") and not clause.free("hours", "money")
    if not burned or not loads or clause.plan or clause.negated:
        return
    loads[0].used = True
    notes.ask(
        "How many cords is that? A face cord is a third.",
        fill="burned {} cord",
        number_only=False,
    )


def _boil_told(notes: Notes) -> bool:
    return any(noted.reading.kind in ("boil", "syrup") for noted in notes.noted) or any(
        clause.has("END", "SHUT", "LIT") for clause in notes.clauses
    )


_RATE_OR_NEW = re.compile(r"\b(?:an|per|every) hour\b|/ ?hr?\b|\bhooked up\b")
"""`uses 3 lb of propane an hour`, `hooked up a 20 lb tank`: nothing that was burned."""


def _propane(clause: Clause, notes: Notes) -> None:
    if (
        not (clause.about("PROPANE") or clause.near("PROPANE"))
        or clause.has("BUY", "PRICE", "COSTV")
        or clause.free("money")
    ):
        return
    if not clause.has("PROPANE") and not clause.free("mass"):
        return
    if _refilled(clause, notes) or _RATE_OR_NEW.search(clause.text):
        return
    item = next(iter(clause.free("mass")), None)
    if item is not None:
        item.used = True
        count = _count_before(clause, item)
        pounds = item.value * units.factor(item.unit, "pound") * count
    else:
        item = next(
            (
                each
                for each in clause.free("volume")
                if each.unit in ("gallon", "liter")
                and any("PROPANE" in near.tags for near in clause.following(each, 2))
            ),
            None,
        )
        if item is None:
            if (
                clause.has("BURN")
                and not clause.has("PLAN")
                and (clause.free("number") or {"tank", "cylinder", "bottle"} & set(clause.words()))
            ):
                notes.ask("What size tank, in lb of propane?", fill="burned {} lb of propane")
            return
        item.used = True
        pounds = item.gallons * PROPANE_LB_PER_GALLON
    if item.sort == "mass" and any(each.part for each in clause.free("number")):
        notes.ask("How many lb of propane did you burn?", fill="burned {} lb of propane")
        return
    burned = clause.has("BURN", "BURNISH", "BOIL", "THROUGH") or _boil_told(notes)
    if clause.has("STACK") and not burned:
        said = f"{pounds:g} lb of propane"
        notes.ask(f"{said}: burned?", ("burned|ok|yeah|yep", f"burned {said}"))
        return
    if not 0 < pounds <= MOST_PROPANE_LB:
        notes.ask("How many lb of propane did you burn?", fill="burned {} lb of propane")
        return
    notes.add(Fuel(on=notes.day(clause), propane_lb=pounds), item.start)


def _refilled(clause: Clause, notes: Notes) -> bool:
    """`filled the 100 lb tank, $85`: bought, and not burned; without a price it is asked."""
    if _FILLED.isdisjoint(clause.words()) or clause.has("BURN"):
        return False
    paid = any(item.sort == "money" for item in notes.items_beside(clause))
    for item in clause.free("mass"):
        item.used = True
        if not paid:
            said = f"{item.text} of propane"
            notes.ask(f"{said}: burned?", ("burned|ok|yeah|yep", f"burned {said}"))
    return True


_FILLED = frozenset("filled refilled topped exchanged swapped refill fill".split())


def _count_before(clause: Clause, item: Item) -> float:
    """`two 20 lb tanks`, `half a 20 lb tank`, `2 tanks, 20 lb each`."""
    if any(each.text in ("each", "apiece", "a piece") for each in clause.following(item, 1)):
        counted = [one for one in clause.free("number") if one.start < item.start and not one.part]
        for one in counted:
            one.used = True
        return counted[0].value if len(counted) == 1 else 1.0
    before = [each for each in clause.preceding(item, 3) if each.text not in ("a", "of", "x", "-")]
    if before and before[0].sort == "number" and not before[0].used:
        before[0].used = True
        return before[0].value
    return 2.0 if before and before[0].text == "both" else 1.0
