"""A season in numbers, out of the ledger's sums."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from typing import Final

from bot.ledger import Book, KindSum, Source
from bot.reckoning.balance import mixed_brix, syrup_gallons
from bot.standing.boils import Boil, boils_of
from bot.tally import Tally

# Sap that nobody tested is reckoned at this, Brix (common practice, no source: sugar maple
# runs 2 to 2.5; the lower figure, so that nobody is promised too much).
USUAL_SAP_BRIX: Final = 2.0


def season_tally(
    book: Book,
    sugarbush_id: int,
    season: int,
    syrup_brix: float,
    sums: Sequence[KindSum] | None = None,
) -> Tally:
    """The whole season; syrup is expected at `syrup_brix`. sums: the season's, where they are at
    hand."""
    if sums is None:
        sums = book.sums.season(sugarbush_id, season)
    return _tally(book, sugarbush_id, season, syrup_brix, sums, None, None)


def part_of_season(
    book: Book,
    sugarbush_id: int,
    season: int,
    syrup_brix: float,
    *,
    first: date | None = None,
    last: date | None = None,
) -> Tally:
    """The season's days from `first` to `last`, local, both included; None is unbounded.

    Sap whose own text told no Brix takes the mean of the sugar tests of its day: of its own lot or
    tree, else of the whole bush's sap.
    """
    sums = book.sums.season(sugarbush_id, season, first=first, last=last)
    return _tally(book, sugarbush_id, season, syrup_brix, sums, first, last)


def _tally(
    book: Book,
    sugarbush_id: int,
    season: int,
    syrup_brix: float,
    sums: Sequence[KindSum],
    first: date | None,
    last: date | None,
) -> Tally:
    sap = [one for one in sums if one.kind == "sap"]
    lots = _tested_lots(book, sugarbush_id, season, sums, first, last)
    gallons = _sum(sap, "gallons")
    poured = _sum((one for one in sums if one.kind == "poured_out"), "gallons")
    mean = mixed_brix(lots) if lots else None
    expected_brix = USUAL_SAP_BRIX if mean is None else mean
    kept = max(gallons - poured, 0.0)
    syrup = [one for one in sums if one.kind == "syrup"]
    return Tally(
        season=season,
        sap_gallons=gallons,
        sap_records=sum(one.records for one in sap if one.gallons),
        sap_brix_mean=mean,
        expected_brix=expected_brix,
        brix_is_assumed=mean is None,
        expected_syrup_gallons=syrup_gallons(kept, min(expected_brix, syrup_brix), syrup_brix),
        syrup_brix=syrup_brix,
        syrup_gallons=_sum(syrup, "gallons"),
        syrup_records=sum(one.records for one in syrup),
        jars_gallons=_sum((one for one in sums if one.kind == "jars"), "gallons"),
        poured_out_gallons=poured,
        cost_dollars=_sum((one for one in sums if one.kind == "cost"), "dollars"),
        cords=_sum((one for one in sums if one.kind == "fuel"), "cords"),
        propane_lb=_sum((one for one in sums if one.kind == "fuel"), "propane_lb"),
    )


def season_boils(book: Book, sugarbush_id: int, season: int) -> list[Boil]:
    """The boils of a season, by the wall clock."""
    return boils_of(book.records.of_kinds(sugarbush_id, ("boil",), season))


def _tested_lots(
    book: Book,
    sugarbush_id: int,
    season: int,
    sums: Sequence[KindSum],
    first: date | None,
    last: date | None,
) -> list[tuple[float, float]]:
    lots = [
        (one.gallons, one.brix)
        for one in sums
        if one.kind == "sap" and one.gallons and one.brix is not None
    ]
    untested = any(one.kind == "sap" and one.gallons and one.brix is None for one in sums)
    if untested and any(one.kind == "sugar" for one in sums):
        tests = book.sums.sugar_tests(sugarbush_id, season)
        sap = book.sums.untested_sap(sugarbush_id, season, first=first, last=last)
        for source, gallons in sap.items():
            own, whole = tests.get(source), tests.get(Source(source.on, None, None))
            brix = whole if own is None else own
            if brix is not None and gallons:
                lots.append((gallons, brix))
    return lots


def _sum(sums: Iterable[KindSum], what: str) -> float:
    return float(sum(getattr(one, what) or 0.0 for one in sums))
