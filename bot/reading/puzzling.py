"""Amounts that nothing says are sap, among words that we do not know: asked about, never taken."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bot.reading.levels import is_a_sum, not_gathered_now

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes


MOST_BRIX_SAID = 8.0
"""`12 gal at 2.2 and 2.0 from the hill`: up to this a bare figure may be sugar."""


MOST_STRANGE_WORDS = 1
"""So many words that we do not know, around an amount that may be anything, want a question."""


PLAIN_WORDS = frozenset(
    (
        "a an the of to in on at for from with and or but so as by off up out over down we i "
        "you it that this these those my our your us me was were is are be been am do did does "
        "had has have just only even still now then back here there very really pretty too "
        "about some more most much many few one two first last best good great nice big fine "
        "bad far yes than like after before when while noon lunch supper dinner dark dawn "
        "breakfast day days week time year season set got get made since till row fence lane "
        "milking milkings chore between pulled demonstration demo program please "
        "road barn shed house home help kids boys girls wife husband son daughter dad mom "
        "brother sister first second third fourth trip trips load loads sled round rounds haul "
        "hair "
        "well oh yeah wow man anyway anyways anyhow final overall grand official "
        "boy gee finally again already today's evening's morning's run's hands cold wet snow "
        "rain mud wind sun sunny warm freezing thaw record tally count ones way little bit "
        "total backyard driveway hill hillside field creek brook end side same another other "
        "whole both all pm dusk them barely forgot waiting lines blue red green north south "
        "east west upper lower trees we've i've it's that's there's we're i'm they're chores "
        "meh eh yay woot ugh phew whee eve aft em woods catching come comes came went rode "
        "along plus okay ok evening morning tho though think guessing tops less group "
        "class crowd overnight night vol volume amt amount qty show checked check checks pickup "
        "pickups ever report woohoo boo whoa early late since whopping aboard anything "
        "forenoon midday sunup sunset sundown dusk daybreak dawn alone together inside because "
        "yet caps lock stuck apiece noontime nightfall wheelbarrow toboggan sleigh "
        "bruh bro dude fr lowkey highkey ngl idk omg smh fam yall folks"
    ).split()
)
"""Words that say nothing against an amount being sap."""


def puzzling(clause: Clause, notes: Notes) -> bool:
    """An amount that nothing says is sap, among words that we do not know, is not taken."""
    told = clause.about("GATHER", "SAP") or clause.tree is not None or clause.lot is not None
    if not_gathered_now(clause, notes) or any(
        _unknown_deed(clause, item) or _put_to_use(clause, item) for item in clause.free("volume")
    ):
        ask_if_sap(clause, notes)
        return True
    named = clause.tree is not None or clause.lot is not None or clause.has("SAP")
    if any(
        _of_something_else(clause, item, of=told)
        for item in clause.free("volume")
        if not (told and named)
    ):
        ask_if_sap(clause, notes)
        return True
    tested = any(
        item.sort == "number" and "." in item.text and 0 < item.value <= MOST_BRIX_SAID
        for item in notes.items_beside(clause)
    )
    if (
        told
        or tested
        or clause.near("SUGAR")
        or any(other.holds("brix") for other in notes.clauses)
    ):
        return False
    strange = [
        item
        for item in clause.of_sort("word")
        if not item.tags
        and item.text not in PLAIN_WORDS
        and not behind_a_preposition(clause, item)
        and not item.text[:1].isdigit()
        and not any(each.text == ":" and each.start > item.start for each in clause.items)
    ]
    if len(strange) < MOST_STRANGE_WORDS:
        return False
    ask_if_sap(clause, notes)
    return True


def _unknown_deed(clause: Clause, item: Item) -> bool:
    """`flung 20 gal of sap`: what was done with it, we do not know."""
    before = [each for each in clause.items if each.start < item.start]
    while before and ("ABOUT" in before[-1].tags or before[-1].text in _BEFORE_AN_AMOUNT):
        before.pop()
    if not before or clause.gathers() or clause.kept:
        return False
    deed = before[-1]
    return (
        deed.sort == "word"
        and not deed.tags
        and deed.text not in PLAIN_WORDS
        and not behind_a_preposition(clause, deed)
    )


def _put_to_use(clause: Clause, item: Item) -> bool:
    """`watered the goats with 5 gal of sap`, `made tea with a quart of sap`."""
    before = clause.preceding(item, 2)
    if len(before) < 2 or before[0].text not in ("with", "in", "using"):
        return False
    thing, first = before[1], next((i for i in clause.items if i.text not in ("we", "i")), None)
    if first is None or not (first.text == "made" or (first.text[-2:] == "ed" and not first.tags)):
        return False
    return (
        thing.sort == "word"
        and not thing.tags
        and thing.text.isalpha()
        and thing.text not in PLAIN_WORDS
        and not thing.text.endswith(("ly", "ing"))
        and not behind_a_preposition(clause, thing)
    )


def _of_something_else(clause: Clause, item: Item, *, of: bool) -> bool:
    """`1 gal oj`, `picked up five gallons of primer`: an amount of what we do not know. of: only
    where the word "of" says so."""
    behind = clause.following(item, 2)
    if behind and behind[0].text == "of":
        behind = behind[1:]
    elif of:
        return False
    return (
        bool(behind)
        and behind[0].sort == "word"
        and not behind[0].tags
        and behind[0].text.isalpha()
        and behind[0].text not in PLAIN_WORDS | _BETWEEN | _PREPOSITIONS
        and not behind[0].text.endswith(("ly", "ing", "ish"))
    )


_BEFORE_AN_AMOUNT = frozenset("the a an another some all up down out in off over only just".split())


_PREPOSITIONS = frozenset(
    "at by in on from off with near before after under over behind past around through into till "
    "until for despite during since like along beside across around between beyond below "
    "above".split()
)


_BETWEEN = frozenset("the a an my our his her their this that little old big".split())


def strangers(clause: Clause, item: Item) -> list[Item]:
    """Words before an amount that we do not know: who or what did it, nobody can say. A heading
    (`product of today's demo: 28 fl oz`) does nothing."""
    if any(each.text == ":" and each.start < item.start for each in clause.items):
        return []
    return [
        each
        for each in clause.items
        if each.start < item.start
        and each.sort == "word"
        and not each.tags
        and each.text.isalpha()
        and each.text not in PLAIN_WORDS
        and not each.text.endswith("ly")
        and not behind_a_preposition(clause, each)
    ]


def behind_a_preposition(clause: Clause, item: Item) -> bool:
    """`by headlamp`, `at daybreak`, `on the sled`: a circumstance, not a deed."""
    before = [each for each in clause.preceding(item, 3) if each.text not in _BETWEEN]
    return bool(before) and before[0].text in _PREPOSITIONS


def ask_if_sap(clause: Clause, notes: Notes) -> None:
    for item in clause.free("brix", "number"):
        item.used = True
    asked = any(c.question and c.sentence == clause.sentence for c in notes.clauses)
    if asked and not_gathered_now(clause, notes):
        for item in clause.free("volume"):
            item.used = True  # "I have 45 gal in the tank, do I need to boil"
        return
    where = f"tree {clause.tree} " if clause.tree else f"{clause.lot} " if clause.lot else ""
    when = f" on {notes.day(clause).isoformat()}" if clause.on is not None else ""
    for item in clause.free("volume"):
        item.used = True
        if is_a_sum(clause, item):
            notes.ask(
                f"{item.text} of sap: gathered now, or the sum so far?",
                ("now|gathered|new|more|today|sap", f"{where}{item.text} of sap{when}"),
                ("sum|the sum|so far|total|in all|week|month|season", ""),
            )
            continue
        notes.ask(
            f"{item.text}: is that sap you gathered?",
            ("sap|ok|yep|yeah|gathered", f"{where}{item.text} of sap{when}"),
        )
