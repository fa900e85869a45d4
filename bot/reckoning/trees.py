"""Tree by tree and lot by lot: which gives most, which is sweetest, which was left standing.

The same sums serve trees and lots of trees: a record names one or the other, or neither, and
those that do not name what is asked for are passed over.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

from bot import figures
from bot.reckoning.balance import mixed_brix
from bot.reckoning.checks import not_negative
from bot.reckoning.density import sugar_pounds

Named = Literal["tree", "lot"]


@dataclass(frozen=True, slots=True)
class Gathering:
    """Sap gathered, or (gallons None) only tested, on a local day. Zero gallons is a dry pail,
    which was looked into all the same."""

    on: date
    gallons: float | None
    brix: float | None = None
    tree: str | None = None
    lot: str | None = None


@dataclass(frozen=True, slots=True)
class Tally:
    """What one tree or lot came to.

    `brix` is that of its tested sap mixed; where only tests without an amount are there, their
    mean; else None. `sugar_lb` is the sugar in all its sap at that Brix. `last_emptied` is None
    where it was only tested.
    """

    name: str
    gallons: float
    brix: float | None
    sugar_lb: float | None
    gatherings: int
    last_emptied: date | None


def tallies(records: Iterable[Gathering], named: Named) -> tuple[Tally, ...]:
    """A tally for each tree, or each lot, that the records name, by gallons, most first.

    Names are told apart by their letters only, not by case. Raises ValueError for an amount
    below zero.
    """
    by_name: dict[str, list[Gathering]] = {}
    spelling: dict[str, str] = {}
    for record in records:
        name = record.tree if named == "tree" else record.lot
        if name is None:
            continue
        key = name.casefold()
        spelling.setdefault(key, name)
        by_name.setdefault(key, []).append(record)
    found = [_tally(spelling[key], group) for key, group in by_name.items()]
    return tuple(sorted(found, key=lambda tally: (-tally.gallons, tally.name)))


def _tally(name: str, records: Sequence[Gathering]) -> Tally:
    gathered = [
        (record.on, not_negative("Sap", record.gallons, "gal"), record.brix)
        for record in records
        if record.gallons is not None
    ]
    gallons = sum(amount for _, amount, _ in gathered)
    brix = _brix(records)
    return Tally(
        name=name,
        gallons=gallons,
        brix=brix,
        sugar_lb=None if brix is None else sugar_pounds(gallons, brix),
        gatherings=len(gathered),
        last_emptied=max((on for on, _, _ in gathered), default=None),
    )


def _brix(records: Sequence[Gathering]) -> float | None:
    mixed = [
        (record.gallons, record.brix)
        for record in records
        if record.gallons is not None and record.gallons > 0 and record.brix is not None
    ]
    if mixed:
        return mixed_brix(mixed)
    tests = [record.brix for record in records if record.brix is not None]
    return sum(tests) / len(tests) if tests else None


def best(found: Sequence[Tally]) -> Tally | None:
    """The tally with the most sap; None without any. Of two alike, the first by name."""
    return min(found, key=lambda tally: (-tally.gallons, tally.name), default=None)


def poorest(found: Sequence[Tally]) -> Tally | None:
    """The tally with the least sap; None without any."""
    return min(found, key=lambda tally: (tally.gallons, tally.name), default=None)


def sweetest(found: Sequence[Tally]) -> Tally | None:
    """The tally with the most sugar in its sap; None when none was tested."""
    tested = [(tally.brix, tally) for tally in found if tally.brix is not None]
    if not tested:
        return None
    return min(tested, key=lambda pair: (-pair[0], pair[1].name))[1]


def not_emptied(
    found: Sequence[Tally], today: date, days: int = figures.NOT_EMPTIED_DAYS
) -> tuple[Tally, ...]:
    """Those not emptied for more than `days`, though others were since; the longest left first.

    Where nothing at all was gathered lately it is the weather, and none is named. One that was
    only ever tested counts as never emptied, and stands first.
    """
    latest = max(
        (tally.last_emptied for tally in found if tally.last_emptied is not None), default=None
    )
    if latest is None or (today - latest).days > days:
        return ()
    left = [
        tally
        for tally in found
        if tally.last_emptied is None or (today - tally.last_emptied).days > days
    ]
    return tuple(sorted(left, key=lambda tally: (tally.last_emptied or date.min, tally.name)))
