"""What a correction changes: which fields, to what, and by which figure, kind or thing it names the
record."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from bot import units
from bot.reading.kinds.jars import Jar

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes


_ABOUT = {
    "sap": "sap", "syrup": "syrup", "jars": "jars", "wood": "fuel",
    "boil": "boil", "boiling": "boil", "fire": "boil",
}  # fmt: skip


WHOSE = frozenset("the my our that".split())


def kind_named(notes: Notes) -> str | None:
    """`sap was 30 not 40`, `no, the boil was 7 hours`: the kind of record, where one alone is
    named before the figure."""
    for clause in notes.clauses[:2]:
        for item in clause.items:
            if item.text in _ABOUT:
                return _ABOUT[item.text]
            leads = item.sort == "sign" or "AMENDLEAD" in item.tags or item.text in BEFORE_LEAD
            if not leads and item.sort != "date" and item.text not in WHOSE:
                return None
    return None


def thing_named(notes: Notes) -> str | None:
    """`the lids were $14`, `no, $18 for filters`: what the money went on."""
    for clause in notes.clauses:
        figure = clause.first_of("money")
        if figure is None:
            continue
        before = [item for item in clause.items if item.start < figure.start]
        behind = clause.following(figure, 4)
        joined = bool(behind) and behind[0].text in ("for", "on")
        for words in (behind[1:] if joined else [], before):
            named = [
                item.text
                for item in words
                if item.sort == "word"
                and not item.tags & {*_NO_THING}
                and item.text not in FILLERS | BEFORE_LEAD | _WERE
            ]
            if named:
                return " ".join(named)
    return None


_NO_THING = ("AMENDLEAD", "AMENDP", "STRONG", "NOT", "COSTV", "IS", "BUY", "GATHER")


_WERE = frozenset("were came ran".split())


def old_figure(notes: Notes) -> tuple[str, float] | None:
    """The old figure: what is denied (not 40), or what the record is called by (the 40 L was)."""
    called = called_by(notes.clauses[0])
    if called is not None:
        if called.sort == "volume":
            return "gallons", called.gallons
        return _FIELDS_DENIED.get(called.sort, "value"), called.value
    for clause in notes.clauses:
        denied = False
        for item in clause.items:
            if item.text in DENIALS:
                denied = True
            elif denied and item.sort in _FIELDS_DENIED and not item.article:
                field = _FIELDS_DENIED[item.sort]
                return field, item.gallons if item.sort == "volume" else item.value
    return None


_FIELDS_DENIED = {"volume": "gallons", "number": "value", "money": "dollars", "brix": "brix"}


_SHOULD = (
    *("should be", "should have been", "should've been", "shouldve been", "shoulda been"),
    "supposed to be",
)


def called_by(clause: Clause) -> Item | None:
    """`the 40 l was yesterday`, `the 22 was really the brook`: the amount that a record is called
    by."""
    said = [item for item in clause.items if item.sort != "sign"]
    if said and said[0].text in ("and", "but"):
        said = said[1:]
    items = [item for item in said[:3] if item.text not in _BETWEEN_CALLED]
    items += [item for item in said[3:] if item.text not in _BETWEEN_CALLED | set(_SHOULD)]
    if len(items) < 3 or said[0].text not in ("the", "that", "my"):
        return None
    called, verb, behind = items[:3]
    verb_told = verb.text in _IS_CALLED
    told = called.sort in ("volume", "number") or (
        called.sort == behind.sort and called.sort in ("money", "hours", "brix", "cords")
    )
    return called if told and verb_told and behind.sort in _SAID_OF_IT else None


_SAID_OF_IT = frozenset(
    ("date", "number", "volume", "brix", "lot", "tree", "money", "hours", "cords")
)
_BETWEEN_CALLED = frozenset("the that my really actually from for on".split())


_IS_CALLED = frozenset(
    ("was", "is", "were", "was actually", "was really", "really was", "actually was", *_SHOULD)
)


FIGURES = frozenset("volume brix hours money temp cords mass number vessels".split())


BEFORE_LEAD = frozenset("oh um uh ah well yikes ok okay hey and hi crap darn shoot".split())


DENIALS = frozenset(("not", "instead of", "rather than", "not the", "wasn't", "wasnt", "weren't"))


FILLERS = frozenset(
    "the a it was it's that that's is of for sap syrup gal on "
    "at to be my i we meant me tree lot from just about "
    "only really more like total instead all in by i'm said "
    "again taps jars hours pints them entry one last brix sugar "
    "ok so please there were got and should today's".split()
)


FIELDS = {
    "volume": "gallons", "brix": "brix", "hours": "hours", "money": "dollars", "temp": "fahrenheit",
    "cords": "cords", "mass": "propane_lb", "length": "diameter_in", "number": "value",
    "vessels": "gallons",
    "tree": "tree", "lot": "lot", "date": "on",
}  # fmt: skip


def fields_changed(notes: Notes) -> tuple[dict[str, Any], int]:
    """The fields that change, and where the first of them stands. Figures of a later clause are
    no part of it, unless something is denied: "only 118 went in, 2 spiles were cracked"."""
    changes: dict[str, Any] = {}
    start = 0
    first: Clause | None = None
    denied = any(item.text in DENIALS for clause in notes.clauses for item in clause.items)
    for item, clause in _kept(notes):
        if item.sort in FIGURES:
            first = first or clause
            if clause is not first and not denied and item.sort in ("number", "volume"):
                continue
        field, value = _field(item, clause, notes)
        if field is None or field in changes:
            continue
        changes[field] = value
        start = start or item.start
        if item.sort == "volume":
            changes["pieces"] = (
                tuple(
                    Jar(int(piece.value), piece.gallons / piece.value)
                    for piece in (item.parts or (item,))
                    if piece.value and piece.value == int(piece.value)
                    # "no, 250 mL": a size, and no count.
                    if piece.unit not in ("milliliter", "fluid_ounce")
                )
                or None
            )
    species = [
        (item, clause)
        for clause in notes.clauses
        for item in clause.items
        if "SPECIES" in item.tags
    ]
    if species and not changes:
        changes["species"] = species[-1][0].text
        start = species[-1][0].start
    if "value" in changes and "brix" in changes and "gallons" not in changes:
        # "no, 14 at 2.4": gallons, or litres, and their sugar.
        unit = units.factor("liter", "gallon") if notes.profile.units == "metric" else 1.0
        changes["gallons"] = changes.pop("value") * unit
    told = _unit_said(notes)
    if "value" in changes and "gallons" not in changes and told is not None:
        changes["gallons"] = changes.pop("value") * told  # "i said 12 gal, it's really 21"
    wrong = {item.text for clause in notes.clauses for item in clause.items}
    if set(changes) == {"value"} and "wrong tree" in wrong:
        changes = {"tree": f"{changes['value']:g}"}
    if "value" in changes and set(changes) - {"value", "on", "tree", "lot"}:
        changes.pop("value")
    return changes, start


def _unit_said(notes: Notes) -> float | None:
    """US gallons in the unit of the amount that was said first: `i said 12 gal`."""
    first = notes.clauses[0]
    if first.items[0].text not in ("i said", "i put", "i wrote", "i texted", "i told you"):
        return None
    volumes = [each for each in first.of_sort("volume") if each.value]
    if len(volumes) != 1 or volumes[0].parts:
        return None
    return volumes[0].gallons / volumes[0].value


_CORRECTED_TO = frozenset(_SHOULD)


def _from_one_to_another(clause: Clause, joint: Item) -> bool:
    """`18 gal to 16 gal`: what it was, and what it is."""
    before, behind = clause.preceding(joint, 1), clause.following(joint, 1)
    return bool(before and behind) and before[0].sort == behind[0].sort and behind[0].sort in FIELDS


def _still_names(before: Item, joint: Item, clause: Clause) -> bool:
    """`ridge should be 15` names the record; of `ridge should be brook` the old lot goes."""
    if before.sort == "date":
        return True
    return before.sort in ("lot", "tree") and not any(
        each.sort == before.sort and each.start > joint.start for each in clause.items
    )


def _kept(notes: Notes) -> list[tuple[Item, Clause]]:
    """The amounts and names that stand, without those that are denied (not 12)."""
    out: list[tuple[Item, Clause]] = []
    called = called_by(notes.clauses[0])
    for number, clause in enumerate(notes.clauses):
        denied = False
        led_to = number > 0 and notes.clauses[number - 1].items[-1].text == "to"
        if led_to and out and out[-1][0].sort == clause.items[0].sort:
            out.pop()  # "18 gal -> 16 gal"
        for item in clause.items:
            if item is called:
                continue
            if item.text in (
                "not",
                "instead of",
                "rather than",
                "wasn't",
                "wasnt",
                "not the",
                "isn't",
                "i said",
                "i put",
                "i told you",
                "i wrote",
                "i texted",
            ) or (
                item.text == "no"
                and item is not clause.items[0]
                and "AMENDLEAD" not in clause.preceding(item, 1)[0].tags
            ):
                denied = True
                continue
            if item.text == "to" and _from_one_to_another(clause, item):
                out = [pair for pair in out if pair[0] is not clause.preceding(item, 1)[0]]
            if item.text in _CORRECTED_TO:
                out = [pair for pair in out if _still_names(pair[0], item, clause)]
            if item.text in (
                "but",
                "it's",
                "its",
                "should be",
                "make that",
                "it was",
                "should have been",
                "meant",
                "i meant",
            ):
                denied = False
                continue
            if item.sort in FIELDS and not item.article and not denied:
                out.append((item, clause))
            elif item.sort in FIELDS and denied and item.sort != "date":
                continue
    return out


def _field(item: Item, clause: Clause, notes: Notes) -> tuple[str | None, Any]:
    if item.low is not None or item.vague or item.negative:
        return None, None
    if item.sort == "volume":
        return "gallons", item.gallons
    if item.sort == "vessels":
        size = notes.profile.bucket_gallons
        return (None, None) if size is None else ("gallons", item.value * size)
    if item.sort == "date":
        told = item.on != notes.sent.date() or any(
            each.has("STRONG", "AMENDP") for each in notes.clauses
        )
        return ("on", item.on) if item.on is not None and not item.ahead and told else (None, None)
    if item.sort in ("tree", "lot"):
        return item.sort, item.text
    if item.sort == "length":
        inches = item.value * units.factor(item.unit, "inch")
        return "diameter_in", inches / math.pi if clause.has("ROUND") else inches
    if item.sort == "hours":
        return "hours", item.value / 60 if item.unit == "minute" else item.value
    if item.sort == "temp":
        return "fahrenheit", units.fahrenheit(item.value) if item.unit == "degC" else item.value
    if item.sort == "cords":
        return "cords", item.value * units.factor(item.unit, "cord")
    if item.sort == "mass":
        return "propane_lb", item.value * units.factor(item.unit, "pound")
    named = any(each.holds("tree", "lot") for each in notes.clauses)
    if item.sort == "number" and item.text == "one" and named:
        return None, None  # "the west one"
    if [each.text for each in clause.following(item, 2)] == ["of", "the"]:
        return None, None  # "7 of the 500s"
    if item.sort == "number":
        if (
            any(each.has("PANN", "WATERN", "STORE", "TEMPN") for each in notes.clauses)
            and item.value > 25
        ):
            return "fahrenheit", item.value
        after = clause.following(item, 2)
        of_a_tree = any(each.holds("tree") for each in notes.clauses)
        if of_a_tree and after and after[0].text == "in":
            return "diameter_in", item.value  # "tree 3 was 15 in, not 14"
        if after and "TAPN" in after[0].tags and item.value == int(item.value):
            return "count", int(item.value)
        before = clause.preceding(item, 3)
        if (
            any(each.tags & {"SUGAR"} for each in before)
            or any(other.has("SUGAR") for other in notes.clauses)
            or (before and before[0].text in ("@",))
            or (before and before[0].text == "at" and _after_amount(clause, item))
            or (before and before[0].text == "at" and "." in item.text)
        ):
            return "brix", item.value
        if any("COSTV" in each.tags for each in before):
            return "dollars", item.value
        if (
            clause.has("BUCKET")
            and notes.profile.bucket_gallons is not None
            and after
            and "BUCKET" in after[0].tags
        ):
            return "gallons", item.value * notes.profile.bucket_gallons
        return "value", item.value
    return FIELDS[item.sort], item.value


def _after_amount(clause: Clause, item: Item) -> bool:
    return any(each.sort == "volume" and each.start < item.start for each in clause.items)
