"""A sugarbush as the morning sees it: taps, pails, what was gathered, what waits, a fire."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from bot.clock import season_of
from bot.entry import Entry
from bot.ledger import Book, ByPerson, TimedSap
from bot.reckoning.balance import mixed_brix
from bot.reckoning.law import legal_density
from bot.reckoning.storage import Stored, stored
from bot.standing import SEASON_OVER, open_boil, sap_on_hand, taps_of
from bot.standing.store import WINDOW_DAYS
from bot.standing.sums import USUAL_SAP_BRIX
from bot.standing.wishes import WISH, Wishes, wishes_of

LASTING = ("place", "bucket_size", "taps_set", "taps_pulled", SEASON_OVER, WISH)
# Sap past its day by more than this is spoken of no more (our own).
OVERDUE_DAYS = 1
PASSING = ("sap", "boil", "poured_out", "syrup", "store_temp")


@dataclass(frozen=True, slots=True)
class Bush:
    """One sugarbush on one local day.

    taps: that hang, 0 when all were pulled, None when never told this season. gathered: gallons
    of this season by local day, 0 for dry pails. stored: what waits to be boiled. fire_lit: when
    the fire that still burns was lit, wall clock; never_out: when the last fire was lit that nobody
    told out, however long ago. wishes: by person. told_over: the season was told as over, and
    nothing came since.
    """

    region: str | None
    is_in_canada: bool
    taps: int | None
    bucket_gallons: float | None
    gathered: Mapping[date, float]
    stored: Stored
    fire_lit: datetime | None
    never_out: datetime | None
    wishes: Mapping[int, Wishes]
    told_over: bool = False

    @property
    def is_tapped(self) -> bool:
        """True while taps hang, or sap comes that tells of them."""
        if self.told_over:
            return False
        return self.taps > 0 if self.taps is not None else any(self.gathered.values())

    @property
    def is_over(self) -> bool:
        """True once all taps are out, or the season was told as over."""
        return self.told_over or self.taps == 0

    @property
    def last_gathered(self) -> date | None:
        """The last day on which the pails were emptied or found dry."""
        return max(self.gathered, default=None)

    def fresh(self, today: date) -> Stored:
        """What waits and is worth speaking of: sap that went past its day was boiled, poured out
        or forgotten, told or not."""
        lots = [lot.lot for lot in self.stored.lots if (today - lot.boil_by).days <= OVERDUE_DAYS]
        return stored(lots, today)

    def wishes_of(self, person_id: int) -> Wishes:
        """How a person wants to be texted."""
        return self.wishes.get(person_id, Wishes())


def bush_of(
    lasting: Sequence[ByPerson],
    passing: Sequence[ByPerson],
    gathered: Mapping[date, float],
    now_local: datetime,
) -> Bush:
    """The sugarbush out of its entries, both in wall-clock order: those of `LASTING` kinds, and
    those of `PASSING` kinds of the last two weeks."""
    today = now_local.date()
    season = season_of(today)
    by_kind = {kind: [one.entry for one in lasting if one.entry.kind == kind] for kind in LASTING}
    place = by_kind["place"][-1].detail if by_kind["place"] else {}
    bucket = by_kind["bucket_size"][-1] if by_kind["bucket_size"] else None
    about_taps = [
        one.entry
        for one in lasting
        if one.entry.kind in ("taps_set", "taps_pulled") and one.entry.season == season
    ]
    taps = taps_of(about_taps)
    recent = [one.entry for one in passing if one.entry.at_local <= now_local]
    over = [entry.at_local for entry in by_kind[SEASON_OVER] if entry.season == season]
    told_over = bool(over) and not _goes_on(over[-1], [*about_taps, *recent], gathered)
    boils = [entry for entry in recent if entry.kind == "boil"]
    burning = open_boil(boils, now_local)
    region = place.get("region")
    return Bush(
        region=region,
        is_in_canada=place.get("country") == "CA",
        taps=None if taps is None else taps.count,
        bucket_gallons=None if bucket is None else bucket.gallons,
        gathered={on: gallons for on, gallons in gathered.items() if on <= today},
        stored=stored([], today) if told_over else _stored(recent, region, today),
        fire_lit=None if burning is None else burning.began_at,
        never_out=boils[-1].at_local
        if boils and boils[-1].detail.get("state") == "start"
        else None,
        wishes=_wishes(lasting),
        told_over=told_over,
    )


def bushes(book: Book, numbers: Collection[int], now_local: datetime) -> dict[int, Bush]:
    """Some sugarbushes of one wall clock, in three queries."""
    since = now_local - timedelta(days=WINDOW_DAYS + 1)
    lasting = book.roll.of_kinds(numbers, LASTING)
    passing = book.roll.of_kinds(numbers, PASSING, since)
    gathered = book.roll.sap_by_day(numbers, season_of(now_local.date()))
    return {
        number: bush_of(
            lasting.get(number, ()), passing.get(number, ()), gathered.get(number, {}), now_local
        )
        for number in numbers
    }


def _goes_on(over: datetime, told: Sequence[Entry], gathered: Mapping[date, float]) -> bool:
    """Whether taps were set or sap gathered after the season was told as over."""
    return any(on > over.date() and gallons > 0 for on, gallons in gathered.items()) or any(
        entry.at_local > over
        and (entry.kind == "taps_set" or (entry.kind == "sap" and (entry.gallons or 0.0) > 0))
        for entry in told
    )


def _stored(recent: Sequence[Entry], region: str | None, today: date) -> Stored:
    sap = [entry for entry in recent if entry.kind == "sap" and entry.gallons is not None]
    tested = [
        (entry.gallons, entry.brix)
        for entry in sap
        if entry.gallons is not None and entry.gallons > 0 and entry.brix is not None
    ]
    lots = sap_on_hand(
        [TimedSap(entry.at_local, entry.on, entry.gallons or 0.0) for entry in sap],
        [entry for entry in recent if entry.kind != "sap"],
        today,
        mixed_brix(tested) if tested else USUAL_SAP_BRIX,
        _syrup_brix(region),
    )
    return stored(lots, today)


def _syrup_brix(region: str | None) -> float:
    try:
        return legal_density(region).min_brix
    except ValueError:
        # Neither a state nor a province: the federal line of the United States will do.
        return legal_density(None).min_brix


def _wishes(lasting: Sequence[ByPerson]) -> dict[int, Wishes]:
    told = [one for one in lasting if one.entry.kind == WISH]
    return {
        person: wishes_of(one.entry for one in told if one.person_id == person)
        for person in {one.person_id for one in told}
    }
