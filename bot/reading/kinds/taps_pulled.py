"""Taps taken out: a count, or all."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading

if TYPE_CHECKING:
    from bot.reading.clauses import Clause
    from bot.reading.notes import Notes

CUES = {
    "PULLV": (
        "pulled pull took_out take_out taken_out removed remove yanked yank pulled_out "
        "came_out took_down unhooked popped_out pulling took are_out is_out all_out "
        "are_all_out pried_out knocked_out "
    ),
    "ALL": (
        "all every everything every_last all_of_them them_all the_rest the_lot entire "
        "whole_lot all_the all_my all_our each_and_every "
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class TapsPulled(Reading):
    """Taps taken out: a count, or all."""

    kind: ClassVar[str] = "taps_pulled"

    on: date
    count: int | None = None
    all: bool | None = None


def find(clause: Clause, notes: Notes) -> None:
    """Taps taken out: a count, or all of them."""
    words = clause.words()
    deed = clause.has("PULLV") or ("out" in words and clause.has("TAPN") and "put" not in words and "took" in words)
    if not deed and not (clause.has("TAPN") and "out" in words and ({"are", "is", "all"} & set(words))):
        return
    if not clause.has("TAPN") and not _goes_on(clause):
        return
    if clause.negated or clause.has("COSTV") or clause.free("money", "volume"):
        return
    if clause.ahead:
        notes.ask("That day is still to come: when did you pull the taps?", ("today", "pulled all the taps today"))
        return
    number = next((item for item in clause.free("number") if not item.part), None)
    start = clause.items[0].start
    if number is not None:
        number.used = True
        if number.value != int(number.value) or number.vague or number.low is not None or number.value <= 0:
            notes.ask("How many taps did you pull?", fill="pulled {} taps")
            return
        if "all" in words and not (words.index("all") + 1 < len(words) and words[words.index("all") + 1] == "of"):
            notes.add(TapsPulled(on=notes.day(clause), all=True), start)
            return
        notes.add(TapsPulled(on=notes.day(clause), count=int(number.value)), number.start)
        return
    if clause.has("ALL") or _definite(clause) or _all_next(clause, notes):
        notes.add(TapsPulled(on=notes.day(clause), all=True), start)
        return
    if clause.tree is None:
        notes.ask("Pulled how many taps: all, or a number?", ("all", "pulled all the taps"), fill="pulled {} taps")


def _goes_on(clause: Clause) -> bool:
    return clause.about("TAPN") and not clause.has("BUCKET") and bool(clause.free("number"))


def _definite(clause: Clause) -> bool:
    """`the taps`, `my spiles`: all there are."""
    noun = clause.first("TAPN")
    if noun is None or noun.text not in ("taps", "spiles", "spouts"):
        return False
    before = clause.preceding(noun, 2)
    return bool(before) and before[0].text in ("the", "my", "our")


def _all_next(clause: Clause, notes: Notes) -> bool:
    """`pulled spiles too, all of them`."""
    at = next(n for n, each in enumerate(notes.clauses) if each is clause)
    following = notes.clauses[at + 1] if at + 1 < len(notes.clauses) else None
    return following is not None and following.has("ALL") and not following.free("number", "volume")
