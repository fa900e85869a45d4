"""Which tree, lot and day each clause speaks of, also where that is said in another one."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from bot.reading.day_said_last import OTHER_MATTERS, day_said_last
from bot.reading.frames import FRAME_TAGS, QUANTITIES
from bot.reading.signs import Sought

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item


def mark_names_and_days(found: Sequence[Clause]) -> None:
    if all(clause.sorts.isdisjoint(_NAMES_AND_DAYS) for clause in found):
        return
    tree: str | None = None
    lot: str | None = None
    on: date | None = None
    ahead = False
    sentence = -1
    lone_day = lone_lot = apart = False
    for n, clause in enumerate(found):
        if clause.sentence != sentence:
            goes_on = clause.items[0].text in _TREE_GOES_ON or _goes_on_about_it(clause)
            tree, lot = (tree if goes_on else None), (lot if lone_lot else None)
            if not lone_day:
                on, ahead = None, False
            sentence, lone_day = clause.sentence, False
        trees = clause.of_sort("tree")
        lots = clause.of_sort("lot")
        days = [
            item
            for item in clause.of_sort("date")
            if not clause.aside
            and not _of_what_was_had(clause, item)
            and not any(each.text in _UP_TO for each in clause.preceding(item, 1))
            and not _of_the_sap_that_is_boiled(clause, item)
        ]
        if trees:
            tree, clause.own_tree = trees[0].text, True
            if _tells_of_a_tree(clause):
                clause.tree, tree = tree, None
                clause.lot, clause.on, clause.ahead = lot, on, ahead
                if not days:
                    continue
        told = not clause.sorts.isdisjoint(QUANTITIES)
        lone_lot = bool(lots) and not told and _only_done(clause)
        if lots:
            lot = lots[0].text if not _of_both_lots(clause, lots) else None
        elif lot is not None and n and _from_elsewhere(clause):
            lot = None  # "10 gal from the hill lot, 5 gal behind the shed"
        if not trees and tree is not None and _of_all_others(clause):
            tree = None  # "3 gal off tree 4, 14 gal off the rest"
        was_apart, apart = apart, False
        if days:
            on, ahead = days[0].on, days[0].ahead
            heads = not clause.tags & FRAME_TAGS or (not ahead and _goes_on_bare(found, n))
            lone_day = n == 0 and not told and heads
            goes_on = was_apart and clause.joint in ("and", "&", "or") and clause.sorts <= _DATES
            apart = goes_on or _of_the_weather(clause) or _has_a_day_of_its_own(clause)
            if apart:
                clause.tree, clause.lot = clause.tree or tree, lot
                clause.on, clause.ahead = on, ahead
                on, ahead = None, False
                continue
        if "now" in clause.words() and not days:
            on, ahead = None, False  # "bottled 8 pints yesterday, fire lit now"
        clause.tree, clause.lot, clause.on, clause.ahead = tree, lot, on, ahead
    day_said_last(found)
    if len(found) > 1 and any(clause.sorts & _NAMES for clause in found):
        _name_said_last(found)
        _lot_before_its_sugar(found)
        _names_behind_amounts(found)
        _of_lots_in_a_row(found)


_NAMES = frozenset(("tree", "lot"))
_NAMES_AND_DAYS = _NAMES | {"date"}
_DATES = frozenset(("date", "sign"))


_GETS = frozenset(("GATHER", "SAP", "DRAW", "SYRUP"))


def _goes_on_bare(found: Sequence[Clause], n: int) -> bool:
    """`yesterday first draw! 0.4 gal`: a sentence of an amount, with no deed of its own."""
    following = found[n + 1] if n + 1 < len(found) else None
    if following is None or following.sentence == found[n].sentence:
        return False
    amount = not following.sorts.isdisjoint(QUANTITIES)
    deeds = found[n].tags & FRAME_TAGS
    same = deeds <= _GETS and not following.tags & (FRAME_TAGS - {"SYRUP", "SAP"})
    return amount and same and not following.tags & {"SOFAR", "TOTAL"}


_OF_A_TREE_ALONE = frozenset(
    "died leaking missing needs woodpecker squirrel parked skipped split cracked fell chewed "
    "forgot blocked plugged frozen".split()
)


def _tells_of_a_tree(clause: Clause) -> bool:
    """`tree 6 died over the winter, 14 gal today`: what follows is not of that tree."""
    amount = clause.holds("volume", "vessels", "brix")
    dry = bool(clause.tags & {"DRY", "DRYSAID"})
    return not amount and (dry or not _OF_A_TREE_ALONE.isdisjoint(clause.words()))


def _of_all_others(clause: Clause) -> bool:
    counted = clause.holds("volume", "vessels")
    words = set(clause.words())
    rest = words & {"rest", "others", "other", "everything", "everyone"}
    return counted and bool(rest or clause.tags & {"TOTAL"} or words & {"today", "all"})


_PLACES = frozenset(
    "barn shed house road lane yard garden field brook creek hill swamp fence driveway garage "
    "school pond back front top bottom behind church corner meadow woods".split()
)


def _from_elsewhere(clause: Clause) -> bool:
    """An amount of its own, with words for a place that is no known lot."""
    counted = clause.holds("volume", "number", "vessels")
    words = set(clause.words())
    if words & _BRINGS:
        words -= {"home", "back"}  # "went up to the ridge and came home with 33 gal"
    placed = [
        item
        for item in clause.items
        if item.text in words and (item.tags & {"LOTN", "COMPASS"} or item.text in _PLACES)
    ]
    return counted and bool(placed)


_BRINGS = frozenset("came brought carried hauled lugged drove walked took".split())


def _of_what_was_had(clause: Clause, day: Item) -> bool:
    """`boiled sunday's 40 gal today`, `bottled yesterday's draw`: when it was had, not the deed."""
    deed = bool(clause.tags & {"BOIL", "BOTTLE", "DRAW", "POUR", "LIT"})
    behind = clause.following(day, 1)
    owned = day.text.endswith("'s") or (day.text.endswith("s") and day.text[-4:] not in _ENDS_IN_S)
    thing = bool(behind) and (
        behind[0].sort in ("volume", "number") or bool(behind[0].tags & {"SAP", "SYRUP", "DRAW"})
    )
    of_it = [each.text for each in clause.preceding(day, 1)] == ["of"]
    return (
        deed
        and owned
        and clause.items[0] is not day
        and (thing or of_it or day.text.endswith("'s"))
    )


def _has_a_day_of_its_own(clause: Clause) -> bool:
    """`froze hard last night, got 12 gal`, `nothing yesterday, 18 gal`, `missed yesterday so 25
    gal`: the day is that of what is told there, and not of the amount behind it."""
    amount = clause.holds("volume", "brix", "vessels")
    if amount:
        return False
    words = clause.each_word
    if clause.items[0].sort == "date" or words & _TOLD_LATE:
        return False  # "feb 28 bought tubing, $31", "forgot friday, 13 gal"
    if _LAST_TIME.search(clause.text):
        return True
    dry = bool(clause.tags & {"NONE", "DRYSAID", "DRY"})
    reading = clause.text.startswith(("it was ", "low ", "high ", "hit ", "down to "))
    figure = clause.holds("number", "temp")
    return dry or bool(words & OTHER_MATTERS) or (reading and figure)


_LAST_TIME = Sought(
    "last",
    r"\blast (?:checked|collected|gathered|emptied|hauled|time|went|was|run was|visit)\b"
    r"|\b(?:checked|collected|gathered|emptied|hauled|was there|out there) last on\b",
)
"""`last collected sunday, 9 gal`: the day of the time before."""
_TOLD_LATE = frozenset("forgot forget texted told logged sent wrote reported log text send".split())
_ENDS_IN_S = frozenset(("weds", "tues", "hurs"))


def _goes_on_about_it(clause: Clause) -> bool:
    """Whether a sentence goes on about the tree of the one before."""
    return _from_it(clause) or _it_gave(clause) or _measures_it(clause) or _says_its_kind(clause)


def _says_its_kind(clause: Clause) -> bool:
    """`tree 2 with a string: 58 inches around. it's a sugar maple`."""
    return clause.items[0].text in _IT_IS and "SPECIES" in clause.said


_IT_IS = frozenset(("it's", "its", "it is", "that's", "that one is"))


def _measures_it(clause: Clause) -> bool:
    """`class tree 4 is a sugar maple. our tape says 58 inches around.`"""
    said = clause.each_word
    return clause.holds("length") and not _MEASURES.isdisjoint(said) and "tape" in said


_MEASURES = frozenset("around across girth circumference diameter dbh".split())


def _from_it(clause: Clause) -> bool:
    """`tree 15 is a silver maple. got 1.25 gal from it`."""
    return any(
        " ".join(pair) in ("from it", "off it") for pair in itertools.pairwise(clause.words())
    )


def _it_gave(clause: Clause) -> bool:
    """`tree 8 is a sugar maple. it gave us 1.5 gal`."""
    return [each.text for each in clause.items[:1]] == ["it"] and any(
        each.text in _TREE_GOES_ON or each.text in ("ran", "filled") for each in clause.items[1:2]
    )


_SAID_OF_A_LOT = frozenset(
    "done finished emptied gathered collected all just the report run lot bush side first next "
    "now then is was".split()
)


def _only_done(clause: Clause) -> bool:
    """`bog done. 18 gal`: the amount is that of the lot before it; of `bog is frozen. 18 gal`
    it is not."""
    return all(
        item.sort in ("lot", "sign", "date") or item.text in _SAID_OF_A_LOT for item in clause.items
    )


_UP_TO = frozenset("til till until before than".split())


def _of_the_sap_that_is_boiled(clause: Clause, day: Item) -> bool:
    """`boiled the 25 gal from last night`, `45 gal since yesterday`: not the day of the deed."""
    volumes = clause.holds("volume")
    boils = bool(clause.tags & {"BOIL", "FIRE", "LIT", "POUR", "BOTTLE"})
    before = [each.text for each in clause.preceding(day, 1)]
    if day.text.startswith("since ") or before == ["since"]:
        dry = bool(clause.tags & {"NONE", "DRY", "DRYSAID"})
        return (volumes or dry) and not boils
    return (day.text.startswith("from ") or before == ["from"]) and volumes and boils


_TREE_GOES_ON = frozenset("gave gives give yielded produced".split())
"""`tree 5: sugar maple, 17 in. gave 1.5 gal`: a deed of the tree that was spoken of."""


def _of_the_weather(clause: Clause) -> bool:
    """`22 degrees last night`: a day of its own, not that of what follows."""
    figures = [item for item in clause.items if item.sort in QUANTITIES]
    return (
        bool(figures)
        and all(item.sort == "temp" for item in figures)
        and not clause.tags & (FRAME_TAGS | {"STORE", "SAP", "PANN", "WATERN"})
    )


def _of_both_lots(clause: Clause, lots: Sequence[Item]) -> bool:
    """`20 gal ridge and brook together`: one amount of several, and none's own."""
    names = {item.text for item in lots}
    amounts = [item for item in clause.items if item.sort in ("volume", "vessels")]
    return len(names) > 1 and len(amounts) == 1


def _of_both(before: Sequence[Clause], last: Clause) -> None:
    """`9 gal this morning and 6 gal tonight both from the ridge`; `5 pails full and 3 half full
    off the ridge`: the lot is that of the bare amounts before it too."""
    lots = last.of_sort("lot")
    if len(lots) != 1 or any(each.holds("lot", "tree") for each in before):
        return
    both = not _BOTH.isdisjoint(last.words())
    for n in range(len(before) - 1, -1, -1):
        clause = before[n]
        joint = last.joint if n == len(before) - 1 else before[n + 1].joint
        bare = all(i.sort in ("volume", "vessels", "sign") for i in clause.items if not i.tags)
        if not both and not (bare and joint in ("and", "&", "plus")):
            return
        if _tells_an_amount(clause):
            clause.lot = lots[0].text


_BOTH = frozenset("both all".split())


_BESIDE_A_NAME = frozenset("all both from in at the off on of".split())


def _lot_before_its_sugar(found: Sequence[Clause]) -> None:
    """`33 gal, ridge, 2.2 brix`: the lot is that of the amount, and so of its sugar."""
    for amount, name, sugar in zip(found, found[1:], found[2:], strict=False):
        sorts = [{item.sort for item in each.items} for each in (name, sugar)]
        one = amount.sentence == name.sentence == sugar.sentence
        unnamed = not amount.holds("lot", "tree", "trees")
        if one and _tells_an_amount(amount) and unnamed and sorts == [{"lot"}, {"brix"}]:
            amount.lot = name.lot


def _of_lots_in_a_row(found: Sequence[Clause]) -> None:
    """`20 gal from ridge and brook yesterday`, `ridge and brook 20 gal`: one amount of several
    lots, and none's own."""
    for _, each in itertools.groupby(found, lambda c: c.sentence):
        sentence = list(each)
        told = [clause for clause in sentence if _tells_an_amount(clause)]
        bare = [clause for clause in sentence if clause not in told and _only_names_a_lot(clause)]
        others = len(sentence) - len(told) - len(bare)
        joined = any(clause.joint in ("and", "&") for clause in sentence[1:])
        if len(told) == 1 and bare and not others and joined and told[0].holds("lot"):
            told[0].lot = None


def _only_names_a_lot(clause: Clause) -> bool:
    said = {item.sort for item in clause.items}
    return "lot" in said and said <= {"lot", "date", "sign"}


def _names_behind_amounts(found: Sequence[Clause]) -> None:
    """`10 gal, ridge, 8 gal, brook`: where it starts with an amount and ends with a lot, each lot
    is that of the amount before it."""
    for _, each in itertools.groupby(found, lambda c: c.sentence):
        sentence = list(each)
        told = [n for n, clause in enumerate(sentence) if _tells_an_amount(clause)]
        bare = [n for n in told if not sentence[n].holds("lot")]
        names = [n for n, c in enumerate(sentence) if {item.sort for item in c.items} == {"lot"}]
        behind = [next((at for at in names if at > n), -1) for n in bare]
        if len(names) > 1 and names == behind and told[0] < names[0]:
            for n, name in zip(bare, behind, strict=True):
                sentence[n].lot = sentence[name].lot


def _tells_an_amount(clause: Clause) -> bool:
    return clause.holds("volume", "vessels")


def _name_said_last(found: Sequence[Clause]) -> None:
    """`10 gal this morning and 7 more after lunch, ridge`; `8 gal. Tree 7.`: a lot or tree that
    stands alone at the end is that of what was said before it, where no other is named there."""
    sentences = [list(each) for _, each in itertools.groupby(found, lambda c: c.sentence)]
    if len(sentences) > 1 and len(sentences[-1]) == 1:
        sentences[-2:] = [sentences[-2] + sentences[-1]]
    for *before, last in sentences:
        said = [item for item in last.items if item.sort != "sign"]
        _of_both(before, last)
        alone = [item for item in said if item.text not in _BESIDE_A_NAME]
        if not before or len(alone) != 1 or alone[0].sort not in ("lot", "tree"):
            continue
        if {"but", "except", "counting", "including"} & set(
            last.text.split()
        ) or last.joint == "but":
            continue
        if any(each.holds("lot", "tree", "trees") for each in before):
            continue
        for each in before:
            each.lot = alone[0].text if alone[0].sort == "lot" else each.lot
            each.tree = alone[0].text if alone[0].sort == "tree" else each.tree
