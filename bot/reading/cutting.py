"""Where a sentence and a clause end.

A sentence ends at . ! ? ; or a new line. A clause ends there, at a comma, a slash, "and" and
the like, before a question that follows an amount, where the thing that led the clause (an
amount, a tree, a day) comes a second time ("tree 1 2 gal tree 2 3 gal" is two), and before a
second deed with an amount of its own.
"""

from __future__ import annotations

from collections.abc import Sequence

from bot.reading.clause import Clause
from bot.reading.comparing import COMPARES
from bot.reading.frames import QUANTITIES
from bot.reading.items import Item
from bot.reading.later import speaks_of_later

_SHORT_DAYS = frozenset("mon tue tues wed weds thu thur thurs fri sat sun".split())
_STOPS = frozenset(".!?;\n")
_JOINTS = frozenset(
    (",", "/", "&", "+", "and", "then", "also", "plus", "but", "so", "&amp", "because")
)
_LEADING = frozenset(("volume", "tree", "lot", "date", "cords", "brix"))
_LEADS_OR_COUNTS = _LEADING | {"number"}


def cut(items: Sequence[Item]) -> list[Clause]:
    found: list[Clause] = []
    current: list[Item] = []
    sentence = 0
    joint = ""
    told = False  # whether the current one has an amount

    def close(ended_by: str) -> None:
        nonlocal current, joint, told
        if current:
            found.append(Clause(current, sentence, joint, ended_by))
            current = []
            joint = ended_by
            told = False

    for n, item in enumerate(items):
        following = items[n + 1] if n + 1 < len(items) else None
        if item.sort == "sign":
            if item.text == "." and _ends_nothing(items[n - 1] if n else None, following):
                continue
            if item.text in _STOPS:
                close(item.text)
                if found and (not found[-1].ended_by or item.text == "?"):
                    found[-1].ended_by = item.text
                sentence += 1
                joint = item.text
                continue
            if item.text == "-":
                if (
                    current
                    and n
                    and following is not None
                    and _dashes(current, items[n - 1 : n + 2])
                ):
                    close("-")
                continue
            if item.text in "()":
                figures = any(each.sort in QUANTITIES for each in current)
                if figures and (item.text == "(" or joint == "("):
                    close(item.text)
                continue
        joins = item.text in _JOINTS and item.sort in ("sign", "word")
        if joins or (item.text == "after" and following is not None and "BOIL" in following.tags):
            close(item.text)
            joint = item.text
            continue
        if item.text in _SAID_OF_LATER and _is_for_later(current, item, following):
            close("to")
        if told and _new_deed(current, items, n):
            close("")
        if _starts_anew(current, items, n):
            led: list[Item] = []
            while len(current) > 1 and _leads_on(current[-1]):
                led.insert(0, current.pop())
            close("")
            current = led  # "5 quarts | not 5 gallons", "12 gal today | total so far 90 gal"
        current.append(item)
        told = told or (item.sort in QUANTITIES and not item.article)
    close("")
    return found


def _ends_nothing(before: Item | None, following: Item | None) -> bool:
    """The point of `no. 12` and of `Sat. 24 gal`."""
    if before is None or following is None:
        return False
    if before.text == "no" and following.sort == "number":
        return True
    return before.text in _SHORT_DAYS and following.sort in QUANTITIES


def _dashes(current: Sequence[Item], around: Sequence[Item]) -> bool:
    """Whether a dash with room on both sides parts more than a name from what is said of it."""
    before, dash, following = around
    spaced = before.end < dash.start and dash.end < following.start
    return spaced and not all(each.sort in ("tree", "lot", "date", "clock") for each in current)


_SAYS_WHAT_COMES = frozenset(("we'll", "i'll", "will", "gonna", "going to", "continuing"))
_TO_BE_BOILED = frozenset(("to boil", "for boiling"))
_SAID_OF_LATER = _SAYS_WHAT_COMES | _TO_BE_BOILED
_DEEDS_DONE = frozenset(("END", "PAST"))


def _is_for_later(current: Sequence[Item], item: Item, following: Item | None) -> bool:
    """`collected 30 gal | to boil tomorrow`: what was done, and then what is planned."""
    if (
        item.text in _SAYS_WHAT_COMES
        and following is not None
        and following.text in _WILL_GATHER
        and any(each.sort == "volume" for each in current)
    ):
        return True  # "got 4 gal tonight | will get another 10 in the morning"
    if item.text not in _TO_BE_BOILED or following is None:
        return False
    later = speaks_of_later(following) or following.text in _LATER
    return later and any("GATHER" in each.tags and "WEAK" not in each.tags for each in current)


_WILL_GATHER = frozenset("get gather collect have bring haul pick".split())


_DEED_WORDS = frozenset("BOIL DRAW BOTTLE SETV PULLV POUR COSTV BURN LIT".split())
_NAMES_AFTER = frozenset("BOIL DRAW BOTTLE COSTV BURN".split())
"""Deeds that are done to no tree, so that a tree named behind their amount is another matter."""


def _deed(item: Item) -> frozenset[str]:
    """What a word surely does: `got` and `ran` alone may do anything."""
    tags = item.tags & _DEED_WORDS
    if not tags and "GATHER" not in item.tags:
        return tags
    if "LIT" in tags and item.text.split()[0] in ("on", "over"):
        tags -= {"LIT"}  # "cooked 4.5 gal down on the burner"
    if "BOIL" in tags and "PAST" not in item.tags:
        tags -= {"BOIL"}  # "used 12 pounds propane boiling 10 gal"
    gathers = "GATHER" in item.tags and "WEAK" not in item.tags
    return tags | {"GATHER"} if gathers else tags


def _new_deed(current: Sequence[Item], items: Sequence[Item], n: int) -> bool:
    """`hauled 21 gallons down the hill | got rid of 12 gal`, `bottled 9 half pints | tree 22 made 3
    quarts`: a second deed with its own amount, where one was told and no comma parts them."""
    item = items[n]
    ahead: list[Item] = []
    for each in items[n + 1 :]:
        if each.text in _STOPS or (each.text in _JOINTS and each.sort in ("sign", "word")):
            break
        ahead.append(each)
    at = next((k for k, each in enumerate(current) if _deed(each)), None)
    named = current[0].sort in ("tree", "lot")
    start = 0 if named else at
    if start is None:
        pays = item.text in _PAYS and any(each.sort == "money" for each in ahead)
        dated = any(each.sort == "date" for each in current)
        acts = bool(_deed(item) & {"BOIL", "DRAW", "BOTTLE", "POUR", "GATHER"})
        more = dated and acts and any(each.sort == "volume" for each in ahead)
        lost = "POUR" in _deed(item) and bool(ahead) and ahead[0].sort == "volume"
        return pays or more or lost  # "12 gal today | boiled 30 gal yesterday"
    done = any(each.sort in QUANTITIES and not each.article for each in current[start:])
    own = _deed(current[at]) if at is not None else frozenset()
    amount = any(each.sort in QUANTITIES and not each.article for each in ahead)
    if item.sort == "money":
        apart = current[-1].text not in _NO_END
        return apart and done and bool(own - {"COSTV"}) and "COSTV" not in own
    if item.sort == "tree":
        return done and amount and bool(own & _NAMES_AFTER) and current[-1].sort in QUANTITIES
    new = _deed(item)
    if not done or not new or new & own or current[-1].text in _NO_END:
        return False
    return amount or "LIT" in new


_DRY_TAGS = frozenset(("NONE", "DRYSAID", "DRY"))
_DRY_WORDS = frozenset(("empty", "frozen", "too cold", "cold"))
_PAYS = frozenset("paid spent bought ordered".split())
_NO_END = frozenset(
    "and to of the a an we i it was is were then that for from in on by at about with my our "
    "just".split()
)


def _leads_on(item: Item) -> bool:
    return item.text in _DENIES or bool(item.tags & {"TOTAL", "SOFAR"})


_LATER = frozenset(("later", "tonight", "soon"))
_DENIES = frozenset(("not", "instead of", "rather than"))


def _starts_anew(current: Sequence[Item], items: Sequence[Item], n: int) -> bool:
    if not current or _goes_on_plainly(items[n]):
        return False
    item, ahead = items[n], items[n + 1 : n + 3]
    following = ahead[0] if ahead else None
    has_amount = any(each.sort in QUANTITIES for each in current)
    if "ASKHOW" in item.tags and has_amount and current[-1].text not in ("is", "was", "that's"):
        return True
    asked = following is not None and (item.text == "any" or following.text in ("i", "we", "it"))
    if asked and has_amount and item.text in ("can", "should", "will", "is", "any"):
        return True
    asks_of_self = following is not None and following.text in ("i", "we")
    if asks_of_self and item.text in ("do", "should") and _tells(current):
        return True
    supposed = has_amount and any("IF" in each.tags for each in current)
    if (
        supposed
        and item.text in ("do", "will", "would", "does", "can", "should")
        and (following is not None and following.text in ("i", "we", "it", "that", "you"))
    ):
        return True  # "if we pull 50 gal at 2.2 | do we get a gallon of syrup"
    if item.text in _SAYS_WHAT_COMES and any(each.tags & _DEEDS_DONE for each in current):
        return True  # "fire is out | we'll continue tomorrow"
    if has_amount and item.text == "the" and any(each.text == "would" for each in ahead):
        return True  # "118 gal on the sled | the mule would have quit"
    told = has_amount or any(each.tags & _DEEDS_DONE for each in current)
    must = following is not None and following.text in _HAVE_TO
    if told and must and item.text in ("i", "we"):
        return True  # "all done boiling | i have to teach in the morning"
    denied = following is not None and "NOT" in following.tags
    if has_amount and denied and item.text in ("it", "i", "we", "they"):
        return True  # "five quarts of sap today | it never got above freezing"
    if item.text in COMPARES and has_amount:
        return True
    fresh = len(current) > 1 and item.sort in ("volume", "tree", "lot")
    if fresh and any(each.tags & _DRY_TAGS or each.text in _DRY_WORDS for each in current):
        # "nothing mon | 8 gal tue", "B1 dry | B2 2 gal"
        return any(each.sort in ("date", "tree", "lot") for each in current)
    again = item.sort in ("lot", "tree") and any(each.sort == item.sort for each in current)
    if again and has_amount and current[-1].sort in QUANTITIES:
        return True  # "yesterday north 12 gal | south 7 gal"
    syrup = "SYRUP" in item.tags and following is not None and following.sort == "volume"
    if syrup and any(each.sort == "volume" for each in current):
        return True  # "sap 20 gal | syrup 3 pints"
    if item.sort == "date" and any("NONE" in each.tags for each in current):
        return any(each.sort == "date" for each in current)
    fired = not item.tags.isdisjoint(_FIRE_TAGS)
    if fired and _tested(current) and any(each.sort == "volume" for each in current):
        return True  # "28 gal 2.1 | arch lit at 4"
    counted = item.sort == "number" and current[-1].sort == "lot" and len(current) > 1
    if counted and any(each.sort == "number" for each in current):
        return True  # "25 on ridge | 15 on creek"
    if item.sort in _LEADING:
        lead = next((each.sort for each in current if each.sort in _LEADS_OR_COUNTS), None)
        if lead == item.sort and has_amount:
            return True
        if item.sort == "tree" and any(each.sort == "tree" for each in current) and has_amount:
            return current[-1].sort != "tree"
    return False


_STARTING_TAGS = frozenset(("ASKHOW", "SYRUP", "FIRE", "LIT"))
_STARTING_WORDS = (
    COMPARES
    | _SAYS_WHAT_COMES
    | frozenset("can should will is any do would does i we it they the".split())
)


def _goes_on_plainly(item: Item) -> bool:
    """Most words never start a clause anew."""
    return (
        item.sort == "word"
        and item.tags.isdisjoint(_STARTING_TAGS)
        and item.text not in _STARTING_WORDS
    )


_HAVE_TO = frozenset(("have to", "need to", "gotta", "should", "ought to"))
_FIRE_TAGS = frozenset(("FIRE", "LIT"))


def _tested(current: Sequence[Item]) -> bool:
    return any(
        each.sort == "brix" or (each.sort == "number" and "." in each.text) for each in current
    )


def _tells(current: Sequence[Item]) -> bool:
    """`ice in the buckets | do i throw it out`: something was said, and no question begun."""
    words = [each for each in current if each.sort != "sign"]
    return (
        len(words) > 1
        and not words[0].tags & {"ASKDO"}
        and not any(each.tags & {"ASKHOW", "ASKME", "IF", "NOT"} for each in words)
    )
