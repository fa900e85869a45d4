"""Syrup drawn off or finished."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading
from bot.reading.kinds.boil import Boil, came_of_it
from bot.reading.kinds.sap import besides, sap_or_syrup
from bot.reading.levels import is_a_sum
from bot.reading.puzzling import strangers
from bot.reading.volumes import SYRUP_FROM, is_gone, role

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

NEEDS = ("volume",)
CUES = {
    "DRAW": (
        "drawn came_out_with ended_with "
        "drew_off drawoff draw_offs drawoffs drew draw draw_off drawing_off drawn_off took_off "
        "take_off taken_off pulled_off pull_off sugared_off sugared_down finished_off finished "
        "syruped_off off_the_pan ran_off came_off first_draw second_draw third_draw "
        "made_it_to_syrup poured_off got_off off_at let_off drawing draws "
    ),
    "MADE": (
        "made make makes making ended_up_with wound_up_with netted yielded came_out_to turned_out "
    ),
    "BATCH": "batch",
}

MOST_SYRUP_GALLONS = 60.0
"""A day's syrup that is believed without asking: the most sap of a day (kinds/sap.py) at the
sweetest that is believed (kinds/sugar.py), in round figures."""


MOST_SYRUP_OF_SAP = 0.2
"""By volume, of sap at 16 Brix: twice what the sweetest sap gives (our own)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Syrup(Reading):
    """Syrup drawn off or finished."""

    kind: ClassVar[str] = "syrup"

    gallons: float
    on: date
    brix: float | None = None


def find(clause: Clause, notes: Notes) -> None:
    """Amounts that are syrup."""
    for item in clause.free("volume"):
        what = role(clause, item)
        if came_of_it(clause, notes, item):
            what = "syrup"
        if clause.has("TWICE") and what == "syrup":
            item.used = True
            notes.ask("How much syrup was that in all?", fill="drew off {} of syrup")
            continue
        if what == "unclear" and (_spoke_of_syrup(clause, notes) or _as_dense_as_syrup(notes)):
            what = "syrup"
        if what == "unclear" and item not in besides(clause, notes):
            _ask_what(clause, notes, item)
        if what != "syrup":
            continue
        item.used = True
        ours = clause.about("DRAW", "BOTTLE") or clause.near("BOIL", "FIRE")
        if strangers(clause, item) and not ours:
            notes.ask(f"{item.text} of syrup: yours? If so, text it like: drew off 3 qt.")
            continue
        if _is_eaten(clause, item):
            continue
        spoiled = not _SPOILED.isdisjoint(clause.words()) or {"let", "burn"} <= set(clause.words())
        spoiled = spoiled and not clause.has("WOOD", "PROPANE")
        spoiled = spoiled and not clause.free("cords", "mass")
        if is_gone(clause, item) or spoiled:
            notes.ask(
                f"{item.text} of syrup lost? I keep sap alone: put right what was drawn or bottled,"
                " like: no, 5 pints."
            )
            continue
        if is_a_sum(clause, item) and not _SEASONS.isdisjoint(clause.words()):
            notes.ask(
                f"{item.text} of syrup: drawn now, or the sum so far?",
                ("now|drawn now|new|more|today", f"drew off {item.text} of syrup"),
                ("sum|so far|total|the sum|season|in all", ""),
            )
            continue
        times = _times(clause, notes, item)
        if times is None:
            notes.ask("How much syrup was that in all?", fill="drew off {} of syrup")
            continue
        gallons = item.gallons * times
        if gallons > MOST_SYRUP_GALLONS:
            notes.ask(
                f"{item.text} of syrup in a day? Sap, or syrup?",
                ("sap", f"{item.text} of sap"),
                ("syrup", f"{item.text} of syrup"),
            )
            continue
        if _more_than_the_sap(notes, gallons) or _more_than_was_boiled(notes, gallons):
            continue
        notes.add(Syrup(gallons=gallons, on=notes.day(clause)), item.start)


def _is_eaten(clause: Clause, item: Item) -> bool:
    """`we went through 2 cups of our syrup`."""
    before = [each.text for each in clause.preceding(item, 2)]
    return before[::-1] in (["went", "through"], ["gone", "through"]) or before[:1] in (
        ["went through"],
        ["used"],
    )


def _times(clause: Clause, notes: Notes, item: Item) -> float | None:
    """`two draws, 3 pints each`, `about a quart a time`: how often, None where nobody said; 1 for
    an amount told whole."""
    behind = " ".join(each.text for each in clause.following(item, 2))
    if not behind.startswith(_EACH_TIME):
        return 1.0
    counts = [
        number
        for other in notes.sentence(clause)
        for number in other.free("number")
        if any(_is_a_draw(each) for each in other.following(number, 1))
    ]
    if len(counts) != 1 or counts[0].value != int(counts[0].value):
        return None
    counts[0].used = True
    return counts[0].value


_SPOILED = frozenset("burnt burned scorched ruined wrecked wasted".split())
_SEASONS = frozenset("season year spring running".split())
_EACH_TIME = ("each", "apiece", "a time", "every time", "a draw", "per draw")


def _is_a_draw(item: Item) -> bool:
    return "DRAW" in item.tags or item.text in ("times", "time", "batches", "boils")


def _as_dense_as_syrup(notes: Notes) -> bool:
    """`2.5 qts, 66.9 brix`: what follows it is the sugar of syrup."""
    following = notes.clause_after()
    here = notes.clauses[notes.clause_number]
    return (
        following is not None
        and following.sentence == here.sentence
        and any(each.sort == "brix" and each.value >= SYRUP_FROM for each in following.items)
    )


def _spoke_of_syrup(clause: Clause, notes: Notes) -> bool:
    """`our first ever syrup! 14 ounces`."""
    before = notes.clause_before()
    return (
        before is not None
        and before.sentence != clause.sentence
        and before.has("SYRUP")
        and not before.question
        and not any(other.has("SAP", "GATHER") for other in notes.clauses)
    )


def _more_than_the_sap(notes: Notes, gallons: float) -> bool:
    """`50 gal of syrup from 40 gal of sap` is asked about, and nothing of it taken."""
    sap = [
        i
        for c in notes.clauses
        for i in c.of_sort("volume")
        if not c.has("POUR") and any("SAP" in each.tags for each in c.following(i, 2))
    ]
    if not sap or gallons < sap[0].gallons / 2:
        return False
    for item in sap:
        item.used = True
    notes.ask(
        "That is more syrup than the sap can give. How much syrup was it?", fill="{} gal of syrup"
    )
    return True


def _more_than_was_boiled(notes: Notes, gallons: float) -> bool:
    """`boiled 40 gal and made 12 gal of syrup`: no sap is so sweet."""
    boiled = [
        noted.reading.gallons
        for noted in notes.all(Boil)
        if isinstance(noted.reading, Boil) and noted.reading.gallons is not None
    ]
    if not boiled or gallons <= MOST_SYRUP_OF_SAP * sum(boiled):
        return False
    notes.ask(
        "That is more syrup than the sap can give. How much syrup was it?", fill="{} gal of syrup"
    )
    return True


def _ask_what(clause: Clause, notes: Notes, item: Item) -> None:
    if clause.has("OTHERS", "FOREIGN"):
        return
    item.used = True
    sap_or_syrup(notes, item)
