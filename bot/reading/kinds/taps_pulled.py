"""Taps taken out: a count, or all."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading
from bot.reading.kinds.taps_set import stand_in_trees

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

NEEDS = ("PULLV", "TAPN")
CUES = {
    "PULLV": (
        "untapped pulled pull took_out tookout pulledout pulled_them pulled_em backed_out "
        "take_out taken_out removed remove yanked yank pulled_out came_out took_down unhooked "
        "popped_out pulling are_out is_out all_out are_all_out pried_out knocked_out "
    ),
    "SOME": "most some half_of part_of a_few most_of some_of many several bunch",
    "ALL": (
        "are_all_out all_out all every everything every_last all_of_them them_all the_rest "
        "the_lot entire whole_lot all_the all_my all_our each_and_every "
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class TapsPulled(Reading):
    """Taps taken out: a count, or all."""

    kind: ClassVar[str] = "taps_pulled"

    on: date
    count: int | None = None
    all: bool | None = None
    lot: str | None = None


def find(clause: Clause, notes: Notes) -> None:
    """Taps taken out: a count, or all of them."""
    words = clause.words()
    drawn = clause.has("DRAW") and clause.has("TAPN")
    deed = (
        drawn
        or clause.about("PULLV")
        or (
            clause.has("TAPN")
            and "out" in words
            and not clause.has("SETV", "PUTIN")
            and not _OUT_THERE.search(clause.text)
        )
    )
    if not deed or _hang_out_there(clause, notes) or clause.has("BUDS") or stand_in_trees(clause):
        return
    again = any(
        {"reset", "reseated", "back"} & set(other.words()) for other in notes.sentence(clause)
    )
    if again or {"gets", "get"} & set(words):
        return  # "4 taps popped out so i reset em", "then everything gets pulled"
    if {"still", "fell", "popped", "keeps", "heaved", "blew"} & set(clause.words()):
        return
    if _those(clause, notes):
        return
    if _PULLED_THE_LOT.fullmatch(clause.text):
        notes.add(TapsPulled(on=notes.day(clause), all=True), clause.items[0].start)
        return
    everything = clause.has("PULLV") and bool({"everything", "everything's"} & set(words))
    if everything and _of_a_lot(clause, notes):
        notes.ask("How many taps did you pull?", fill="pulled {} taps")
        return
    if everything and not clause.free("volume", "number"):
        notes.add(TapsPulled(on=notes.day(clause), all=True), clause.items[0].start)
        return
    if not clause.has("TAPN") and not _goes_on(clause, notes):
        if _PULLED_THEM.fullmatch(clause.text) or (clause.has("PULLV") and notes.profile.taps):
            _all_of_them(clause, notes)
        return
    if clause.negated or clause.has("COSTV", "FOREIGN", "BUY") or clause.free("money", "volume"):
        return
    start = clause.items[0].start
    if _of_a_lot(clause, notes):
        _ask_of_a_lot(clause, notes)
        return
    before = notes.last(TapsPulled)
    if before is not None and getattr(before.reading, "all", None):
        if not clause.free("number") or clause.has("ALL"):
            return
        notes.noted.remove(before)
    following = notes.clause_after()
    counted = following is not None and "of them" in following.text and following.holds("number")
    if counted and following is not None and following.sentence == clause.sentence:
        for item in clause.free("number"):
            item.used = True
        return  # "half the taps, 10 of them"
    if clause.has("SOME") or any(item.part for item in clause.free("number")):
        _some_of_them(clause, notes)
        return
    number = next((each for each in clause.free("number") if not _stay(clause, each)), None)
    if number is None and clause.free("number"):
        return
    if number is None and before is not None and not clause.has("PULLV"):
        return  # "took out two taps, those holes dried up"
    if number is not None:
        number.used = True
        if number.value != int(number.value) or number.value <= 0:
            notes.ask("How many taps did you pull?", fill="pulled {} taps")
            return
        if clause.has("ALL") and number.text == "one":
            notes.add(TapsPulled(on=notes.day(clause), all=True), start)
            return  # "every blessed one of the taps"
        of_a_part = clause.tree is not None or _OF_A_PART.search(clause.text) is not None
        if (
            "all" in words
            and not of_a_part
            and not (words.index("all") + 1 < len(words) and words[words.index("all") + 1] == "of")
        ):
            notes.add(TapsPulled(on=notes.day(clause), all=True), start)
            return
        count = int(number.value)
        hang = notes.profile.taps
        if _all_but(clause, number, notes):
            if hang is None or hang <= count:
                notes.ask("How many taps did you pull?", fill="pulled {} taps")
                return
            count = hang - count
        if hang is not None and count > hang:
            notes.ask(
                f"{count} taps pulled, and {hang} are in. How many was it?",
                ("all|all of them", "pulled all the taps"),
                fill="pulled {} taps",
            )
            return
        notes.add(TapsPulled(on=notes.day(clause), count=count, lot=clause.lot), number.start)
        return
    if (
        clause.has("ALL")
        or _definite(clause)
        or "them" in clause.each_word
        or _all_next(clause, notes)
    ):
        notes.add(TapsPulled(on=notes.day(clause), all=True), start)
        return
    if clause.tree is None:
        notes.ask(
            "Pulled how many taps: all, or a number?",
            ("all", "pulled all the taps"),
            fill="pulled {} taps",
        )
    else:
        notes.ask(f"How many taps did you pull from tree {clause.tree}?", fill="pulled {} taps")


_OF_A_PART = re.compile(
    r"\ball \w+ (?:the )?(?:taps|spiles|spouts)(?: out)? (?:from|on|off|out of|in)\b"
)
"""`pulled all 3 taps from tree 4`."""
_OUT_THERE = re.compile(
    r"\bran out\b|\bout (?:front|back|there|by|in|on|behind|near|past|along|of \d)\b"
)
"""`one tap in the maple out front` is not pulled."""


def _those(clause: Clause, notes: Notes) -> bool:
    """`two of the taps quit so I yanked those`: the ones that were counted before."""
    before = notes.clause_before()
    if before is None or before.sentence != clause.sentence or not before.has("TAPN"):
        return False
    counts = [item for item in before.of_sort("number") if not item.part and item.value % 1 == 0]
    for noted in notes.all(TapsPulled):
        if noted.clause == notes.clause_number - 1:
            return False
    if not clause.has("PULLV") or len(counts) != 1 or clause.free("number", "volume"):
        return False
    if {"those", "them", "em"}.isdisjoint(clause.words()):
        return False
    counts[0].used = True
    notes.add(TapsPulled(on=notes.day(clause), count=int(counts[0].value)), clause.items[0].start)
    return True


def _of_a_lot(clause: Clause, notes: Notes) -> bool:
    """`pulled all the ridge spiles`, `everything but the ridge`: how many that is, is not said."""
    number = any(not item.part for item in clause.free("number"))
    lot = any(item.sort == "lot" for item in notes.items_beside(clause))
    return lot and not number and not clause.near("GATHER")


_ALL_THERE = re.compile(r"\ball (?:of )?the taps on the \w")


def _ask_of_a_lot(clause: Clause, notes: Notes) -> None:
    """`pulled taps on the ridge`: all of them, or some? What is answered keeps its lot."""
    lot = clause.lot
    if lot is not None and _ALL_THERE.search(clause.text):
        notes.add(TapsPulled(on=notes.day(clause), all=True, lot=lot), clause.items[0].start)
        return
    where = "" if lot is None else f" on the {lot}"
    notes.ask(
        "How many taps did you pull there: all, or a number?",
        ("all|all of them|every one", f"pulled all the taps{where}"),
        fill=f"pulled {{}} taps{where}",
    )


def _hang_out_there(clause: Clause, notes: Notes) -> bool:
    """`we've got 40 taps out this year`: out in the woods, and so put in. Without the year it may
    be either, and is asked about."""
    words = set(clause.words())
    number = next((item for item in clause.free("number") if not item.part), None)
    have = not words.isdisjoint(_HAVE) and "out" in words and not clause.has("PULLV", "ALL")
    if number is None or not have:
        return False
    if words.isdisjoint(("year", "season", "now")):
        number.used = True
        said = f"{number.value:g}"
        notes.ask(
            f"{said} taps: put in, or pulled?",
            ("in|set|put in|hung|hanging", f"put in {said} taps"),
            ("pulled|out|taken out", f"pulled {said} taps"),
        )
    return True


_HAVE = frozenset(("we've", "i've", "have", "have got", "weve", "ive"))


def _all_but(clause: Clause, number: Item, notes: Notes) -> bool:
    """`pulled all but 4`."""
    ahead = notes.clause_before()
    if clause.joint == "but" and clause.items[0] is number and ahead is not None:
        return ahead.items[-1].text == "all"
    before = [each.text for each in clause.preceding(number, 2)]
    return before[:1] in (["but"], ["except"], ["all but"]) or before == ["for", "except"]


def _stay(clause: Clause, number: Item) -> bool:
    """`9 left for a late run`: those that still hang."""
    following = clause.following(number, 4)
    for at, each in enumerate(following):
        if each.text == "left" and at + 1 < len(following):
            ahead = following[at + 1]
            if ahead.sort in ("number", "clock") or ahead.text == "at":
                return False  # "12 taps left at 5", "12 taps left 4"
    if [each.text for each in following[:2]] in (["to", "go"], ["to", "do"]):
        return True
    behind = {each.text for each in following[:3]}
    before = {each.text for each in clause.preceding(number, 1)}
    if not before.isdisjoint(("leaving", "left", "keeping", "leaves", "leave")):
        return True
    return not behind.isdisjoint(("left", "still", "remain", "remaining", "stay", "staying"))


def _goes_on(clause: Clause, notes: Notes) -> bool:
    """`no more taps in the trees, pulled them today`; `pulled 6 taps fri and 10 sat`."""
    if clause.has("BUCKET", "SPECIES") or not clause.near("TAPN"):
        return False
    return bool(clause.free("number")) or "them" in clause.each_word


def _all_of_them(clause: Clause, notes: Notes) -> None:
    """`pulled all 18`, where 18 taps hang; `pulled em all`; `pulled all but 4`."""
    following = notes.clause_after()
    some_stay = following is not None and following.joint == "but"
    if _PULLED_THEM.fullmatch(clause.text) and not some_stay:
        notes.add(TapsPulled(on=notes.day(clause), all=True), clause.items[0].start)
        return
    if "all" not in clause.words():
        return
    but = following is not None and following.joint == "but" and not following.has("TAPN")
    if following is not None and but and notes.profile.taps is not None:
        kept = next((item for item in following.items[:1] if item.sort == "number"), None)
        if kept is not None and 0 < kept.value < notes.profile.taps and not kept.value % 1:
            kept.used = True
            count = notes.profile.taps - int(kept.value)
            notes.add(TapsPulled(on=notes.day(clause), count=count), clause.items[0].start)
            return
    number = next(iter(clause.free("number")), None)
    if number is not None and number.value == notes.profile.taps:
        number.used = True
        notes.add(TapsPulled(on=notes.day(clause), all=True), number.start)


_PULLED_THEM = re.compile(
    r"(?:i |we )?(?:just |finally )?"
    r"(?:took (?:em|them) all (?:out|down)"
    r"|(?:pulled|yanked)(?: out)? (?:all|em all|them all|all the buckets|all the pails"
    r"|all of (?:em|them)|the (?:rest|last)(?: of (?:em|them))?))"
    r"(?: out)?(?: today| yesterday| this morning| tonight)?"
)


_PULLED_THE_LOT = re.compile(
    r"(?:we |i )?(?:just |finally )?(?:(?:pulled|yanked) the (?:whole )?lot|untapped the (?:bush"
    r"|sugarbush|woods|(?:whole|entire) (?:bush|sugarbush|woods|place|lot|stand)))"
    r"(?: (?:today|yesterday|this morning|on \w+day|\w+day))?"
)
"""`pulled the lot`, `de-tapped the whole bush today`."""


def _some_of_them(clause: Clause, notes: Notes) -> None:
    """`pulled half the taps`: a share needs the count that it is of."""
    share = next((item for item in clause.free("number") if item.part), None)
    taps = notes.profile.taps
    if share is not None and taps is not None and (share.value * taps) % 1 == 0:
        share.used = True
        notes.add(TapsPulled(on=notes.day(clause), count=int(share.value * taps)), share.start)
        return
    notes.ask("How many taps did you pull?", ("all", "pulled all the taps"), fill="pulled {} taps")


def _definite(clause: Clause) -> bool:
    """`the taps`, `my spiles`: all there are."""
    noun = clause.first("TAPN")
    if noun is None or noun.text not in ("taps", "spiles", "spouts"):
        return False
    before = clause.preceding(noun, 2)
    return bool(before) and before[0].text in ("the", "my", "our")


def _all_next(clause: Clause, notes: Notes) -> bool:
    """`pulled spiles too, all of them`."""
    following = notes.clause_after()
    return following is not None and following.has("ALL") and not following.free("number", "volume")
