"""What is known of a sugarbush besides its amounts: place, taps, buckets, names, open boil."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from bot.clock import season_of
from bot.entry import Entry
from bot.ledger import Book
from bot.reckoning.law import LegalDensity, legal_density
from bot.standing.boils import Boil, open_boil
from bot.standing.taps import Taps, taps_of

_LATEST = ("place", "bucket_size", "boil")
_OF_TAPS = ("taps_set", "taps_pulled")


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
            entry.kind not in (*_LATEST, *_OF_TAPS)
            and (entry.tree is None or entry.tree in self.trees)
            and (entry.lot is None or entry.lot in self.lots)
        )


def zone_of(book: Book, sugarbush_id: int) -> str | None:
    """The time zone of a sugarbush, None until its place is told."""
    place = book.records.latest(sugarbush_id, "place")
    return None if place is None else place.detail.get("zone")


@dataclass(frozen=True, slots=True)
class Told:
    """What was told of a sugarbush, not yet held against a clock: the latest of some kinds, and
    what was told of taps."""

    latest: Mapping[str, Entry]
    of_taps: tuple[Entry, ...]
    lots: tuple[str, ...]
    trees: tuple[str, ...]

    @property
    def place(self) -> Entry | None:
        """The record of where the trees are, None until told."""
        return self.latest.get("place")

    def at(self, now_local: datetime) -> Known:
        """What is known at a naive local time, of whose season taps were asked for."""
        season = season_of(now_local.date())
        bucket = self.latest.get("bucket_size")
        return Known(
            place=self.place,
            bucket_gallons=None if bucket is None else bucket.gallons,
            taps=taps_of(entry for entry in self.of_taps if entry.season == season),
            lots=self.lots,
            trees=self.trees,
            boil=open_boil(self.latest.get("boil"), now_local),
        )


def told_of(book: Book, sugarbush_id: int, since_season: int) -> Told:
    """What the ledger was told of a sugarbush, of its taps from a season on."""
    entries = book.records.standing(sugarbush_id, _LATEST, _OF_TAPS, since_season)
    trees, lots = book.sums.all_names(sugarbush_id)
    return Told(
        latest={entry.kind: entry for entry in entries if entry.kind in _LATEST},
        of_taps=tuple(entry for entry in entries if entry.kind in _OF_TAPS),
        lots=lots,
        trees=trees,
    )


def know(book: Book, sugarbush_id: int, now_local: datetime) -> Known:
    """What the ledger knows of a sugarbush at a naive local time."""
    return told_of(book, sugarbush_id, season_of(now_local.date())).at(now_local)
