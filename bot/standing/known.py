"""What is known of a sugarbush besides its amounts: place, taps, buckets, names, open boil."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from bot.clock import season_of
from bot.entry import Entry
from bot.ledger import Book
from bot.reckoning.law import LegalDensity, legal_density
from bot.standing.boils import Boil, open_boil
from bot.standing.taps import Taps, taps_of


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


def zone_of(book: Book, sugarbush_id: int) -> str | None:
    """The time zone of a sugarbush, None until its place is told."""
    place = book.records.latest(sugarbush_id, "place")
    return None if place is None else place.detail.get("zone")


def know(book: Book, sugarbush_id: int, now_local: datetime) -> Known:
    """What the ledger knows of a sugarbush at a naive local time."""
    season = season_of(now_local.date())
    records, sums = book.records, book.sums
    bucket = records.latest(sugarbush_id, "bucket_size")
    told = records.of_kinds(sugarbush_id, ("taps_set", "taps_pulled"), season)
    return Known(
        place=records.latest(sugarbush_id, "place"),
        bucket_gallons=None if bucket is None else bucket.gallons,
        taps=taps_of(told),
        lots=sums.names(sugarbush_id, "lot"),
        trees=sums.names(sugarbush_id, "tree"),
        boil=open_boil(records.latest(sugarbush_id, "boil"), now_local),
    )
