"""Sap sugar alone, in degrees Brix."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date
from typing import TYPE_CHECKING, ClassVar

from bot.reading.kinds.base import Reading
from bot.reading.kinds.sap import Sap
from bot.reading.kinds.syrup import Syrup
from bot.reading.numbered import says_which
from bot.reading.puzzling import PLAIN_WORDS
from bot.reading.volumes import SYRUP_FROM

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Noted, Notes

NEEDS = ("brix", "number")
CUES = {
    "SUGAR": (
        "brix_reading brix_reading_of sugar_reading meter_says meter_said meter_read meter_reads "
        "gadget_says gadget_said it_measured "
        "refractometer_said hydrometer_said stick_says stick_said it_said retested sweet "
        "sweeter sugar sugar's sugars tested tests testing test sweetness "
        "refractometer "
        "refractometer's hydrometer hydrometer's brix_is brix_was sugar_content sap_test "
        "reading reads read sugar_at density tester brix float glass_float bx brx "
    ),
}

LEAST_BRIX = 0.2
MOST_BRIX = 8.0
"""Sap runs 1 to 4 and a little over (common practice, no source); twice that is asked about."""
MOST_CONCENTRATED_BRIX = 25.0
"""Sap put through a membrane or its ice thrown out (common practice, no source)."""
MOST_SYRUP_BRIX = 75.0
"""Above that syrup turns to candy: sucrose saturates at 67 (CRC Handbook), and 68.9 is the
most that the law allows (7 CFR 52.5961)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sugar(Reading):
    """Sap sugar alone, in degrees Brix."""

    kind: ClassVar[str] = "sugar"

    brix: float
    on: date
    tree: str | None = None
    lot: str | None = None


def find(clause: Clause, notes: Notes) -> None:
    """Brix figures: put to the sap or syrup that they belong to, or told alone."""
    figures = clause.free("brix")
    if not figures and "milk" in clause.words() and not clause.has("SAP"):
        return  # "milk tested 3.9 fat"
    if not figures and "barometer" not in clause.words():
        figures = _unsaid(clause, notes)
    for item in figures:
        item.used = True
        _place(clause, notes, item)


_MOST_UNSAID = 8.0
_AT = frozenset(
    (
        "at",
        "@",
        "is",
        "was",
        "are",
        "=",
        ":",
        "'s",
        "reads",
        "says",
        "showing",
        "running",
        "about",
        "around",
        "only",
        "up",
        "down",
        "to",
        "still",
        "came",
        "a",
        "sugar",
        "brix",
        "tested",
        "testing",
        "test",
        "tests",
        "bx",
    )
)


def _unsaid(clause: Clause, notes: Notes) -> list[Item]:
    """A bare number that must be sugar: after "sugar" or "tested", or close behind sap."""
    out = []
    for item in clause.free("number"):
        if item.part or item.article or item.value > 90 or clause.has("COSTV"):
            continue
        if "." not in item.text and clause.holds("length"):
            continue  # "tree 13 sugar 11 in 1": a sugar maple's tap
        if item.text == "one" and not _is_led(clause, item):
            continue  # "26 gal, sweet one, 2.8"
        if clause.about("DRAW", "SYRUP") and item.value < SYRUP_FROM:
            continue
        before = clause.preceding(item, 3)
        after = clause.following(item, 1)
        if after and (
            after[0].tags & {"TAPN", "BUCKET", "JARN", "MORE"}
            or ("ITEMS" in after[0].tags and "." not in item.text)
            or after[0].sort in ("volume", "number")
            or after[0].text in ("times", "time")
        ):
            continue
        if says_which(clause, item) or (after and after[0].text in _LENGTHS):
            continue
        led = bool(before) and before[0].text in ("at", "@", "=")
        if after and after[0].sort == "date" and item.text.isdigit() and not led:
            continue  # "8 gal today and 7 yesterday"
        spoken = notes.clause_before()
        if (
            len(clause.items) <= 2
            and spoken is not None
            and spoken.has("SUGAR")
            and not spoken.free("brix", "number")
            and "." in item.text
            and item.value <= MOST_BRIX
        ):
            out.append(item)  # "sugar's dropping... 1.6 now"
            continue
        on_the = [each.text for each in clause.following(item, 2)] == ["on", "the"]
        decimal_sugar = "." in item.text and LEAST_BRIX < item.value <= MOST_BRIX
        told = decimal_sugar or (clause.has("SUGAR") and LEAST_BRIX < item.value <= MOST_BRIX)
        if on_the and told and not before and notes.last(Sap) is not None:
            out.append(item)  # "24 gal, 1.9 on the stick", "24 gal, 2 on the hydrometer"
            continue
        both = any("BOTH" in each.tags for each in (*after[:1], *before[:1]))
        of_both = both and "." in item.text
        if of_both or _of_sap(clause, item) or _one_more_test(clause, notes, item):
            out.append(item)
            continue
        if _of_a_stranger(clause, item, notes):
            continue
        if any("SUGAR" in each.tags for each in before[:3]) or (
            clause.has("SUGAR") and clause.items[0].sort in ("tree", "lot", "word")
        ):
            out.append(item)
            continue
        if clause.about("SUGAR") and not clause.free("volume") and "." in item.text:
            out.append(item)
            continue
        near = before[0].text if before else ""
        if near in ("at", "@") and _is_a_time(item, notes):
            continue
        if near not in ("at", "@", "=") and _is_of_a_place(clause, item):
            continue
        follows_amount = _follows_amount(clause, notes, item)
        decimal = item.value != int(item.value) or item.text.count(".") > 0
        whole = not before and item.value <= _MOST_UNSAID and _ends_there(clause, item)
        if follows_amount and (near in ("at", "@", "=") or decimal or whole):
            out.append(item)
    return out[:1]


def _is_led(clause: Clause, item: Item) -> bool:
    return any(each.text in _AT for each in clause.preceding(item, 1))


def _is_a_time(item: Item, notes: Notes) -> bool:
    """`20 gal at 9 am and 15 gal at 4`: an hour, where another is told; sap is hardly 5 Brix."""
    whole = item.text.isdigit() and 1 <= item.value <= 12
    told = any(
        each.sort == "clock"
        for clause in notes.clauses
        if clause.holds("volume")
        for each in clause.items
    )
    return whole and (told or item.value >= LEAST_UNLIKELY)


def _of_a_stranger(clause: Clause, item: Item, notes: Notes) -> bool:
    """`brix: A2 2.4, old bess 1.9`: what that is, we do not know, but it is not A2."""
    before = [each for each in clause.items if each.start < item.start and each.sort != "sign"]
    return (
        notes.last(Sugar) is not None
        and clause.tree is not None
        and not clause.own_tree
        and bool(before)
        and any(not e.tags and e.text not in PLAIN_WORDS and e.sort == "word" for e in before)
    )


LEAST_UNLIKELY = 5.0
"""Brix from which a whole figure behind "at" is as likely an hour (our own)."""


def _is_of_a_place(clause: Clause, item: Item) -> bool:
    """`ridge 6 gal, upper 3 and a half`: gallons of another part of the bush."""
    before = [each for each in clause.items if each.start < item.start]
    return (
        len(before) == 1
        and before[0].sort == "word"
        and not before[0].tags.isdisjoint(("COMPASS", "LOTN"))
    )


_LENGTHS = frozenset("km miles mile kilometers kilometres minutes min".split())


def _ends_there(clause: Clause, item: Item) -> bool:
    """`12 gal, 2`; but not `12 gal, 5 still hanging`, which counts something else."""
    behind = [each for each in clause.items if each.start > item.start]
    return clause.has("SUGAR") or all(
        each.sort in ("date", "sign") or each.text in _SAYS_NO_MORE for each in behind
    )


_SAYS_NO_MORE = frozenset("even flat exactly again".split())


def _of_sap(clause: Clause, item: Item) -> bool:
    """`the sap was 2.6`, `sap checks out at 2.6`: a decimal that is too little to be gallons."""
    before = [each for each in clause.items if each.start < item.start]
    gathered = any("GATHER" in each.tags and "MEASURE" not in each.tags for each in clause.items)
    if clause.free("volume") or gathered or clause.has("POUR", "BOIL") or not before:
        return False
    said = before[-1].text in ("at", "was", "is", "@", "about", "around", "only")
    small = "." in item.text and LEAST_BRIX < item.value <= MOST_BRIX
    return said and small and any("SAP" in each.tags for each in before)


def _one_more_test(clause: Clause, notes: Notes, item: Item) -> bool:
    """`tree 1 is 2.1 brix, tree 2 is 1.8`: a list of tests."""
    before = notes.last(Sugar)
    return (
        before is not None
        and before.clause == notes.clause_number - 1
        and notes.clauses[before.clause].sentence == clause.sentence
        and (clause.own_tree or clause.holds("lot"))
        and "." in item.text
        and not clause.free("volume")
    )


def _follows_amount(clause: Clause, notes: Notes, item: Item) -> bool:
    """Is there sap or syrup before it, with no other thing said since?"""
    if [each.text for each in clause.following(item, 1)] in (["each"], ["apiece"], ["per"]):
        return False  # "12 taps gave 18 gal, 1.5 each"
    if item.text == "one" or (clause.joint in ("plus", "+") and "." not in item.text):
        return False  # "one gallon. one.", "five gallons plus two and a half"
    before = [each for each in clause.items if each.start < item.start]
    behind_at = clause.preceding(item, 1)
    if behind_at and behind_at[0].text in ("at", "@") and "." in item.text:
        here = notes.last(Sap, clause=notes.clause_number)
        if here is not None:
            return True  # "9 more by dark at 2.0"
    amounts = ("volume", "vessels")
    gathered = notes.last(Sap, clause=notes.clause_number) is not None
    if any(
        each.sort in amounts or (gathered and each.sort == "number" and each.used)
        for each in before
    ):
        return notes.last(Sap) is not None or notes.last(Syrup) is not None or bool(notes.doubts)
    words = [each for each in clause.of_sort("word") if each.text not in _AT]
    if not notes.noted:
        return False
    alone = all(each is item or each.sort == "sign" for each in clause.items)
    decimal = item.value != int(item.value) or "." in item.text
    if alone and decimal and LEAST_BRIX < item.value <= MOST_BRIX:
        return notes.last(Sap) is not None
    behind = clause.preceding(item, 1)
    said_at = bool(behind) and behind[0].text in ("at", "@") and "." in item.text
    if len(words) > (3 if said_at else 1):
        return False
    if any(
        not each.tags and each.text not in PLAIN_WORDS for each in words if each.start < item.start
    ):
        return False  # "tree 2 1 gal, bertha 3.5": what bertha is, we do not know
    latest = notes.noted[-1]
    return isinstance(latest.reading, (Sap, Syrup)) and latest.clause == notes.clause_number - 1


def _place(clause: Clause, notes: Notes, item: Item) -> None:
    brix = item.value
    several = any(each.sort == "trees" for each in notes.items_beside(clause))
    if several and brix < SYRUP_FROM:
        notes.ask("Which tree had which sugar? Text it like: tree 3 tests 2.4, tree 4 tests 2.1.")
        return
    if brix >= SYRUP_FROM:
        _to_syrup(clause, notes, item)
        return
    drawn = notes.last(Syrup, clause=notes.clause_number)
    if drawn is not None and isinstance(drawn.reading, Syrup):
        notes.noted.remove(drawn)
        notes.ask(
            f"Syrup at {brix:g} Brix? It is near 67. What did it read? I have not written it down.",
            fill=f"{drawn.reading.gallons:g} gal of syrup at {{}} brix",
        )
        return
    here = notes.last(Sap, clause=notes.clause_number)
    noted = here
    if noted is None:
        saps = notes.all(Sap)
        same_place = clause.own_tree is False and not clause.holds("lot")
        if saps and same_place:
            sentences = {notes.clauses[s.clause].sentence for s in saps}
            nearest = saps[-1]
            distance = clause.sentence - notes.clauses[nearest.clause].sentence
            if distance <= 1 or len(sentences) == 1:
                many = [
                    s
                    for s in saps
                    if notes.clauses[s.clause].sentence == notes.clauses[nearest.clause].sentence
                ]
                if len(many) == 1 or distance == 0:
                    noted = _in_turn(clause, notes, many) or nearest
        elif saps and clause.own_tree and saps[-1].reading.tree == clause.tree:  # type: ignore[attr-defined]
            noted = saps[-1]
    limit = (
        MOST_CONCENTRATED_BRIX
        if "concentrate" in notes.text or "permeate" in notes.text
        else MOST_BRIX
    )
    low = brix <= LEAST_BRIX
    if brix > limit or low:
        said = f"{brix:g}"
        sap = noted.reading if noted is not None else None
        if isinstance(sap, Sap) and noted is not None:
            notes.noted.remove(noted)
            where = f"tree {sap.tree} " if sap.tree else f"{sap.lot} lot " if sap.lot else ""
            fill = f"{where}{sap.gallons:g} gal of sap at {{}} brix on {sap.on.isoformat()}"
        else:
            fill = "sugar {} brix" if clause.tree is None else f"tree {clause.tree} sugar {{}} brix"
        guess = brix / 10
        if not low and LEAST_BRIX < guess <= MOST_BRIX:
            notes.ask(
                f"{said} Brix is no sap I know. Did you mean {guess:g}? "
                "I have not written it down.",
                ("ok|y|yep|yeah|right|correct", fill.format(f"{guess:g}")),
                fill=fill,
            )
        else:
            notes.ask(
                f"Sap at {said} Brix? It runs 1 to 4. What was it? I have not written it down.",
                fill=fill,
            )
        return
    if noted is not None and isinstance(noted.reading, Sap) and noted.reading.brix is None:
        if clause.on not in (None, noted.reading.on):
            _of_another_day(clause, notes, noted, item)
            return
        noted.reading = replace(noted.reading, brix=brix)
        if clause.has("BOTH") or "each" in clause.words() or "all" in clause.words():
            _to_all(clause, notes, brix)
        return
    if noted is not None and noted is here:
        notes.ask("Two sugar figures for one sap: which is right?", fill="make that {} brix")
        return
    if _CONCENTRATES.search(notes.text) and any(other.question for other in notes.clauses):
        return  # "ro to 8 percent, how long to boil 400 L": what the question is about
    notes.add(Sugar(brix=brix, on=notes.day(clause), tree=clause.tree, lot=clause.lot), item.start)


def _of_another_day(clause: Clause, notes: Notes, told: Noted, item: Item) -> None:
    """`31 gal. brix was 1.8 yesterday`: a test of its own; without the `was` the day may be that
    of both."""
    dated = notes.clauses[told.clause].on is not None
    if dated or "was" in clause.words() or clause.items[0].sort == "date":
        notes.add(Sugar(brix=item.value, on=notes.day(clause)), item.start)
        return
    notes.noted.remove(told)
    notes.ask("Which day was that? Text each by itself, like: yesterday 12 gal at 2.2.")


_CONCENTRATES = re.compile(r"\b(?:ro|r\.o|reverse osmosis|membrane|concentrat\w*)\b")


def _in_turn(clause: Clause, notes: Notes, saps: list[Noted]) -> Noted | None:
    """`40 L from the hill and 25 from the yard, sugar 2.2 and 2.0`: as many figures as saps, so
    the first is the first one's. None where they do not count alike."""
    untested = [s for s in saps if isinstance(s.reading, Sap) and s.reading.brix is None]
    figures = 0
    for other in notes.clauses[notes.clause_number :]:
        if other.sentence != clause.sentence or other.free("volume") or other.own_tree:
            break
        figures += len([i for i in other.items if i.sort in ("number", "brix") and not i.article])
    return untested[0] if len(untested) == figures > 1 else None


def _to_all(clause: Clause, notes: Notes, brix: float) -> None:
    """`sat 12 gal, sun 9 gal, both 2.0`."""
    for noted in notes.all(Sap):
        sap = noted.reading
        if (
            isinstance(sap, Sap)
            and sap.brix is None
            and notes.clauses[noted.clause].sentence == clause.sentence
        ):
            noted.reading = replace(sap, brix=brix)


def _to_syrup(clause: Clause, notes: Notes, item: Item) -> None:
    noted = notes.last(Syrup)
    if noted is None and item.sort == "brix" and item.value > MOST_SYRUP_BRIX:
        notes.ask(
            f"{item.value:g} Brix is no syrup I know. What did it read?", fill="make that {} brix"
        )
        return
    if noted is None:
        notes.ask(
            f"{item.value:g} Brix is syrup: how much did you draw off?",
            fill=f"drew off {{}} at {item.value:g} brix",
            number_only=False,
        )
        return
    if noted is not None and isinstance(noted.reading, Syrup) and noted.reading.brix is None:
        if item.value > MOST_SYRUP_BRIX:
            notes.noted.remove(noted)
            notes.ask(
                f"Syrup at {item.value:g} Brix? What did it read? I have not written it down.",
                fill=f"{noted.reading.gallons:g} gal of syrup at {{}} brix",
            )
            return
        noted.reading = replace(noted.reading, brix=item.value)
