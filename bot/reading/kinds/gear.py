"""What somebody boils, taps and measures with, and where: pan, bit, stem, fire, height, price.

The reading contract knows no such kind: outside, gear is a `chat` with fields of its own. Only a
sentence that says nothing else is taken ("my pan is 2x3 ft"), so that no amount is ever lost to
it. What a question mentions ("how long in a 2x3 pan") is found by `mentioned`.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import dataclass, fields, replace
from fractions import Fraction
from typing import ClassVar, Final

from bot import figures, units
from bot.reading.kinds.base import Reading
from bot.reading.signs import Sought, either
from bot.reading.understanding import Doubt


@dataclass(frozen=True, slots=True, kw_only=True)
class Gear(Reading):
    """What was told of one's gear.

    pan_ft2: surface of the pan in square feet, pan its size as said back ("2 x 3 ft").
    elevation_ft: height of the trees. bit_in: the drill bit. stem_f: the temperature that the
    sap hydrometer is made for. fire: "wood" or "propane". barometer_inhg: as a forecast tells
    it, reduced to sea level. price: dollars for a gallon of syrup.
    """

    kind: ClassVar[str] = "chat"

    pan_ft2: float | None = None
    pan: str | None = None
    elevation_ft: float | None = None
    bit_in: float | None = None
    stem_f: float | None = None
    fire: str | None = None
    barometer_inhg: float | None = None
    price: float | None = None

    def with_all_of(self, other: Gear) -> Gear:
        """This and, where it tells nothing, the other."""
        told = {
            spec.name: getattr(other, spec.name)
            for spec in fields(self)
            if getattr(self, spec.name) is None
        }
        return replace(self, **told)


# Surfaces that are believed, square feet: from a small pot to a big evaporator (our own).
PAN_FT2: Final = (0.2, 200.0)
# Drill bits that are believed, inches (our own, a little around figures.SPILE_IN).
BIT_IN: Final = (3 / 16, 3 / 4)
# Prices that are believed, US dollars a gallon (our own).
PRICE: Final = (5.0, 1000.0)

_NUMBER = r"(\d+ \d/\d+|\d+/\d+|\d+(?:\.\d+)?|\.\d+)"
_LENGTH = r"(ft|feet|foot|'|inches|inch|in|\"|cm|mm|m|met(?:er|re)s?)"
_SIDES = re.compile(
    rf"(?<![\w.])(?<!at ){_NUMBER}\s*{_LENGTH}?\s*(?:x|by|\*)\s*{_NUMBER}\s*{_LENGTH}?(?![\w/])"
)
_ROUND = re.compile(
    rf"{_NUMBER}\s*{_LENGTH}\s*(?:round|across|diameter|in diameter|wide)\b"
    rf"|\bround\b.{{0,20}}?{_NUMBER}\s*{_LENGTH}(?!\w)"
)
_AREA = re.compile(rf"{_NUMBER}\s*(?:sq(?:uare|\.)?\s*(?:ft|feet|foot)|ft2|sq(?:uare)? ?(m)\w*)")
_HEIGHT = re.compile(
    rf"\b(?:elevation|altitude|elev|alt)\b\D{{0,16}}?{_NUMBER}\s*{_LENGTH}?(?!\w)"
    rf"|{_NUMBER}\s*(ft|feet|foot|'|m|met(?:er|re)s?)(?!\w)"
)
_HEIGHT_SAID = re.compile(
    rf"\b(?:elevation|altitude|elev|alt)\b\D{{0,16}}?{_NUMBER}\s*{_LENGTH}?(?!\w)"
    rf"|{_NUMBER}\s*(?:ft|feet|foot|'|m|met(?:er|re)s?)\s*(?:up|above|asl|elevation|altitude|high)\b"
)
_BIT = re.compile(
    rf"{_NUMBER}\s*(inch|in|\"|mm)?\s*(?:drill\s*)?(?:bits?|drills?|spiles?|spouts?)\b"
    rf"|\b(?:bits?|drills?|spiles?|spouts?)\b[a-z' ]{{0,20}}?{_NUMBER}\s*(inch|in|\"|mm)?(?!\w)"
)
_STEM = re.compile(
    rf"\b(?:stem|made for|calibrate[ds])\b[a-z' ]{{0,22}}?{_NUMBER}\s*(?:deg\w*)?\s*(f|c)?\b"
)
_BAROMETER = re.compile(
    rf"\b(?:barometer|baro|barometric pressure|pressure)\b[a-z' ]{{0,14}}?{_NUMBER}"
    r"\s*(inhg|inches|inch|in|hpa|mbar|mb|kpa)?"
)
_PRICE = Sought(
    "$|sell|price|charge|get",
    rf"(?:\$\s*|\b(?:sell|sells|selling|price|charge|get)(?: it| them)?(?: at| for| is)? )"
    rf"{_NUMBER}\s*(?:a|an|per|/|for a|for each|each|for)\s*"
    r"(half[- ]?gal\w*|half[- ]?pint|gal\w*|quart|qt|pint|pt|lit\w+|l)\b",
)
_FIRE = re.compile(r"\b(firewood|wood|propane|gas)\b")
# Above this a barometer is in hectopascals, between the two in kilopascals.
_HPA_FROM, _KPA_FROM = 800.0, 80.0
_GALLONS_EACH = {"half gal": 0.5, "half pint": 1 / 16, "gal": 1.0, "qu": 0.25, "qt": 0.25}

_FILLER = frozenset(
    (
        "a about actually also an and approx are around at bare boil boiling by for from "
        "got have here home homemade i i'm i've im in is it it's its just kinda like made "
        "mine my new now of old on one only our over pretty ours roughly s small big so "
        "standard that the then these they this to today up use uses using was we we're "
        "we've were with "
    ).split()
)
_OF_A_PAN = frozenset(
    (
        "pan pans flat evaporator pot kettle size sized measures measuring measure steel stainless "
        "rectangular square surface area arch block syrup cooking feet foot ft inches big"
    ).split()
)
_OF_A_PLACE = frozenset(
    (
        "elevation altitude elev alt above sea level asl high sit sits bush sugarbush trees tree "
        "woods sugarhouse house hill sea feet live"
    ).split()
)
_OF_A_BIT = frozenset(
    "bit bits drill spile spiles spout spouts inch in size sized drilling taps tap take".split()
)
_OF_A_STEM = frozenset(
    (
        "stem says say hydrometer hydro sap calibrated calibrates reads read marked temperature "
        "temp degrees deg f c scale instrument"
    ).split()
)
_OF_A_BAROMETER = frozenset(
    "barometer baro barometric pressure reads says reading inches inhg hpa mbar mb kpa".split()
)
_OF_A_PRICE = frozenset(
    "price sell sells selling charge get gets goes going syrup asking each ask worth".split()
)
_OF_A_FIRE = frozenset(
    "burn burns burning wood firewood propane gas fire fired burner fuel heat ring cook".split()
)
# Heights and bits are taken for such only where a word says so.
_SAYS_HEIGHT = Sought(
    "elev|alt|sea level|asl|at|about",
    r"\b(?:elevation|altitude|elev|alt|sea level|asl)\b|^(?:so )?(?:we're|we are|i'm|im|i am|we sit"
    r"|i sit|trees are|our trees are|the trees are|my trees are|bush is|up) (?:up )?(?:at|about)\b",
)
_WORD = re.compile(r"[a-z']+")
_PIECE = re.compile(r"[.;!\n]+(?=\s|$)|,\s+|\s+and\s+(?=(?:i|we|my|our|the)\b)")
_IDLE_PIECES = frozenset(
    "no nope oops sorry wait actually ok okay also and so well hi hello hey".split()
)
_FIGURE_OR_FUEL = re.compile(r"\d|\b(?:propane|wood|firewood|gas)\b")
_WORTH_A_LOOK = re.compile(
    either(
        (
            *("pan", "evaporator", "pot", "kettle", "baro", "pressure", "stem", "made for"),
            *("calibrate", "bit", "drill", "spile", "spout", "$", "sell", "price", "charge", "get"),
            *("elev", "alt", "sea level", "asl", "we're", "we are", "i'm", "im ", "i am", "sit "),
            *("are ", "bush is", "up ", "wood", "propane", "gas"),
        )
    )
)
"""Words that one of the forms above has: most texts have none."""


def stated(plain: str, *, metric: bool) -> tuple[Gear | None, str, Doubt | None]:
    """The gear that whole sentences of a tidied text tell, the text without them, and a
    question where a figure of theirs cannot be."""
    if not _WORTH_A_LOOK.search(plain) or not _FIGURE_OR_FUEL.search(plain):
        return None, plain, None
    found: Gear | None = None
    doubt: Doubt | None = None
    rest: list[str] = []
    for piece in _PIECE.split(plain):
        told = None if "?" in piece else _sentence(piece.strip(), metric)
        if told is None:
            rest.append(piece.strip())
        elif isinstance(told, Doubt):
            doubt = doubt or told
        else:
            found = told if found is None else told.with_all_of(found)
    if found is None and doubt is None:
        return None, plain, None
    left = [piece for piece in rest if piece and piece.strip(" .!") not in _IDLE_PIECES]
    return found, ". ".join(left), doubt


def mentioned(plain: str, *, metric: bool) -> Gear:
    """The pan, stem, height, barometer and price that a tidied text speaks of, whatever else it
    says. Figures that cannot be are left out."""
    found = Gear()
    for look in (_pan, _stem, _height_said, _barometer, _price):
        told = look(plain, metric)
        if isinstance(told, Gear):
            found = found.with_all_of(told)
    return found


def without(plain: str) -> str:
    """A tidied text without the figures of gear that it speaks of."""
    for pattern in (_STEM, _BAROMETER, _PRICE, _SIDES, _AREA, _HEIGHT_SAID):
        plain = pattern.sub(" ", plain)
    return plain


def _sentence(piece: str, metric: bool) -> Gear | Doubt | None:
    words = set(_WORD.findall(piece))
    for look, own, needs in _LOOKS:
        if needs and not words & needs:
            continue
        told = look(piece, metric)
        if told is not None and words <= _FILLER | own | _UNIT_WORDS:
            return told
    return None


def _pan(piece: str, metric: bool) -> Gear | Doubt | None:
    sides = _SIDES.search(piece)
    if sides is not None:
        length, one, width, other = sides.groups()
        unit = _unit(other or one, min(_value(length), _value(width)), metric=metric)
        long = _value(length) * units.factor(_unit(one, 0, metric=metric) if one else unit, "inch")
        wide = _value(width) * units.factor(unit, "inch")
        ft2 = long * wide / figures.SQUARE_INCHES_PER_FT2
        return _sized(ft2, f"{length} x {width} {_SAID[unit]}")
    area = _AREA.search(piece)
    if area is not None:
        metres = area[2] is not None
        ft2 = _value(area[1]) * (units.factor("meter", "foot") ** 2 if metres else 1.0)
        return _sized(ft2, f"{area[1]} sq {'m' if metres else 'ft'}")
    around = _ROUND.search(piece)
    if around is not None:
        across, unit = (around[1], around[2]) if around[1] else (around[3], around[4])
        inches = _value(across) * units.factor(_unit(unit, 0, metric=metric), "inch")
        ft2 = math.pi / 4 * inches**2 / figures.SQUARE_INCHES_PER_FT2
        return _sized(ft2, f"{across} {_SAID[_unit(unit, 0, metric=metric)]} round")
    return None


def _sized(ft2: float, said: str) -> Gear | Doubt:
    if not PAN_FT2[0] <= ft2 <= PAN_FT2[1]:
        return Doubt(
            f"A pan of {said}? What size is it, like 2x3 ft?", (), "my pan is {}", number_only=False
        )
    return Gear(pan_ft2=ft2, pan=said)


def _height_said(piece: str, metric: bool) -> Gear | Doubt | None:
    if not re.search(r"\b(?:elevation|altitude|elev|sea level|asl)\b", piece):
        return None
    return _height(piece, metric)


def _height(piece: str, metric: bool) -> Gear | Doubt | None:
    if not _SAYS_HEIGHT.search(piece):
        return None
    found = _HEIGHT.search(piece)
    if found is None:
        return None
    amount, unit = (found[1], found[2]) if found[1] else (found[3], found[4])
    name = _unit(unit, 0, metric=metric) if unit else ("meter" if metric else "foot")
    feet = _value(amount) * units.factor(name, "foot")
    if not figures.ELEVATION_FT_LEAST <= feet <= figures.ELEVATION_FT_MOST:
        return Doubt(
            f"{amount} {_SAID[name]} up? Sugarbushes are below {figures.ELEVATION_FT_MOST:g} ft."
            " How high are you?",
            (),
            f"elevation {{}} {_SAID[name]}",
        )
    return Gear(elevation_ft=feet)


def _bit(piece: str, metric: bool) -> Gear | Doubt | None:
    if "$" in piece:
        return None  # "$9 for a 5/16 bit"
    found = _BIT.search(piece)
    if found is None:
        return None
    amount, unit = (found[1], found[2]) if found[1] else (found[3], found[4])
    inches = _value(amount) * (units.factor("mm", "inch") if unit == "mm" else 1.0)
    if "/" not in amount and unit is None and not amount.startswith((".", "0.")):
        return None
    if not BIT_IN[0] <= inches <= BIT_IN[1]:
        return Doubt(
            f"A {amount} bit? Most are 5/16 or 7/16 in. Which is yours?", (), "my bit is {}"
        )
    return Gear(bit_in=inches)


def _stem(piece: str, metric: bool) -> Gear | Doubt | None:
    found = _STEM.search(piece)
    if found is None:
        return None
    value = _value(found[1])
    rows = figures.SAP_HYDROMETER_ADD_BRIX
    in_celsius = found[2] == "c" or (found[2] is None and metric and value <= _MOST_CELSIUS)
    stem_f = units.fahrenheit(value) if in_celsius else value
    if not rows[0][0] <= stem_f <= rows[-1][0]:
        return Doubt(
            f"A stem made for {found[1]}? Most say 38, 60 or 68 F. What does yours say?",
            (),
            "my stem says {}",
        )
    return Gear(stem_f=stem_f)


# A stem marked in Celsius says at most this.
_MOST_CELSIUS = 27.0


def _barometer(piece: str, metric: bool) -> Gear | Doubt | None:
    found = _BAROMETER.search(piece)
    if found is None:
        return None
    value = _value(found[1])
    inches = value
    if value >= _HPA_FROM:
        inches = value * units.factor("hectopascal", "inHg")
    elif value >= _KPA_FROM:
        inches = value * units.factor("kilopascal", "inHg")
    if not figures.ALTIMETER_INHG_LEAST <= inches <= figures.ALTIMETER_INHG_MOST:
        return Doubt(
            f"A barometer at {found[1]}? It stands near 30 inches. What does it read?",
            (),
            "barometer {}",
        )
    return Gear(barometer_inhg=inches)


def _price(piece: str, metric: bool) -> Gear | Doubt | None:
    found = _PRICE.search(piece)
    if found is None:
        return None
    size = found[2].replace("-", " ").replace("halfg", "half g").replace("halfp", "half p")
    each = next((gallons for name, gallons in _GALLONS_EACH.items() if size.startswith(name)), None)
    if each is None:
        each = 1 / 8 if size.startswith(("pint", "pt")) else units.gallons(1.0, "liter")
    price = _value(found[1]) / each
    if not PRICE[0] <= price <= PRICE[1]:
        return Doubt(
            f"${found[1]} a {found[2]}? What does your syrup sell at, for a gallon?",
            (),
            "price is ${} a gallon",
        )
    return Gear(price=price)


def _fire(piece: str, metric: bool) -> Gear | None:
    found = _FIRE.search(piece)
    if found is None or any(char.isdigit() for char in piece):
        return None
    if not re.search(r"\b(?:burn|burns|burning|boil|boiling|use|using|fire|fired|cook)\b", piece):
        return None
    return Gear(fire="wood" if "wood" in found[1] else "propane")


_Look = Callable[[str, bool], "Gear | Doubt | None"]
_UNIT_WORDS = frozenset("ft feet foot in inch inches cm mm m meters metres x by sq".split())
_PAN_WORDS = frozenset("pan pans evaporator pot kettle".split())
# What is looked for, in which words it may stand, and one of which must be there (any, if none).
_LOOKS: tuple[tuple[_Look, frozenset[str], frozenset[str]], ...] = (
    (_pan, _OF_A_PAN | frozenset(("round", "across", "diameter", "wide")), _PAN_WORDS),
    (_barometer, _OF_A_BAROMETER, frozenset(("barometer", "baro", "barometric", "pressure"))),
    (_stem, _OF_A_STEM, frozenset(("stem", "made", "calibrated", "calibrates"))),
    (_bit, _OF_A_BIT, frozenset("bit bits drill my our i i'm we use using drilling take".split())),
    (_price, _OF_A_PRICE | frozenset("gallon gallons gal quart qt pint pt per half".split())
     | frozenset("litre liter l".split()), frozenset()),
    (_height, _OF_A_PLACE, frozenset()),
    (_fire, _OF_A_FIRE, frozenset(("firewood", "wood", "propane", "gas"))),
)  # fmt: skip
_SAID = {"foot": "ft", "inch": "in", "cm": "cm", "mm": "mm", "meter": "m"}


def _unit(said: str | None, least: float, *, metric: bool) -> str:
    """The name of a unit of length; where none is said, what a pan of such sides is told in."""
    if said is not None:
        if said in ("ft", "feet", "foot", "'"):
            return "foot"
        if said in ("inches", "inch", "in", '"'):
            return "inch"
        return said if said in ("cm", "mm") else "meter"
    if metric:
        return "foot" if least <= _MOST_FEET else "cm"
    return "foot" if least <= _MOST_FEET else "inch"


# A pan's shorter side without a unit is in feet up to this: pans are sold by the foot in
# Canada too.
_MOST_FEET = 6.0


def _value(said: str) -> float:
    return float(sum(Fraction(part) for part in said.split()))
