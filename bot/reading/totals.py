"""Totals that repeat their parts."""

from __future__ import annotations

import re
from dataclasses import replace

from bot.reading.kinds import Cost, Sap, Sugar, TapsSet
from bot.reading.notes import Noted, Notes
from bot.units import factor


def settle_totals(notes: Notes) -> None:
    """`9 am and 5 pm, 14 total`: a total that repeats its parts is not one more amount."""
    _taps_told_twice(notes)
    _costs_told_twice(notes)
    saps = notes.all(Sap)
    if len(saps) == 1:
        _join_sugar(notes, saps[0])
        _of_several_lots(notes, saps[0])
    if len(saps) < 2:
        return
    if len(saps) >= _PARTS_AND_WHOLE and _one_sentence(notes, saps):
        *parts, last = saps
        whole = sum(map(_gallons, parts))
        bare = isinstance(last.reading, Sap) and not (last.reading.tree or last.reading.lot)
        said = notes.clauses[last.clause].text
        equals = last.clause > 0 and notes.clauses[last.clause - 1].items[-1].text == "="
        sums = equals or _SUMS_UP.search(said) is not None
        if whole and bare and sums and abs(whole - _gallons(last)) < 0.005 * whole:
            notes.noted.remove(last)  # "6 gal am, 8 gal pm, 14 gal today"
            return
    if _first_is_the_whole(notes, saps):
        notes.noted.remove(saps[0])
        return
    if "rest" in notes.text.split() and len(saps) > 1 and _one_sentence(notes, saps):
        for noted in saps:
            notes.noted.remove(noted)
        notes.ask("How much from each? Text it like: ridge 25 gal, brook 40 gal.")
        return
    if _differs_from_a_bare_total(notes, saps):
        return
    totals = [s for s in saps if notes.clauses[s.clause].has("TOTAL")]
    for total in totals:
        others = [s for s in saps if s is not total and _gallons(s) > 0]
        if not others:
            continue
        whole = sum(_gallons(s) for s in others)
        if abs(whole - _gallons(total)) < 0.01 * whole:
            notes.noted.remove(total)
            if isinstance(total.reading, Sap) and total.reading.brix is not None:
                for other in others:
                    if isinstance(other.reading, Sap) and other.reading.brix is None:
                        other.reading = replace(other.reading, brix=total.reading.brix)
            return
        if all(
            notes.clauses[s.clause].sentence == notes.clauses[total.clause].sentence for s in others
        ):
            for noted in (*others, total):
                notes.noted.remove(noted)
            litres = notes.profile.units == "metric"
            unit = "L" if litres else "gal"
            share = factor("gallon", "liter") if litres else 1.0
            notes.ask(
                f"The parts make {round(whole * share, 1):g} {unit}, you say"
                f" {round(_gallons(total) * share, 1):g} in all. Which?",
                fill=f"{{}} {unit} of sap",
            )
            return


def _differs_from_a_bare_total(notes: Notes, saps: list[Noted]) -> bool:
    """`5 gal and 3 gal, 9 total`: asks which it is."""
    here = notes.clauses[saps[0].clause].sentence
    bare = [
        item
        for clause in notes.clauses
        if clause.sentence == here and clause.has("TOTAL") and not clause.free("volume")
        for item in clause.free("number")
        if not item.part
    ]
    if len(bare) != 1 or not _one_sentence(notes, saps) or notes.profile.units == "metric":
        return False
    whole = sum(_gallons(s) for s in saps)
    bare[0].used = True
    if abs(whole - bare[0].value) < 0.01 * whole or bare[0].value > 3 * whole:
        return False
    for noted in saps:
        notes.noted.remove(noted)
    notes.ask(
        f"The parts make {round(whole, 1):g} gal, you say {bare[0].value:g} in all. Which?",
        fill="{} gal of sap",
    )
    return True


def _taps_told_twice(notes: Notes) -> None:
    """`17 taps, two in the big one and two in the twins`: those are of the 17."""
    told = notes.all(TapsSet)
    if len(told) < 2 or not isinstance(told[0].reading, TapsSet):
        return
    if _the_last_is_the_whole(notes, told) or _the_first_is_the_whole(notes, told):
        return
    first, *others = told
    named = notes.clauses[first.clause].has("TAPN")
    if not named or any(
        notes.clauses[noted.clause].has("TAPN") or "in" not in notes.clauses[noted.clause].words()
        for noted in others
    ):
        return
    more = not {"more", "another", "plus", "added", "extra"}.isdisjoint(notes.text.split())
    counts = [noted.reading.count for noted in others if isinstance(noted.reading, TapsSet)]
    lots = [noted.reading.lot for noted in others if isinstance(noted.reading, TapsSet)]
    if more or told[0].reading.lot is not None or not _one_sentence(notes, [first, *others]):
        return
    if any(lots) or sum(counts) > told[0].reading.count:
        return
    for noted in others:
        notes.noted.remove(noted)


def _costs_told_twice(notes: Notes) -> None:
    """`spent $46 at the farm store, $30 for a barrel and $16 for lids`."""
    told = [noted for noted in notes.all(Cost) if isinstance(noted.reading, Cost)]
    if len(told) < _PARTS_AND_WHOLE:
        return
    dollars = [noted.reading.dollars for noted in told if isinstance(noted.reading, Cost)]
    for whole in (0, -1):
        rest = sum(dollars) - dollars[whole]
        named = isinstance(told[-1].reading, Cost) and told[-1].reading.item is not None
        if whole and named and not notes.clauses[told[-1].clause].has("TOTAL"):
            return  # "$33 lids, $19 labels, $52 gas"
        if abs(rest - dollars[whole]) < _A_CENT:
            notes.noted.remove(told[whole])
            return


_SUMS_UP = re.compile(r"\b(?:today|for the day|makes|in all|all day)\b")
_PARTS_AND_WHOLE = 3
"""Two parts at the least, and what they make."""
_A_CENT = 0.01


def _the_first_is_the_whole(notes: Notes, told: list[Noted]) -> bool:
    """`put in 24 taps, 14 on the ridge and 10 in the hollow`."""
    first, *parts = told
    counts = [noted.reading.count for noted in told if isinstance(noted.reading, TapsSet)]
    if len(counts) != len(told) or len(parts) < 2 or sum(counts[1:]) != counts[0]:
        return False
    lots = [noted.reading.lot for noted in parts if isinstance(noted.reading, TapsSet)]
    if all(lots):
        notes.noted.remove(first)
    else:
        for noted in parts:
            notes.noted.remove(noted)
    return True


def _the_last_is_the_whole(notes: Notes, told: list[Noted]) -> bool:
    """`set 5 taps in the gully and 9 by the fence, 14 all told`."""
    *parts, last = told
    counts = [noted.reading.count for noted in told if isinstance(noted.reading, TapsSet)]
    whole = notes.clauses[last.clause].has("TOTAL") and last.clause != parts[-1].clause
    if not whole or len(counts) != len(told) or not _one_sentence(notes, told):
        return False
    if len(parts) == 1:
        return True
    notes.noted.remove(last)
    if sum(counts[:-1]) != counts[-1]:
        for noted in parts:
            notes.noted.remove(noted)
        notes.ask(f"The parts make {sum(counts[:-1])} taps, you say {counts[-1]}. Which?")
    return True


def _of_several_lots(notes: Notes, sap: Noted) -> None:
    """`20 gal ridge and brook together`: no lot's own."""
    here = notes.clauses[sap.clause].sentence
    lots = {
        item.text
        for clause in notes.clauses
        if clause.sentence == here
        for item in clause.items
        if item.sort == "lot"
    }
    together = not {"together", "combined", "both"}.isdisjoint(notes.text.split())
    if len(lots) > 1 and together and isinstance(sap.reading, Sap):
        sap.reading = replace(sap.reading, lot=None)


def _first_is_the_whole(notes: Notes, saps: list[Noted]) -> bool:
    """`110 gal today, 25 lane and 85 north`: the parts behind it make the first."""
    first, *parts = saps
    told = first.reading
    return (
        len(parts) > 1
        and isinstance(told, Sap)
        and told.lot is None
        and told.tree is None
        and _one_sentence(notes, saps)
        and abs(sum(map(_gallons, parts)) - _gallons(first)) < 0.01 * max(_gallons(first), 0.01)
    )


def _one_sentence(notes: Notes, saps: list[Noted]) -> bool:
    return len({notes.clauses[noted.clause].sentence for noted in saps}) == 1


def _join_sugar(notes: Notes, sap: Noted) -> None:
    """`2.4% and 10 gal`: the sugar that was told first is that of the sap behind it."""
    tests = notes.all(Sugar)
    told = sap.reading
    if len(tests) != 1 or not isinstance(told, Sap) or told.brix is not None or not told.gallons:
        return
    test = tests[0]
    same = notes.clauses[test.clause].sentence == notes.clauses[sap.clause].sentence
    same = same or sap.clause - test.clause == 1  # "2.8 today! 4 gal"
    sugar = test.reading
    assert isinstance(sugar, Sugar)
    if same and test.at < sap.at and (sugar.tree, sugar.lot, sugar.on) == (
        told.tree, told.lot, told.on,
    ):  # fmt: skip
        notes.noted.remove(test)
        sap.reading = replace(told, brix=sugar.brix)


def _gallons(noted: Noted) -> float:
    return noted.reading.gallons if isinstance(noted.reading, Sap) else 0.0
