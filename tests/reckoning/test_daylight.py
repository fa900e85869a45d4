"""Sunset against the package astral 3.2 (its own figures, worked out once), to two minutes."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

import pytest

from bot.reckoning.daylight import sunset_utc


@pytest.mark.parametrize(
    ("on", "latitude", "longitude", "wanted"),
    [
        (date(2027, 3, 5), 43.8, -73.3, datetime(2027, 3, 5, 22, 46, 26, tzinfo=UTC)),
        (date(2027, 2, 14), 39.1, -82.5, datetime(2027, 2, 14, 23, 5, 40, tzinfo=UTC)),
        (date(2026, 12, 21), 44.5, -69.7, datetime(2026, 12, 21, 21, 1, 30, tzinfo=UTC)),
        (date(2027, 3, 20), 45.2, -76.2, datetime(2027, 3, 20, 23, 16, 50, tzinfo=UTC)),
        (date(2027, 3, 1), 45.6, -63.6, datetime(2027, 3, 1, 22, 0, 44, tzinfo=UTC)),
    ],
)
def test_sunset_where_maples_grow(
    on: date, latitude: float, longitude: float, wanted: datetime
) -> None:
    found = sunset_utc(on, latitude, longitude)
    assert found is not None
    assert abs(found - wanted) < timedelta(minutes=2)


def test_the_polar_night_has_no_sunset() -> None:
    assert sunset_utc(date(2027, 1, 1), 75.0, -90.0) is None


def test_a_latitude_that_is_none_is_refused() -> None:
    with pytest.raises(ValueError, match="Latitude"):
        sunset_utc(date(2027, 3, 1), 95.0, -73.0)
