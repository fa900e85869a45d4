"""Sap gathered. Zero gallons is a reading: the buckets were dry."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.figures import SAP_PER_TAP_DAY_DOUBTFUL_GALLONS
from bot.reading.kinds.base import Reading
from bot.reading.puzzling import MOST_BRIX_SAID, puzzling
from bot.reading.signs import Sought
from bot.reading.volumes import role

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Noted, Notes

CUES = {
    "GATHER": (
        "kept came_away_with walked_out_with ended_the_day_with managed squeezed_out bucketed "
        "ferried schlepped dipped siphoned wound_up_with ended_up_with drained drain emptied "
        "tallied lugged_in sledded_in dragged wheeled ladled tipped_into scooped fetched fetch "
        "hauled_in "
        "finished_the_rounds finished_my_rounds finished_rounds "
        "came_home_with came_back_with made_it_to "
        "gained carry_in carrying_in haul_in found_another "
        "gathered gather gathers gathering collected collect collects collecting collection "
        "hauled haul hauling lugged brought_in bring_in bringing_in brought_back brought_home "
        "picked_up took_in take_in empty emptying emptied_out bagged carried carried_in "
        "rounded_up gave gives give yielded yield produced filled_up filled came_in came_to ran "
        "run runs pulled_in pulled_down made_the_rounds got get brought dripped added harvested "
        "milked dribbled dribbled_out "
        "take_was haul_was pumped sledded toted caught catch poured_in put_in_the_barrel "
        "took_home skimmed_in "
        "scored yanked_in hit measured totaled totalled "
    ),
    "WEAK": (
        "kept managed wound_up_with ended_up_with came_to came_in totaled totalled hit got get "
        "made run runs ran filled scored "
    ),
    "DRY": "dry bone_dry still_frozen frozen_solid",
    "DRYSAID": (
        "no_sap no_flow no_run not_a_drop not_running nothing_running nothing_in_the_buckets "
        "nothing_in_the_pails nothing_today zero_sap no_drip no_drips didn't_run didnt_run "
        "did_not_run isn't_running isnt_running not_dripping no_sap_today buckets_empty "
        "buckets_are_empty pails_empty pails_are_empty nothing_dripping no_go "
        "nothing_to_collect nothing_to_gather barely_a_drip hasn't_run never_ran aren't_running "
        "arent_running came_up_empty nothing_ran nothing_flowing not_flowing ain't_running "
        "no_sap_running nothing_in_any not_a_drip no_drip_today nothing_yet_today not_one_drop "
        "zip_today zilch_today no_sap_yet "
    ),
    "FULL": (
        "to_the_rim to_the_lip full brimming overflowing to_the_top topped_off brim_full "
        "to_the_brim brimful "
    ),
    "STILLOUT": (
        "hanging still_in_the_buckets still_in_the_pails still_in_buckets still_in_pails "
        "still_hanging still_out still_out_there to_be_gathered to_be_collected "
    ),
}

MOST_GALLONS_A_DAY = 300 * SAP_PER_TAP_DAY_DOUBTFUL_GALLONS
"""Where the taps are not known: 300 taps, the most that we serve, on twice a big day."""

MOST_TAPS_A_TREE = 4
"""More than any tree should bear (common practice, no source: three at the most)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sap(Reading):
    """Sap gathered. Zero gallons is a reading: the buckets were dry."""

    kind: ClassVar[str] = "sap"

    gallons: float
    on: date
    brix: float | None = None
    tree: str | None = None
    lot: str | None = None


def find(clause: Clause, notes: Notes) -> None:
    """Amounts that are sap, vessels of a known size, and dry days."""
    if _PARTLY_FULL.search(clause.text):
        for item in clause.free("volume", "number"):
            item.used = True
        return notes.ask("How many gal of sap was that?", fill="{} gal of sap")
    gathered = [item for item in clause.free("volume") if role(clause, item) == "sap"]
    gathered += besides(clause, notes)
    if gathered and puzzling(clause, notes):
        return None
    if gathered and _but_for_a_tree(clause, notes, gathered[0]):
        return None
    if gathered and _of_two_trees(clause, notes, gathered[0]):
        return None
    if gathered and (_each_tap(clause, notes, gathered[0]) or _each_lot(clause, notes)):
        return None
    if (
        gathered
        and not clause.own_tree
        and any(each.sort == "trees" for each in notes.items_beside(clause))
    ):
        _from_several(clause, notes, gathered[0])
        return None
    if gathered and _stray_number(clause, gathered[0]):
        return notes.ask("How many gal of sap was that?", fill="{} gal of sap")
    for item in gathered:
        if _of_what_was_told(clause, notes, item):
            continue
        item.used = True
        if notes.profile.boiling and _may_go_on_the_fire(clause, item):
            _pan_or_gathered(notes, item)
            continue
        if notes.profile.boiling and _may_be_drawn(clause, item):
            sap_or_syrup(notes, item)
            continue
        times = _containers(clause, item) * _of_each(clause, item)
        _amount(clause, notes, item, item.gallons * times)
    for item in _unit_unsaid(clause, notes):
        item.used = True
        _amount(clause, notes, item, item.value * _last_unit(notes))
    for item in clause.free("vessels"):
        if _from_each(clause, notes, item):
            continue
        _vessels(clause, notes, item, bool(gathered))
    if not gathered and not clause.free("volume"):
        _the_same(clause, notes)
        _dry(clause, notes)
        _all_full(clause, notes)
    return None


_PARTLY_FULL = Sought(
    " full",
    r"\b(?:gal|gallon|gallons|l|liter|litre) (?:\w+ )?(?:barrel|tank|tote|drum|trash can|can|vat)"
    r" (?:is |was |about )*(?:half|a third|a quarter|1/2|1/3|1/4|3/4|2/3) full\b",
)
"""`30 gal barrel half full`: how much that is, we had rather be told."""


def _the_same(clause: Clause, notes: Notes) -> None:
    """`20 gal today, same yesterday`."""
    before = notes.last(Sap)
    if before is None:
        return
    said = [each for each in clause.items if each.sort != "sign" and each.text != "and"]
    words = [each.text for each in said if each.sort == "word"]
    told = [word for word in words if word not in _WHENCE]
    days = [each for each in said if each.sort == "date"]
    named = [each for each in said if each.sort in ("tree", "lot")]
    if len(named) == 1 and len(said) == len(words) + 1 and not clause.plan:
        if told in _THE_SAME and isinstance(before.reading, Sap):
            tree, lot = (named[0].text, None) if named[0].sort == "tree" else (None, named[0].text)
            copy = replace(before.reading, tree=tree, lot=lot, brix=None)
            notes.add(copy, clause.items[0].start)  # "A1 2 gal, A2 same", "and the same from A2"
        elif {"half", "again", "did"} & clause.each_word:
            notes.ask("How many gal of sap was that?", fill="{} gal of sap")
        return
    if len(said) != len(words) + len(days) or len(days) != 1:
        return
    if words not in _THE_SAME or clause.plan:
        return
    if isinstance(before.reading, Sap) and before.reading.on != notes.day(clause):
        again = replace(before.reading, on=notes.day(clause), brix=None)
        notes.add(again, clause.items[0].start)


_WHENCE = frozenset(("from", "off", "at", "on"))
_THE_SAME = (
    ["same"], ["the", "same"], ["same", "amount"], ["ditto"], ["same", "again"], ["again"],
)  # fmt: skip


def _but_for_a_tree(clause: Clause, notes: Notes, item: Item) -> bool:
    """`everything except tree 5 gave a gallon`: of that tree alone it is not true."""
    tree = clause.first_of("tree")
    before = [] if tree is None else [each.text for each in clause.preceding(tree, 2)]
    if not {"except", "but", "besides", "all but", "except for"} & set(before):
        return False
    item.used = True
    notes.ask("How many gal of sap was that in all?", fill="{} gal of sap")
    return True


def _of_two_trees(clause: Clause, notes: Notes, item: Item) -> bool:
    """`tree 4 and tree 9 gave one gallon`: each, or together?"""
    other = _tree_joined(clause, notes)
    if other is None or not _EACH.isdisjoint(clause.words()):
        return False
    item.used = True
    notes.ask(
        f"{item.text} from each tree, or in all?",
        ("each|from each", f"tree {other} {item.text}, tree {clause.tree} {item.text}"),
        ("in all|all|both|total|together", f"{item.text} of sap"),
    )
    return True


def _tree_joined(clause: Clause, notes: Notes) -> str | None:
    """The tree of `tree 3 and | tree 5 were dry`, which says nothing of its own."""
    before = notes.clause_before()
    if before is None or before.sentence != clause.sentence or clause.joint not in ("and", "&"):
        return None
    said = [each for each in before.items if each.sort != "sign"]
    return said[0].text if len(said) == 1 and said[0].sort == "tree" and clause.own_tree else None


def _from_each(clause: Clause, notes: Notes, item: Item) -> bool:
    """`half a bucket from each of 4 trees`: so much from every one of them."""
    behind = [each.text for each in clause.following(item, 3)]
    if not {"each", "every", "per"} & set(behind):
        return False
    item.used = True
    for number in clause.free("number"):
        number.used = True
    notes.ask("How many gal of sap was that in all?", fill="{} gal of sap")
    return True


def besides(clause: Clause, notes: Notes) -> list[Item]:
    """`3 full pails plus 2 quarts`: more of the same."""
    before = notes.last(Sap)
    if before is None or before.clause != notes.clause_number - 1:
        return []
    if clause.joint not in ("plus", "+", "and", "&") or len(clause.items) > MOST_BESIDES:
        return []
    return [item for item in clause.free("volume") if role(clause, item) == "unclear"]


MOST_BESIDES = 2
"""Items of a clause that only adds an amount (our own)."""


def _all_full(clause: Clause, notes: Notes) -> None:
    """`every bucket was full today`: how much that is, nobody has said."""
    counted = clause.holds("number", "vessels")
    every = {"every", "all"} & set(clause.words())
    several = clause.has("BUCKET") or clause.holds("trees")
    if clause.has("FULL") and several and every and not counted:
        told = any(other.holds("volume") for other in notes.clauses)
        if not told and not clause.plan and not clause.negated:
            notes.ask("How many gal of sap was that in all?", fill="{} gal of sap")


_DRAWN_IN = frozenset(("pint", "half_pint", "quart", "cup", "fluid_ounce", "milliliter"))


def _may_be_drawn(clause: Clause, item: Item) -> bool:
    """`got 2 pints`, `half a gallon more` while the fire burns: as likely syrup as sap."""
    named = clause.has("SAP", "BUCKET") or clause.tree is not None or clause.lot is not None
    gathered = clause.gathers()
    sweet = clause.holds("brix")
    little = item.unit in _DRAWN_IN or item.gallons < MOST_DRAWN_UNSAID
    return little and not item.parts and not (named or gathered or sweet)


def _may_go_on_the_fire(clause: Clause, item: Item) -> bool:
    """`added another 10 gal`, `8 more gal in`, `20 gal are done` while the fire burns: to the pan,
    or to the tank?"""
    added = not _ADDED.isdisjoint(clause.words())
    behind = " ".join(each.text for each in clause.following(item, 2))
    gathers = any(
        "GATHER" in each.tags and "WEAK" not in each.tags and each.text not in _PUT_IN
        for each in clause.items
    )
    elsewhere = gathers or clause.kept or clause.has("STORE")
    return (added or behind in _DONE) and not elsewhere


def _pan_or_gathered(notes: Notes, item: Item) -> None:
    notes.ask(
        f"{item.text}: into the pan, or gathered?",
        ("pan|the pan|in the pan|into the pan|boil", f"poured {item.text} into the pan"),
        ("gathered|sap|collected|tank|barrel", f"gathered {item.text} of sap"),
    )


_ADDED = frozenset(
    (
        *("fed", "added", "added another", "adding", "topped up", "topped"),
        *("put", "put in", "poured", "poured in", "dumped"),
    )
)
_PUT_IN = frozenset(("put in", "poured in"))
_DONE = frozenset(("in", "done", "are done", "is done", "down", "boiled"))
MOST_DRAWN_UNSAID = 1.0
"""Fewer gallons than this, told beside a fire without a word of sap, may be a draw (our own)."""


def sap_or_syrup(notes: Notes, item: Item) -> None:
    """Asks what a volume is of."""
    notes.ask(
        f"{item.text}: sap, or syrup?",
        ("sap", f"{item.text} of sap"),
        ("syrup|drew off|drew", f"drew off {item.text} of syrup"),
        ("jars|bottled|canned|jarred", f"bottled {item.text}"),
    )


def _each_tap(clause: Clause, notes: Notes, item: Item) -> bool:
    """`each tap gave 3/4 gal`: so much from every one of them."""
    tap = clause.first("TAPN")
    each = next((i for i in clause.items if i.text in ("each", "every", "per", "a tap")), None)
    vessel = clause.first("BUCKET")
    of_vessels = vessel is not None and [e.text for e in clause.preceding(vessel, 1)] in _EVERY
    if of_vessels and vessel is not None and _emptied_into_it(clause, vessel, item):
        return False
    of_taps = tap is not None and each is not None
    if tap is not None and each is not None and tap.start > item.start and each.start > item.start:
        of_taps = False
    if not (of_taps or of_vessels):
        return False
    item.used = True
    what = "tap" if of_taps else "pail"
    notes.ask(f"{item.text} from each {what}: how many gal in all?", fill="{} gal of sap")
    return True


def _emptied_into_it(clause: Clause, vessel: Item, item: Item) -> bool:
    """`emptied every pail into the tank: 41 gal`: that is the sum."""
    return vessel.start < item.start and any(
        "GATHER" in each.tags and "WEAK" not in each.tags and each.start < vessel.start
        for each in clause.items
    )


_EVERY = (["each"], ["every"])


def _of_what_was_told(clause: Clause, notes: Notes, item: Item) -> bool:
    """`A3 gave 2 gal of that`: a part of it, and no more sap."""
    behind = [each.text for each in clause.following(item, 2)]
    if " ".join(behind) not in ("of that", "of it", "of those", "of them"):
        return False
    tested = any(other.has("SUGAR") or other.holds("brix") for other in notes.clauses)
    if notes.last(Sap) is None and tested:
        return False  # "sap came in at 2.2 brix, fourteen gallons of it"
    item.used = True
    said = notes.text[clause.items[0].start : item.end]
    notes.ask(
        f"{item.text} of what you told, or more sap? Text part or more.",
        ("part|of that|of it|same", ""),
        ("more|new|add it", said),
    )
    return True


def _each_lot(clause: Clause, notes: Notes) -> bool:
    """`5 gal from each lot`, `4 gal from both lots`, `3 gal from every tree`."""
    each_of = any(
        noun.text in _EACH_OF and before and before[0].text in _EACH_ONE
        for noun in clause.items
        for before in [clause.preceding(noun, 1)]
    )
    if not each_of:
        return False
    item = clause.free("volume")[0]
    item.used = True
    notes.ask(f"{item.text} from each: how many gal in all?", fill="{} gal of sap")
    return True


def _of_each(clause: Clause, item: Item) -> float:
    """`half a gallon off each of 6 trees`: how often the amount counts."""
    counts = [
        number
        for number in clause.free("number")
        if [
            each.text
            for each in clause.preceding(number, 3)
            if each.text not in ("my", "our", "the", "those")
        ][:2]
        == ["of", "each"]
        and any(each.text in _EACH_OF for each in clause.following(number, 2))
    ]
    if len(counts) != 1 or counts[0].start < item.start:
        return 1.0
    counts[0].used = True
    return counts[0].value


_EACH_OF = frozenset("lot lots tree trees bush stand spot place side maple".split())
_EACH_ONE = frozenset(("each", "every", "both", "each of the", "all the", "per"))


def _from_several(clause: Clause, notes: Notes, item: Item) -> None:
    """`trees 3 and 4, 5 gal`: each five, or five from both?"""
    trees = next(each for each in notes.items_beside(clause) if each.sort == "trees")
    item.used = True
    labels = trees.text.split()
    if any(each.text in _EACH for each in clause.following(item, 1)):
        for label in labels:
            notes.add(Sap(gallons=item.gallons, on=notes.day(clause), tree=label), item.start)
        return
    each_one = ", ".join(f"tree {label} {item.text}" for label in labels)
    notes.ask(
        f"{item.text} from each tree, or in all?",
        ("each|from each", each_one),
        ("in all|all|both|total|together", f"{item.text} of sap"),
    )


def _stray_number(clause: Clause, item: Item) -> bool:
    """`1 2 gal`: a figure right before the amount that nothing explains."""
    before = clause.preceding(item, 1)
    after = clause.following(item, 1)
    bare = bool(before) and before[0].sort == "number" and not before[0].used
    return bare and not (
        after and after[0].sort == "word" and after[0].text not in ("of", "sap", "today")
    )


def _unit_unsaid(clause: Clause, notes: Notes) -> list[Item]:
    """`5 gal this am and 7.5 more at dusk`; `tree 1 2 gal, tree 2 3`; `40 L from the hill and 25
    from the yard`; `20 gal this morning and 15 tonight`: the unit was said before."""
    before = notes.last(Sap)
    if before is None or notes.clauses[before.clause].sentence != clause.sentence:
        return []
    if clause.about("POUR", "SETV", "COSTV", "SUGAR", "BOIL") or clause.has("TAPN", "JARN"):
        return []
    out = []
    for item in clause.free("number"):
        follows = clause.following(item, 1)
        tree_first = [e for e in clause.preceding(item, 2) if "ABOUT" not in e.tags][:1]
        more = bool(follows) and "MORE" in follows[0].tags
        more = more or (bool(tree_first) and tree_first[0].text == "another")
        more = more or (clause.joint in ("plus", "+") and clause.items[0] is item)
        if tree_first and "GATHER" in tree_first[0].tags:
            tree_first = clause.preceding(tree_first[0], 1)  # "tree 11 gave 2.25 at 2.0"
            gave = bool(tree_first) and tree_first[0].sort in ("tree", "lot")
        else:
            gave = False
        listed = bool(tree_first) and tree_first[0].sort in ("tree", "lot", "date")
        listed = listed and not (tree_first[0].sort == "date" and follows)
        off = bool(follows) and follows[0].text in ("from", "off")
        whence = off and (item.value > MOST_BRIX_SAID or clause.own_tree)
        own_lot = clause.holds("lot")
        whence = whence or (bool(follows) and follows[0].text == "from" and own_lot)
        out_of = [each.text for each in clause.following(item, 2)] in _OUT_OF
        whence = whence or (out_of and clause.own_tree)
        later = bool(follows) and follows[0].sort == "date" and clause.joint in ("and", "&")
        whence = whence or (later and (item.value > MOST_BRIX_SAID or "." not in item.text))
        apart = before.clause != notes.clause_number
        if apart and (more or listed or whence or gave) and not item.part:
            out.append(item)
    return out[:1]


_OUT_OF = (["out", "of"], ["out", "from"])


def _last_unit(notes: Notes) -> float:
    """Gallons in the unit that was used last."""
    volumes = [i for c in notes.clauses for i in c.of_sort("volume") if i.used and i.value]
    if not volumes:
        return 1.0
    last = volumes[-1].parts[-1] if volumes[-1].parts else volumes[-1]
    return last.gallons / last.value if last.value else 1.0


def _amount(clause: Clause, notes: Notes, item: Item, gallons: float) -> None:
    said = item.text if item.sort == "volume" else f"{gallons:g} gal"
    if clause.has("TWICE"):
        notes.ask("How many gal of sap is that in all?", fill="{} gal of sap")
        return
    each_before = any(
        each.text in _EACH and each.start < item.start and each.sort == "word"
        for each in clause.items
    )
    if each_before and _each_of_the_named(clause, notes, gallons, item):
        return
    if each_before and any(not i.part for i in clause.free("number")):
        for number in clause.free("number"):
            number.used = True
        notes.ask(f"{said} each: how many gal in all?", fill="{} gal of sap")
        return
    if _is_each(clause, item):
        count = _counted(clause, notes)
        if count is not None:
            gallons *= count
        elif not _each_of_the_named(clause, notes, gallons, item):
            notes.ask(f"{said} each from how many?", fill=None)
            return
        else:
            return
    named = clause.tree is not None
    taps = _taps_said(clause)
    most = most_gallons(MOST_TAPS_A_TREE if named else taps or notes.profile.taps)
    sure = "really" in clause.words() and gallons <= MOST_GALLONS_A_DAY
    if gallons > most and not sure:
        whose = "one tree" if named else "your taps"
        where = f"tree {clause.tree} " if clause.tree else f"{clause.lot} " if clause.lot else ""
        again = f"{item.value:g}|{said}|{item.value:g} gal|{item.value:g} gallons"
        notes.ask(
            f"{said} in a day is a lot for {whose}. Is it so? Text ok, or how many gal it was.",
            (f"ok|yes|y|yep|yeah|right|correct|it is so|{again}", f"really {where}{said} of sap"),
            fill=f"{where}{{}} gal of sap",
        )
        return
    tree = clause.tree
    other = _bare_tree(clause) if tree is not None and not clause.own_tree else None
    if other is not None:
        other.used, tree = True, f"{other.value:g}"
    lot = None if _goes_on_with_a_lot(clause, notes) else clause.lot
    notes.add(Sap(gallons=gallons, on=notes.day(clause), tree=tree, lot=lot), item.start)


def _taps_said(clause: Clause) -> int | None:
    """`700 gal off 6 taps`: how many taps the text says that it came from."""
    for item in clause.items:
        before = [each.text for each in clause.preceding(item, 1)]
        behind = clause.following(item, 1)
        counted = item.sort == "number" and bool(behind) and "TAPN" in behind[0].tags
        if counted and before in (["off"], ["from"], ["on"], ["of"]) and item.value >= 1:
            return int(item.value)
    return None


def _is_each(clause: Clause, item: Item) -> bool:
    """`2 gal each`, `6 gal apiece`; but in `13 gal both 2.0` both have that sugar."""
    behind = clause.following(item, 3)
    tested = any(each.sort in ("number", "brix") for each in behind)
    sugar = tested and behind[0].text == "both"
    in_each = [each.text for each in behind[:2]] in (["in", "each"], ["in", "every"])
    return in_each or (bool(behind) and behind[0].text in _EACH and not sugar)


def _goes_on_with_a_lot(clause: Clause, notes: Notes) -> bool:
    """`20 gal from ridge | and brook`: of both, and no lot's own."""
    following = notes.clause_after()
    if following is None or following.sentence != clause.sentence or clause.lot is None:
        return False
    said = [each for each in following.items if each.sort != "sign"]
    joined = following.joint in ("and", "&")
    own = clause.holds("lot")
    return joined and own and len(said) == 1 and said[0].sort == "lot"


_EACH = frozenset(("each", "apiece", "a piece", "ea", "both"))


def _containers(clause: Clause, item: Item) -> float:
    """`four 6-gallon carboys`: the count before a size, 1 where there is none."""
    before = clause.preceding(item, 1)
    if before and before[0].sort == "number" and not before[0].used and not before[0].part:
        noun = next(iter(clause.following(item, 1)), None)
        if (
            noun is not None
            and noun.sort == "word"
            and noun.text not in ("of", "sap", "from", "at")
        ):
            before[0].used = True
            return before[0].value
    return 1.0


def _counted(clause: Clause, notes: Notes) -> float | None:
    """`5 pails at 10 litres each`, `2 milk cans of sap, ten gallons apiece`: the count."""
    before = notes.clause_before() or clause
    for other in (clause, before):
        if other.sentence != clause.sentence:
            continue
        for each in other.free("vessels", "number"):
            if not each.part and each.value == int(each.value):
                each.used = True
                return each.value
    # "collected 2 pails, 3 gal in each": put by, since the amount was still to come.
    told = any(noted.clause == notes.clause_number - 1 for noted in notes.noted)
    pails = before.of_sort("vessels")
    here = before.sentence == clause.sentence and before is not clause and not told
    if here and len(pails) == 1 and not pails[0].part and pails[0].value % 1 == 0:
        return pails[0].value
    return None


def _each_of_the_named(clause: Clause, notes: Notes, gallons: float, item: Item) -> bool:
    """`tree 1 and tree 2 gave 2 gal each`, `3 gal each from ridge and brook`: one reading for
    each. Says whether it could be told."""
    here = notes.sentence(clause)
    days = [each for other in here for each in other.of_sort("date")]
    if len({day.on for day in days}) > 1 and all(d.on and not d.ahead for d in days):
        for day in days:
            if day.on is not None:
                notes.add(Sap(gallons=gallons, on=day.on, lot=clause.lot), item.start)
        return True
    amounts = [each.start for other in here for each in other.of_sort("volume")]
    since = max((at for at in amounts if at < item.start), default=-1)
    until = min((at for at in amounts if at > item.start), default=len(notes.text))
    for sort in ("tree", "lot"):
        names = [
            each.text
            for other in here
            for each in other.items
            if each.sort == sort and since < each.start < until
        ]
        if len(names) > 1:
            for name in names:
                tree, lot = (name, None) if sort == "tree" else (None, name)
                one = Sap(gallons=gallons, on=notes.day(clause), tree=tree, lot=lot)
                notes.add(one, item.start)
            return True
    return False


def _vessels(clause: Clause, notes: Notes, item: Item, has_amount: bool) -> None:
    if clause.about("SETV", "PULLV", "COSTV", "HOLD") and not clause.has("FULL", "GATHER", "SAP"):
        return
    if not _PUT_AWAY.isdisjoint(clause.words()) and not clause.has("FULL", "GATHER"):
        item.used = True
        return  # "washed 40 buckets"
    if not _LOST.isdisjoint(clause.words()) or (clause.has("ITEMS") and not clause.has("FULL")):
        item.used = True
        return  # "a bear got into the ridge, 3 buckets gone"
    signs = clause.has("MOTHS") or (item.part and clause.has("CLOUDY", "YELLOW", "SMELL"))
    if signs and not clause.has("FULL", "GATHER"):
        item.used = True
        return  # "moths floating in half of the pails"
    if item.article and not _RAIDERS.isdisjoint(clause.words()):
        item.used = True
        return  # "raccoons got a pail, 3 quarts on the ground"
    if item.article and clause.near("HOLD") and not clause.has("FULL"):
        item.used = True
        return  # "one bucket holds 6 quarts, we measured it with a jug"
    if item.article and (clause.has("MOTHS") or clause.about("SETV")) and not clause.has("FULL"):
        item.used = True
        return  # "a moth in a pail", "hung a bucket on every one"
    if clause.near("CLOUDY", "YELLOW", "MOTHS") and clause.near("POUR"):
        item.used = True
        return  # "cloudy sap in two pails so I tossed 4 gallons"
    if item.article and clause.near("POUR") and not clause.has("FULL", "GATHER"):
        item.used = True
        return  # "the wind flipped a bucket and we lost about 1 gal"
    _of_so_many(clause, item)
    full = item.unit == "full" or clause.has("FULL")
    following = notes.clause_after()
    joined = following is not None and following.joint in ("and", "plus", "+", "&")
    if joined and following is not None and following.sentence == clause.sentence:
        rest = following.of_sort("volume")
        if rest and following.items[0] is rest[0] and not full and not clause.has("SETV", "HOLD"):
            item.used = rest[0].used = True
            notes.ask("How many gal of sap was that in all?", fill="{} gal of sap")
            return  # "two buckets and a gallon"
    if has_amount and not full:
        item.used = True
        return
    if _amount_in_sentence(clause, notes) and not full and _repeats_the_amount(clause, item):
        item.used = True
        return
    full = full or _brimming_next(clause, notes)
    sappy = full or clause.about("GATHER", "SAP") or item.part or item.article or item.value % 1
    if not sappy or clause.has("FOREIGN", "OTHERS"):
        return
    item.used = True
    if clause.about("POUR") and not clause.kept:
        return
    size = notes.profile.bucket_gallons
    if item.part and item.value < 1 and not _SEVERAL.isdisjoint(item.text.split()):
        # "half the buckets": a share of them, and not of one.
        if not _amount_in_sentence(clause, notes):
            notes.ask("How many gal of sap was that in all?", fill="{} gal of sap")
        return
    if "half full" not in item.text and _fullness_told_later(clause, notes):
        notes.ask("How many gal of sap was that in all?", fill="{} gal of sap")
        return
    if size is None:
        notes.ask(
            f"{item.value:g} bucket{'' if item.value == 1 else 's'}: how many gal of sap in all?",
            fill="{} gal of sap",
        )
        return
    before = notes.last(Sap)
    if (
        before is not None
        and isinstance(before.reading, Sap)
        and _same_round(clause, notes, before)
    ):
        more = before.reading.gallons + item.value * size
        before.reading = replace(before.reading, gallons=more)
        return  # "4 full buckets and one at half"
    _amount(clause, notes, item, item.value * size)


def _same_round(clause: Clause, notes: Notes, before: Noted) -> bool:
    """Vessels that are counted on, in the clause after others."""
    told = notes.clauses[before.clause]
    joined = clause.joint in ("and", "plus", "+", "&", ",") and told.sentence == clause.sentence
    alike = told.tree == clause.tree and told.lot == clause.lot and told.on == clause.on
    counted = told.holds("vessels")
    sugar = isinstance(before.reading, Sap) and before.reading.brix is not None
    return joined and alike and counted and not sugar and before.clause == notes.clause_number - 1


def _of_so_many(clause: Clause, item: Item) -> None:
    """`10 of the 12 buckets were full`: ten."""
    before = clause.preceding(item, 3)
    while before and before[0].text in ("the", "my", "our"):
        before = before[1:]
    if len(before) > 1 and before[0].text == "of" and before[1].sort == "number":
        before[1].used = True
        item.value = before[1].value


_RAIDERS = frozenset(
    "raccoon raccoons coon coons bear bears deer squirrel squirrels dog dogs goat goats cow cows "
    "wind moose porcupine turkey turkeys".split()
)
_PUT_AWAY = frozenset(
    "washed washing scrubbed scrubbing rinsed rinsing cleaned cleaning dried drying stacked "
    "stacking nested stored sanitized bleached lids covers".split()
)
_LOST = frozenset(
    "upset overturned flipped gone stolen missing broken smashed crushed bent lids".split()
)


def _brimming_next(clause: Clause, notes: Notes) -> bool:
    """`4 pails, all brimming`, `four pails, every one of them full`."""
    following = notes.clause_after()
    return (
        following is not None
        and following.sentence == clause.sentence
        and following.has("FULL")
        and all("FULL" in i.tags or i.text in _ALL_FULL for i in following.items)
    )


_SEVERAL = frozenset(("buckets", "pails", "bags", "jugs"))
_ALL_FULL = frozenset("all both right the way plumb clear every one of them and".split())


_SHARE_FULL = re.compile(r"\b\d/\d full\b")


def _fullness_told_later(clause: Clause, notes: Notes) -> bool:
    """`12 pails, each about half full`: a share that the count does not hold."""
    return any(
        _SHARE_FULL.search(other.text) is not None
        or "half full" in other.text
        or "1/2 full" in other.text
        or "quarter full" in other.text
        or "third full" in other.text
        for other in notes.sentence(clause)
        if not (other is not clause and other.holds("vessels"))
    )


def _repeats_the_amount(clause: Clause, item: Item) -> bool:
    """`emptied 12 buckets, 18 gal`: a count of vessels beside what was in them."""
    return not (item.part or item.value % 1 or clause.own_tree or clause.has("MORE"))


def _amount_in_sentence(clause: Clause, notes: Notes) -> bool:
    return any(
        each.sort == "volume" and role(other, each) in ("sap", "unclear")
        for other in notes.clauses
        if abs(other.sentence - clause.sentence) <= 1
        for each in other.items
    )


def _dry(clause: Clause, notes: Notes) -> None:
    """A day, a tree or a lot that gave nothing."""
    speaks = clause.has if clause.has("DRYSAID") else clause.about
    if speaks("BOIL", "FIRE", "COSTV", "PULLV", "SETV") or clause.free("hours", "money"):
        return
    counted = any(
        n.tags & {"TAPN", "TREEN"}
        for item in clause.of_sort("number")
        for n in clause.following(item, 3)
    )
    if counted and not clause.has("ALL"):
        return  # "4 taps are dry", "half the taps arent running"
    named = clause.tree is not None or clause.lot is not None
    listed = notes.last(Sap) is not None and clause.holds("date")
    about_sap = named or listed or clause.has("BUCKET", "SAP", "TAPN")
    empty = clause.items[-1].text == "empty" and len(clause.items) == 2 and named
    said = clause.has("DRYSAID") or (clause.has("DRY") and about_sap) or empty or _dry_day(clause)
    if not said and not (clause.has("NONE") and (about_sap or clause.about("GATHER"))):
        return
    if {"wood", "weather"} & set(clause.words()):
        return
    start = clause.items[0].start
    before = notes.last(Sap)
    if (
        not named
        and before is not None
        and before.reading == Sap(gallons=0.0, on=notes.day(clause))
    ):
        return  # "not a drip out there, pails empty"
    other = _bare_tree(clause)
    if other is not None and clause.tree is not None and not clause.own_tree:
        other.used = True
        notes.add(Sap(gallons=0.0, on=notes.day(clause), tree=f"{other.value:g}"), start)
        return
    if (
        not named
        and not listed
        and any(
            other.holds("volume", "vessels") and not other.about(*_NOT_GATHERED)
            for other in notes.clauses
        )
    ):
        return
    several = clause.first_of("trees")
    joined = _tree_joined(clause, notes)
    trees = [clause.tree] if several is None else several.text.split()
    for tree in trees if joined is None else [joined, *trees]:
        notes.add(Sap(gallons=0.0, on=notes.day(clause), tree=tree, lot=clause.lot), start)
    following = notes.clause_after()
    if following is not None and _is_one_more_day(clause, following):
        on = notes.day(following)
        notes.add(Sap(gallons=0.0, on=on, tree=clause.tree, lot=clause.lot), start)


_NOT_GATHERED = ("BOIL", "FIRE", "THROUGH", "DRAW", "SYRUP", "BOTTLE", "JARN")
"""What an amount is of beside a day without sap: `no sap. ended up with 40 oz of syrup`."""


def _dry_day(clause: Clause) -> bool:
    """`dry today`, `monday nothing`, `bone dry all day`: a day, and that it gave nothing."""
    told = [each for each in clause.items if each.sort != "sign"]
    dry = [each for each in told if each.tags & {"DRY", "NONE"} and each.text in _DRY_ALONE]
    day = any(each.sort == "date" for each in told)
    rest = [each for each in told if each.sort != "date" and each not in dry]
    return day and len(dry) == 1 and all(each.text in _BESIDE_DRY for each in rest)


_DRY_ALONE = frozenset(("dry", "bone dry", "nothing", "none", "zip", "nada", "zilch"))
_BESIDE_DRY = frozenset(("all", "everything", "on", "day", "at all", "at", "again"))


def _is_one_more_day(clause: Clause, following: Clause) -> bool:
    """`no sap thurs | and fri`."""
    said = [each for each in following.items if each.sort != "sign"]
    joined = following.joint in ("and", "&") and following.sentence == clause.sentence
    return joined and len(said) == 1 and said[0].sort == "date"


def _bare_tree(clause: Clause) -> Item | None:
    """`nothing from 9`, where trees were spoken of."""
    for item in clause.free("number"):
        before = clause.preceding(item, 1)
        if before and before[0].text in ("from", "off", "in", "on"):
            return item
    return None


def most_gallons(taps: int | None) -> float:
    """The most sap of one day, in gallons, that is believed without asking."""
    return MOST_GALLONS_A_DAY if taps is None else max(taps, 1) * SAP_PER_TAP_DAY_DOUBTFUL_GALLONS
