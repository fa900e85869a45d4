"""Figures that no reading took: nothing is recorded of a sentence that has one left over.

Whoever writes a figure means something by it. Where nothing that is read accounts for it, and
it is no clock time, no ordinal and no count of other things, more was said than was understood.
"""

from __future__ import annotations

import itertools

from bot.reading.clause import Clause
from bot.reading.frames import FRAME_TAGS
from bot.reading.items import Item
from bot.reading.kinds import (
    Boil,
    Cost,
    Fuel,
    Jars,
    PanTemp,
    PouredOut,
    Reading,
    Sap,
    Sign,
    StoreTemp,
    Sugar,
    Syrup,
    TapsPulled,
    TapsSet,
    Tree,
    WaterBoils,
)
from bot.reading.kinds.pan_temp import drawn_at
from bot.reading.leftovers import ask_what, short
from bot.reading.notes import Notes
from bot.reading.numbered import says_which
from bot.reading.puzzling import PLAIN_WORDS
from bot.reading.volumes import is_rate

_KEPT: tuple[type[Reading], ...] = (
    *(Sap, Sugar, PouredOut, Boil, Syrup, Jars, TapsSet, TapsPulled),
    *(StoreTemp, WaterBoils, PanTemp, Cost, Fuel, Tree),
)
_FIGURES = ("number", "volume", "brix", "vessels", "hours", "money", "cords", "clock")
_NOT_OURS = ("FOREIGN", "OTHERS", "GIFT", "PRICE", "EARN", "KILL", "OTHERDAY")
_BEFORE_A_TIME = frozenset("at by till til until around about since from before after of".split())
_LAST_HOUR = 12  # of a clock's face
_LEFT_TO_DO = frozenset("left remaining go".split())
_NO_PLURALS = frozenset("was is this its yes plus less".split())
_CROWDS = frozenset("group class crew bunch busload party team".split())
_SMALL_COUNTS = frozenset("two three four five six".split())
_STAYS = frozenset("leaving still keeping keep kept giving saving saved left remaining".split())
_SIZED = frozenset("deep apart long wide tall high thick".split())
_LEAST_F = 25.0
"""Degrees F below which a figure behind "at" is no heat of sap (our own)."""


def unclaimed(notes: Notes) -> None:
    """Asks about a figure that nothing accounts for, and takes its sentence's readings back."""
    if notes.doubts or notes.is_letter:
        return
    for clause in notes.clauses:
        if clause.question or clause.hypothetical or clause.plan or clause.negated:
            continue
        if clause.near(*_NOT_OURS) and not _has_its_sugar(clause, notes):
            continue
        left = [
            item
            for item in clause.free(*_FIGURES)
            if (not item.article or item.part) and not _is_explained(clause, item, notes)
        ]
        if not left:
            continue
        beside = [
            noted
            for noted in notes.noted
            if isinstance(noted.reading, _KEPT)
            and notes.clauses[noted.clause].sentence == clause.sentence
        ]
        if (
            not beside
            and notes.noted
            and (
                left[0].sort == "volume"
                or _is_listed(clause, left[0])
                or _is_tested(clause, left[0])
                or _is_one_more(clause, left[0])
            )
        ):
            ask_what(notes, clause, left[0])
            return
        named = any(item.sort in ("lot", "tree") for item in notes.items_beside(clause))
        ours = _is_of_ours(clause) or (named and left[0].sort == "number")
        if not beside and ours and _kept_any(notes):
            ask_what(notes, clause, left[0])
            return
        signs = [noted for noted in notes.noted if isinstance(noted.reading, Sign)]
        if beside or (signs and left[0].sort == "volume"):
            for noted in beside:
                notes.noted.remove(noted)
            said = notes.text[left[0].start : left[0].end]
            notes.ask(
                f'I did not write "{short(_sentence(clause, notes))}" down: what is the {said}?'
                " Text it again, like: 12 gal at 2.2."
            )
            return


def _has_its_sugar(clause: Clause, notes: Notes) -> bool:
    """`the elevator hauled 37 gal, brix 1.9`: what has a sugar is sap, among whatever words."""
    here = [n for n in notes.all(Sugar) if notes.clauses[n.clause].sentence == clause.sentence]
    strange = clause.near("FOREIGN") and not clause.near(*(set(_NOT_OURS) - {"FOREIGN"}))
    return strange and bool(here) and bool(clause.free("volume"))


_OURS = ("BUCKET", "SAP", "TAPN", "GATHER", "STORE", "DRAW", "BOTTLE", "SYRUP", "BOIL", "JARN")


def _is_of_ours(clause: Clause) -> bool:
    """`full buckets: 6. brix 2.1`: a sentence about sap or syrup whose figure nothing took."""
    return clause.has(*_OURS)


def _kept_any(notes: Notes) -> bool:
    return any(isinstance(noted.reading, _KEPT) for noted in notes.noted)


def _is_tested(clause: Clause, item: Item) -> bool:
    """`11 good ones at 2.0`: a figure with its sugar."""
    behind = clause.following(item, 5)
    return item.sort == "number" and any(
        before.text == "at" and after.sort == "number" and "." in after.text and after.value < 8
        for before, after in itertools.pairwise(behind)
    )


def _is_one_more(clause: Clause, item: Item) -> bool:
    """`50 more. pan's at 213.5`."""
    said = [each for each in clause.items if each.sort != "sign"]
    more = len(said) > 1 and "MORE" in said[1].tags
    when = all(each.sort == "date" or each.text in _WHEN for each in said[2:])
    return item.sort == "number" and said[0] is item and more and when


_WHEN = frozenset("this that at by after before lunch supper dark noon afternoon later".split())


def _is_listed(clause: Clause, item: Item) -> bool:
    """`the sixth: eleven`: a name or a day, and a figure, where others were recorded."""
    said = [each for each in clause.items if each.sort != "sign"]
    return (
        item.sort == "number"
        and len(said) == 2
        and said[0].sort in ("date", "tree", "lot")
        and said[1] is item
    )


def _sentence(clause: Clause, notes: Notes) -> str:
    items = notes.items_beside(clause)
    return notes.text[items[0].start : items[-1].end]


def _is_explained(clause: Clause, item: Item, notes: Notes) -> bool:
    """True for a clock time, an ordinal, a part, or a count of what is not recorded."""
    bought = any(isinstance(noted.reading, Cost) for noted in notes.noted)
    if item.sort == "number":
        sized = any(each.sort == "volume" for each in clause.following(item, 1))
        each = [near.text for near in clause.following(item, 1)] in (["each"], ["apiece"])
        return (
            (bought and (sized or each))  # "bought ten 2 gal buckets", "that's 2.50 each"
            or (
                (item.part or item.value < 1)
                and not _is_added(clause, item)
                and not _is_half_full(clause, notes)
            )
            or says_which(clause, item)
            or _is_time(clause, item, notes)
            or any(each.text == "all" for each in clause.preceding(item, 1))
            or (_counts_others(clause, item) and not _may_be_hours(clause, item, notes))
            or _is_heat_of_a_test(clause, item)
            or _is_weather_or_total(clause, item, notes)
            or (drawn_at(item.value, notes.profile.units) and clause.has("SYRUP", "DRAW"))
        )
    if item.sort == "volume" and is_rate(clause, item):
        return True
    if item.sort in ("volume", "cords"):
        left = {each.text for each in clause.following(item, 4)}
        return bought or not _LEFT_TO_DO.isdisjoint(left)
    if item.sort == "vessels":
        return item.part or not _holds_sap(clause, item)
    boils = _boil_of(clause, notes)
    if [each.text for each in clause.following(item, 1)] == ["ago"]:
        return True
    later = [each.text for each in clause.following(item, 1)] == ["later"]
    if item.sort == "hours" and later and boils is not None and boils.hours is None:
        return False  # "boiled 72 gal and ten hours later we had 1.8 gal of syrup"
    if item.sort == "clock":
        quit_at = {"quit", "stopped", "shut down"} & set(clause.words())
        if quit_at and not clause.about("LIT") and _lone_clock(clause, notes):
            return True  # "quit at 10, 88 gal boiled"
        return boils is None or not _ends_it(clause, item) or boils.hours is not None
    goes_on = clause.about("BOIL", "FIRE") and clause.joint in ("and", "+", "&", "plus")
    if boils is not None and goes_on and not clause.tags & FRAME_TAGS:
        return False  # "boiled 3 hr before chores and 4 hr after"
    return boils is None or boils.hours is not None or not clause.has("BOIL", "FIRE", "PANN")


def _lone_clock(clause: Clause, notes: Notes) -> bool:
    clocks = [item for other in notes.sentence(clause) for item in other.of_sort("clock")]
    return len(clocks) == 1


def _holds_sap(clause: Clause, item: Item) -> bool:
    """`four pails, every one of them full`, `4 more buckets`."""
    more = any("MORE" in each.tags for each in clause.following(item, 2))
    return more or clause.near("FULL")


def _boil_of(clause: Clause, notes: Notes) -> Boil | None:
    """The boil that the sentence tells of."""
    for noted in notes.all(Boil):
        if notes.clauses[noted.clause].sentence == clause.sentence:
            return noted.reading if isinstance(noted.reading, Boil) else None
    return None


def _may_be_hours(clause: Clause, item: Item, notes: Notes) -> bool:
    """`boiled 40 gal in 6 hrz`: of a boil that is told without its hours."""
    boils = _boil_of(clause, notes)
    before = [each.text for each in clause.preceding(item, 1)]
    return boils is not None and boils.hours is None and before in (["in"], ["for"])


def _ends_it(clause: Clause, item: Item) -> bool:
    """`til 5`, `done by 4:30`: when a boil was over."""
    before = [each.text for each in clause.preceding(item, 1)]
    return before in (["til"], ["till"], ["until"], ["to"]) or clause.has("END", "OVER", "DONE")


def _is_added(clause: Clause, item: Item) -> bool:
    """`a gallon and three quarters`: a part more of what stands before it; `12 gal 3/16 north lot`:
    more of it, or a day."""
    before = [each.sort for each in clause.preceding(item, 1)]
    if "/" in item.text and before in (["volume"], ["vessels"], ["cords"]):
        return True
    return clause.joint in ("and", "&") and clause.items[0] is item


def _is_half_full(clause: Clause, notes: Notes) -> bool:
    """`six full buckets | and one that was half`: half a bucket more."""
    full = clause.near("FULL") or any(
        each.sort == "vessels" and each.unit == "full"
        for other in notes.sentence(clause)
        for each in other.items
    )
    return full and clause.joint in ("and", "&", "plus", "+") and len(clause.items) <= 4


def _is_time(clause: Clause, item: Item, notes: Notes) -> bool:
    before = clause.preceding(item, 1)
    at = bool(before) and before[0].text in _BEFORE_A_TIME
    if before and before[0].text == "from":
        at = [each.text for each in clause.following(item, 1)] in (
            ["to"],
            ["til"],
            ["on"],
            ["till"],
        )
    boils = _boil_of(clause, notes)
    over = boils is not None and boils.hours is None and _ends_it(clause, item)
    return at and item.text.isdigit() and 1 <= item.value <= _LAST_HOUR and not over


_WEATHER_BEFORE = frozenset("temp temps low high lows highs outside about around".split())
_WEATHER_BEHIND = frozenset(
    "sunny cloudy clear windy outside degrees below above total people "
    "men women children folks kids guys".split()
)
_FOR_HOW_LONG = frozenset("week month season year day".split())


def _is_weather_or_total(clause: Clause, item: Item, notes: Notes) -> bool:
    """`low of 22 tonight`, `40 and sunny`, `45 total`, `30 for the week`, `3 people`."""
    if clause.has("TOTAL", "SOFAR") or _is_how_warm_it_was(clause, item, notes):
        return True
    before = {each.text for each in clause.preceding(item, 2)}
    behind = {each.text for each in clause.following(item, 3)}
    if clause.items[-1] is item:
        at = next(n for n, each in enumerate(notes.clauses) if each is clause)
        behind |= {
            each.text for other in notes.clauses[at + 1 : at + 2] for each in other.items[:2]
        }
    if not before.isdisjoint(_WEATHER_BEFORE) and "at" not in before:
        return True
    if not before.isdisjoint(("up", "down", "dropped", "rose")) and "since" in behind:
        return True  # "drum reads 40.5 F, up 2 since morning"
    return not behind.isdisjoint(_WEATHER_BEHIND) or (
        "for" in behind and not behind.isdisjoint(_FOR_HOW_LONG)
    )


def _is_how_warm_it_was(clause: Clause, item: Item, notes: Notes) -> bool:
    """`19 degrees at 6am, 44 by noon`, `when it was 50`, `air's 55`, `filtered hot at 190`."""
    if "." in item.text or item.value > _HOTTEST_SAID:
        return False
    before = [each.text for each in clause.preceding(item, 2)]
    behind = [each.text for each in clause.following(item, 1)]
    warm = any(each.sort == "temp" for each in notes.items_beside(clause))
    hot = before[:1] == ["at"] and not {"hot", "filtered", "bottled"}.isdisjoint(clause.words())
    return (
        (warm and behind in (["by"], ["at"]))
        or before[:1] in (["air's"], ["air"], ["it was"], ["outside"])
        or (before[:2] == ["was", "it"])
        or (hot and item.value >= _LEAST_HOT)
    )


_HOTTEST_SAID = 220.0
_LEAST_HOT = 150.0


def _is_heat_of_a_test(clause: Clause, item: Item) -> bool:
    """`sap reads 2.5 at 38`: how warm it was in the hydrometer's cup."""
    before = clause.preceding(item, 1)
    return (
        clause.has("SUGAR") and bool(before) and before[0].text == "at" and item.value >= _LEAST_F
    )


def _vessels(clause: Clause) -> list[Item]:
    """The vessels of a clause."""
    return clause.of_sort("vessels")


def _counts_each(clause: Clause, behind: list[str]) -> bool:
    """`three milk cans, 8 gal in each`: the count belongs to the amount."""
    held = clause.has("STORE", "BUCKET", "JARN")
    return held and clause.near("EACHN") and "each" not in behind


def _counts_others(clause: Clause, item: Item) -> bool:
    """`2 kids`, `12 trees`, `9 of them`, `two flat tires`: a whole number of things."""
    behind = [each.text for each in clause.following(item, 2)]
    if behind[1:] == ["old"] or behind[:1] in (["km"], ["miles"], ["mile"], ["kilometers"]):
        return True  # "my 8 yr old", "drove 45 km"
    ahead = [each.text for each in clause.preceding(item, 2)]
    if ahead[:1] == ["of"] and ahead[1:] and ahead[1] in _CROWDS:
        return True  # "a school group of 30"
    behind = [each.text for each in clause.following(item, 2)]
    if not _SIZED.isdisjoint(behind) or behind in (["in", "of"], ["to", "go"], ["to", "do"]):
        return True
    if item.value % 1 or _counts_each(clause, behind):
        return False
    full = clause.near("FULL") or any(each.unit == "full" for each in _vessels(clause))
    if item.text == "one" and full:
        return False  # "two buckets full plus one about half"
    at = [each.text for each in clause.following(item, 1)] in (["in"], ["on"], ["off"], ["from"])
    if item.text == "one" and at and clause.near("TAPN", "GATHER"):
        return False  # "two taps in tree 4, one in tree 5"
    given = ahead[:1] in (["only"], ["just"], ["gave"], ["had"], ["got"], ["did"])
    if item.text == "one" and clause.own_tree and given and clause.items[-1] is item:
        return False  # "tree 3 gave 2 gal, tree 5 only one"
    stays = _STAYS.intersection(clause.words())
    if stays == {"still"} and clause.has("GATHER"):
        stays = frozenset()  # "lost 2 gal, still got 15 home"
    if item.text in ("one", "dozen") or stays:
        return True
    named: list[Item] = []
    for each in clause.following(item, 5):
        if each.sort in _FIGURES:
            break
        if each.sort != "sign":
            named.append(each)
    if named and named[0].text in ("trips", "loads", "hauls") and clause.free("volume") == []:
        measured = any(each.sort == "volume" for each in clause.following(item, 4))
        if measured:
            return False  # "3 trips of 6 gal"
    if len(named) > 1 and [each.text for each in named[1:3]] == ["of", "sap"]:
        return False  # "forty litterz of sap"
    if item.value == 1 and named and named[0].sort == "word" and not named[0].tags:
        return named[0].text not in PLAIN_WORDS  # "1 wagon"
    if named and named[0].text == "of":
        return not clause.near("BOTTLE", "JARN", "BOIL")
    return any(
        each.sort == "word"
        and each.text not in _NO_PLURALS
        and (each.text.endswith("s") or not each.tags.isdisjoint(("TAPN", "TREEN")))
        for each in (named if item.text in _SMALL_COUNTS else named[:2])
    )
