"""A figure that cannot be, asked after in one line."""

from __future__ import annotations

from bot.units import celsius
from bot.wording.style import Style


def impossible(thing: str, value: float, unit: str, wanted: str, style: Style) -> str:
    """ "Syrup at 300 F? It should be 50 to 211 F. What is it?" """
    said = f"{value:.6g} {unit}"
    if unit == "F" and style.is_metric:
        said = f"{celsius(value):.4g} C"
        wanted = " ".join(
            f"{celsius(float(word)):.3g}" if _is_number(word) else word.replace("F", "C")
            for word in wanted.split()
        )
    return f"{thing} {said}? That should be {wanted}. What is it?"


def _is_number(word: str) -> bool:
    return word.replace(".", "", 1).replace("-", "", 1).isdigit()
