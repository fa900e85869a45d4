"""What an amount is an amount of. Sap, syrup, boiled and poured-out sap and jars compete for
the same gallons: here alone it is decided which of them wins, from the words nearest to it."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from bot.reading.signs import Sought

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item

CONTAINER_UNITS = frozenset(
    ("pint", "half_pint", "quart", "fluid_ounce", "cup", "milliliter", "half_gallon")
)
_LARGE_UNITS = frozenset(("gallon", "liter", "imperial_gallon"))
SYRUP_FROM = 50.0
"""Brix from which a figure can only be syrup (our own)."""


def _of(clause: Clause, item: Item) -> str:
    """The thing that the amount is said to be of: `12 gal of sap`, `3 pints syrup`."""
    behind = clause.following(item, 3)
    if behind and behind[0].text == "the":
        return ""  # "dumped 2 gal the dog got into"
    if behind and behind[0].text == "of":
        for each in clause.following(item, 6)[1:]:
            if each.tags & {"SAP", "SYRUP"}:
                return "sap" if "SAP" in each.tags else "syrup"
            if each.text == "water":
                return "foreign"  # "12 gal of wash water"
            if each.sort != "word" or each.tags:
                break  # "three quarts of the loveliest syrup"
    for each in behind:
        if each.sort in ("brix", "volume", "money"):
            break  # "42 gal 2.2 pct cows out again"
        if "SAP" in each.tags:
            return "sap"
        if "SYRUP" in each.tags:
            return "syrup"
        if each.text in ("amber", "golden") and not _names_a_thing_behind(clause, each):
            return "syrup"
        if "WOOD" in each.tags or "PROPANE" in each.tags:
            return "fuel"
        ice = each.text == "ice" and not clause.about("POUR")
        if "FOREIGN" in each.tags or each.text == "water" or ice:
            return "foreign"
        if each.text not in (
            "of",
            "hot",
            "cold",
            "warm",
            "boiling",
            "rinse",
            "finished",
            "good",
            "fresh",
            "clear",
            "the",
            "nice",
            "raw",
            "more",
            "dark",
            "light",
            "amber",
            "golden",
        ):
            break
    return ""


def into_the_pan(clause: Clause) -> bool:
    """Whether sap goes on to boil: `poured 10 gal into the pan`, `put 15 gal in the pan`."""
    pan = clause.first("PANN")
    if pan is None and "into the pan" not in clause.text and not _INTO_THE_RIG.search(clause.text):
        return False
    words = set(clause.words())
    filled = "filled" in words and not clause.gathers() and not clause.has("SYRUP", "DRAW", "JARN")
    if filled and pan is not None:
        return [each.text for each in clause.following(pan, 1)] == ["with"]
    gathered = any("GATHER" in item.tags and item.text not in _PUT for item in clause.items)
    if not (clause.has("SYRUP", "DRAW") or gathered) and _INTO_THE_RIG.search(clause.text):
        return True
    if clause.has("SYRUP", "DRAW") or gathered or words.isdisjoint(_PUT):
        return False
    if "into the pan" in clause.words() or _INTO_THE_RIG.search(clause.text):
        return True
    before = [] if pan is None else [each.text for each in clause.preceding(pan, 3)]
    return not {"in", "into", "to", "went in"}.isdisjoint(before)


def _stands_in_the_pan(clause: Clause, item: Item) -> bool:
    """`40 gal in the pan`: put in just now, or what is there?"""
    behind = [each.text for each in clause.following(item, 3) if each.text not in ("sap", "the")]
    pan = clause.first("PANN")
    into = behind[:1] in (["in"], ["into"]) and pan is not None and pan.start > item.start
    deeds = ("SYRUP", "DRAW", "GATHER", "BOIL", "BOTTLE", "POUR")
    return into and not clause.has(*deeds) and not clause.question


_PUT = frozenset(
    (
        *("poured", "put", "added", "dumped", "ladled", "loaded", "moved", "transferred"),
        *("threw", "tipped", "pumped", "drained"),
        *("started", "tossed", "went", "went in"),
    )
)


def _names_a_thing_behind(clause: Clause, item: Item) -> bool:
    behind = clause.following(item, 1)
    return bool(behind) and bool(behind[0].tags & {"SAP", "SYRUP"})


_BEASTS = frozenset("cow cows goats".split())


def role(clause: Clause, item: Item) -> str:
    """sap, syrup, boil, pan, poured_out, jars, bucket, rate, foreign, or unclear. Decided once for
    each amount of a clause."""
    known = clause.roles.get(id(item))
    if known is None:
        known = clause.roles[id(item)] = _role(clause, item)
    return known


def _role(clause: Clause, item: Item) -> str:
    thing = _of(clause, item)
    if (
        item.value == 0
        and thing == ""
        and not clause.has("POUR", "SYRUP", "BOTTLE", "BOIL", "DRAW")
    ):
        return "sap"  # "spilled 500 ml, 0 gallons again"
    if thing in ("foreign", "fuel"):
        return thing
    second = clause.items[1].text if len(clause.items) > 1 else ""
    if clause.items[0].text in _BEASTS and second in ("gave", "made", "produced", "drank"):
        return "foreign"  # "cows gave 38 gallon this morning"
    if is_rate(clause, item):
        return "rate"
    ahead = [each.text for each in clause.preceding(item, 2)]
    if thing == "syrup" and ahead[:1] == ["with"] and ahead[1:] not in _LEFT_WITH:
        return "foreign"  # "made fudge with a cup of syrup"
    if clause.has("PRICE", "BROKEN") or is_given(clause):
        return "foreign"
    if clause.about("POUR") and clause.kept and not clause.has("POUR", "SYRUP"):
        return "sap"  # "spilled 2 gal, the other 30 gal went into the tank"
    bottled = clause.near("BOTTLE", "JARN") and not clause.near("SAP")
    if bottled and "too" in clause.words() and item.unit in CONTAINER_UNITS:
        return "jars"  # "jarred seven pints, then found an empty jar so one quart too"
    if clause.spent and not _says_more(clause, item, thing):
        return "unclear"  # "boiled 9 gal, 2 gal": of what, nobody says
    if _is_what_it_came_from(clause, item):
        return "foreign"
    if _headed_by_sap(clause, item):
        return "sap"
    if _made_of_it(clause, item) or _from_the_boil(clause, item):
        return "syrup"
    if _gave_by_a_tree(clause, item) or _tested_in_a_lot(clause, item):
        return "sap"
    if into_the_pan(clause) or boiled_down(clause, item):
        return "boil"
    if _stands_in_the_pan(clause, item):
        return "pan"
    if (
        clause.has("POUR")
        and clause.has("FULL", "SAP")
        and not clause.kept
        and not clause.has("HOLD")
    ):
        return "poured_out"
    if _turned(clause, item):
        return "poured_out"
    if is_gone(clause, item) and clause.about("POUR"):
        return "poured_out"
    if is_gone(clause, item) and not clause.has("SYRUP", "BOIL"):
        fired = clause.near("FIRE", "BOIL", "DRAW", "SYRUP") or bool(clause.free("hours"))
        fired = fired or (clause.near("BURN") and clause.near("HOURS"))  # "half a cord, 3 hrs"
        return "boil" if fired else "poured_out"
    if _names_a_bucket(clause, item) and not _a_jug_of_syrup(clause, item):
        return "bucket"
    if _STILL_TO_DO.search(clause.text) and not clause.has("GATHER", "POUR"):
        return "foreign"  # "fire out, 10 gal still to boil"
    stays = any(
        each.text in ("left", "remaining") and not _hands_over(clause, each)
        for each in clause.items
    )
    if clause.has("HOLD") or (stays and not clause.has("POUR")):
        return "foreign"
    poured = clause.about("POUR")
    if poured and _ICE_BEHIND.search(clause.text[len(item.text) :]) and clause.items[0] is item:
        return "sap"  # "14 gal dumped the ice out first"
    if clause.has("GROUND") and thing in ("", "sap") and not clause.gathers():
        return "poured_out"  # "9 gal of sap ran out in the snow"
    if poured and not clause.kept:
        return "sap" if thing == "sap" and clause.has("GATHER") else "poured_out"
    of_trees = clause.has("STORE", "BUCKET") or clause.tree is not None or clause.lot is not None
    if of_trees and _only_filled(clause) and item.unit in _LARGE_UNITS:
        return "sap"
    drawn = clause.has("DRAW") and not clause.has("BOTTLE")
    if clause.near("BOTTLE") and _fills_its_bucket(clause) and item.unit in _LARGE_UNITS:
        return "sap"
    if not clause.has("BOTTLE", "JARN", "SYRUP") and _from_a_maple(clause):
        return "sap"  # "bottled 3 quarts, and 7 quarts off the yard trees"
    got = thing == "syrup" and clause.has("GATHER", "MADE") and not clause.has("BOTTLE", "JARN")
    hangs = _in_a_pail(clause) and not clause.has("BOTTLE", "JARN", "SYRUP", "STORE", "DRAW")
    if clause.about("BOTTLE") and hangs:
        return "sap"  # "put up 7 quarts and just 3 quarts in the pails"
    if item.unit == "cup" and thing == "syrup" and not clause.has("BOTTLE", "JARN"):
        return "syrup"  # "bottled five 375 ml ones, one lonely cup of syrup after all that"
    if (clause.about("BOTTLE") or clause.has("JARN")) and thing != "sap" and not (drawn or got):
        return "jars"
    if _off_the_pan(clause, item):
        return "syrup"
    if _is_for_somebody(clause, item) or _is_not_syrup_yet(clause):
        return "foreign"
    if thing == "syrup":
        told = clause.about("DRAW", "MADE", "BOIL", "FIRE", "GATHER", "BATCH", "BOTTLE")
        return "foreign" if clause.has("FOREIGN") and not told else "syrup"
    sweet = clause.holds("brix")
    if [each.text for each in clause.following(item, 1)] == ["to boil"]:
        return "boil" if clause.near("LIT") and not clause.near("GATHER") else "sap"
    if clause.has("STORE") and clause.about("LIT") and not clause.has("LIT", "THROUGH", "GATHER"):
        # "lit at 7, 20 gal in the barrel"; but a feed tank feeds the pan.
        return "boil" if "feed" in clause.words() else "unclear"
    if clause.has("STORE") and _TO_START_WITH.search(clause.text):
        return "boil"
    drawn_last = clause.has("DRAW") and _nearest_verb(clause, item) == "DRAW"
    lit = clause.about("LIT") and not clause.has("GATHER") and not sweet
    if clause.own_tree and not clause.has("BOIL", "THROUGH", "LIT", "FIRE", "SYRUP"):
        return "sap"  # "arch is lit and tree 11: two gallons even"
    weakly = clause.has("GATHER") and not clause.has("BOIL", "FIRE", "LIT", "THROUGH", "SYRUP")
    if weakly and item.unit in _LARGE_UNITS and clause.about("BOIL", "FIRE", "LIT"):
        if not clause.about("PAST", "END", "SHUT"):
            return "sap"  # "arch lit, got 25 gal"
        tested = clause.holds("brix")
        return "sap" if tested else "unclear"  # "boiled 11 hours and got 1.5 gal"
    rounds = clause.has("THROUGH") and clause.has("BUCKET") and clause.has("GATHER")
    if (clause.has("THROUGH", "LIT") or lit) and not drawn_last and not rounds:
        if clause.has("MADE") and _little(item) and not clause.has("LIT", "THROUGH"):
            return "syrup"  # "fire is lit, made .8 gal of the good stuff"
        eaten = clause.has("THROUGH") and item.gallons < _LEAST_BOILED
        return "unclear" if eaten else "boil"  # "went through a pint of it on pancakes"
    if thing == "sap" and not clause.about("BOIL", "FIRE"):
        return "sap"
    if clause.has("BATCH") and not clause.has("BOIL", "FIRE", "SAP"):
        jarred = item.unit == "half_pint" and item.value > 1 and not drawn
        return "unclear" if jarred else "syrup"
    if _is_through_the_pan(clause, item):
        return "boil"
    if [each.text for each in clause.following(item, 1)] == ["down to"]:
        hauled = clause.gathers() and not clause.about("BOIL", "FIRE")
        return "sap" if hauled else "boil"  # "hauled 63 gal down to the sugarhouse"
    if [each.text for each in clause.preceding(item, 1)] == ["down to"]:
        return "unclear"  # "boiled it down to 2 gal": no more sap, and not yet syrup
    if _is_a_capacity(clause, item):
        return "foreign"
    if clause.about("BOIL") and clause.near("DONE", "END") and item.gallons > _MOST_FINISHED:
        return "boil"  # "just finished boiling, 26 gal"
    nearest = _nearest_verb(clause, item)
    if nearest == "" and clause.has("MADE") and clause.has("FOREIGN"):
        return "foreign"  # "made candy out of a pint"
    if nearest == "" and clause.has("MADE") and _little(item):
        return "sap" if clause.tree is not None else "syrup"
    of_it = clause.own_tree or "it" in clause.words()
    if nearest == "DRAW" and clause.tree is not None and of_it and not clause.has("SYRUP"):
        return "sap"  # "tree 27, took 2 gal off it"
    if nearest in ("DRAW", "SYRUP"):
        if clause.has("STORE") and not clause.has("SYRUP"):
            return "unclear"  # "took 40 L off the tank": sap, to boil it
        weakly = thing != "syrup" and not clause.has("SYRUP") and not _draws(clause)
        return "unclear" if weakly and item.gallons > _MOST_FINISHED else "syrup"
    if any(each.sort == "brix" and each.value >= SYRUP_FROM for each in clause.items):
        return "syrup"
    if nearest in ("BOIL", "FIRE") and _from_this_boil(clause, item):
        return "syrup"
    if nearest in ("BOIL", "FIRE"):
        if "yield" in clause.words() and item.gallons <= _MOST_FINISHED:
            return "syrup"  # "total yield from today's boil was 0.8 gal"
        return "unclear" if item.gallons < _LEAST_BOILED else "boil"
    if nearest == "GATHER" and _boiled_what_was_had(clause, item):
        return "boil"
    if nearest == "GATHER" and _yields_syrup(clause):
        return "syrup"
    if nearest == "GATHER":
        return "sap"
    gathered = clause.gathers()
    if clause.about("DRAW", "SYRUP") and not gathered and thing != "sap":
        return "syrup" if item.gallons <= _MOST_FINISHED else "unclear"
    weak = clause.has("WEAK") and not gathered and item.unit in CONTAINER_UNITS
    placed = clause.tree is not None or clause.lot is not None or clause.has("SAP", "BUCKET")
    sweet = clause.holds("brix", "number")
    if weak and not placed and not sweet and thing == "" and not item.parts:
        return "unclear"  # "got 7 pints"
    if clause.about("SHUT") and item.unit in _LARGE_UNITS and not sweet and thing == "":
        return "boil"  # "shut her down at 9pm, 44 gallons"
    boiled = clause.near("HOURS") and clause.near("SYRUP", "DRAW") and not clause.near("GATHER")
    if boiled and thing in ("", "sap") and item.unit in _LARGE_UNITS and not sweet:
        return "boil"  # "7 hrs, 40 gal, 1 gal syrup"
    ended = clause.about("END", "SHUT") and clause.near("FIRE", "BOIL", "START", "LIT", "HOURS")
    if ended or clause.about("BOIL", "FIRE"):
        if item.unit in CONTAINER_UNITS and not clause.has("BOIL", "FIRE", "THROUGH"):
            off = not _TAKEN_OFF.isdisjoint(clause.words())
            return "syrup" if off else "unclear"  # "boiled 28 gal, 3 quarts off"
        return "boil"
    if clause.holds("hours") and not clause.about("GATHER"):
        little = item.gallons < _LEAST_BOILED  # "9 hrs 3 pints"
        return "unclear" if little or is_so_much_in_hours(clause) else "boil"
    said_before = [each.tags for each in clause.preceding(item, 1)]
    if clause.has("FOREIGN") and not (said_before and "SAP" in said_before[0]):
        return "foreign"  # but "sap 42 gal 2.2 cows out again"
    if clause.has("MADE"):
        if clause.tree is not None or clause.lot is not None:
            return "sap"
        if _little(item):
            return "syrup"
        return "unclear" if {"made", "make", "makes", "making"} & set(clause.words()) else "sap"
    if item.unit in _LARGE_UNITS or (item.parts and item.parts[0].unit in _LARGE_UNITS):
        panned = clause.has("PANN") and not clause.has("GATHER", "SAP", "BUCKET", "STORE")
        fueled = clause.holds("mass", "cords")
        return "unclear" if panned or fueled else "sap"  # "65 gal, all in the flat pan"
    if (
        thing == "sap"
        or clause.about("GATHER", "SAP")
        or _in_a_pail(clause)
        or _from_a_maple(clause)
        or clause.tree is not None
        or clause.lot is not None
    ):
        return "sap"
    if clause.holds("brix"):
        return "sap"
    if clause.near("SAP") and not clause.near("SYRUP", "BOIL", "FIRE", "DRAW", "BOTTLE", "JARN"):
        return "sap"  # "strained the sap into the crock, 5 and a half quarts"
    return "unclear"


def _gave_by_a_tree(clause: Clause, item: Item) -> bool:
    """`boiled 22 gal, tree 12 gave us a gallon`, `spilled 4 gal, 1 gal off tree 7`: sap, whatever
    went before."""
    if clause.has("SYRUP", "POUR", "DRAW", "BOTTLE", "JARN", "BOIL"):
        return False
    if not clause.own_tree:
        return _TREES_GAVE.search(clause.text) is not None
    tree = clause.of_sort("tree")[0]
    gave = any(each.text in _GAVE and each.start < item.start for each in clause.items)
    whence = [each.text for each in clause.preceding(tree, 1)]
    return gave or whence in (["off"], ["off of"], ["from"])


def _tested_in_a_lot(clause: Clause, item: Item) -> bool:
    """`boiling since 8, ridge 52 gal 1.8%`: sap with its sugar, from where it was gathered."""
    placed = clause.holds("lot") or clause.has("COMPASS", "LOTN")
    if not placed or not clause.holds("brix"):
        return False
    sweet = any(each.sort == "brix" and each.value < SYRUP_FROM for each in clause.items)
    deeds = ("BOIL", "FIRE", "LIT", "THROUGH", "DRAW", "SYRUP", "POUR", "BOTTLE", "JARN", "MADE")
    return sweet and item.unit in _LARGE_UNITS and not clause.has(*deeds)


_TREES_GAVE = Sought(
    "trees|maples|taps",
    r"\b(?:trees|maples|taps) (?:only |just |still )?(?:gave|give|yielded|ran)\b",
)
_GAVE = frozenset("gave give gives made makes ran had yielded produced dripped filled".split())


def _hands_over(clause: Clause, left: Item) -> bool:
    """`the sheet the crew left me`."""
    return [each.text for each in clause.following(left, 1)] in (["me"], ["us"], ["for"])


def _draws(clause: Clause) -> bool:
    """Drew or drawn, which is said of syrup alone; `took 52 gal off the creek side` is not."""
    return any("DRAW" in each.tags and each.text[:3] in ("dre", "dra") for each in clause.items)


_TO_START_WITH = re.compile(r"\bto (?:start|begin) with$|\bfeed tank\b")


_DEEDS = ("BOIL", "FIRE", "DRAW", "SYRUP", "POUR", "THROUGH", "LIT", "BOTTLE", "JARN", "HOLD")


def _headed_by_sap(clause: Clause, item: Item) -> bool:
    """`sap: 16 gal`, `sap today 7 gal`, `drowning in sap 75 gal`: no deed of its own but that."""
    sap = clause.first("SAP")
    return (
        sap is not None
        and sap.start < item.start
        and not clause.has(*_DEEDS)
        and not clause.frame.isdisjoint(_DEEDS[:2])
    )


def _yields_syrup(clause: Clause) -> bool:
    """`syrup yield 0.85 gal`."""
    return clause.has("SYRUP") and "yield" in clause.words()


def boiled_down(clause: Clause, item: Item) -> bool:
    """`52 gal of sap down to 1.3 gal syrup`."""
    if "down to" not in clause.text:
        return False
    behind = clause.following(item, 4)
    at = next((n for n, each in enumerate(behind) if each.text == "down to"), None)
    if at is None:
        return False
    between = all(each.text in ("of", "sap") for each in behind[:at])
    return between and [each.sort for each in behind[at + 1 : at + 2]] in ([], ["volume"])


def _is_through_the_pan(clause: Clause, item: Item) -> bool:
    """`shut down at 8, 44 gal done`; `drew off 2 qts, added 10 gal`; `starting now with 22 gal`."""
    behind = [each.text for each in clause.following(item, 1)]
    done = behind in (["done"], ["boiled"])
    ends = behind == ["through"] and [each.text for each in clause.following(item, 2)] == behind
    done = done or (ends and not clause.gathers())  # "9 hrs, 60 gal thru"
    before = [each.text for each in clause.preceding(item, 2)]
    added = before[:1] == ["added"] and clause.near("DRAW", "BOIL", "FIRE", "PANN")
    added = added or (before[:1] == ["used up"] and clause.near("FIRE", "BOIL", "LIT"))
    added = added or (clause.near("DRAW") and "put in" in clause.text and clause.has("MORE"))
    started = before[:1] == ["with"] and clause.has("START") and not clause.gathers()
    return item.unit in _LARGE_UNITS and (done or added or started)


def _is_what_it_came_from(clause: Clause, item: Item) -> bool:
    """`3 pints syrup off 15 gal sap`: the sap that it took, which was told when it was got."""
    syrup = clause.first("SYRUP")
    if syrup is None or syrup.start > item.start or item.unit not in _LARGE_UNITS:
        return False
    before = [each.text for each in clause.preceding(item, 3) if "ABOUT" not in each.tags]
    return before[:1] in (["off"], ["from"]) or before[:2] in (["of", "out"], ["the", "from"])


def _turned(clause: Clause, item: Item) -> bool:
    """`4 gal spoiled in the tank`, `4 gal turned on me`."""
    behind = [each for each in clause.following(item, 3) if each.text not in ("of", "sap", "the")]
    told = bool(behind) and behind[0].text in _TURNED
    return told and not clause.gathers() and clause.items[0].start >= item.start


_STILL_TO_DO = re.compile(
    r"\bstill (?:to (?:boil|go|do)|in the (?:tank|barrel|tote))\b"
    r"|\bstill (?:got )?\d.*\b(?:in the|to go)\b"
    r"|\bto go$"
)
_ICE_BEHIND = re.compile(
    r"\b(?:dumped|tossed|threw|pitched|poured|chucked)(?: out)? (?:the |some |all the )*"
    r"(?:ice|bugs|moths|leaves|snow|water|twigs)\b"
)
_TURNED = frozenset(("spoiled", "spoilt", "soured", "turned", "went sour", "went bad", "gone bad"))


def _boiled_what_was_had(clause: Clause, item: Item) -> bool:
    """`boiled the 18 gal we collected thursday`."""
    deed = clause.first("PAST")
    before = [each.text for each in clause.preceding(item, 1)]
    return deed is not None and deed.start < item.start and before == ["the"]


_OUT_OF_THE_BOIL = re.compile(
    r"\b(?:off|out of|from) (?:the |this |that |our |my )?(?:evaporator|boil|arch|rig|pan)\b"
)


def _from_the_boil(clause: Clause, item: Item) -> bool:
    """`got a gallon off the evaporator`, `got 1.5 gal from the boil`."""
    if not clause.has("GATHER", "MADE"):
        return False
    sap = clause.has("SAP", "POUR") or item.gallons > _MOST_FINISHED
    return not sap and _OUT_OF_THE_BOIL.search(clause.text) is not None


def _made_of_it(clause: Clause, item: Item) -> bool:
    """`boiled 6 hours got a gallon`, `boiled all day for a gallon and a quart`."""
    if not clause.has("PAST"):
        return False
    before = [each.text for each in clause.preceding(item, 1)]
    long = clause.holds("hours") or "all day" in clause.text
    made = before in (["got"], ["for"], ["made"], ["and"])
    return long and made and item.gallons <= _MOST_FINISHED


def _says_more(clause: Clause, item: Item, thing: str) -> bool:
    """Whether an amount behind one that was told of a deed is told by itself what it is."""
    draws = not clause.spent.isdisjoint(("DRAW", "SYRUP"))
    listed = draws and item.unit in CONTAINER_UNITS  # "drew off 3 quarts, 2 pints"
    own = clause.has("GATHER", "BOTTLE", "JARN", "MADE", "SYRUP", "SAP", "TAPN")
    dated = not draws and clause.holds("date")
    placed = dated or clause.own_tree or clause.holds("lot", "brix")
    dense = any(each.sort == "number" and each.value >= SYRUP_FROM for each in clause.items)
    placed = placed or (draws and dense)  # "drew off 2 L at 67 brix, 1.5 L at 66.8"
    off = item.unit in CONTAINER_UNITS and not _TAKEN_OFF.isdisjoint(clause.words())
    listed = listed or off
    return bool(listed or own or placed or thing or clause.frame.isdisjoint(clause.spent))


def _from_this_boil(clause: Clause, item: Item) -> bool:
    """`syrup from this boil: 2.1 gal`: the boil is named, and what it made is told."""
    syrup, boil = clause.first("SYRUP"), clause.first("BOIL") or clause.first("FIRE")
    if syrup is None or boil is None or not syrup.start < boil.start < item.start:
        return False
    return "PAST" not in boil.tags and item.gallons <= _MOST_FINISHED


def is_gone(clause: Clause, item: Item) -> bool:
    """`bucket fell, 2 gal gone`."""
    behind = [each.text for each in clause.following(item, 3) if each.text != "of"][:2]
    return behind in (["gone"], ["sap", "gone"], ["syrup", "gone"], ["is", "gone"], ["was", "gone"])


def is_so_much_in_hours(clause: Clause) -> bool:
    """`15 gal in 2 hrs`, and not a word more: boiled, or gathered?"""
    told = [item for item in clause.items if item.sort not in ("sign", "date")]
    boil = clause.near("BOIL", "FIRE", "END", "SHUT", "LIT", "DRAW", "SYRUP", "PANN", "WOOD")
    return not boil and [item.sort for item in told if item.text != "in"] == ["volume", "hours"]


def _off_the_pan(clause: Clause, item: Item) -> bool:
    """`got 1 litre off the finishing pan`."""
    behind = [each.text for each in clause.following(item, 1)]
    pan = clause.first("PANN")
    from_it = behind in (["off"], ["from"], ["out of"]) and pan is not None
    return from_it and pan.start > item.start and item.gallons <= _MOST_FINISHED  # type: ignore[union-attr]


def _is_for_somebody(clause: Clause, item: Item) -> bool:
    """`1 qt goes to mom and 1 qt to sell`: what becomes of it."""
    if _BECOMES.isdisjoint(clause.each_word):
        return False
    behind = [each.text for each in clause.following(item, 2)]
    gone = behind[:1] in (["goes"], ["went"], ["going"]) and behind[1:] == ["to"]
    return gone or behind in (["to", "sell"], ["to", "give"], ["for", "mom"], ["for", "dad"])


_BECOMES = frozenset(("goes", "went", "going", "sell", "give", "mom", "dad"))


def _is_not_syrup_yet(clause: Clause) -> bool:
    """`2 gal of nearly syrup`."""
    syrup = clause.first("SYRUP")
    before = [] if syrup is None else [each.text for each in clause.preceding(syrup, 1)]
    return before in (["nearly"], ["almost"], ["near"])


def _little(item: Item) -> bool:
    """As much as a boil makes of syrup, and hardly ever is of sap."""
    return item.unit not in _LARGE_UNITS or item.gallons <= 1


def _is_a_capacity(clause: Clause, item: Item) -> bool:
    """`a 275 gal tote`: how much a vessel holds, where nothing was put into it."""
    behind = clause.following(item, 1)
    holds = bool(behind) and (
        bool(behind[0].tags & {"STORE", "PANN"}) or behind[0].text in _CONTAINERS
    )
    gathered = clause.gathers()
    return holds and not gathered and not clause.has("FULL", "SAP", "BOTTLE")


_CONTAINERS = frozenset(
    "cans carboys totes drums barrels coolers kegs jerrycans buckets pails jugs tubs".split()
)
"""`ten gallon cans`: how much each holds; how many there are is said elsewhere."""


def _in_a_pail(clause: Clause) -> bool:
    """`3 quarts in the pails`: what hangs from trees or stands for sap holds sap."""
    return any(item.text in _HOLD_SAP or "STORE" in item.tags for item in clause.items) and not {
        "in",
        "of",
        "from",
    }.isdisjoint(clause.words())


_LEFT_WITH = (["up"], ["ended"], ["finished"], ["came"], ["done"], ["end"])
_HOLD_SAP = frozenset("bucket buckets pail pails bush sugarbush woods trees".split())


_FROM_WHAT_HANGS = re.compile(
    r"\b(?:from|off|out of) (?:the |my |our |all |all the |all of the )?(?:\w+ )?"
    r"(?:buckets?|pails?|bags?|trees|maples|lines|taps)\b"
)


def _from_a_maple(clause: Clause) -> bool:
    """`2 qts from the norway`, `three quarts from my three taps`: what comes from a tree is sap."""
    if _FROM_WHAT_HANGS.search(clause.text):
        return True
    species = clause.first("SPECIES") or clause.first("TAPN") or clause.first("TREEN")
    return species is not None and any(
        each.text in ("from", "off") for each in clause.preceding(species, 4)
    )


def is_rate(clause: Clause, item: Item) -> bool:
    """`$60 a gallon`, `a gallon a tap`, `1.5 gal per tap`: no amount of its own."""
    after = clause.following(item, 2)
    if (
        after
        and after[0].tags & {"RATE"}
        and after[0].text not in ("each", "apiece", "ea", "a piece")
    ):
        return True
    ago = [each.text for each in after[1:]] == ["ago"]
    if after and after[0].sort in ("hours", "volume", "cords") and after[0].article and not ago:
        return True
    before = clause.preceding(item, 1)
    behind = [each.text for each in clause.following(item, 3)]
    if behind[:2] in (["to", "the"], ["to", "a"]) and behind[2:] and behind[2] in _OF_EACH:
        return True  # "about a gallon to the bucket"
    if item.article and [each.text for each in after] == ["from", "each"]:
        return True
    if before and before[0].sort == "money" and item.article:
        return True
    return bool(before) and before[0].text in ("per", "/")


_OF_EACH = frozenset("bucket pail bag tap tree spile".split())
_LEAST_BOILED = 1.0
"""Fewer gallons are hardly sap that was boiled: most likely syrup."""
_TAKEN_OFF = frozenset("off got out finished".split())
_MOST_FINISHED = 5.0
"""Gallons of syrup that are believed where no word of syrup stands beside them."""
_INTO_THE_RIG = Sought(
    "evaporator|arch|rig|pan|float|kettle|fryer",
    r"\b(?:(?:into|through|thru) (?:the |my |our )?(?:\w+ )?(?:evaporator|arch|rig|pans?|float box)"
    r"|in (?:the |my |our )(?:evaporator|arch|rig|kettle|(?:turkey )?fryer|float box))\b",
)
_LARGEST_PAIL = 5.0
"""US gallons: what more than this stands behind "buckets" is what they gave (our own)."""


_KINDS_OF = frozenset(("ones", "kind", "size", "type", "sort"))
_SIZES = _KINDS_OF | {"capacity"}


def _names_a_bucket(clause: Clause, item: Item) -> bool:
    """`2 gal buckets`, `buckets hold 2 gal`, `8 litre pails`."""
    spoken_of = clause.bucket_before or clause.has("BUCKET", "HOLD") or clause.holds("vessels")
    if not spoken_of and _SIZES.isdisjoint(clause.each_word):
        return False
    bucket = clause.first("BUCKET")
    vessel = clause.first_of("vessels")
    if clause.has("HOLD"):
        return (
            bucket is not None
            or vessel is not None
            or (clause.has("BUCKETISH") and not clause.has("STORE"))
        )
    if any(each.text in _KINDS_OF for each in clause.following(item, 1)):
        return not (clause.about("BOTTLE") and item.unit in CONTAINER_UNITS)
    if any(each.text.endswith((" size", " capacity")) for each in clause.items):
        return True  # "pail size 2 gal"
    alone = [each for each in clause.items if each.sort != "sign"]
    if len(alone) == 2 and alone[0].text in ("buckets", "pails") and item.gallons <= _LARGEST_PAIL:
        return True  # "buckets 3 gal"
    told_apart = clause.bucket_before and len(clause.items) <= 3
    if told_apart or (
        vessel is not None and any(each.text == "=" for each in clause.preceding(item, 1))
    ):
        return True
    each_one = any(each.text in ("each", "apiece") for each in clause.following(item, 1))
    if bucket is not None and each_one and not clause.has("FULL", "GATHER"):
        return True
    emptied = clause.gathers()
    told = clause.has("FULL", "SAP") or emptied
    if bucket is not None and bucket.start < item.start and not told:
        between = [each for each in clause.items if bucket.start < each.start < item.start]
        said = [each for each in between if "ABOUT" not in each.tags and each.text not in _ONLY]
        last = [each.text for each in said][-1:]
        small = item.gallons <= _LARGEST_PAIL and clause.lot is None
        if last and last[0] in ("are", "is", "=", ":") and small:
            return True
    for each in clause.following(item, 3):
        if "BUCKET" in each.tags:
            return True
        if each.text not in _BUCKET_ADJECTIVES:
            return False
    return False


_GAVE_SAP = frozenset("us me about only just up a around nearly almost close over".split())
_ONLY = frozenset(("all", "each", "only", "just", "mostly", "a", "bit", "little", "over", "under"))


def _only_filled(clause: Clause) -> bool:
    """Filled, and not bottled: barrels are filled with sap."""
    deeds = [item.text for item in clause.items if "BOTTLE" in item.tags]
    jugs = {"jug", "jugs"} & set(clause.words())
    return bool(deeds) and set(deeds) == {"filled"} and not clause.has("JARN") and not jugs


def _fills_its_bucket(clause: Clause) -> bool:
    """`tree 11 filled its bag, 14 L`: a tree fills what hangs on it."""
    hangs = clause.tree is not None and clause.near("BUCKET")
    return hangs and not clause.near("JARN", "SYRUP", "DRAW")


def is_given(clause: Clause) -> bool:
    """`gave 3 pints to the mailman`; but `bottled 9 half pints for the gift shop` is no gift."""
    words = clause.words()
    if clause.has("GIFT") and not (clause.has("BOTTLE") and _GIVEN.isdisjoint(words)):
        return True
    if "gave" not in words or clause.tree is not None or clause.lot is not None:
        return False
    if "away" in words:
        return True
    deed = next(item for item in clause.items if item.text == "gave")
    behind = clause.following(deed, 1)
    to_somebody = bool(behind) and behind[0].sort == "word" and behind[0].text not in _GAVE_SAP
    return to_somebody or "to" in words[words.index("gave") :]


def _a_jug_of_syrup(clause: Clause, item: Item) -> bool:
    """A jug is a jar where something is bottled, and a bucket where sap is caught."""
    noun = next((each for each in clause.following(item, 3) if "BUCKET" in each.tags), None)
    jug = noun is not None and noun.text in ("jug", "jugs")
    before = clause.first("BUCKET")
    if before is not None and before.text in ("jug", "jugs") and clause.near("BOTTLE"):
        return clause.about("BOTTLE") and not clause.has("SAP")
    return (
        jug
        and not clause.has("SAP")
        and (clause.about("BOTTLE", "SYRUP") or "filled" in clause.words())
    )


_GIVEN = frozenset("gave give giving given away sent traded".split())
_BUCKET_ADJECTIVES = frozenset(
    "galvanized galvanised plastic metal aluminum aluminium steel stainless food grade blue white "
    "sap old new collection hanging tin clean size sized capacity - frosting lidded covered".split()
)
_VERBS = ("POUR", "DRAW", "BOIL", "FIRE", "GATHER", "SYRUP", "BOTTLE")


def _nearest_verb(clause: Clause, item: Item) -> str:
    """The deed whose word stands nearest to the amount; of two as near, the one before it."""
    at = next(n for n, each in enumerate(clause.items) if each is item)
    best, distance = "", 99.0
    for n, each in enumerate(clause.items):
        for tag in _VERBS:
            if tag in each.tags and not (tag == "GATHER" and "WEAK" in each.tags):
                far = abs(n - at) + (0.5 if n > at else 0.0)
                if far < distance:
                    best, distance = tag, far
    return best
