"""Units of the trade, converted by Pint. One lazy registry; core arithmetic takes plain floats.

Pint brings numpy along and takes 0.15 s to import: it is only asked when something is to convert.
"""

from __future__ import annotations

from functools import lru_cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import pint

_DEFINITIONS = (
    "cord = 128 foot ** 3",  # stacked wood, 4 x 4 x 8 ft (NIST Handbook 130, uniform sale of wood)
    "face_cord = cord / 3",  # 16 in sticks; common practice, no source
    "half_pint = pint / 2",
)


@lru_cache(maxsize=1)
def registry() -> pint.UnitRegistry[float]:
    """Pint's registry with the trade's own units. Volumes are US liquid measure."""
    import pint

    made: pint.UnitRegistry[float] = pint.UnitRegistry()
    for definition in _DEFINITIONS:
        made.define(definition)
    return made


@lru_cache(maxsize=64)
def factor(unit: str, wanted: str) -> float:
    """How many `wanted` one `unit` is (no offsets: for differences of temperature
    "delta_degC", never "degC")."""
    if unit == wanted:
        return 1.0
    return float(registry().Quantity(1.0, unit).m_as(wanted))


def gallons(amount: float, unit: str) -> float:
    """A volume in US gallons; `unit` is Pint's name, such as "quart" or "litre"."""
    return amount * factor(unit, "gallon")


def litres(amount_gallons: float) -> float:
    """US gallons in litres."""
    return amount_gallons * factor("gallon", "liter")


@lru_cache(maxsize=256)
def fahrenheit(celsius: float) -> float:
    """Degrees Celsius in degrees Fahrenheit."""
    return float(registry().Quantity(celsius, "degC").m_as("degF"))


@lru_cache(maxsize=256)
def celsius(degrees_f: float) -> float:
    """Degrees Fahrenheit in degrees Celsius."""
    return float(registry().Quantity(degrees_f, "degF").m_as("degC"))
