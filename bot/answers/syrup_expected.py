"""How much syrup the sap should make: the season's, this text's, or an amount supposed."""

from __future__ import annotations

from bot.answers.asked import Asked
from bot.answers.supposed import supposed
from bot.reckoning.balance import mixed_brix, syrup_gallons
from bot.standing.sums import USUAL_SAP_BRIX
from bot.wording import totals as wording


def answer(asked: Asked) -> str:
    """By mass balance, at the least density that the law allows where the trees are."""
    told = [entry for entry in asked.told if entry.kind == "sap" and entry.gallons]
    if told:
        tested = [(entry.gallons or 0.0, entry.brix) for entry in told if entry.brix is not None]
        brix = mixed_brix([(gallons, b) for gallons, b in tested if b]) if tested else None
        gallons = sum(entry.gallons or 0.0 for entry in told)
        return _of(asked, gallons, brix, with_season=asked.tally.sap_records > len(told))
    lot = supposed(asked.text)
    if lot is not None:
        return _of(asked, lot.gallons, lot.brix, with_season=False)
    return wording.expected(asked.tally, asked.style)


def _of(asked: Asked, gallons: float, brix: float | None, *, with_season: bool) -> str:
    assumed = brix is None
    if brix is None:
        brix = asked.tally.sap_brix_mean or USUAL_SAP_BRIX
    if not 0 < brix < asked.tally.syrup_brix:
        return wording.expected(asked.tally, asked.style)
    made = syrup_gallons(gallons, brix, asked.tally.syrup_brix)
    said = wording.makes(gallons, brix, made, asked.tally.syrup_brix, asked.style, assumed=assumed)
    return f"{said} {wording.expected_short(asked.tally, asked.style)}" if with_season else said
