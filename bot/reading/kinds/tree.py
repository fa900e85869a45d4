"""What is known of a tree: species, diameter at breast height, taps."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, ClassVar

from bot import units
from bot.reading.kinds.base import Reading

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

CUES = {
    "MEASURE": "measures measured measuring",
}

PUZZLING_INCHES = 30.0
"""A larger figure with no word with it may be the girth: 31.4 in round is 10 in across."""
LEAST_INCHES = 1.5
MOST_TAPS = 6
"""More than any tree bears (common practice, no source: three at the most): a count of others."""
MOST_INCHES = 80.0
"""The thickest maples on record are little over 7 ft through (from memory)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tree(Reading):
    """What is known of a tree: species, diameter at breast height, taps."""

    kind: ClassVar[str] = "tree"

    tree: str
    species: str | None = None
    diameter_in: float | None = None
    taps: int | None = None


def find(clause: Clause, notes: Notes) -> None:
    """Species, size and taps of a tree that is named."""
    if clause.tree is None and not clause.has("SPECIES", "TREEN"):
        return
    if _both_are(clause, notes):
        return
    species = clause.first("SPECIES") or _species_before(clause, notes)
    others = species is not None and (_is_plural(species, notes) or clause.has("BUDS"))
    if others and not clause.own_tree:
        species = None  # "tree 5 gave 3 qts and red maples are budding"
    taps = _taps(clause, notes)
    inches = _inches(clause, notes)
    if clause.tree is None:
        asked = any(other.question for other in notes.clauses)
        thing = clause.has("SPECIES", "TREEN") and not clause.has("FOREIGN")
        if inches is not None and thing and not asked:
            notes.ask(
                "Which tree is that? Text its number or name first, like: tree 7.",
                fill="tree {} " + clause.text,
            )
        return
    if inches is not None and not inches:
        return
    if species is None and inches is None and taps is None and not _says_what_it_is(clause):
        return
    if clause.about("PULLV", "POUR") and inches is None and species is None:
        return
    if taps is not None:
        taps.used = True
    short = (
        _SHORT_SPECIES.get(
            next(
                (
                    w
                    for c in notes.sentence(clause)
                    if c.tree == clause.tree
                    for w in c.words()
                    if w in _SHORT_SPECIES
                ),
                "",
            )
        )
        if inches is not None or _says_what_it_is(clause)
        else None
    )
    made = Tree(
        tree=clause.tree,
        species=short if species is None else _LONG_SPECIES.get(species.text, species.text),
        diameter_in=inches,
        taps=None if taps is None else int(taps.value),
    )
    before = next(
        (
            noted
            for noted in reversed(notes.all(Tree))
            if getattr(noted.reading, "tree", "") == clause.tree
        ),
        None,
    )
    if before is not None and isinstance(before.reading, Tree):
        old = before.reading
        before.reading = Tree(
            tree=old.tree,
            species=old.species or made.species,
            diameter_in=old.diameter_in if old.diameter_in is not None else made.diameter_in,
            taps=old.taps if old.taps is not None else made.taps,
        )
        return
    notes.add(made, clause.items[0].start)
    other = _joined_tree(clause, notes)
    if other is not None and made.tree != other:
        notes.add(replace(made, tree=other), clause.items[0].start)


def _both_are(clause: Clause, notes: Notes) -> bool:
    """`tree 5 is 20 in across, tree 6 is 15 in across, both sugar maples`: of all that are told."""
    species = clause.first("SPECIES")
    told = notes.all(Tree)
    if species is None or clause.own_tree or len(told) < _TWO or clause.items[0].text not in _BOTH:
        return False
    name = _LONG_SPECIES.get(species.text, species.text)
    for noted in told:
        if isinstance(noted.reading, Tree) and noted.reading.species is None:
            noted.reading = replace(noted.reading, species=name)
    return True


_BOTH = frozenset(("both", "all", "both are", "all are"))
_TWO = 2


def _joined_tree(clause: Clause, notes: Notes) -> str | None:
    """The tree of `tree 4 and | tree 9 have two taps each`, which says nothing of its own."""
    before = notes.clause_before()
    if before is None or before.sentence != clause.sentence or clause.joint not in ("and", "&"):
        return None
    said = [each for each in before.items if each.sort != "sign"]
    each_or_both = not {"each", "both", "are", "apiece"}.isdisjoint(clause.words())
    alone = len(said) == 1 and said[0].sort == "tree" and each_or_both
    return said[0].text if alone else None


def _says_what_it_is(clause: Clause) -> bool:
    """`tree 21 is a silver`: the kind, and nothing behind it."""
    words = clause.words()
    return len(words) > 1 and words[-1] in _SHORT_SPECIES and words[-2] in ("a", "is", "an")


_SHORT_SPECIES = {
    "sugar": "sugar maple",
    "red": "red maple",
    "silver": "silver maple",
    "black": "black maple",
    "norway": "norway maple",
    "hard": "hard maple",
    "soft": "soft maple",
}
_LONG_SPECIES = {
    "sugarmaple": "sugar maple",
    "redmaple": "red maple",
    "silvermaple": "silver maple",
    "boxelder": "box elder",
}


def _species_before(clause: Clause, notes: Notes) -> Item | None:
    """`sugar maple, tree 5, about 40 cm`: the kind was said first."""
    before = notes.clause_before()
    if (
        before is None
        or before.sentence != clause.sentence
        or before.tree is not None
        or not clause.own_tree
    ):
        return None
    species = before.first("SPECIES")
    return None if species is None or _is_plural(species, notes) else species


def _is_plural(species: Item, notes: Notes) -> bool:
    """`15 spouts out of the soft maples`: what trees there are, and no tree's own kind."""
    return notes.text[species.start : species.end].endswith("s")


_NOT_YET = frozenset("could can would should needs need too enough handle take might want".split())


def _taps(clause: Clause, notes: Notes) -> Item | None:
    if not _NOT_YET.isdisjoint(clause.words()) or clause.plan or clause.has("HOLD"):
        return None  # "tree 5 could take 2 taps"
    ours = not {"we", "i", "we've", "i've"}.isdisjoint(clause.words())
    if clause.has("TOTAL") or (clause.has("HAVE") and ours and not clause.own_tree):
        return None  # "2 gal from tree 10, and we have 9 taps in all"
    for item in clause.free("number"):
        after = clause.following(item, 1)
        if (
            after
            and "TAPN" in after[0].tags
            and item.value == int(item.value)
            and item.value <= MOST_TAPS
            and not clause.has("SETV", "PULLV")
        ):
            return item
        counts = clause.own_tree and clause.has("HAVE") and clause.items[-1] is item
        if counts and item.value <= MOST_TAPS and _counted_taps(clause, notes):
            return item  # "tree 30 has 2 taps, tree 31 has 1"
    return None


def _counted_taps(clause: Clause, notes: Notes) -> bool:
    before = notes.last(Tree)
    return (
        before is not None
        and isinstance(before.reading, Tree)
        and before.reading.taps is not None
        and notes.clauses[before.clause].sentence == clause.sentence
    )


def _inches(clause: Clause, notes: Notes) -> float | None:
    """Diameter at breast height in inches; 0 after a question, None where none is told."""
    if not _NO_TREES_SIZE.isdisjoint(clause.words()):
        return None
    item = next(
        (
            each
            for each in clause.free("length")
            if each.unit != "foot" or clause.has("ROUND", "ACROSS")
        ),
        None,
    )
    size: float
    if item is None:
        item = _inches_unsaid(clause, notes)
        if item is None:
            return None
        size = (
            item.value
            if notes.profile.units == "us"
            else item.value * units.factor("centimeter", "inch")
        )
        if any(each.text == "in" for each in clause.following(item, 1)):
            size = item.value
    else:
        size = item.value * units.factor(item.unit, "inch")
    item.used = True
    said = f"{item.value:g} {_SHORT.get(item.unit, 'in')}"
    tree = f"tree {clause.tree} " if clause.tree else ""
    around = clause.near("ROUND") and "tape" in notes.text
    around = around or any(
        ("ROUND" in each.tags and "ABOUT" not in each.tags)
        or (each.text == "around" and each.start > item.start)
        for each in clause.items
    )
    if around:
        size /= math.pi
    elif not clause.has("ACROSS") and size > PUZZLING_INCHES:
        notes.ask(
            f"{said}: round or across?",
            ("round|around|girth|circumference", f"{tree}{said} around"),
            ("across|through|diameter|wide", f"{tree}{said} across"),
        )
        return 0.0
    if not LEAST_INCHES <= size <= MOST_INCHES:
        notes.ask(
            f"{said} makes {size:.0f} in across: is that right? Text the size again.",
            fill=tree + "{} inches across",
        )
        return 0.0
    return size


_NO_TREES_SIZE = frozenset("snow deep drift drifts mud high up apart away tall below off".split())
"""`snow is 24 inches deep at tree 12`."""
_SHORT = {"inch": "in", "centimeter": "cm", "millimeter": "mm", "foot": "ft"}


def _inches_unsaid(clause: Clause, notes: Notes) -> Item | None:
    """`tree 7 sugar maple 16 in`, `diameter 15`: a number that can only be its size."""
    for item in clause.free("number"):
        after = clause.following(item, 2)
        if (
            after
            and after[0].text == "in"
            and (
                len(after) == 1
                or after[1].tags & {"ROUND", "ACROSS"}
                or clause.near("SPECIES", "ROUND", "ACROSS")
            )
        ) and (clause.tree is not None or clause.has("SPECIES")):
            return item
        marked = [
            each
            for each in (*clause.preceding(item, 2), *after)
            if each.tags & {"ACROSS", "ROUND"} and each.text not in ("around", "through")
        ]
        if marked and clause.tree is not None:
            return item
    del notes
    return None
