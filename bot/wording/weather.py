"""Weather as people say it: 24F at dawn, 43F by 2 pm, good run likely."""

from __future__ import annotations

from datetime import datetime, timedelta

from bot import units
from bot.wording import amounts
from bot.wording.style import Style

_FREEZING_F = 32.0
# A low in these hours is one at dawn.
_DAWN = range(4, 9)

_RUNS = {
    "big": "Big run likely.",
    "likely": "Good run likely.",
    "possible": "A run is possible.",
    "none": "No run.",
}
_HARDLY = "A few drips are possible, no more."
# Under this high a possible run is hardly one: sap starts and stops mostly between 28 and 36 F
# (Kurokawa et al. 2022, Int. J. Biometeorology), runs on 35 to 40 F days are common.
POSSIBLE_FROM_HIGH_F = 34.0


def runs(grade: str, high_f: float) -> str:
    """Whether a day of this outlook and high runs: none, possible, likely or big."""
    if grade == "possible" and high_f < POSSIBLE_FROM_HIGH_F:
        return _HARDLY
    return _RUNS[grade]


def heat(temp_f: float, style: Style) -> str:
    """Whole degrees: 24F, -4C; tenths about freezing, where rounding would turn a thaw into a
    freeze."""
    degrees, freezing = temp_f, _FREEZING_F
    if style.is_metric:
        degrees, freezing = units.celsius(round(temp_f, 1)), 0.0
    places = 1 if round(degrees) == freezing else 0
    return f"{amounts.number(degrees, places)}{'C' if style.is_metric else 'F'}"


def low(temp_f: float, at_local: datetime, style: Style) -> str:
    """ "24F at dawn", "24F at 2 am"."""
    at = "dawn" if at_local.hour in _DAWN else hour(at_local)
    return f"{heat(temp_f, style)} at {at}"


def high(temp_f: float, at_local: datetime, evening_f: float | None, style: Style) -> str:
    """ "43F by 2 pm"; on a day that only falls "46F at 1 am, 33F by evening"."""
    if evening_f is None:
        return f"{heat(temp_f, style)} by {hour(at_local)}"
    return f"{heat(temp_f, style)} at {hour(at_local)}, {heat(evening_f, style)} by evening"


def hour(at_local: datetime) -> str:
    """The hour as it is said: "2 pm", "noon", "midnight"."""
    if at_local.minute == 0 and at_local.hour in (0, 12):
        return "noon" if at_local.hour else "midnight"
    return amounts.clock(at_local.time())


def age(old: timedelta) -> str:
    """How old a forecast is."""
    hours = round(old / timedelta(hours=1))
    days = round(hours / 24)
    said = f"{hours} h" if hours < _SAID_IN_DAYS_H else amounts.plural(days, "day")
    return f"Forecast {said} old."


_SAID_IN_DAYS_H = 48

INVENTED = "(Invented weather, no real forecast.)"
LAGS = "Trunks still cold, may lag."
NO_FREEZE = "No freeze last night."


def no_freeze(nights: int) -> str:
    """Nights in a row that stayed above freezing."""
    return NO_FREEZE if nights <= 1 else f"No freeze for {nights} nights."
