"""Postal codes and towns of Canada, from the data of the package pypostalcode.

It knows the first half of a postal code, the forward sortation area, which in the country is as
large as a county; and few towns by name. So the province alone is taken where a town is not
known.
"""

from __future__ import annotations

import re
from functools import lru_cache

from pypostalcode import PostalCode, PostalCodeDatabase  # type: ignore[import-untyped]

from bot.places.place import Place
from bot.places.regions import PROVINCE_NAMES, SUGARING
from bot.places.spelling import key, words_of

_CODES = {name: code for code, name in PROVINCE_NAMES.items()} | {
    "Northwest Territory": "NT",
    "Nunavut Territory": "NU",
}
# The clock of most of each province (IANA time zone database).
_ZONES = {
    "AB": "America/Edmonton",
    "BC": "America/Vancouver",
    "MB": "America/Winnipeg",
    "NB": "America/Moncton",
    "NL": "America/St_Johns",
    "NS": "America/Halifax",
    "NT": "America/Yellowknife",
    "NU": "America/Iqaluit",
    "ON": "America/Toronto",
    "PE": "America/Halifax",
    "QC": "America/Toronto",
    "SK": "America/Regina",
    "YT": "America/Whitehorse",
}
# Parts of a province that keep another clock: (province, hours from UTC, changes in March?) as
# the data has them.
_OTHER_ZONES = {
    ("BC", -7.0, 1): "America/Edmonton",
    ("BC", -7.0, 0): "America/Dawson_Creek",
    ("NL", -4.0, 1): "America/Goose_Bay",
    ("NU", -6.0, 1): "America/Rankin_Inlet",
    ("NU", -7.0, 1): "America/Cambridge_Bay",
    ("ON", -6.0, 1): "America/Winnipeg",
    ("QC", -4.0, 1): "America/Halifax",
    ("SK", -6.0, 1): "America/Winnipeg",
    ("SK", -7.0, 1): "America/Edmonton",
}
_IN_BRACKETS = re.compile(r"^(?P<area>[^(]*?)\s*\((?P<within>.*)\)$")
_QUARTERS = (
    "north south east west central northeast northwest southeast southwest northern southern "
    "eastern western inner outer upper lower"
).split()


def by_postal_code(area: str) -> Place | None:
    """The place of a postal code by its first three characters; None if it lies nowhere."""
    found = PostalCodeDatabase().get(area.upper())
    return _place(_town(found[0]), found) if found else None


def towns(words: list[str], province: str) -> tuple[Place, ...]:
    """The town of a province with this name: one or none."""
    place = _towns_of(province).get(key(words))
    return () if place is None else (place,)


def towns_anywhere(words: list[str]) -> tuple[Place, ...]:
    """The towns with this name in the provinces where maples are tapped."""
    return tuple(
        place
        for province in SUGARING
        if province in PROVINCE_NAMES
        for place in towns(words, province)
    )


def province_alone(code: str) -> Place:
    """A province, where no more is known than that."""
    return Place(PROVINCE_NAMES[code], code, "CA", _ZONES[code])


@lru_cache(maxsize=16)
def _towns_of(province: str) -> dict[str, Place]:
    names = [name for name, code in _CODES.items() if code == province]
    areas: dict[str, list[PostalCode]] = {}
    for name in names:
        for area in PostalCodeDatabase().find_postalcode(province=name) or ():
            areas.setdefault(_town(area), []).append(area)
    found = {}
    for town, of_town in areas.items():
        place = _place(town, of_town)
        if place is not None:
            found[key(words_of(town))] = place
    return found


def _town(area: PostalCode) -> str:
    """The town that gives an area its name.

    In the country it stands in brackets behind the county, `Wellington (Elora)`; in a city the
    brackets hold a neighbourhood, and a quarter may follow: `Thunder Bay West`.
    """
    name = re.sub(r"- ", "-", area.city)
    is_rural = area.postalcode[1] == "0"
    bracketed = _IN_BRACKETS.match(name)
    if bracketed is not None:
        name = bracketed["within"] if is_rural else bracketed["area"]
    words = name.removeprefix("Downtown ").split()
    while len(words) > 1 and words[-1].casefold() in _QUARTERS:
        words.pop()
    return " ".join(words)


def _place(name: str, areas: list[PostalCode]) -> Place | None:
    placed = [area for area in areas if (area.latitude, area.longitude) != (90, 0)]
    if not placed:
        return None
    first = placed[0]
    code = _CODES[first.province]
    zone = _OTHER_ZONES.get((code, first.timezone, first.dst), _ZONES[code])
    return Place(
        name,
        code,
        "CA",
        zone,
        round(sum(area.latitude for area in placed) / len(placed), 4),
        round(sum(area.longitude for area in placed) / len(placed), 4),
    )
