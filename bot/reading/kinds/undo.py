"""Take the last record back."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading
from bot.reading.signs import Sought

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

CUES = {
    "UNDOP": (
        "remove_my_last delete_my_last erase_my_last void_my_last remove_that_entry "
        "delete_that_entry "
        "erase_that_entry remove_our_last delete_our_last "
        "wipe_out_what wipe_out_that wipe_out_the "
        "don't_count_that dont_count_that do_not_count_that don't_count_it "
        "take_it_out last_one_was_wrong that_last_one_is_wrong that_one_is_wrong remove_what "
        "forget_what delete_what didn't_mean_to_send didnt_mean_to_send take_it_off "
        "take_that_last_one_off take_the_last_one_off that_last_one take_that_one_off "
        "back_that_one_out cancel_that_one drop_it remove_the delete_the take_out_the "
        "scratch_his scratch_hers scratch_their "
        "scratch_the nvm_that_was_wrong strike_that_last delete_that_one remove_that_one "
        "erase_that_one scratch_that_one nix_that nix_the take_that_out pull_that_one "
        "back_out_the back_out_that drop_that_one disregard_my disregard_the ignore_what "
        "not_supposed_to_send scratch_that scratch_it scratch_the_last scratch_last undo "
        "undo_that undo_it delete delete_that delete_last delete_the_last delete_it remove_that "
        "remove_last remove_the_last remove_it take_that_back take_it_back take_back_that "
        "cancel_that cancel_it cancel_the cancel_my cancel_last never_mind_that nevermind_that "
        "never_mind_the nevermind_the forget_that forget_the_last forget_it forget_my disregard "
        "disregard_that ignore_that ignore_the_last ignore_last ignore_my strike_that "
        "strike_the strike_my strike_last "
        "erase erase_that back_that_out wrong_one drop_that_last drop_the_last "
        "toss_that_last get_rid_of_that kill_that take_out_the_last take_off_that "
        "take_off_the_last void_that clear_that throw_out_that_last throw_out_my_last wipe_that "
        "pull_that_last take_that_off take_that_last reverse_that sent_that_twice sent_it_twice "
        "logged_it_twice logged_that_twice texted_that_twice texted_it_twice double_logged "
        "counted_it_twice counted_that_twice "
    ),
}

MOST_CLAUSES = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Undo(Reading):
    """Take the last record back."""

    kind: ClassVar[str] = "undo"


def find_whole(notes: Notes) -> bool:
    """A text that takes the last record back, and puts nothing in its place."""
    named = _THE_ONE.fullmatch(notes.text.strip(" .!"))
    if named is not None:
        if named["which"] is not None and _IN_A_ROW.search(named["which"]):
            notes.ask("Which one is that? Name its amount, like: undo the 9 gal.")
        else:
            notes.add(Undo(), 0)
        return True
    if _by_its_amount(notes):
        notes.add(Undo(), 0)
        return True
    if _takes_back_an_undo(notes):
        notes.ask("I can't put it back by myself. Text it again, like: 12 gal at 2.2.")
        return True
    said = next((c for c in notes.clauses if c.has("UNDOP")), None)
    if said is not None and not said.question and _somebody_elses(said):
        notes.ask("I only take back what you logged yourself. They text: undo.")
        return True
    if said is None or said.question or _asks_when(said):
        return False
    deed = said.first("UNDOP")
    if deed is not None and deed.text == "forget it" and _goes_on_otherwise(said, deed, notes):
        return False
    if deed is not None and deed.text == "that last one" and _tells_of_it(said, deed):
        return False
    denied = any(
        "NOT" in item.tags and item.text != "no" and item is not deed for item in said.items
    )
    if denied and "mean" not in said.text:
        return False
    if "everything" in said.words() or (
        "undo the" in said.text and not _RECORDS & set(said.words())
    ):
        return False
    if deed is not None and deed.text in _OF_ANY_THING and _of_no_record(said, deed):
        return False  # "cancel the babysitter"
    if len(notes.clauses) > MOST_CLAUSES:
        return False
    items = [item for clause in notes.clauses for item in clause.items]
    ahead = [item for item in items if deed is not None and item.start < deed.start]
    behind = [item for item in items if deed is not None and item.start > deed.start]
    if any(item.sort in _AMOUNTS for item in ahead) and not _names_the_record(notes):
        return False
    placed = any(item.sort in ("date", "lot", "tree") for item in behind)
    if placed and deed is not None and deed.text.endswith("that") and "was" in notes.text.split():
        return False  # "scratch that, it was yesterday"
    told = any(item.sort in _AMOUNTS and not item.article for item in behind)
    if told and not _names_the_record(notes):
        return False
    if said.has("POUR", "BOIL") and not _A_DEED.search(notes.text):
        return False
    notes.add(Undo(), 0)
    return True


def _goes_on_otherwise(said: Clause, deed: Item, notes: Notes) -> bool:
    """`forget it, too cold to tap`: given up, and nothing is wrong with a record."""
    behind = [
        i for c in notes.clauses for i in c.items if i.start > deed.start and i.sort != "sign"
    ]
    words = {each.text for each in behind}
    return len(behind) > 1 and words.isdisjoint(_AMISS | _RECORDS)


def _tells_of_it(said: Clause, deed: Item) -> bool:
    """`that last one was a big run`: what it was, and not that it was wrong."""
    was = [each.text for each in said.following(deed, 1)]
    return was in (["was"], ["is"], ["ran"], ["gave"], ["belongs"]) and _AMISS.isdisjoint(
        said.words()
    )


_AMISS = frozenset("wrong mistake error bad off test duplicate repeat oops accident twice".split())
_OF_ANY_THING = frozenset(
    ("cancel the", "cancel my", "forget my", "disregard the", "ignore my", "remove the",
     "delete the", "erase the", "take out the", "nix the", "never mind the", "nevermind the")
)  # fmt: skip


_ORDERED = frozenset("order orders delivery appointment trip party meeting pickup plans".split())


def _of_no_record(said: Clause, deed: Item) -> bool:
    """`cancel the babysitter`: neither an amount, a name, a day nor a word for a record follows."""
    behind = said.following(deed, 8)
    if not _ORDERED.isdisjoint(said.words()):
        return True  # "cancel the jar order"
    ours = any(
        item.sort not in ("word", "sign", "clock") or item.text in _RECORDS or item.tags
        for item in behind
    )
    first = behind[0] if behind else None
    strange = first is not None and first.sort == "word" and not first.tags
    strange = strange and first is not None and first.text not in _RECORDS | {"first", "previous"}
    amount = any(item.sort in _AMOUNTS or item.text in _RECORDS for item in behind)
    return bool(behind) and (not ours or (strange and not amount))


def _asks_when(clause: Clause) -> bool:
    """`at what temp do i take it off`: a question also without its mark."""
    deed = clause.first("UNDOP")
    ahead = {each.text for each in clause.items if deed is not None and each.start < deed.start}
    return not ahead.isdisjoint(("what", "when", "which", "how"))


# "take off the upper lot one", "delete the A3 one", "scratch the second one".
_THE_ONE = Sought(
    " one| entry| record",
    r"(?:(?:no|oops|sorry),? )?(?:take (?:off|out|away|back)|scratch|remove|delete|drop|undo|erase)"
    r" (?:the|that) (?P<which>(?!tree)[a-z0-9 ]{1,30}? )?(?:one|entry|record)",
)
_RECORDS = frozenset(
    "last entry record sap one amount thing boil jars syrup draw taps cost wood dump spill text "
    "message note line figure number".split()
)
# "undo the boil", "scratch that last spill".
_A_DEED = re.compile(
    r"\b(?:undo|scratch|delete|remove|erase|strike|drop) (?:(?:the|that|my|our|last) )+"
    r"(?:boil|boiling|dump|spill)\b"
)
_IN_A_ROW = re.compile(r"\b(?:first|second|third|fourth|1st|2nd|3rd|4th|other|earlier)\b")


def _by_its_amount(notes: Notes) -> bool:
    """`undo the 9 gal`, `delete $12`, `take out the 12 gal from tuesday`: one that was told, called
    by its amount; but `remove 4 taps` pulls them, and `scratch that, 14 gal` puts right."""
    if len(notes.clauses) != 1 or notes.clauses[0].question or notes.clauses[0].has("TAPN"):
        return False
    items = [item for item in notes.clauses[0].items if item.text not in _BEFORE_A_DEED]
    taken = bool(items) and items[0].text.startswith("take ") and "UNDOP" in items[0].tags
    backed = bool(items) and items[0].text.startswith("back out")
    if not items or not (items[0].text.split()[0] in _DEEDS or taken or backed):
        return False
    behind = [item for item in items[1:] if item.text not in _OF_A_RECORD]
    amounts = [item for item in items if item.sort in _AMOUNTS and not item.article]
    named = bool(behind) and behind[0].sort in _AMOUNTS and behind[0] in amounts
    return named and len(amounts) == 1 and items[0].text.split()[-1] != "that"


_BEFORE_A_DEED = frozenset("no oops sorry please just can you".split())
_DEEDS = frozenset("undo delete remove scratch erase cancel strike nix drop void".split())
_OF_A_RECORD = frozenset("the my last out off back that entry record of one".split())


def _takes_back_an_undo(notes: Notes) -> bool:
    """`redo`, `undo the undo`, `put that back`."""
    plain = notes.text.strip(" .!?")
    return plain.removeprefix("no ").removeprefix("wait ") in _REDO


_REDO = frozenset(
    (
        *("redo", "redo it", "redo that", "undo the undo", "undo that undo", "put that back"),
        *("put it back", "bring it back", "bring that back", "unundo"),
    )
)


def _somebody_elses(said: Clause) -> bool:
    """`scratch his`, `undo jake's last one`."""
    words = said.text.split()
    return not _THEIRS.isdisjoint(words) or any(
        word.endswith("'s") and word not in _NOBODYS for word in words
    )


_THEIRS = frozenset("his her hers their theirs".split())
_NOBODYS = frozenset(
    "that's it's what's let's today's yesterday's tonight's here's there's morning's evening's "
    "sap's sugar's boil's bucket's tree's he's she's who's".split()
)
_AMOUNTS = frozenset(("volume", "number", "brix", "hours", "money", "temp", "cords", "mass"))


def _names_the_record(notes: Notes) -> bool:
    """`delete the 12 gal`: the amount only says which record."""
    return any(
        clause.has("UNDOP")
        and (
            {"the", "that", "my", "last", "entry", "one"} & set(clause.words())
            or any(
                f" {word}" in f" {clause.text}"
                for word in ("scratch the ", "delete the ", "remove the ", "the last")
            )
        )
        and not any(
            other is not clause and other.free("volume", "number")
            for other in notes.sentence(clause)
        )
        for clause in notes.clauses
    )
