"""A tree or a lot that is named beside sap that no reading gives to it: asked about, since sap that
is given to nobody cannot be given later to the tree that earned it."""

from __future__ import annotations

from dataclasses import replace

from bot.reading.items import Item
from bot.reading.kinds import Sap, Sugar
from bot.reading.leftovers import short
from bot.reading.notes import Noted, Notes


def whence(notes: Notes) -> None:
    """Asks of a sentence's first such name, and takes back the record that may be of it."""
    if notes.doubts or notes.is_letter:
        return
    held = {getattr(noted.reading, sort, None) for noted in notes.noted for sort in _SORTS}
    for noted in list(notes.noted):
        told = noted.reading
        if not isinstance(told, Sap | Sugar) or told.tree is not None or told.lot is not None:
            continue
        name = _named_beside(notes, noted)
        if name is None or name.text in held:
            continue
        said = notes.clauses[noted.clause].spoken()
        of = f"tree {name.text}" if name.sort == "tree" else f"the {_as_lot(name.text)}"
        tree, lot = (name.text, None) if name.sort == "tree" else (None, name.text)
        fixed = replace(told, tree=tree, lot=lot)
        notes.noted.remove(noted)
        notes.ask(
            f"{short(said)}: from {of}?",
            ("ok|yep|yeah|right|it is|it was", _as_text(fixed)),
            ("no|nope|nah|all|everywhere", _as_text(told)),
        )
        return


_SORTS = ("tree", "lot")


def _named_beside(notes: Notes, noted: Noted) -> Item | None:
    """The only name in the record's sentence."""
    here = notes.clauses[noted.clause].sentence
    names = {
        (item.sort, item.text): item
        for clause in notes.clauses
        if clause.sentence == here and not (clause.question or clause.plan or clause.negated)
        for item in clause.items
        if item.sort in _SORTS
    }
    return next(iter(names.values())) if len(names) == 1 else None


def _as_lot(name: str) -> str:
    """A lot as it is spoken of: `the ridge lot`."""
    return name if name.endswith("lot") else f"{name} lot"


def _as_text(told: Sap | Sugar) -> str:
    """A text that reads as that record."""
    where = f"tree {told.tree} " if told.tree else f"{_as_lot(told.lot)} " if told.lot else ""
    when = f" on {told.on.isoformat()}"
    if isinstance(told, Sugar):
        return f"{where}sugar {told.brix:g} brix{when}"
    sugar = "" if told.brix is None else f" at {told.brix:g} brix"
    return f"{where}{told.gallons:g} gal of sap{sugar}{when}"
