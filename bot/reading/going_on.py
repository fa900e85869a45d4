"""What a clause goes on about where its own words do not say, and how sure it is: a fragment takes
over the deed of what came before it, and a plan holds for what follows."""

from __future__ import annotations

from collections.abc import Sequence

from bot.reading.clause import Clause
from bot.reading.dates import WEEKDAY
from bot.reading.frames import FRAME_TAGS, QUANTITIES
from bot.reading.later import speaks_of_later
from bot.reading.signs import Sought
from bot.reading.volumes import CONTAINER_UNITS
from bot.reading.which_ask import to_be_logged

_DOING_AFTER = Sought(
    "after|later|once|when|in the morning|in a",
    r"^(?:i'm |we're |will be )?(?:emptying|gathering|collecting|hauling|boiling|bottling|lighting"
    r"|firing up|setting|tapping|pulling|canning|drilling)\b"
    r".*\b(?:after (?:work|school|supper|dinner|lunch|chores|church|practice)|later|once|when)\b"
    r"|^(?:i'm |we're )?(?:emptying|gathering|collecting|hauling|boiling|bottling|lighting"
    r"|firing up"
    r"|shutting down|canning|tapping|pulling)\b.*\b(?:in the morning|in an? (?:hour|bit|while"
    r"|few))\b",
)
"""`emptying the pails after work`: not yet done."""
_MORE_TO_COME = Sought(
    "maybe|bet|should be|probably|might",
    r"\b(?:maybe|bet|should be|probably|might)\b.*"
    r"\b(?:tonight|by (?:tonight|morning|dark|night|noon|tomorrow)|in the morning)\b",
)
"""`maybe 10 more tonight`."""
_STARTS_LATER = Sought(
    "in |should be |day",
    r"\b(?:starting|lighting|firing|light|fire|start)\b.*\bin (?:an?|\d+|half an?|a few|1/2)"
    r" (?:hours?|hrs?|min\w*)\b"
    r"|\bshould be (?:done|finished|ready|at \d)"
    r"|^(?:boiling|gathering|tapping|bottling|collecting) (?:on |this |next )?"
    rf"{WEEKDAY}(?: (?:morning|afternoon|night|evening))?$",
)
"""`starting the boil in an hour`, `should be done by 9`, `boiling saturday`: still to come."""
_TOLD = frozenset(("GATHER", "POUR", "BOTTLE", "DRAW", "SETV", "PULLV", "BURN", "COSTV"))


def mark_sureness(found: Sequence[Clause]) -> None:
    iffy = {clause.sentence for clause in found if "IF" in clause.tags}
    amounts = {clause.sentence for clause in found if clause.holds("volume")}
    crossed: set[int] = set()
    planned: dict[int, bool] = {}
    frames: dict[int, frozenset[str]] = {}
    kept: dict[int, bool] = {}
    spent: dict[int, frozenset[str]] = {}
    for clause in found:
        own = _own_frame(clause)
        spilled_before = "POUR" in frames.get(clause.sentence, ())
        if "GATHER" in clause.tags and (clause.joint == "but" or spilled_before):
            own |= {"GATHER"}  # "spilled a quart but got 11 gal"
        clause.frame = clause.tags
        if own == {"SYRUP"} and "BOTTLE" in frames.get(clause.sentence, ()) and _jars_on(clause):
            own = frozenset()  # "bottled 2 half gallon jugs and 4 pints of syrup"
        follows = not own and clause.sentence not in frames
        if follows and (_fragment(clause) or _sums_up(clause)):
            before = frames.get(clause.sentence - 1, frozenset())
            done = clause.sentence - 1 in amounts and "MORE" not in clause.tags
            if clause.sentence in amounts and done:
                before -= _DONE_WITH  # "boiled off 85 gal. trip 2, 18.5 gal"
            crossed.add(clause.sentence)
            spilled = "POUR" in before and not _spills_sap(found, clause.sentence - 1)
            frames[clause.sentence] = before - ({"GATHER", "POUR"} if spilled else {"GATHER"})
            kept[clause.sentence] = kept.get(clause.sentence - 1, False)
        if not own and clause.sentence in frames:
            clause.frame = clause.tags | frames[clause.sentence]
            if clause.sentence in crossed and clause.holds("volume") and not _is_bare(clause):
                clause.frame -= _DONE_WITH - clause.tags  # "lit the arch. got 7 gal, 2.4"
            if clause.holds("volume") and clause.sentence in spent and "MORE" not in clause.tags:
                clause.spent = spent[clause.sentence]
                if _is_of_sap(clause):
                    clause.frame -= clause.spent - clause.tags
            if _is_saved(clause):
                clause.frame -= {"POUR"} - clause.tags
            clause.kept = clause.kept or kept.get(clause.sentence, False)
        elif own and ("NOT" in clause.tags or "PLAN" in clause.tags):
            frames.pop(clause.sentence, None)
        elif own:
            frames[clause.sentence] = own | clause.tags & {
                "INTO",
                "STORE",
                "TAPN",
                "JARN",
                "PROPANE",
                "PAST",
            }
            kept[clause.sentence] = clause.kept
        if own & _DONE_WITH and clause.holds("volume"):
            spent[clause.sentence] = own & _DONE_WITH
        elif own and clause.sentence in spent and clause.items[0].text not in _BESIDES:
            del spent[clause.sentence]
        clause.hypothetical = clause.sentence in iffy
        plan = (
            ("PLAN" in clause.tags and not to_be_logged(clause.items))
            or _perhaps(clause)
            or _DOING_AFTER.search(clause.text) is not None
            or _STARTS_LATER.search(clause.text) is not None
            or ("MORE" in clause.tags and _MORE_TO_COME.search(clause.text) is not None)
            or (any(map(speaks_of_later, clause.of_sort("date"))) and not _is_told_as_done(clause))
        )
        did = not {"did", "done"}.isdisjoint(clause.words())
        if not plan and planned.get(clause.sentence) and not clause.tags & _TOLD and not did:
            plan = clause.carried = not _is_of_today(clause)
        goes_on = clause.sentence not in planned and planned.get(clause.sentence - 1, False)
        if goes_on and _only_counts(clause):
            plan = True  # "getting ready for next season. 10 taps this time"
        planned[clause.sentence] = plan and (
            clause.carried or clause.question or _plans_a_deed(clause)
        )
        clause.plan = plan
        clause.negated = "NOT" in clause.tags


_BESIDES = frozenset("when as while because since".split())
"""`lost 4 gal when the tote tipped, ridge: 33 gal`: no deed of its own."""
_PLANNED_DEEDS = frozenset(
    "GATHER BOIL BOTTLE DRAW SETV PULLV POUR BURN LIT COSTV BUY START FIRE TAPN PUTIN".split()
)
_BEFORE_A_NOUN = frozenset(
    "the a an last first my our this that next good bad big another bigger new more no your".split()
)


def _plans_a_deed(clause: Clause) -> bool:
    """`will gather tomorrow, 10 gal` plans; `might be the last run, 14 gal` and `need a nap, boiled
    30 gal` only talk."""
    deed = any(
        not item.tags.isdisjoint(_PLANNED_DEEDS)
        and not any(each.text in _BEFORE_A_NOUN for each in clause.preceding(item, 1))
        for item in clause.items
    )
    ahead = any(
        speaks_of_later(item) or item.text.startswith(("next ", "getting ready"))
        for item in clause.items
    )
    figures = any(item.sort in QUANTITIES and not item.article for item in clause.items)
    return deed or ahead or figures


def _is_of_today(clause: Clause) -> bool:
    """`wish I had more buckets, 22 gal today`: told, whatever was wished before."""
    return any(
        item.sort == "date" and item.on is not None and not item.ahead for item in clause.items
    )


_DONE_WITH = frozenset("BOIL FIRE DRAW SYRUP POUR THROUGH LIT END SHUT".split())
"""Deeds whose amount was told, so that an amount in a sentence of its own is another's."""


def _is_of_sap(clause: Clause) -> bool:
    """An amount that says itself that it is sap: `14 gal at 2.0`, `2 gal from tree 10`; but sap is
    poured out of lots and trees too."""
    named = () if "POUR" in clause.spent else ("tree", "lot")
    tested = any(
        item.sort in ("brix", *named) or (item.sort == "number" and item.text[1:2] == ".")
        for item in clause.items
    )
    return (tested or bool(clause.tags & {"SAP", "TAPN"})) and "SYRUP" not in clause.tags


def _is_bare(clause: Clause) -> bool:
    """Nothing but an amount: `40 gal.`, `about 40 gal in 6 hours.`"""
    return all(
        item.sort in _BARE_SORTS or "ABOUT" in item.tags or item.text in _BARE_WORDS
        for item in clause.items
    )


_BARE_SORTS = frozenset(("volume", "hours", "clock", "cords", "mass", "sign"))
_BARE_WORDS = frozenset(
    "in of to boil do done total so far all through altogether yes ok tonight today more "
    "went".split()
) | {"to boil", "in all", "all told", "so far", "went through", "in total"}


def _jars_on(clause: Clause) -> bool:
    """`and 4 pints of syrup`: no deed of its own, and sizes of jars."""
    sizes = [item.unit in CONTAINER_UNITS for item in clause.of_sort("volume")]
    joined = clause.joint in ("and", "&", "plus", ",")
    return joined and bool(sizes) and all(sizes) and not clause.tags & {"MADE", "HOLD", "DRAW"}


def _sums_up(clause: Clause) -> bool:
    """`Bottled it all. That came to 3 quarts`: of what was done in the sentence before."""
    said = [item.text for item in clause.items[:2]]
    return len(said) > 1 and said[0] in ("that", "it", "which") and said[1] in _COMES_TO


_COMES_TO = frozenset(("came to", "comes to", "made", "makes"))
_SAVED = frozenset("saved kept still".split())


def _is_saved(clause: Clause) -> bool:
    """`lids blew off 6 trees but we saved 12 gal`, `lost 3 gal, 21 gal made it home`."""
    saved = clause.joint == "but" and not _SAVED.isdisjoint(clause.words())
    return saved or " made it " in clause.text


def _spills_sap(found: Sequence[Clause], sentence: int) -> bool:
    """`dumped the barrel. 5 gal.`; but `lost a mitten. 14 gal.`"""
    return any(
        "POUR" in clause.tags
        and (
            clause.tags & {"SAP", "BUCKET", "STORE"}
            or not {"it", "all", "rest", "some", "everything"}.isdisjoint(clause.words())
        )
        for clause in found
        if clause.sentence == sentence
    )


def _only_counts(clause: Clause) -> bool:
    """A count of things without a deed and a day."""
    deeds = clause.tags & (FRAME_TAGS | {"HAVE"})
    return not deeds and clause.holds("number") and not clause.holds("date", "volume", "brix")


def _is_told_as_done(clause: Clause) -> bool:
    """`gathered 15 gal tomorrow`: done, and still to come; one of the two is a slip."""
    said = [item for item in clause.items if item.sort != "sign"]
    while said and said[0].text in ("i", "we", "just"):
        said = said[1:]
    if len(said) < 2 or said[1].sort not in QUANTITIES:
        return False
    return said[0].text in _DONE or said[0].text.split()[0] in _DONE_TOGETHER


_DONE = frozenset(
    "gathered collected hauled emptied boiled drew bottled canned dumped spent burned".split()
)


_DONE_TOGETHER = frozenset("brought carried lugged took pulled put drew poured".split())
"""First words of deeds in two words, `brought in`, that are surely done."""


def _own_frame(clause: Clause) -> frozenset[str]:
    """What the clause's own words make it about. Weak words (got, ran) alone do not say."""
    own: set[str] = set(clause.tags & FRAME_TAGS)
    if not clause.tags & {"WOOD", "PROPANE"} and not clause.holds("cords", "mass"):
        own.discard("BURN")  # "2 quarts gone", "it took 4 hrs"
    else:
        own -= {"BOIL", "FIRE", "THROUGH"}  # "that boil ate up 3/4 cord"
    if "WATERN" in clause.tags:
        own -= {"BOIL", "FIRE"}
    sizes = clause.of_sort("volume") if "JARN" in clause.tags and not own else []
    if any(item.unit in CONTAINER_UNITS for item in sizes):
        own = {"BOTTLE"}  # "jars done: 8 pints, 3 quarts"
    if (
        "GATHER" in own
        and all("WEAK" in item.tags for item in clause.items if "GATHER" in item.tags)
        and not clause.tags & {"SAP", "BUCKET"}
    ):
        own.discard("GATHER")
    return frozenset(own)


def frames_said_last(found: Sequence[Clause]) -> None:
    """`a pint, a quart and three half pints bottled`: the deed holds for what came before."""
    for n in range(len(found) - 1, 0, -1):
        clause, before = found[n], found[n - 1]
        if clause.sentence != before.sentence or "BOTTLE" not in clause.frame:
            continue
        sizes = before.of_sort("volume")
        in_jugs = "JARN" in before.tags or not {"jug", "jugs"}.isdisjoint(before.words())
        jarred = bool(sizes) and all(item.unit in CONTAINER_UNITS or in_jugs for item in sizes)
        made = "MADE" in before.tags
        own = made and not clause.sorts.isdisjoint(QUANTITIES)
        free = made or not before.tags & FRAME_TAGS
        drawn = not {"off", "out"}.isdisjoint(before.words())
        if (
            jarred
            and not drawn
            and _fragment(before)
            and free
            and not own
            and not clause.tags & {"DRAW"}
        ):
            before.frame |= {"BOTTLE"}


def _fragment(clause: Clause) -> bool:
    """Nothing but an amount, or hardly more: "21 gallons."."""
    words = clause.of_sort("word")
    return len(words) <= 1 and not clause.holds("brix")


def _perhaps(clause: Clause) -> bool:
    """`maybe next week` is a plan; `maybe 12 gal` is about 12 gal."""
    if "PERHAPS" not in clause.said:
        return False
    for item in clause.items:
        if "PERHAPS" in item.tags:
            near = clause.following(item, 2) + [
                each for each in clause.items if each.start < item.start
            ]
            return not any(each.sort in QUANTITIES for each in near)
    return False
