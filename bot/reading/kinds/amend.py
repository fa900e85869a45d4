"""Put the last record right: the fields that change, or a bare `value`."""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.changes import (
    BEFORE_LEAD,
    DENIALS,
    FIELDS,
    FIGURES,
    FILLERS,
    WHOSE,
    called_by,
    fields_changed,
    kind_named,
    old_figure,
    thing_named,
)
from bot.reading.kinds.base import Reading
from bot.reading.kinds.jars import Jar
from bot.reading.signs import Sought

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

CUES = {
    "AMENDLEAD": (
        "i_misspoke i_misread_it i_mistyped "
        "i_was_wrong i_told_you_wrong told_you_wrong forget_that "
        "never_mind nevermind nvm no nope oops sorry wait actually correction typo "
        "my_bad hold_on whoops oop woops ope my_mistake mistake scratch_that sorry_about_that "
        "correcting fix fat_thumbs fat_thumbed fat_fingered fat_fingers fat_finger wrong_number "
        "mistyped "
        "typed_wrong misread check_that ugh argh dang nah hang_on let_me_correct make_that "
        "i_made_a_mistake made_a_mistake i_messed_up messed_up i_goofed goofed my_error "
        "mistype misspoke misspelled autocorrect my_math_was_off that's_not_right thats_not_right "
        "not_right jk_it_was "
        "pardon pardon_me excuse_me apologies error error_in_last error_in_the_last "
        "strike_that no_wait no_no edit * "
    ),
    "AMENDP": (
        "is_wrong was_wrong wrong i_said make_that make_it make_the i_meant meant meant_to_say "
        "should_be should_have_been should've_been shoulda_been supposed_to_be ought_to_be "
        "change_that_to change_it_to change_to change_that change_the change_last change_my "
        "fix_that correct_that correct_to correct_it it_was that_was that's was_actually "
        "actually_was not_the i_mean meant_it wrong_lot wrong_tree wrong_day wrong_date "
        "should_say should_read instead_of i_put rather_than more_like turns_out recount "
        "i_wrote i_texted i_told_you recounted remeasured rechecked move_that move_it that_is it's "
    ),
    "STRONG": (
        "its_really it's_really it_is_really "
        "put_that_last_one_under put_the_last_one_under put_that_one_under put_that_last_one_in "
        "move_that_one_to move_the_last_one_to move_that_last_one_to put_the_last_one_in "
        "shouldve_been should_of_been shoulda_of_been "
        "wanted_to_say wanted_to_write "
        "meant_to_write meant_to_put meant_to_type meant_to_enter meant_to_log "
        "that_one_was_for that_one_was_from that_one_was last_one_was_for "
        "last_one_was_from "
        "that_one_goes_on that_one_goes_under that_goes_under that_one_goes_to "
        "that_one_belongs_to that_belongs_to that_one_belongs_on "
        "that_entry_belongs_to that_record_belongs_to that_text_belongs_to that_entry_is_for "
        "that_entry_was_for that_entry_goes_under that_entry_belongs_on that_entry_was_on "
        "last_one_belongs_to last_one_goes_on last_one_goes_under i_told_you_wrong told_you_wrong "
        "i_misspoke ought_to_have_been should_have_read ought_to_read ought_to_say "
        "it_was_actually that_was_actually "
        "it_was_only_really it_was_really was_really "
        "really_was that_was_on that_was_from more_like double_checked should_have_said "
        "shouldve_put shouldve_said should've_put should've_said should_have_put shouldve_been "
        "typed_that_wrong typed_it_wrong got_that_wrong got_it_wrong put_that_wrong "
        "take_that_back took_that_back shoulda_said said_that_wrong entered_wrong wrote_it_wrong "
        "instead put_that_under that_was_for "
        "got_the_sugar_wrong had_that_wrong make_that make_it i_meant meant meant_to_say "
        "should_be should_have_been should've_been shoulda_been supposed_to_be change_that_to "
        "change_it_to change_that change_last change_the correct_that correct_to typo "
        "correction wrong_lot wrong_tree wrong_day wrong_date my_mistake fix_that should_say "
        "should_read fat_fingered misread was_actually change_to change_my move_that move_it "
        "correcting correct_it typed_it_backwards had_it_backwards got_it_backwards mistyped "
        "typed_wrong wrong_number hit_the_wrong_key "
    ),
}

MOST_CLAUSES = 5
MOST_OTHER_WORDS = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Amend(Reading):
    """Put the last record right: the fields that change, or a bare `value`.

    pieces: an amount as counted containers (7 pints), for when the last record is jars. was: the
    field and the old figure that the text names ("value" for a bare one): only a record that has
    it is meant. about: the kind of record that the text names. thing: what the money went on.
    """

    kind: ClassVar[str] = "amend"

    value: float | None = None
    gallons: float | None = None
    brix: float | None = None
    count: int | None = None
    hours: float | None = None
    dollars: float | None = None
    fahrenheit: float | None = None
    cords: float | None = None
    propane_lb: float | None = None
    diameter_in: float | None = None
    taps: int | None = None
    jars: tuple[Jar, ...] | None = None
    tree: str | None = None
    lot: str | None = None
    species: str | None = None
    item: str | None = None
    on: date | None = None
    pieces: tuple[Jar, ...] | None = None
    was: tuple[str, float] | None = None
    about: str | None = None
    thing: str | None = None


def find_whole(notes: Notes) -> bool:
    """A text that puts the last record right. Says whether it is one."""
    if not _may(_MAY_AMEND, notes):
        return False
    if _another_name(notes):
        notes.ask("I read two names for one amount. Text it once more, as it should be.")
        return True
    if _denies_first(notes) or (
        _OF_A_SIZE.search(notes.text) and notes.clauses and _leads(notes.clauses[0])
    ):
        notes.ask("What should it be? Text the whole of it, like: no, 14 gal at 2.2.")
        return True
    if _units_alone(notes):
        notes.ask("What should the last record be? Text it like: no, 14 gal.")
        return True
    if _of_another_kind(notes):
        notes.ask("What was it, then? Text it whole, like: 3 qt of syrup.")
        return True
    corrects = _corrects(notes)
    if (corrects and _told_and_corrected(notes)) or _put_right_in_passing(notes):
        notes.ask("I read two figures for one thing. Text it once more, as it should be.")
        return True
    if not corrects:
        return False
    changes, start = fields_changed(notes)
    if not changes:
        vessels = next((i for c in notes.clauses for i in c.of_sort("vessels")), None)
        if vessels is not None:
            notes.ask(f"{vessels.text}: how many gal is that?", fill="no, {} gal")
            return True
        if any(clause.has("STRONG") for clause in notes.clauses):
            notes.ask(
                "What should the last record be? Text it like: no, 14 gal.",
                fill="no, {}",
                number_only=False,
            )
            return True
        return False
    if _several_called(notes):
        return True
    if _and_something_new(notes):
        notes.ask("One at a time, please: first what should change, then the new record.")
        return True
    if "value" in changes and _two_bare(notes):
        notes.ask("I read two figures for one thing. Text it once more, as it should be.")
        return True
    thing = thing_named(notes) if "dollars" in changes else None
    about = "cost" if "dollars" in changes else kind_named(notes)
    notes.add(Amend(**changes, was=old_figure(notes), about=about, thing=thing), start)
    return True


def _may(words: frozenset[str], notes: Notes) -> bool:
    """A quick look: most texts have none of these words, nor one that could put anything right."""
    return any(
        not (words.isdisjoint(clause.each_word) and _CORRECTING.isdisjoint(clause.tags))
        for clause in notes.clauses
    )


def _and_something_new(notes: Notes) -> bool:
    """`sorry that was yesterday. Today we got 8 gal`, `make that 14 gal. fire is going`."""
    first = notes.clauses[0].sentence
    figures = {
        clause.sentence
        for clause in notes.clauses
        for item in clause.items
        if item.sort in FIELDS and not item.article
    }
    return any(
        clause.sentence != first
        and first in figures
        and _tells_a_deed(clause)
        and not clause.has("AMENDP", "STRONG", "AMENDLEAD")
        and (clause.sentence in figures or clause.has("FIRE", "START", "LIT"))
        for clause in notes.clauses
    )


def _two_bare(notes: Notes) -> bool:
    """`no eleven twenty five`: two bare figures in a row may be one, or two."""
    return any(
        first.sort == second.sort == "number" and not (first.part or second.part)
        for clause in notes.clauses
        for first, second in itertools.pairwise(clause.items)
    )


def _several_called(notes: Notes) -> bool:
    """`the 22 was the brook and the 9 was ridge`, `no, home 13 gal, upper 15 gal`: a correction of
    each. Says whether it is so."""
    called = [clause for clause in notes.clauses if called_by(clause) is not None]
    if len(called) < 2 or len(called) < len(notes.clauses):
        called = [clause for clause in notes.clauses if _has_name_and_figure(clause)]
    if len(called) < 2:
        return False
    for clause in called:
        alone = replace(notes, clauses=[clause])
        changes, start = fields_changed(alone)
        notes.add(Amend(**changes, was=old_figure(alone)), start)
    return True


def _has_name_and_figure(clause: Clause) -> bool:
    sorts = {item.sort for item in clause.items}
    return not sorts.isdisjoint(("lot", "tree")) and not sorts.isdisjoint(FIGURES)


# "no that was 7 of the 500s": jars that are called by their size.
_OF_A_SIZE = Sought("|".join(f"{digit}s" for digit in range(10)), r"\b\d+s\b")


def _denies_first(notes: Notes) -> bool:
    """`no home lot 13 gal, upper lot 15 gal`, where no lot is known: hardly a "no sap"."""
    first = notes.clauses[0] if notes.clauses else None
    return (
        first is not None
        and first.items[0].text in ("no", "nope", "nah")
        and any(item.sort == "volume" and not item.article for item in first.items)
        and not _leads(first)
        and not first.question
    )


def _units_alone(notes: Notes) -> bool:
    """`whoops, pints not quarts`: how many is not said again."""
    figures = any(not clause.sorts.isdisjoint(FIELDS) for clause in notes.clauses)
    if len(notes.clauses) > _A_PAIR or figures:
        return False
    words = {item.text for clause in notes.clauses for item in clause.items}
    return (
        len(words & _UNIT_WORDS) > 1
        and bool(words & (DENIALS | {"meant"}))
        and not any(clause.question for clause in notes.clauses)
    )


_UNIT_WORDS = frozenset(
    "half gal gallons quarts qt pints pt litres liters half cups ounces oz".split()
)


def _of_another_kind(notes: Notes) -> bool:
    """`that was sap not syrup`: a record cannot turn into another kind."""
    clause = notes.clauses[0] if notes.clauses else None
    if clause is None or len(notes.clauses) > 1 or not clause.has("NOT", "AMENDP"):
        return False
    figures = not clause.sorts.isdisjoint(FIELDS)
    told = clause.items[0].text in _THAT_WAS and clause.has("NOT")
    return (
        told and not figures and len(clause.tags & {"SAP", "SYRUP", "BOIL", "GATHER", "SUGAR"}) > 1
    )


def _another_name(notes: Notes) -> bool:
    """`tree s2: 2 gal, no, s1`: the name is put right in the same breath."""
    if not notes.clauses or not notes.clauses[-1].holds("tree", "lot"):
        return False
    items = [item for clause in notes.clauses for item in clause.items]
    if len(items) < 4 or items[-1].sort not in ("tree", "lot") or items[-2].sort != "word":
        return False
    earlier = {item.text for item in items[:-2] if item.sort == items[-1].sort}
    return (
        items[-2].text in ("no", "wait", "oops", "sorry", "actually", "no wait")
        and bool(earlier)
        and items[-1].text not in earlier
        and any(item.sort in FIGURES for item in items[:-2])
    )


def _told_and_corrected(notes: Notes) -> bool:
    """`gathered 20, no make that 21 gal`: a record and its correction in one breath."""
    first = notes.clauses[0]
    told = bool(first.items) and not _leads(first)
    figure = not first.sorts.isdisjoint(FIGURES)
    corrects = ("AMENDLEAD", "AMENDP", "STRONG")
    return (
        told
        and figure
        and not first.has(*corrects)
        and not any(_contrast(clause) for clause in notes.clauses)
        and not _contrast_over(notes.clauses)
        and any(clause.has(*corrects) for clause in notes.clauses[1:])
        and any(not clause.sorts.isdisjoint(FIGURES) for clause in notes.clauses[1:])
    )


def _put_right_in_passing(notes: Notes) -> bool:
    """`used a face cord no wait a half`, `19 gal at 2.7, hang on, it is 1.7`, `23 gal from the
    north side, i mean the south`: what was said first is taken back in the same text."""
    if not any(not _MAY_TAKE_BACK.isdisjoint(clause.each_word) for clause in notes.clauses):
        return False
    if _leads(notes.clauses[0]):
        return False
    if any(clause.question for clause in notes.clauses) or (
        _only_sorry(notes.clauses[-1]) and any(_contrast(c) for c in notes.clauses)
    ):
        return False
    told: set[str] = set()
    taken_back = False
    for clause in notes.clauses:
        for item in clause.items:
            sort = item.sort if item.sort in ("tree", "lot", "date") else "figure"
            if "SPECIES" in item.tags:
                sort = "species"
            counts = item.sort in FIGURES or sort != "figure"
            if taken_back and item.text in _UNIT_WORDS and "figure" in told:
                return True  # "drew off 3 pints, i mean quarts"
            if taken_back and (counts or item.part) and not item.article and sort in told:
                return True
            if counts and (not item.article or item.sort in ("volume", "cords")):
                told.add(sort)
            sorry = item.text == "sorry" and _figure_next(clause, item)
            sorry = sorry or (item.text == "no" and _denies_alone(clause, item))
            sorry = sorry or (item.text in _RATHER and _names_next(clause, item))
            taken_back = taken_back or (bool(told) and (sorry or item.text in _TAKES_BACK))
    return False


_MAY_TAKE_BACK = frozenset(
    "actually er rather well wait hang hold oops ops whoops mean correction scratch strike sorry "
    "call make more no".split()
)


_MAY_CORRECT = frozenset("* wrong was were is instead rather that's those that not no".split())
_MAY_AMEND = (
    _MAY_CORRECT
    | _MAY_TAKE_BACK
    | frozenset("nope nah meant wasn't wasnt weren't isn't than".split())
)
"""One of these is in every text that puts something right, and few others have one."""
_RATHER = frozenset(("actually", "er", "or rather", "rather", "well"))


def _names_next(clause: Clause, item: Item) -> bool:
    """`put in 14 taps, actually 16`, `12 gal friday, well thursday`."""
    behind = [each for each in clause.following(item, 2) if each.text not in ("on", "the", "it")]
    return bool(behind) and (behind[0].sort in FIGURES or behind[0].sort in ("tree", "lot", "date"))


def _denies_alone(clause: Clause, item: Item) -> bool:
    """`one tap, no, two taps`; but in `12 gal, no frost` there was none."""
    heads = [each for each in clause.items if each.sort != "sign"][:1] == [item]
    return heads and (len(clause.items) == 1 or _figure_next(clause, item))


def _figure_next(clause: Clause, item: Item) -> bool:
    behind = clause.following(item, 1)
    return bool(behind) and behind[0].sort in FIGURES


_TAKES_BACK = frozenset(
    ("no wait", "wait no", "wait", "hang on", "hold on", "oops", "whoops", "i mean", "correction",
     "scratch that", "strike that", "make that", "make it", "more like", "call it")
)  # fmt: skip


def _corrects(notes: Notes) -> bool:
    if (
        not notes.clauses
        or any(clause.question for clause in notes.clauses)
        or len(notes.clauses) > MOST_CLAUSES
    ):
        return False
    if not _may(_MAY_CORRECT, notes):
        return False
    first = notes.clauses[0]
    lead = _leads(first)
    strong = (
        any(_is_strong(clause) for clause in notes.clauses)
        or _only_the_day(notes.clauses)
        or _said_but_was(notes.clauses)
        or _was_only(notes.clauses)
        or _was_actually(first)
        or called_by(notes.clauses[0]) is not None
        or _a_slip_at_last(notes.clauses)
        or _of_what_was_told(notes.clauses)
    )
    contrasted = any(_contrast(clause) for clause in notes.clauses) or _contrast_over(notes.clauses)
    actually = _was_actually(first)
    talk = notes.clauses[:1] if actually else notes.clauses
    if any(_NO_CORRECTION & clause.each_word for clause in talk) or any(
        "zip" in word for word in notes.text.split()
    ):
        return False
    if any(_wrong_record(clause) for clause in notes.clauses) and any(
        item.sort in FIELDS and not item.article
        for clause in notes.clauses
        for item in clause.items
    ):
        strong = True
    if (
        any(
            _tells_a_deed(clause) and not clause.has("WEAK", "AMENDP") and not clause.has("STRONG")
            for clause in notes.clauses
        )
        and not strong
    ):
        told_anew = not contrasted
        if told_anew:
            return False
    if _LATE_WORD.search(notes.text) or _I_MAKE_IT.search(notes.text):
        return False
    if "is the one" in notes.text or "are the ones" in notes.text:
        return False  # "no 12 is the one with the split trunk"
    if ("forgot" in notes.text and not actually) or "also" in notes.text.split()[:2]:
        return False
    if (first.has("DRY") and not strong) or any(clause.hypothetical for clause in notes.clauses):
        return False
    if strong:
        return not any(
            clause.plan and not clause.has("STRONG", "AMENDP") for clause in notes.clauses
        )
    if contrasted:
        return (
            lead
            or any(clause.has("AMENDP") for clause in notes.clauses)
            or len([clause for clause in notes.clauses if not _only_sorry(clause)]) <= _A_PAIR
        )
    if not lead:
        return False
    words = [item for clause in notes.clauses for item in clause.of_sort("word")]
    plain = [
        item
        for item in words
        if not item.tags & {"AMENDLEAD", "AMENDP", "NOT"} and item.text not in FILLERS
    ]
    return len(plain) <= MOST_OTHER_WORDS


_CORRECTING = frozenset(("AMENDLEAD", "AMENDP", "STRONG", "NOT"))


# "meant to text sooner: 30 gal friday": told late, and nothing put right.
_LATE_WORD = re.compile(
    r"\bmeant to (?:text|tell|log|send|report|mention|message)(?: (?:you|this|it|that))?"
    r" ?(?:sooner|earlier|before|yesterday|last night|this morning|about|:|you\b)"
)


_A_PAIR = 2


def _a_slip_at_last(clauses: Sequence[Clause]) -> bool:
    """`that was 6.5 gal, fat fingers`; `it was $42, sorry`."""
    first, last = clauses[0], clauses[-1]
    slips = len(clauses) > 1 and _only_sorry(last) and first.items[0].text in _THAT_WAS
    return slips and not first.sorts.isdisjoint(FIELDS)


_TOLD_THINGS = frozenset(
    "sap jars brix boil syrup taps wood cost draw batch run gallons amount entry one tree sugar "
    "pints quarts record figure jars fire fuel buckets reading".split()
)


def _of_what_was_told(clauses: Sequence[Clause]) -> bool:
    """`that sap was from yesterday`, `those jars were from friday`, `that brix was tree 6`."""
    said = [item for item in clauses[0].items if item.sort != "sign" and item.text != "last"]
    if len(clauses) != 1 or len(said) < 3 or said[0].text not in ("that", "those"):
        return False
    verb = next((n for n, item in enumerate(said) if item.text.split()[0] in ("was", "were")), None)
    if verb is None or not all(i.text in _TOLD_THINGS for i in said[1:verb]) or verb == 1:
        return False
    behind = [i for i in said[verb + 1 :] if i.text not in _BETWEEN_WAS]
    return len(behind) == 1 and behind[0].sort in ("date", "lot", "tree", "volume", "brix")


_BETWEEN_WAS = frozenset("from for on in at the really actually lot".split())


def _only_sorry(clause: Clause) -> bool:
    """`brix was 1.9, not 2.9, | sorry`."""
    return all("AMENDLEAD" in item.tags or item.sort == "sign" for item in clause.items)


_I_MAKE_IT = re.compile(r"\b(?:i|we) make it \d")
"""`I make it 26 gallons`: how much I reckon that it is."""


def _tells_a_deed(clause: Clause) -> bool:
    """`boiled 7 hours`; but not `the boil was 7 hours`, which speaks of one that was told."""
    if "found" in clause.words() and clause.holds("volume"):
        return True  # "actually ray found 2 gal at the barn"
    return any(
        item.tags & {"GATHER", "BOTTLE", "BOIL", "DRAW", "POUR"}
        and not (
            item.text in ("boil", "boiling")
            and any(each.text in WHOSE for each in clause.preceding(item, 1))
        )
        for item in clause.items
    )


_THAT_WAS = frozenset(("that was", "it was", "that is", "that's", "it's"))


def _only_the_day(clauses: Sequence[Clause]) -> bool:
    """`that was thursday`: the day alone."""
    if len(clauses) != 1:
        return False
    items = [
        item for item in clauses[0].items if item.text not in ("for", "from", "on", "actually")
    ]
    return len(items) == 2 and items[0].text in _THAT_WAS and items[1].sort == "date"


def _was_actually(first: Clause) -> bool:
    """`that was $24 actually`, `ridge was 2.3 actually`."""
    said = [item for item in first.items if item.sort != "sign"]
    if len(said) == 4 and said[0].sort in ("lot", "tree") and said[1].text in ("was", "is"):
        said = said[1:]
    return (
        3 <= len(said) <= _MOST_SAID
        and (said[-3].text in _THAT_WAS or said[-3].text.split()[-1] in ("was", "is"))
        and said[-2].sort in FIELDS
        and said[-1].text in _SAID_LAST
    )


_SAID_LAST = frozenset(("actually", "really", "sorry", "oops", "whoops", "my bad", "though"))
_MOST_SAID = 5
"""Words of `the sugar was 1.9 actually`."""


def _was_only(clauses: Sequence[Clause]) -> bool:
    """`it was only 3 quarts`: less than was told, and nothing else is said."""
    said = [item for item in clauses[0].items if item.sort != "sign"]
    words = [item.text for item in said[:-1]]
    return (
        len(clauses) == 1
        and len(said) == 3
        and words[0] in ("it was", "that was", "was")
        and words[1] in ("only", "just")
        and said[2].sort in ("volume", "number", "brix", "hours", "money", "vessels")
    )


def _leads(first: Clause) -> bool:
    """Does the text begin as a correction does: no, / oops / actually?"""
    if first.items[0].text == "*":
        return True  # "*15": how a slip is put right where people chat
    leading = [item for item in first.items if item.sort != "sign"]
    while leading and leading[0].text in BEFORE_LEAD:
        leading = leading[1:]
    undone = bool(leading) and (leading[0].text in _UNDONE or leading[0].text == "i mean")
    if not leading or not ("AMENDLEAD" in leading[0].tags or undone):
        return False
    if leading[0].text == "sorry" and len(leading) > 1 and _goes_on_talking(leading[1]):
        return False  # "sorry little run, 2 gallons"
    if leading[0].text in ("actually", "wait") and _only_talks(leading[1:]):
        return False  # "actually a good day, 18 gal", "wait for it, 30 gal"
    if leading[0].text in ("no", "nope", "nah") and len(leading) > 1:
        following = leading[1]
        return (
            following.sort != "word"
            or bool(following.tags & {"AMENDP", "AMENDLEAD", "STRONG"})
            or following.text in ("it", "it's", "its", "that", "that's", "not", "the", "tree", "i")
        )
    return True


def _is_strong(clause: Clause) -> bool:
    """A word that surely puts right; but `the truck won't make it`, `spiles should be here monday`
    and `meant to boil 30 gal` are of no record."""
    strong = [item for item in clause.items if "STRONG" in item.tags]
    return any(_puts_right(clause, item) for item in strong)


def _puts_right(clause: Clause, item: Item) -> bool:
    behind = clause.following(item, 1)
    figure = bool(behind) and (behind[0].sort in FIELDS or "SPECIES" in behind[0].tags)
    if item.text in ("make it", "make that"):
        days = [each.text for each in clause.following(item, 2)][1:] in (["days"], ["years"])
        return figure and not days
    if item.text in _SHOULD_BE:
        dated = any(each.sort == "date" for each in clause.following(item, 2)) and not _HERE & set(
            clause.words()
        )
        denied = any(each.text in DENIALS for each in clause.items)
        by = "by" in clause.words() or "under" in clause.words()
        return denied or ((figure or dated) and not by)
    if item.text in ("that was from", "that was on", "that was for"):
        return clause.items[0] is item or "AMENDLEAD" in clause.items[0].tags
    if item.text in ("meant", "i meant"):
        return not behind or behind[0].text != "to"
    return True


_SHOULD_BE = frozenset(("should be", "should have been", "should've been", "supposed to be"))
_HERE = frozenset("here home back done ready there over".split())


def _wrong_record(clause: Clause) -> bool:
    """`wrong amount, 14`, `that's wrong`; but `wrong boots` and `nothing wrong with it` are not."""
    words = clause.text.split()
    if "wrong" not in words or not {"nothing", "went", "anything"}.isdisjoint(words):
        return False
    at = words.index("wrong")
    behind, before = words[at + 1 :], words[max(0, at - 2) : at]
    if before[-1:] in (["was"], ["is"], ["were"]) and before[:1] != before[-1:]:
        return before[0] in _MAY_BE_WRONG | {"that"}
    if not behind:
        return not before or before[-1] in ("that's", "it's", "thats", "was", "is", "wrong")
    return behind[0] in _MAY_BE_WRONG or not behind[0].isalpha()


_MAY_BE_WRONG = frozenset(
    "price cost way amount number figure tree lot day date one entry reading it "
    "count unit units brix sugar on in "
    "about again sorry should its it's was is".split()
)


def _only_talks(words: Sequence[Item]) -> bool:
    """Words without a figure or a name, and more than fill."""
    told = any(item.sort in FIELDS and not item.article for item in words)
    puts_right = any(item.tags & {"AMENDP", "STRONG", "NOT"} for item in words)
    talk = [item for item in words if item.sort == "word" and item.text not in FILLERS]
    return not told and not puts_right and (len(talk) > 1 or [i.text for i in words[:1]] == ["for"])


def _goes_on_talking(following: Item) -> bool:
    """`sorry little run`, `sorry about the wait`: no figure, and no word that puts right."""
    told = following.tags & {"AMENDP", "AMENDLEAD", "STRONG", "NOT"} or following.text in FILLERS
    return following.sort == "word" and not told


_UNDONE = frozenset(
    ("cancel that", "scratch that", "strike that", "delete that", "erase that", "undo that",
     "disregard that", "ignore that", "forget that", "remove that")
)  # fmt: skip
"""Where what it should be follows, the record is put right and not taken back."""
_NO_CORRECTION = frozenset(
    "included his her their warmer colder late till til until fine okay see bother delay forgot "
    "enough tomorrow tonight plenty able".split()
)


def _contrast_over(clauses: Sequence[Clause]) -> bool:
    """`39F, not 93`; `not 12, 21`; `not the barn lot, the brook`: over two clauses."""
    for before, clause in itertools.pairwise(clauses):
        if clause.sentence != before.sentence:
            continue
        pair = [
            any(i.sort in FIELDS and not i.article for i in each.items) for each in (before, clause)
        ]
        starts = [
            each.items[0].text in DENIALS and len(each.items) <= 4 for each in (before, clause)
        ]
        if all(pair) and any(starts):
            return True
    return False


def _said_but_was(clauses: Sequence[Clause]) -> bool:
    """`i said 21 gal but it was 12 gal`."""
    return any(
        any(item.text in _I_TOLD for item in before.items[:2])
        and clause.joint in ("but", "and")
        and clause.has("AMENDP")
        for before, clause in itertools.pairwise(clauses)
    )


_I_TOLD = frozenset(("i said", "i put", "i wrote", "i texted", "i told you"))


def _contrast(clause: Clause) -> bool:
    """`14 not 12`, `not 12 but 14`, `3 quarts not 3 gallons`."""
    amounts = [item for item in clause.items if item.sort in FIELDS]
    denied = next((item for item in clause.items if item.text in DENIALS), None)
    if denied is None or not amounts:
        return False
    return any(item.start > denied.start for item in amounts) and (
        any(item.start < denied.start for item in amounts) or "but" in clause.text
    )
