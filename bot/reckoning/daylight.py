"""When the sun sets, so that a boil can be over before dark."""

from __future__ import annotations

import math
from datetime import UTC, date, datetime, time, timedelta

from bot.reckoning.checks import within

# The sun's centre stands so far from the zenith when its upper edge sets, degrees, with the
# usual refraction (published: NOAA Global Monitoring Laboratory, General Solar Position
# Calculations).
_SETTING_ZENITH_DEGREES = 90.833


def sunset_utc(on: date, latitude: float, longitude: float) -> datetime | None:
    """The moment of sunset, aware UTC, of a local day at a place in degrees north and east.

    None where the sun does not set that day. Good to a minute or two below 60 degrees; hills
    make it earlier (NOAA, General Solar Position Calculations). Raises ValueError for a latitude
    or longitude that is none.
    """
    within("Latitude", latitude, -90.0, 90.0, "degrees")
    within("Longitude", longitude, -180.0, 180.0, "degrees")
    # The sun's place in the evening, 18 h by its own clock there.
    year = 2 * math.pi / 365 * (on.timetuple().tm_yday - 1 + 6 / 24)
    equation_minutes = 229.18 * (
        0.000075
        + 0.001868 * math.cos(year)
        - 0.032077 * math.sin(year)
        - 0.014615 * math.cos(2 * year)
        - 0.040849 * math.sin(2 * year)
    )
    declination = (
        0.006918
        - 0.399912 * math.cos(year)
        + 0.070257 * math.sin(year)
        - 0.006758 * math.cos(2 * year)
        + 0.000907 * math.sin(2 * year)
        - 0.002697 * math.cos(3 * year)
        + 0.00148 * math.sin(3 * year)
    )
    north = math.radians(latitude)
    cosine = math.cos(math.radians(_SETTING_ZENITH_DEGREES)) / (
        math.cos(north) * math.cos(declination)
    ) - math.tan(north) * math.tan(declination)
    if not -1 <= cosine <= 1:
        return None
    minutes = 720 - 4 * (longitude - math.degrees(math.acos(cosine))) - equation_minutes
    return datetime.combine(on, time(0), UTC) + timedelta(minutes=minutes)
