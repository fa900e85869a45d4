"""What is known of a sugarbush besides its amounts: place, taps, buckets, names, open boil."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from bot.clock import first_day_of, season_of
from bot.entry import Entry
from bot.ledger import Book
from bot.reckoning.law import LegalDensity, legal_density
from bot.standing.boils import Boil, goes_in, open_boil
from bot.standing.taps import Taps, taps_of

_LATEST = ("place", "bucket_size", "boil")
_OF_TAPS = ("taps_set", "taps_pulled")
_NOW_AND_THEN = (*_OF_TAPS, "sign")


@dataclass(frozen=True, slots=True)
class Known:
    """place: the record of where the trees are, None until told. bucket_gallons: US gallons.
    taps: of this season, None when never told. lots and trees: names ever used.
    boil: the one that burns now."""

    place: Entry | None
    bucket_gallons: float | None
    taps: Taps | None
    lots: tuple[str, ...]
    trees: tuple[str, ...]
    boil: Boil | None

    @property
    def law(self) -> LegalDensity:
        """The density that syrup must have where the trees are."""
        region = None if self.place is None else self.place.detail.get("region")
        try:
            return legal_density(region)
        except ValueError:
            # Neither a state nor a province: the federal line of the United States will do.
            return legal_density(None)

    @property
    def is_in_canada(self) -> bool:
        """True when the trees are known to be in Canada."""
        return self.place is not None and self.place.detail.get("country") == "CA"

    def is_unmoved_by(self, entry: Entry) -> bool:
        """True when a new record leaves all of this as it is."""
        return (
            entry.kind not in (*_LATEST, *_NOW_AND_THEN)
            and (entry.tree is None or entry.tree in self.trees)
            and (entry.lot is None or entry.lot in self.lots)
        )


def zone_of(book: Book, sugarbush_id: int) -> str | None:
    """The time zone of a sugarbush, None until its place is told."""
    place = book.records.latest(sugarbush_id, "place")
    return None if place is None else place.detail.get("zone")


@dataclass(frozen=True, slots=True)
class Told:
    """What was told of a sugarbush, not yet held against a clock: the latest of some kinds, all
    of those that are told now and then, and the last of the boils, in wall-clock order."""

    latest: Mapping[str, Entry]
    now_and_then: tuple[Entry, ...]
    boils: tuple[Entry, ...]
    lots: tuple[str, ...]
    trees: tuple[str, ...]

    @property
    def place(self) -> Entry | None:
        """The record of where the trees are, None until told."""
        return self.latest.get("place")

    def of(self, season: int, *kinds: str) -> list[Entry]:
        """What was told now and then of some kinds in a season."""
        return [one for one in self.now_and_then if one.season == season and one.kind in kinds]

    def at(self, now_local: datetime) -> Known:
        """What is known at a naive local time, of a season that was asked for."""
        season = season_of(now_local.date())
        bucket = self.latest.get("bucket_size")
        return Known(
            place=self.place,
            bucket_gallons=None if bucket is None else bucket.gallons,
            taps=taps_of(self.of(season, *_OF_TAPS)),
            lots=self.lots,
            trees=self.trees,
            boil=open_boil(self.boils, now_local),
        )


def told_of(book: Book, sugarbush_id: int, since_season: int) -> Told:
    """What the ledger was told of a sugarbush, now and then from a season on."""
    entries = book.records.standing(
        sugarbush_id, _LATEST, _NOW_AND_THEN, first_day_of(since_season)
    )
    trees, lots = book.sums.all_names(sugarbush_id)
    latest = {entry.kind: entry for entry in entries if entry.kind in _LATEST}
    return Told(
        latest=latest,
        now_and_then=tuple(entry for entry in entries if entry.kind in _NOW_AND_THEN),
        boils=_last_boils(book, sugarbush_id, latest.get("boil")),
        lots=lots,
        trees=trees,
    )


def _last_boils(book: Book, sugarbush_id: int, latest: Entry | None) -> tuple[Entry, ...]:
    """The last entry of a boil; where it only tells of more sap, those of the day before it too."""
    if latest is None:
        return ()
    if not goes_in(latest):
        return (latest,)
    since = latest.on - timedelta(days=1)
    return tuple(book.records.of_kinds(sugarbush_id, ("boil",), latest.season, since))


def know(book: Book, sugarbush_id: int, now_local: datetime) -> Known:
    """What the ledger knows of a sugarbush at a naive local time."""
    return told_of(book, sugarbush_id, season_of(now_local.date())).at(now_local)
