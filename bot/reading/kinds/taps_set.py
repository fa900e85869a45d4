"""Taps put in. `manner` is "add" (put in 6 more) or "total" (we have 16 taps)."""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading
from bot.reading.puzzling import PLAIN_WORDS, behind_a_preposition

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Noted, Notes

NEEDS = ("number", "vessels")
CUES = {
    "SETV": (
        "knocked_in pounded_in banged_in drove_in tapped_in stuck_in tapping's tapping_is set "
        "put_in put_up_taps driven tapped drilled hung hanging hang hammered_in hammered installed "
        "in_the_trees tapping put_out drove placed bored added sunk got_in setting putting_in "
        "in_so_far are_in all_in went_in "
    ),
    "HAVE": "have has have_got got with running",
}

MOST_TAPS = 1000
"""Three times the largest sugarbush that we serve."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TapsSet(Reading):
    """Taps put in. `manner` is "add" (put in 6 more) or "total" (we have 16 taps)."""

    kind: ClassVar[str] = "taps_set"

    count: int
    on: date
    lot: str | None = None
    manner: str = "add"


def find(clause: Clause, notes: Notes) -> None:
    """Counts of taps put in, and totals stated."""
    if not (_ARRIVED | _ONLY_SEEN).isdisjoint(clause.words()) or "picked up" in clause.text:
        return  # "12 new spiles came today"
    if (
        (clause.about("PULLV") and not stand_in_trees(clause))
        or clause.has("BUY", "COSTV", "PRICE", "FOREIGN", "GIFT", "BROKEN")
        or clause.free("money")
        or clause.negated
    ):
        return
    counts = _counts(clause, notes)
    if not counts:
        _buckets_hung(clause, notes)
        return
    item, manner = counts
    item.used = True
    others = [one for one in clause.free("number") if one.value != item.value]
    if any(_names_taps(clause, one) for one in others) and _names_taps(clause, item):
        for one in others:
            one.used = True
        notes.ask("Two counts of taps there. Text one lot at a time, like: ridge 20 taps.")
        return
    if _in_each(clause, item):
        each = int(item.value)
        told = notes.last(TapsSet)
        if told is not None and told.clause == notes.clause_number - 1:
            if _counts_trees(notes.clauses[told.clause]):
                _times(told, each)  # "tapped 8 trees, one spile each"
            return
        trees = _trees_before(clause, notes)
        if trees is None:
            notes.ask("How many taps is that in all?", fill="put in {} taps")
            return
        trees.used, manner = True, "add"
        item.value *= trees.value
    if item.value != int(item.value) or not 0 < item.value <= MOST_TAPS:
        notes.ask("How many taps was that?", fill="put in {} taps")
        return
    own_lot = clause.holds("lot")
    # "set 5 taps on the hill, 40 taps in all": all of them, wherever they are.
    lot = None if manner == "total" and clause.has("TOTAL") and not own_lot else clause.lot
    before = notes.last(TapsSet)
    if before is not None and isinstance(before.reading, TapsSet) and before.reading.lot == lot:
        same = before.reading.count == int(item.value) and before.reading.on == notes.day(clause)
        if same or manner == "total":
            manner = before.reading.manner if same else manner
            before.reading = replace(before.reading, count=int(item.value), manner=manner)
            return
    notes.add(
        TapsSet(count=int(item.value), on=notes.day(clause), lot=lot, manner=manner), item.start
    )


def _counts_trees(clause: Clause) -> bool:
    """Whether what was counted as taps was told as trees."""
    return not clause.has("TAPN") and any(
        {"tree", "trees", "maple", "maples"} & {each.text for each in clause.following(item, 3)}
        for item in clause.of_sort("number")
    )


def _times(told: Noted, each: int) -> None:
    if isinstance(told.reading, TapsSet):
        told.reading = replace(told.reading, count=told.reading.count * each)


def _buckets_hung(clause: Clause, notes: Notes) -> None:
    """`hung 25 buckets`: on as many taps, or on more to a bucket?"""
    vessels = clause.free("vessels")
    up = bool(vessels) and [each.text for each in clause.following(vessels[0], 1)] == ["up"]
    hung = {"hung", "hang", "hanging"} & set(clause.words()) or up
    if up and vessels[0].unit == "full":
        return  # "all 4 pails full up"
    if not hung or clause.near("TAPN", "GATHER", "SAP", "FULL") or clause.plan:
        return
    for item in clause.free("vessels"):
        if item.value == int(item.value) and not item.part:
            item.used = True
            count = int(item.value)
            before = notes.clause_before()
            if before is not None and before.text in (
                "drilled",
                "we drilled",
                "i drilled",
                "tapped",
            ):
                notes.add(TapsSet(count=count, on=notes.day(clause)), item.start)
                return  # "drilled and hung 45 buckets"
            notes.ask(
                f"{count} buckets hung: how many taps are in?",
                ("ok|same|yep|yeah", f"put in {count} taps"),
                fill="put in {} taps",
            )


def _in_each(clause: Clause, item: Item) -> bool:
    """`one spile each`, `2 taps per tree`."""
    behind = " ".join(each.text for each in clause.following(item, 4))
    return re.search(r"\b(?:each|apiece|per tree|in every)\b", behind) is not None


def _trees_before(clause: Clause, notes: Notes) -> Item | None:
    """`tapped 8 trees, one spile each`, `hung a dozen bags, one tap apiece`: the count of the
    trees, or of what hangs on them."""
    for other in (notes.clause_before(), clause):
        if other is None or other.sentence != clause.sentence:
            continue
        hung = [item for item in other.free("vessels") if not item.part and item.value % 1 == 0]
        if len(hung) == 1 and other.has("SETV"):
            return hung[0]
        for item in other.free("number"):
            near = [each.text for each in other.following(item, 3)]
            if {"tree", "trees", "maple", "maples"} & set(near):
                return item
    return None


def _counts(clause: Clause, notes: Notes) -> tuple[Item, str] | None:
    sett = _setting(clause)
    numbers = [item for item in clause.free("number") if not item.part]
    for item in sorted(numbers, key=lambda each: not _names_taps(clause, each)):
        after = [each for each in clause.following(item, 4) if each.text not in _ADJECTIVES]
        before = clause.preceding(item, 3)
        behind = before[0].text if before else ""
        if behind in _OURS and len(before) > 1:
            behind = before[1].text  # "from my three taps"
        if _stays_to_do(clause, item) or _counts_people(clause, item):
            continue
        if len(before) == 3 and before[1].text == "of" and before[2].sort == "number":
            item.used = True
            continue  # "10 of the 14 trees"
        if any(each.text in ("each", "apiece") for each in clause.following(item, 1)):
            continue
        if [each.text for each in clause.following(item, 2)] in _OF_THE and not sett:
            continue  # "two of the taps quit"
        if after and after[0].text in _STAY:
            continue  # "pulled 20 taps, 40 stay in the trees"
        names_taps = bool(after) and "TAPN" in after[0].tags
        if behind == "now" and _just_added(clause, notes):
            item.used = True
            continue  # "tapped 5 more, now 25"
        if names_taps:
            if behind in _NOT_SET and not (behind in ("all", "on") and sett):
                continue
            more = clause.has("MORE") and not clause.has("DRY", "BUCKET")
            if not sett and not more and (clause.tree is not None or _of_a_tree(clause, notes)):
                continue
            this_year = {"year", "season"} & set(clause.words())
            if not sett and "out" in clause.words() and not (clause.has("HAVE") or this_year):
                continue
            if sett or clause.has("MORE"):
                return item, "total" if clause.has("TOTAL") and not _summed(clause, item) else "add"
            if (
                clause.about("GATHER")
                and not clause.has("HAVE", "TOTAL")
                and clause.holds("volume")
            ):
                continue
            sized = clause.has("BUCKET") and clause.holds("volume")
            if clause.has("DRY", "DRYSAID", "FOREIGN", "OTHERS", "POUR"):
                continue
            if clause.has("BUCKET") and not sized:
                continue
            if _strange(clause):
                continue
            return item, "total"
        if (
            sett
            and (_tapped(clause) or _drilled_or_in_a_lot(clause, behind, after))
            and (not after or after[0].sort != "number")
            and _bare_ok(clause, item)
        ):
            return item, "add"
        if behind in _TAP_NOUNS and clause.has("TOTAL") and not clause.has("GATHER"):
            return item, "total"
        if _heads_a_list_of_lots(clause, item):
            return item, "total"
        if _in_a_list_of_lots(clause, notes):
            return item, notes.last(TapsSet).reading.manner  # type: ignore[union-attr]
        if behind in _STATES and _names_the_count(clause):
            return item, "total"
        heading = [each for each in clause.preceding(item, 3) if each.text != "in"]
        if behind == ":" and len(heading) > 1 and "TAPN" in heading[1].tags:
            return item, "total"
        if clause.has("TOTAL") and notes.last(TapsSet) is not None and not clause.free("volume"):
            return item, "total"
        listed = notes.last(TapsSet) is not None or any(
            c.has("TAPN") for c in notes.sentence(clause)
        )
        if (
            clause.about("SETV", "PUTIN")
            and listed
            and not clause.has("BUCKET", "GATHER")
            and _bare_ok(clause, item)
        ):
            return item, "add"
        if sett and clause.has("MORE") and not clause.has("BUCKET") and not clause.free("volume"):
            return item, "add"
        of_them = [each.text for each in clause.following(item, 2)] in _OF_THEM
        counted = clause.has("TOTAL", "SOFAR") or of_them
        if counted and notes.last(TapsSet) is None and _spoke_of_taps(notes):
            return item, "total"
        if (
            not clause.has("GATHER", "BOIL")
            and clause.about("TAPN")
            and clause.about("SETV")
            and (clause.lot is not None)
            and notes.last(TapsSet) is not None
        ):
            return item, "add"
    return None


def _summed(clause: Clause, item: Item) -> bool:
    """`put in 5 taps for a total of 40`: another figure is the sum."""
    return any(
        each.sort == "number" and each is not item and each.used and each.value > item.value
        for each in clause.items
    )


def _just_added(clause: Clause, notes: Notes) -> bool:
    before = notes.last(TapsSet)
    return before is not None and notes.clauses[before.clause].sentence == clause.sentence


def stand_in_trees(clause: Clause) -> bool:
    """`front yard has 4 taps in now`, `total taps 28`: whatever was pulled before it."""
    if _names_the_count(clause) or clause.text.startswith("taps :"):
        return True
    taps = clause.first("TAPN")
    if taps is None or clause.has("PULLV"):
        return False
    if clause.has("HAVE", "TOTAL") and "out" not in clause.words():
        return True
    behind = [each.text for each in clause.following(taps, 2)]
    return behind[:1] in (["in"], ["are in"], ["in all"]) or behind == ["are", "in"]


def _names_the_count(clause: Clause) -> bool:
    """`number of taps this season is 26`."""
    first = clause.items[0].text
    stands = first == "taps" and bool({"stands at", "stand at"} & set(clause.words()))
    return stands or first in ("number of taps", "tap count", "number of spiles")


_STATES = frozenset(("is", "was", ":", "=", "stands at", "stand at", "tap count", "now", "at"))
_TAP_NOUNS = frozenset("tap taps spile spiles spout spouts".split())


def _in_a_list_of_lots(clause: Clause, notes: Notes) -> bool:
    """`taps: 5 on the lane, 7 behind the barn`."""
    before = notes.last(TapsSet)
    figures = [each for each in clause.items if each.sort in ("number", "volume", "brix", "money")]
    own_lot = clause.holds("lot")
    return (
        before is not None
        and before.clause == notes.clause_number - 1
        and notes.clauses[before.clause].sentence == clause.sentence
        and isinstance(before.reading, TapsSet)
        and before.reading.lot is not None
        and own_lot
        and len(figures) == 1
    )


def _heads_a_list_of_lots(clause: Clause, item: Item) -> bool:
    """`Taps: upper 90, lower 70`."""
    said = [each for each in clause.items if each.sort != "sign"]
    heads = len(said) == 3 and "TAPN" in said[0].tags and said[1].sort == "lot" and said[2] is item
    return heads and clause.items[1].text == ":"


_STAY = frozenset("stay stays stayed staying remain remains left still".split())
_OF_THEM = (["of", "them"], ["of", "em"])
_OF_THE = (["of", "the"], ["of", "my"], ["of", "our"], ["of", "those"])
_ONLY_SEEN = frozenset("checked checking visited walked emptied".split())
_ARRIVED = frozenset("mail arrived came shipped ordered gave".split())
_OURS = frozenset("my our the these those".split())


def _stays_to_do(clause: Clause, item: Item) -> bool:
    """`20 to go`, `12 still to do`."""
    behind = [each.text for each in clause.following(item, 4)]
    to_do = {"go", "do", "set", "put", "put in", "drill", "hang", "pull", "tap"}
    later = any(a == "to" and b in to_do for a, b in itertools.pairwise(behind))
    return later or behind[:1] == ["left"] or "to go" in " ".join(behind)


def _counts_people(clause: Clause, item: Item) -> bool:
    """`took all four of us`."""
    behind = [each.text for each in clause.following(item, 2)]
    running = not _RUN.isdisjoint(each.text for each in clause.following(item, 4))
    people = behind in (["of", "us"], ["of", "you"]) or behind[:1] in (["people"], ["kids"])
    of_a_tree = clause.tree is not None and behind == ["in"]  # "tapped tree 15, 17 in"
    return people or of_a_tree or (running and not _setting(clause))


_NOT_SET = frozenset(("from", "on", "of", "per", "off", "across", "all", "every", "for"))


def _strange(clause: Clause) -> bool:
    """Words that we do not know may say anything of taps: that they were chewed, drawn, lent."""
    return clause.has("DRAW") or any(_is_strange(clause, item) for item in clause.items)


def _is_strange(clause: Clause, item: Item) -> bool:
    return (
        item.sort == "word"
        and not item.tags
        and item.text not in PLAIN_WORDS
        and not behind_a_preposition(clause, item)
    )


def _names_taps(clause: Clause, item: Item) -> bool:
    after = [each for each in clause.following(item, 4) if each.text not in _ADJECTIVES]
    return bool(after) and "TAPN" in after[0].tags


def _of_a_tree(clause: Clause, notes: Notes) -> bool:
    """Does the sentence tell of one tree: its kind, its size?"""
    return any(
        other.has("SPECIES") or other.tree is not None or other.holds("length")
        for other in notes.sentence(clause)
    )


_ADJECTIVES = frozenset(
    "new more additional extra of the total plastic metal "
    "stainless 5/16 7/16 old good in - tree sap".split()
)


def _setting(clause: Clause) -> bool:
    if clause.has("SETV"):
        return True
    return clause.has("PUTIN")


def _tapped(clause: Clause) -> bool:
    words = clause.words()
    return (
        any(word in ("tapped", "tapping") for word in words)
        or (clause.has("TAPN") and clause.has("SETV"))
        or (clause.has("PUTIN") and clause.about("TAPN"))
    )


def _drilled_or_in_a_lot(clause: Clause, behind: str, after: Sequence[Item]) -> bool:
    """`drilled 15`, `set 22 on the lane`, where a lot is of that name."""
    placed = bool(after) and after[0].text in ("on", "at", "in", "along")
    hung = behind in ("set", "hung", "drilled in", "put in", "hammered in")
    if not _SIZED.isdisjoint(each.text for each in after):
        return False  # "drilled 2 in deep"
    bare = not after or after[0].sort in ("date", "lot") or after[0].text in _OF_DRILLED
    return (behind == "drilled" and bare) or (hung and placed and clause.lot is not None)


_OF_DRILLED = frozenset("on at along trees maples more holes".split())
_SIZED = frozenset("deep wide long across".split())
_RUN = frozenset("running dripping flowing dry going".split())


def _bare_ok(clause: Clause, item: Item) -> bool:
    after = clause.following(item, 2)
    if after and after[0].text in _RUN:
        return False  # "set 10 taps yesterday, 6 running today"
    if after and (_is_strange(clause, after[0]) or after[0].text in _HURT):
        return False  # "hammered in 9 spiles, 2 split"
    if after and after[0].text in (
        "tree",
        "trees",
        "maple",
        "maples",
        "more",
        "sugar",
        "red",
        "new",
        "holes",
    ):
        return True
    return not (
        after
        and (
            after[0].tags & {"BUCKET", "JARN"}
            or after[0].sort == "volume"
            or after[0].text in ("feet", "years", "year", "days")
        )
    )


_HURT = frozenset("split broke bent cracked lost left".split())


def _spoke_of_taps(notes: Notes) -> bool:
    return any(
        ("TAPN" in clause.tags and "SETV" in clause.tags)
        or clause.text.startswith("tapping")
        or (len(clause.items) <= 4 and bool({"tapped", "tapping"} & set(clause.words())))
        or ("TAPN" in clause.tags and "in" in clause.words())
        for clause in notes.clauses
    )
