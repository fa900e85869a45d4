"""A question with all that an answer may need."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime
from functools import cached_property

from bot.clock import season_of
from bot.entry import Entry
from bot.ledger import Book
from bot.outdoors import NoWeather, Outdoors, air_of
from bot.reading import Amount, Profile, amounts, days, tidied
from bot.reading.kinds import Gear
from bot.reading.kinds import gear as gear_words
from bot.reckoning.storage import Stored
from bot.standing import Boil, Known, part_of_season, season_tally
from bot.standing.gear import gear_of
from bot.standing.water import Water, water_here
from bot.tally import Tally
from bot.units import gallons
from bot.wording.style import Style


@dataclass(frozen=True, slots=True)
class SapNamed:
    """Sap that a question names: gallons, and its Brix or None where none is named."""

    gallons: float
    brix: float | None


def _no_weather() -> Outdoors | NoWeather:
    return "no source"


@dataclass(frozen=True)
class Asked:
    """What was asked, by whom and when.

    topic, howto, also: as the reading tells. text: the words, for what the topic leaves open (which
    lot, which week). sent: the naive wall clock of the sugarbush. tally: this season's.
    stored, boiled: work out the sap that waits, and this season's boils. told: what the same text
    recorded. weather: looks out over the sugarbush, or says why nobody can; raises
    WeatherWantedError where it has to be looked up first.
    """

    topic: str
    howto: str | None
    text: str
    book: Book
    sugarbush_id: int
    sent: datetime
    known: Known
    tally: Tally
    style: Style
    stored: Callable[[], Stored]
    boiled: Callable[[], tuple[Boil, ...]]
    told: tuple[Entry, ...] = ()
    also: str | None = None
    weather: Callable[[], Outdoors | NoWeather] = _no_weather

    @cached_property
    def plain(self) -> str:
        """The words in lower case and plain signs."""
        return tidied(self.text)

    @cached_property
    def mentioned(self) -> Gear:
        """The gear that the words speak of."""
        return gear_words.mentioned(self.plain, metric=self.style.is_metric)

    @cached_property
    def figures(self) -> tuple[Amount, ...]:
        """The figures of the words, those of gear left out."""
        return amounts(_RATE.sub(" ", gear_words.without(self.plain)), self.profile)

    @cached_property
    def days_named(self) -> tuple[date, ...]:
        """The local days that the words name."""
        return days(self.plain, self.sent, self.profile)

    @property
    def rate_named(self) -> float | None:
        """Gallons an hour that the words say are boiled off, None where they name none."""
        found = _RATE.search(self.plain)
        if found is None:
            return None
        unit = "liter" if found[2].startswith("l") else "gallon"
        return gallons(float(found[1]), unit)

    @property
    def profile(self) -> Profile:
        """How their figures are read."""
        return Profile(units=self.style.units, bucket_gallons=self.known.bucket_gallons)

    @cached_property
    def gear(self) -> Gear:
        """Their gear as last told."""
        return gear_of(self.book, self.sugarbush_id, self.sent)

    @cached_property
    def store(self) -> Stored:
        """The sap that waits, with the days to boil it by."""
        return self.stored()

    @cached_property
    def boils(self) -> list[Boil]:
        """The boils of this season."""
        return list(self.boiled())

    @property
    def water(self) -> Water | None:
        """Where water boils for them, by what they have told, what the question names and what
        the forecast says. Raises ValueError for a height or barometer that cannot be, and
        WeatherWantedError like `weather`."""
        return water_here(
            self.book,
            self.sugarbush_id,
            self.sent,
            self.gear,
            height_ft=self._height_named,
            barometer_inhg=self.mentioned.barometer_inhg,
            air=lambda: air_of(self.weather()),
        )

    @property
    def _height_named(self) -> float | None:
        """A height above the sea in the question, feet: named as one, or too long for a tree."""
        if self.mentioned.elevation_ft is not None:
            return self.mentioned.elevation_ft
        lengths = self.values("length", _LEAST_HEIGHT_FT * _INCHES_PER_FOOT)
        return lengths[0] / _INCHES_PER_FOOT if lengths else None

    @property
    def sap_named(self) -> SapNamed | None:
        """The first volume in the words, with the Brix beside it; None if they name no volume."""
        for at, figure in enumerate(self.figures):
            if figure.sort == "volume":
                after, before = self.figures[at + 1 : at + 2], self.figures[max(at - 1, 0) : at]
                beside = [one for one in after if _is_brix(one, bare=True) or self._is_at(one)]
                beside += [one for one in before if _is_brix(one, bare=False)]
                return SapNamed(figure.value, beside[0].value if beside else None)
        return None

    def _is_at(self, figure: Amount) -> bool:
        """True for a bare number that the words put behind "at", whatever it is."""
        at = re.search(rf"\bat {figure.value:g}(?![\w:.])(?! ?(?:am|pm|o.clock))", self.plain)
        return figure.sort == "number" and at is not None

    def values(self, sort: str, least: float = 0.0, most: float = float("inf")) -> list[float]:
        """The figures of a sort between two bounds, in the order of the words."""
        return [
            one.value for one in self.figures if one.sort == sort and least <= one.value <= most
        ]

    @property
    def today(self) -> date:
        """The local day of the question."""
        return self.sent.date()

    @property
    def season(self) -> int:
        """The season of the question."""
        return season_of(self.today)

    def tally_of(self, season: int) -> Tally:
        """A whole season in numbers."""
        if season == self.tally.season:
            return self.tally
        return season_tally(self.book, self.sugarbush_id, season, self.tally.syrup_brix)

    def part(self, season: int, first: date | None, last: date | None) -> Tally:
        """Some days of a season in numbers, both included."""
        return part_of_season(
            self.book, self.sugarbush_id, season, self.tally.syrup_brix, first=first, last=last
        )

    def says(self, *words: str) -> bool:
        """True when the question has one of these words in it."""
        spoken = set("".join(c if c.isalnum() else " " for c in self.text.casefold()).split())
        return any(word in spoken for word in words)


_RATE = re.compile(r"\b(\d+(?:\.\d+)?) ?(gal\w*|l|lit\w+) ?(?:an|per|a|/|each) ?(?:hour|hr|h)\b")
# A length from this on is no tree's and no pan's (our own).
_LEAST_HEIGHT_FT = 50.0
_INCHES_PER_FOOT = 12.0
# A bare number beside a volume of sap is its Brix between these (our own).
_SAP_BRIX = (0.3, 12.0)


def _is_brix(figure: Amount, *, bare: bool) -> bool:
    if figure.sort == "brix":
        return True
    return bare and figure.sort == "number" and _SAP_BRIX[0] <= figure.value <= _SAP_BRIX[1]
