"""What an instrument showed, in a text that asks what it means: a hydrometer in syrup or sap,
syrup too thick or too thin, ice thrown out, light through a sample, heat in the bottling pot.

`shown` finds the figures; what they come to is no matter of reading.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from bot import figures, units
from bot.reading.amounts import Amount, amounts
from bot.reading.kinds.gear import mentioned
from bot.reading.signs import either
from bot.reading.tidy import LONGEST, tidy
from bot.reading.understanding import Profile


@dataclass(frozen=True, slots=True)
class SyrupTest:
    """A syrup hydrometer's reading, in Brix or, `is_baume`, in Baume; at so many F, or None
    where the text does not say how hot the syrup was. is_hot: it says "hot"."""

    reading: float
    at_f: float | None
    is_baume: bool = False
    is_hot: bool = False


@dataclass(frozen=True, slots=True)
class SapTest:
    """A sap hydrometer's reading, Brix, in sap of so many F; the stem's own F where told."""

    reading_brix: float
    at_f: float
    stem_f: float | None


@dataclass(frozen=True, slots=True)
class Batch:
    """Syrup of so many gallons (None: not told) that is too thick or too thin, at so many Brix,
    and the Brix that is wanted of it (None: not told)."""

    gallons: float | None
    brix: float
    wanted_brix: float | None = None


@dataclass(frozen=True, slots=True)
class IceOut:
    """Ice thrown out of so many gallons of sap at a Brix (None: not told)."""

    gallons: float
    brix: float | None
    ice_gallons: float


@dataclass(frozen=True, slots=True)
class Light:
    """Light transmission of syrup in percent."""

    percent: float


@dataclass(frozen=True, slots=True)
class Bottling:
    """Syrup of so many F that stands ready to be bottled."""

    at_f: float


@dataclass(frozen=True, slots=True)
class Density:
    """Syrup of so many Brix that is to be judged by the law."""

    brix: float


Shown = SyrupTest | SapTest | Batch | IceOut | Light | Bottling | Density

# What the bare figures of such texts can be (our own, around the scales in `figures`).
_SYRUP_BRIX: Final = (50.0, figures.SYRUP_SCALE_BRIX_MOST)
_BATCH_BRIX: Final = (figures.THICKNESS_BRIX_LEAST, figures.BRIX_MOST)
_BAUME: Final = (25.0, 42.0)
_SYRUP_F: Final = (90.0, 240.0)
_SYRUP_C: Final = (32.0, 115.0)
_SAP_BRIX: Final = (0.2, 10.0)
_SAP_F: Final = (29.0, 90.0)
_SAP_C: Final = (-1.0, 30.0)
_FILL_F: Final = (100.0, 260.0)
_FILL_C: Final = (40.0, 125.0)

_HYDROMETER = re.compile(r"\b(?:hydrometers?|hydro|hygrometer|baume|test cup|hot test)\b")
_BAUME_SAID = re.compile(r"\bbaume\b|\bbe\b(?= at)")
_SAP_TEST = re.compile(r"\b(?:sap|stem)\b")
_TOO = re.compile(
    r"\btoo (?:thick|thin|heavy|light|dense|watery)\b|\b(?:thick|thin)\b.*\?"
    r"|\bhow much water\b|\bwater (?:to|do i|should i) add\b|\badd (?:some )?water\b|\bthin it\b"
    r"|\bthicken\b"
)
_ICE = re.compile(r"\bice\b")
_GATHERED = re.compile(r"\b(?:gathered|collected|hauled|brought|emptied|sap in)\b(?!.*\?)")
_LIGHT = re.compile(r"\btransmission\b|\btransmittance\b|\blight (?:meter|through)\b|% light\b")
_BOTTLES = re.compile(
    r"\b(?:bottl\w+|canning|can it|jarring|filling jars|fill jars|jar it|pack\w*)\b"
)
_ASKS = re.compile(
    r"\?|\b(?:ok|okay|enough|good|fine|safe|is that|is it|too|can i|should i|right)\b"
)
_SELLS = re.compile(
    r"\b(?:legal|law|lawful|sell|sale|allowed)\b|\bsyrup\b.*\b(?:ok|okay|good|right|enough)\b"
    r"|\bwhat if\b.*\bsyrup\b"
)
_FIGURE = re.compile(r"\d")
_MAY_SHOW = re.compile(
    either(
        (
            *("transmission", "transmittance", "light", "ice", "thick", "thin", "too ", "water"),
            *("hydro", "hygro", "baume", "test", "stem", "made for", "calibrated", "legal", "law"),
            *("sell", "sale", "allowed", "syrup", "bottl", "cann", "can it", "jar", "pack"),
        )
    )
)
"""Words that the ones below are made of: few other texts have any."""
_HOT = re.compile(r"\b(?:hot|boiling|off the pan|from the pan|fresh)\b")
_STEM = re.compile(r"\b(?:stem|made for|calibrated)\b")
_STEM_PART = re.compile(
    r"\b(?:stem|made for|calibrated)\b[a-z' ]{0,22}?\d+(?:\.\d+)?\s*(?:deg\w*)?\s*(?:f|c)?\b"
)


def shown(text: str, profile: Profile | None = None) -> Shown | None:
    """What an instrument showed by this text, None where it tells of none. Never raises.

    Bare temperatures are Fahrenheit, or Celsius for somebody metric where they must be.
    """
    return shown_in(tidy(text[:LONGEST]), profile if profile is not None else Profile())


def shown_in(plain: str, profile: Profile) -> Shown | None:
    """The same by a tidied text."""
    metric = profile.units == "metric"
    if not _MAY_SHOW.search(plain) or not _FIGURE.search(plain):
        return None
    if _LIGHT.search(plain):
        return _light(amounts(plain, profile))
    if _ICE.search(plain) and not _GATHERED.search(plain):
        return _ice(amounts(plain, profile))
    if _TOO.search(plain):
        batch = _batch(amounts(plain, profile))
        if batch is not None:
            return batch
    if not _speaks_of_one(plain):
        return None
    stem_f = mentioned(plain, metric=metric).stem_f
    without_stem = _STEM_PART.sub(" ", plain)
    found = amounts(without_stem, profile)
    if any(one.sort in ("volume", "money", "length") for one in found):
        return None
    if stem_f is not None or (_HYDROMETER.search(plain) and _SAP_TEST.search(plain)):
        return _sap_test(found, stem_f, metric=metric)
    if _HYDROMETER.search(plain):
        test = _syrup_test(plain, found, metric=metric)
        if test is not None:
            return test
    if _SELLS.search(plain):
        dense = [one.value for one in found if one.sort in ("brix", "number")]
        return Density(dense[0]) if len(dense) == 1 and _in(dense[0], _SYRUP_BRIX) else None
    if _BOTTLES.search(plain) and _ASKS.search(plain):
        return _bottling(found, metric=metric)
    return None


def _speaks_of_one(plain: str) -> bool:
    """True where a word of an instrument or of its use stands: a cheap first look."""
    return bool(
        _HYDROMETER.search(plain)
        or _STEM.search(plain)
        or _SELLS.search(plain)
        or (_BOTTLES.search(plain) and _ASKS.search(plain))
    )


def _light(found: tuple[Amount, ...]) -> Light | None:
    percents = [one.value for one in found if one.sort in ("number", "brix")]
    return Light(percents[0]) if len(percents) == 1 else None


def _ice(found: tuple[Amount, ...]) -> IceOut | None:
    volumes = [one.value for one in found if one.sort == "volume"]
    rest = [one.value for one in found if one.sort in ("number", "brix")]
    if len(volumes) != 2 or volumes[0] == volumes[1]:
        return None
    brix = rest[0] if len(rest) == 1 and _in(rest[0], _SAP_BRIX) else None
    return IceOut(max(volumes), brix, min(volumes))


def _batch(found: tuple[Amount, ...]) -> Batch | None:
    volumes = [one.value for one in found if one.sort == "volume"]
    brix = [
        one.value for one in found if one.sort in ("number", "brix") and _in(one.value, _BATCH_BRIX)
    ]
    if not 1 <= len(brix) <= 2 or len(volumes) > 1:
        return None
    return Batch(volumes[0] if volumes else None, brix[0], brix[1] if len(brix) == 2 else None)


def _syrup_test(plain: str, found: tuple[Amount, ...], *, metric: bool) -> SyrupTest | None:
    is_baume = bool(_BAUME_SAID.search(plain))
    scale = _BAUME if is_baume else _SYRUP_BRIX
    readings = [one for one in found if one.sort in ("number", "brix") and _in(one.value, scale)]
    if not readings:
        return None
    reading = readings[0]
    heat = [
        value
        for one in found
        if one is not reading and (value := _heat(one, _SYRUP_F, _SYRUP_C, metric=metric))
    ]
    return SyrupTest(
        reading.value, heat[0] if heat else None, is_baume, bool(_HOT.search(plain)) and not heat
    )


def _sap_test(found: tuple[Amount, ...], stem_f: float | None, *, metric: bool) -> SapTest | None:
    readings = [
        one for one in found if one.sort in ("number", "brix") and _in(one.value, _SAP_BRIX)
    ]
    if not readings:
        return None
    reading = readings[0]
    heat = [
        value
        for one in found
        if one is not reading and (value := _heat(one, _SAP_F, _SAP_C, metric=metric)) is not None
    ]
    return SapTest(reading.value, heat[0], stem_f) if heat else None


def _bottling(found: tuple[Amount, ...], *, metric: bool) -> Bottling | None:
    heat = [value for one in found if (value := _heat(one, _FILL_F, _FILL_C, metric=metric))]
    return Bottling(heat[0]) if len(heat) == 1 and len(found) == 1 else None


def _heat(
    one: Amount, bounds_f: tuple[float, float], bounds_c: tuple[float, float], *, metric: bool
) -> float | None:
    """The figure as degrees F, None where it is no temperature between the bounds."""
    if one.sort == "temp" and not one.bare_degrees:
        return one.value if _in(one.value, bounds_f) else None
    if one.sort not in ("temp", "number"):
        return None
    if metric and _in(one.value, bounds_c):
        return units.fahrenheit(one.value)
    return one.value if _in(one.value, bounds_f) else None


def _in(value: float, bounds: tuple[float, float]) -> bool:
    return bounds[0] <= value <= bounds[1]
