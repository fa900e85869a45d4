"""How many taps a tree bears, and what a sugarbush will need and may give."""

from __future__ import annotations

import re

from bot import figures
from bot.answers import totals
from bot.answers.answer import Answer
from bot.answers.asked import Asked
from bot.reading import Choice, Doubt
from bot.reckoning.balance import syrup_gallons
from bot.reckoning.species import species_named
from bot.reckoning.taps import (
    PlannedTree,
    diameter_in,
    plan,
    round_or_across,
    storage_for,
    taps_for,
)
from bot.wording import tap_plan as wording

_AROUND = re.compile(r"\b(?:a?round|girth|circumference|circ)\b")
_ACROSS = re.compile(r"\b(?:across|diameter|dia|dbh|thick|wide|through)\b")
_HAVE = re.compile(r"\bhow many taps (?:do|have|did|are|so|is|in)\b(?!.*\b(?:need|should|could)\b)")
_ARE_IN = re.compile(
    r"\bhow many (?:taps|spiles|spouts) (?:(?:are|is) )?(?:in|up|out there|now|left|still)\b"
)
# "how many taps in tree 7", of a tree whose size was told; what hangs there is `how many are in`.
_OF_A_TREE = re.compile(
    r"\btaps? (?:(?:can|should|could|does|do|will|for|in|on|go|i|we|put|take|bear|fit) )*"
    r"(?:the )?tree (\w{1,8})\b"
)
_OF_VESSELS = ("bucket", "buckets", "pail", "pails", "big", "size", "room", "storage")
_OF_TAPS = re.compile(r"(\d+)\s*(?:taps?|spiles?|buckets?|pails?|holes?)\b")
_INCHES = re.compile(
    r"(\d+(?:\.\d+)?)\s*(?:in|inch|inches|\")(?=\s+(?:tree|maple|trunk|one|a?round|across))"
)
# Whole numbers before a tree's size count trees up to this (our own).
_MOST_TREES = 500


def answer(asked: Asked) -> Answer:
    """For the sizes in the question; else for the taps it names, the trees told, or the taps."""
    sizes = _sizes(asked)
    if sizes:
        return _for_sizes(asked, sizes)
    of_one = _OF_A_TREE.search(asked.plain)
    if of_one is not None:
        return _for_one(asked, of_one[1])
    if any(said.search(asked.plain) for said in (_HAVE, _ARE_IN)) or _on_a_lot(asked):
        return totals.answer(asked)
    if totals.asks_per_tap(asked) and not asked.says(*_OF_VESSELS):
        return Answer(f"{totals.per_tap(asked)} {wording.usual_per_tap(asked.style)}")
    named = _OF_TAPS.search(asked.plain)
    if named is not None and 0 < int(named[1]) <= figures.TAPS_MOST:
        return Answer(_needs(asked, int(named[1])))
    trees = _trees_told(asked)
    if trees:
        return _for_trees(asked, trees)
    if asked.known.taps is not None and asked.known.taps.count:
        return Answer(_needs(asked, asked.known.taps.count))
    return Answer(wording.no_trees(asked.style))


def _on_a_lot(asked: Asked) -> bool:
    """`how many taps on the ridge`: those that hang there."""
    lots = totals.lots_named(asked)
    return bool(lots) and not asked.says("need", "should", "could", "can", "more", "room")


def _sizes(asked: Asked) -> list[tuple[int, float]]:
    """Trees of the question as (how many, inches as measured)."""
    found: list[tuple[int, float]] = []
    count = 1
    for one in asked.figures:
        if one.sort == "number" and one.value == int(one.value) and 1 <= one.value <= _MOST_TREES:
            count = int(one.value)
        elif one.sort == "length":
            found.append((count, one.value))
            count = 1
    if not found:
        # "a 57 in tree": the unit looks like a word.
        found = [(1, float(size[1])) for size in _INCHES.finditer(asked.plain)]
    return found


def _for_sizes(asked: Asked, sizes: list[tuple[int, float]]) -> Answer:
    around = bool(_AROUND.search(asked.plain))
    if not around and not _ACROSS.search(asked.plain):
        doubtful = [inches for _, inches in sizes if round_or_across(inches)]
        if doubtful:
            question = wording.round_or_across(doubtful[0], asked.style)
            words = re.sub(r"[{}]", "", asked.text)
            choices = (
                Choice(("round", "around", "girth"), f"{words} around"),
                Choice(("across", "through", "diameter"), f"{words} across"),
            )
            return Answer("", ask=Doubt(question, choices))
    trees = [(count, diameter_in(inches) if around else inches) for count, inches in sizes]
    if len(trees) == 1 and trees[0][0] == 1:
        across = trees[0][1]
        return Answer(
            wording.one_tree(
                across,
                sizes[0][1] if around else None,
                taps_for(across),
                taps_for(across, "traditional"),
                asked.style,
            )
        )
    return Answer(
        wording.several([(count, across, taps_for(across)) for count, across in trees], asked.style)
    )


def _for_one(asked: Asked, label: str) -> Answer:
    sizes = {tree.label.casefold(): tree.diameter_in for tree in _trees_told(asked)}
    across = sizes.get(label.casefold())
    if across is None:
        return Answer(wording.size_wanted(label, asked.style))
    bears = taps_for(across), taps_for(across, "traditional")
    return Answer(wording.one_tree(across, None, *bears, asked.style))


def _trees_told(asked: Asked) -> list[PlannedTree]:
    """The trees whose size was told in any season, the latest word on each."""
    sizes: dict[str, float] = {}
    species: dict[str, str] = {}
    for entry in asked.book.records.of_kind(asked.sugarbush_id, "tree"):
        if entry.tree is None:
            continue
        if entry.detail.get("diameter_in") is not None:
            sizes[entry.tree] = float(entry.detail["diameter_in"])
        if entry.detail.get("species") is not None:
            species[entry.tree] = str(entry.detail["species"])
    return [PlannedTree(label, across, species.get(label)) for label, across in sizes.items()]


def _for_trees(asked: Asked, trees: list[PlannedTree]) -> Answer:
    made = plan(trees, asked.tally.syrup_brix)
    too_thin = sum(taps == 0 for taps in made.taps.values())
    lead = wording.trees_lead(len(trees), made.total_taps, too_thin)
    row = wording.tree_by_tree(list(made.taps.items()))
    if not made.total_taps:
        return Answer(f"{lead}. {row}")
    said = wording.needs(
        lead,
        made.total_taps,
        made.storage_gallons,
        (made.sap_low, made.sap_high),
        (made.syrup_low, made.syrup_high),
        asked.style,
    )
    return Answer(
        said,
        (row,) if len(row) <= _LONGEST_ROW else (),
        table=lambda: wording.tree_table(
            [(one.label, one.species, one.diameter_in, made.taps[one.label]) for one in trees],
            asked.style,
        ),
    )


# A list of trees that would take more than two segments is left out.
_LONGEST_ROW = 300


def _needs(asked: Asked, taps: int) -> str:
    least, most = figures.SAP_PER_TAP_SEASON_GALLONS
    maple = species_named("sugar maple")
    assert maple is not None
    target = asked.tally.syrup_brix
    return wording.needs(
        wording.taps_lead(taps),
        taps,
        storage_for(taps),
        (taps * least, taps * most),
        (
            syrup_gallons(taps * least, maple.brix_low, target),
            syrup_gallons(taps * most, maple.brix_high, target),
        ),
        asked.style,
    )
