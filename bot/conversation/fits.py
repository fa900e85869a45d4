"""What a record becomes by a correction, and whether its kind can take it at all."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from bot.conversation.recording import jar_gallons, moved, with_detail
from bot.entry import AMOUNT_FIELDS, Entry
from bot.ledger import Kept
from bot.reading.kinds import Amend, Jar

# The fields that a record of a kind can take though its text did not tell them.
_CAN_TAKE: Mapping[str, frozenset[str]] = {
    "sap": frozenset({"gallons", "brix", "tree", "lot"}),
    "sugar": frozenset({"brix", "tree", "lot"}),
    "poured_out": frozenset({"gallons"}),
    "boil": frozenset({"gallons", "hours"}),
    "syrup": frozenset({"gallons", "brix"}),
    "jars": frozenset({"jars", "count"}),
    "taps_set": frozenset({"count", "lot"}),
    "taps_pulled": frozenset({"count"}),
    "tree": frozenset({"species", "diameter_in", "taps"}),
    "cost": frozenset({"dollars", "item"}),
    "fuel": frozenset({"cords", "propane_lb"}),
    "bucket_size": frozenset({"gallons"}),
}


# Fewer gallons than this are not boiled (our own).
_LEAST_BOILED = 1.0


@dataclass(frozen=True, slots=True)
class Fit:
    """A record that a correction may mean, what it would become, and how far off that is."""

    kept: Kept
    field: str
    becomes: Entry
    distance: float = 0.0


def is_near(old: float, figure: float) -> bool:
    """The same figure, as far as people say it."""
    return abs(old - figure) <= _SAID_NEAR * max(abs(old), abs(figure))


_SAID_NEAR = 0.01  # by ratio (our own)


def changes_of(reading: Amend) -> dict[str, Any]:
    told = reading.as_dict()
    for name in ("kind", "value", "pieces", "was", "about", "thing"):
        told.pop(name, None)
    return told


def fits_of(
    text: Sequence[Kept], changes: Mapping[str, Any], reading: Amend, *, may_take: bool
) -> list[Fit]:
    """The records of one text that the changes fit, those that told the fields first.

    A tree or lot beside an amount picks the record when several could be meant.
    """
    named = [
        kept
        for kept in text
        if (reading.tree is not None and kept.entry.tree == reading.tree)
        or (reading.lot is not None and kept.entry.lot == reading.lot)
    ]
    amounts_told = {name: value for name, value in changes.items() if name not in ("tree", "lot")}
    if named and amounts_told:
        text, changes = named, amounts_told
    having: list[Fit] = []
    taking: list[Fit] = []
    for kept in text:
        becomes = _changed(kept.entry, changes, reading)
        if becomes is None:
            continue
        fit = Fit(kept, next(iter(changes)), becomes)
        (having if tells(kept.entry, changes) else taking).append(fit)
    return having or (taking if may_take else [])


def already_so(texts: Sequence[Sequence[Kept]], reading: Amend) -> Kept | None:
    """The latest record that tells what the correction would make of it: it was said twice."""
    told = {n: v for n, v in changes_of(reading).items() if n not in ("on", "tree", "lot")}
    if not told:
        return None
    fits = next(filter(None, (fits_of(text, told, reading, may_take=False) for text in texts)), [])
    return next((fit.kept for fit in fits if fit.becomes == fit.kept.entry), None)


def tells(entry: Entry, changes: Mapping[str, Any]) -> bool:
    """Whether the record tells one of the amounts already."""
    return any(
        getattr(entry, name, None) is not None or name in entry.detail
        for name in changes
        if name != "on"
    ) or (entry.kind == "jars" and "gallons" in changes)


def _changed(entry: Entry, changes: Mapping[str, Any], reading: Amend) -> Entry | None:
    """The record with the changes, None if its kind cannot take one of them."""
    if entry.kind == "jars" and "gallons" in changes:
        if reading.pieces is None:
            jars = _of_another_size(entry, reading.gallons)
        elif not _are_jars(entry, reading.pieces):
            return None
        else:
            jars = _jars_put_right(entry, reading.pieces)
        if jars is None:
            return None
        changes = {name: value for name, value in changes.items() if name != "gallons"}
        changes["jars"] = jars
    if entry.kind == "boil" and entry.detail.get("state") == "start":
        return None
    if entry.kind in ("taps_set", "taps_pulled") and "taps" in changes:
        changes = {**{k: v for k, v in changes.items() if k != "taps"}, "count": changes["taps"]}
    out = entry
    for name, value in changes.items():
        if name == "on":
            out = moved(out, reading.on) if reading.on is not None else out
            continue
        if entry.kind == "boil" and name == "gallons" and value < _LEAST_BOILED:
            return None  # "it was only 3 quarts" is no word about a boil
        can_take = name in _CAN_TAKE.get(entry.kind, ()) or tells(entry, {name: value})
        if not can_take:
            return None
        out = with_field(out, name, value)
    return out


def _of_another_size(entry: Entry, gallons_each: float | None) -> list[dict[str, Any]] | None:
    """As many jars, of the size that is told; None where there were several sizes."""
    had = entry.detail.get("jars", ())
    if gallons_each is None or len(had) != 1 or gallons_each > _LARGEST_JAR:
        return None
    return [{**had[0], "gallons_each": gallons_each}]


def _jars_put_right(entry: Entry, pieces: Sequence[Jar]) -> list[dict[str, Any]] | None:
    """The jars with those of a size counted anew, the others as they were; None where a size is
    new among several, so that nobody knows which it stands for."""
    had = [dict(jar) for jar in entry.detail.get("jars", ())]
    if len(had) <= 1:
        return [jar_json(jar) for jar in pieces]
    for piece in pieces:
        same = [jar for jar in had if is_near(jar["gallons_each"], piece.gallons_each)]
        if len(same) != 1:
            return None
        same[0]["count"] = piece.count
    return had


def _are_jars(entry: Entry, pieces: Sequence[Jar]) -> bool:
    """Whether counted containers are jars: not gallons, unless there were such jars before."""
    had = [jar["gallons_each"] for jar in entry.detail.get("jars", ())]
    return all(
        piece.gallons_each <= _LARGEST_JAR
        or any(abs(piece.gallons_each - size) < 0.01 for size in had)
        for piece in pieces
    )


# US gallons; larger ones are sold, but then a text says so from the start (our own).
_LARGEST_JAR = 0.5


def with_field(entry: Entry, name: str, value: Any) -> Entry:
    if name == "jars":
        jars = list(value)
        return replace(with_detail(entry, {"jars": jars}), gallons=jar_gallons(jars))
    if entry.kind == "jars" and name == "count":
        jars = [{**jar, "count": int(value)} for jar in entry.detail["jars"]]
        return with_field(entry, "jars", jars)
    if name in AMOUNT_FIELDS:
        changed = replace(entry, **{name: value})
        if entry.kind == "taps_pulled" and name == "count":
            return replace(changed, detail={k: v for k, v in entry.detail.items() if k != "all"})
        return changed
    return with_detail(entry, {name: value})


def jar_json(jar: Jar) -> dict[str, Any]:
    """A jar as plain JSON."""
    return {"count": jar.count, "gallons_each": jar.gallons_each}
