"""Weather straight from one source, asked anew each time: for files and invented weather, which
cost nothing to ask and never fail for a while."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from bot.weather.errors import WeatherError
from bot.weather.forecast import Place, Source
from bot.weather.latest import Known


@dataclass(frozen=True, slots=True)
class Direct:
    """One source, without a memory."""

    source: Source

    def area(self, place: Place, now_utc: datetime) -> str:
        """The place itself: what costs nothing to ask need not be shared."""
        del now_utc
        return place.key

    def known(self, place: Place, now_utc: datetime) -> Known | None:
        """What the source has for a place now, None where it has nothing."""
        try:
            cell = self.source.locate(place)
            forecast = self.source.forecast(place, cell, now_utc)
        except WeatherError:
            return None
        age = now_utc - forecast.issued_utc
        return Known(forecast, forecast.hours, now_utc, age, ())
