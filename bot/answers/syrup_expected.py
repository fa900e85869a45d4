"""How much syrup the sap should make, the jars it fills, and where missing syrup may be."""

from __future__ import annotations

import re

from bot import figures, units
from bot.answers import boil_plan
from bot.answers.answer import Answer
from bot.answers.asked import Asked
from bot.reading.instruments import IceOut, shown
from bot.reckoning.balance import (
    after_ice_range,
    mixed_brix,
    sap_per_syrup,
    syrup_gallons,
    too_much_ice,
)
from bot.reckoning.bottling import jars_for
from bot.reckoning.checks import positive, within
from bot.reckoning.yields import check_yield, where_the_rest_may_be
from bot.standing.sums import USUAL_SAP_BRIX
from bot.wording import amounts as say
from bot.wording import totals as wording
from bot.wording import yields

_ASKS_JARS = re.compile(
    r"\bhow many\b.*\b(?:jars?|pints?|quarts?|bottles?|jugs?|containers?|half[- ]?pints?)\b"
    r"|\b(?:jars?|bottles?|jugs?)\b.*\bhow many\b"
)
_ASKS_SAP = re.compile(
    r"\bhow (?:much|many)(?: gal\w*| lit\w+| l)?(?: of)? sap\b(?!.*\b(?:so far|got|have i)\b)"
    r"|\bhow (?:much|many)\b.*\b(?:mak(?:e|es|ing)|for|till|until|get|takes?|in)\b"
    r".*\b(?:gal\w*|qt|quart|pint|lit\w+) of syrup\b"
    r"|\bsap (?:do i need|does it take|for a|to make|per)\b"
)
_ASKS_WHY = re.compile(
    r"\bwhy\b|\b(?:so |too )(?:little|few)\b|\bshort\b|\bmissing\b|\bas much as\b|\byield\b"
    r"|\bthe rest\b|\bless than\b|\bshould(?:'ve| have)\b|\blost\b|\bwhere did\b|\blose\b"
)
# Names of jars in a question, the longest first, with what each holds.
_JARS = (
    (re.compile(r"\bhalf[- ]?pints?\b"), (0.5, "pint")),
    (re.compile(r"\bquarts? (?:jars?|bottles?|jugs?)|\bhow many quarts?\b"), (1, "quart")),
    (re.compile(r"(?<!half )(?<!half-)\bpints?\b"), (1, "pint")),
    (re.compile(r"\b8 ?(?:oz|ounce)"), (8, "fluid_ounce")),
    (re.compile(r"\b12 ?(?:oz|ounce)"), (12, "fluid_ounce")),
    (re.compile(r"\b16 ?(?:oz|ounce)"), (16, "fluid_ounce")),
    (re.compile(r"\b250 ?ml"), (250, "ml")),
    (re.compile(r"\b500 ?ml"), (500, "ml")),
    (re.compile(r"\b540 ?ml"), (540, "ml")),
)
_US_JARS = ((1, "pint"), (0.5, "pint"))
_METRIC_JARS = ((500, "ml"), (250, "ml"))


def answer(asked: Asked) -> Answer:
    """By mass balance, at the least density that the law allows where the trees are."""
    ice = shown(asked.text, asked.profile)
    if isinstance(ice, IceOut):
        return Answer(_after_ice(asked, ice))
    if _ASKS_JARS.search(asked.plain) and not asked.told:
        return Answer(_jars(asked))
    if _ASKS_SAP.search(asked.plain) and not asked.told:
        return Answer(_sap_needed(asked))
    told = [entry for entry in asked.told if entry.kind == "sap" and entry.gallons]
    if told:
        tested = [(one.gallons or 0.0, one.brix) for one in told if one.brix is not None]
        brix = mixed_brix([(gallons, b) for gallons, b in tested if b]) if tested else None
        gallons = sum(entry.gallons or 0.0 for entry in told)
        return Answer(_of(asked, gallons, brix, with_season=asked.tally.sap_records > len(told)))
    fuel = boil_plan.from_fuel(asked)
    if fuel is not None:
        return fuel
    if asked.sap_named is not None:
        named = asked.sap_named
        return Answer(_of(asked, named.gallons, named.brix, with_season=False))
    if _ASKS_WHY.search(asked.plain):
        return _against_expected(asked)
    return Answer(wording.expected(asked.tally, asked.style))


def _of(asked: Asked, gallons: float, brix: float | None, *, with_season: bool) -> str:
    assumed = brix is None
    if brix is None:
        brix = asked.tally.sap_brix_mean or USUAL_SAP_BRIX
    positive("Sap", gallons, "gal")
    within("Sap sugar", brix, *figures.SAP_BRIX, "Brix")
    made = syrup_gallons(gallons, brix, asked.tally.syrup_brix)
    said = wording.makes(gallons, brix, made, asked.tally.syrup_brix, asked.style, assumed=assumed)
    return f"{said} {wording.expected_short(asked.tally, asked.style)}" if with_season else said


def _after_ice(asked: Asked, ice: IceOut) -> str:
    if ice.brix is None:
        return yields.ice_without_brix(ice.gallons - ice.ice_gallons, asked.style)
    left = after_ice_range(ice.gallons, ice.brix, ice.ice_gallons)
    return yields.after_ice(
        left.gallons,
        left.low_brix,
        left.high_brix,
        asked.style,
        too_much=too_much_ice(ice.gallons, ice.ice_gallons),
    )


def _jars(asked: Asked) -> str:
    """Jars for the syrup named, that from the sap named, else what is drawn and not bottled."""
    named = [size for pattern, size in _JARS if pattern.search(asked.plain)]
    usual = _METRIC_JARS if asked.style.is_metric else _US_JARS
    sizes = [units.gallons(amount, unit) for amount, unit in named or usual]
    syrup, what = _syrup_for_jars(asked, sizes)
    plan = jars_for(syrup, sizes)
    jars = [(jar.count, jar.gallons_each) for jar in plan.jars]
    return yields.jars_for(what, jars, plan.rest_gallons, asked.style)


def _syrup_for_jars(asked: Asked, sizes: list[float]) -> tuple[float, str]:
    style, tally = asked.style, asked.tally
    volumes = [
        gallons
        for gallons in asked.values("volume", 0.001)
        if not any(abs(gallons - size) < _SAME_JAR * size for size in sizes)
    ]
    if volumes:
        named = asked.sap_named
        brix = None if named is None else named.brix
        if brix is not None or asked.says("sap"):
            brix = tally.expected_brix if brix is None else brix
            made = syrup_gallons(volumes[0], brix, tally.syrup_brix)
            sap = f"{say.volume(volumes[0], style)} of sap at {say.mean_brix(brix)}"
            return made, f"{say.about_syrup(made, style)} from {sap}"
        return volumes[0], f"{say.syrup(volumes[0], style)} of syrup"
    left = tally.syrup_gallons - tally.jars_gallons
    if left > 0:
        return left, f"{say.syrup(left, style)} drawn and not bottled"
    expected = tally.expected_syrup_gallons
    return expected, f"{say.about_syrup(expected, style)} from your sap"


# A jar's own size in the question ("500 mL jars") is not the batch.
_SAME_JAR = 0.02


def _sap_needed(asked: Asked) -> str:
    tally = asked.tally
    volumes = asked.values("volume", 0.001)
    brix_named = [
        one.value
        for one in asked.figures
        if one.sort == "brix" or one.sort == "number"
        if 0.3 <= one.value <= 12
    ]
    brix = brix_named[0] if brix_named else tally.expected_brix
    unit = "liter" if asked.style.is_metric else "gallon"
    syrup = volumes[0] if volumes else units.gallons(1.0, unit)
    sap = syrup * sap_per_syrup(brix, tally.syrup_brix)
    assumed = not brix_named and tally.brix_is_assumed
    return yields.sap_needed(syrup, sap, brix, asked.style, assumed=assumed)


def _against_expected(asked: Asked) -> Answer:
    """Syrup drawn against expected, and where the rest may be."""
    tally, style = asked.tally, asked.style
    if not tally.sap_records:
        return Answer(wording.expected(tally, style))
    waiting = asked.store.gallons
    expected = tally.expected_syrup_gallons
    if not tally.syrup_records:
        return Answer(yields.nothing_drawn(waiting, expected, style))
    check = check_yield(expected, tally.syrup_gallons)
    if check.verdict == "as expected":
        return Answer(yields.as_expected(tally.syrup_gallons, expected, style))
    if check.verdict == "over":
        return Answer(yields.over(tally.syrup_gallons, expected, style))
    rests: list[tuple[str, float | None, float | None]] = []
    if waiting > 0:
        unboiled = syrup_gallons(waiting, tally.expected_brix, tally.syrup_brix)
        rests.append(("waiting", unboiled, unboiled))
    rests += [
        (rest.place, rest.least_gallons, rest.most_gallons)
        for rest in where_the_rest_may_be(
            check,
            tally.syrup_brix,
            None if tally.brix_is_assumed else tally.expected_brix,
            _drawn_brix(asked),
            asked.gear.pan_ft2,
        )
    ]
    said = yields.short(tally.syrup_gallons, expected, check.short_gallons, style)
    return Answer(f"{said} {yields.places(rests, style)}")


def _drawn_brix(asked: Asked) -> float | None:
    """Mean density of the syrup drawn, by gallons, None where nobody tested it."""
    sums = asked.book.sums.season(asked.sugarbush_id, asked.season)
    tested = [
        (one.gallons, one.brix)
        for one in sums
        if one.kind == "syrup" and one.gallons and one.brix is not None
    ]
    total = sum(gallons for gallons, _ in tested)
    return sum(gallons * brix for gallons, brix in tested) / total if total else None
