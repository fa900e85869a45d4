"""Towns and ZIP codes of the United States, from the data of the package zipcodes.

Loading that data takes a quarter of a second, once; it happens at the first question.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from functools import lru_cache
from typing import Any
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

import zipcodes
from rapidfuzz import fuzz, process

from bot.places.place import Place
from bot.places.regions import SUGARING
from bot.places.spelling import key, words_of

# What the data calls an ordinary ZIP; the others are post office boxes and single large users.
_ORDINARY = "STANDARD"
# How alike two names must be (0 to 100) to be asked about: "hardwik" and "hardwick" are 93.
_LIKE = 85
_MOST_SIMILAR = 3


def by_zip(digits: str) -> Place | None:
    """The place of a five-digit ZIP code, None if there is no such code in any state.

    Codes of the armed forces lie nowhere and give None.
    """
    found = zipcodes.matching(digits)  # type: ignore[no-untyped-call]
    return _place(found[0]["city"], found) if found else None


def towns(words: list[str], state: str) -> tuple[Place, ...]:
    """The towns of a state with this name; more than one where the post knows several.

    A name that the post delivers under counts before one that it only tolerates. Where a
    tolerated name belongs to several post offices, each place goes by its post office.
    """
    return _towns_of(state).get(key(words), ())


def similar_towns(words: list[str], state: str) -> tuple[Place, ...]:
    """The towns of a state whose names are nearly this one, the likeliest first."""
    known = _towns_of(state)
    near = process.extract(
        key(words), known.keys(), scorer=fuzz.ratio, score_cutoff=_LIKE, limit=_MOST_SIMILAR
    )
    return tuple(dict.fromkeys(place for name, _, _ in near for place in known[name]))


def towns_anywhere(words: list[str]) -> tuple[Place, ...]:
    """The towns with this name in the states where maples are tapped."""
    states = {
        entry["state"]
        for spelling in _spellings(words)
        for entry in zipcodes.filter_by(city=spelling)  # type: ignore[no-untyped-call]
    }
    return tuple(place for state in SUGARING if state in states for place in towns(words, state))


def warm() -> None:
    """Load the data now, rather than at the first question."""
    by_zip("05401")


@lru_cache(maxsize=64)
def _towns_of(state: str) -> dict[str, tuple[Place, ...]]:
    """Every name of a state's towns, as `spelling.key` has it: names of post offices first, then
    those that the post accepts, then those that it only tolerates."""
    entries = zipcodes.filter_by(state=state)  # type: ignore[no-untyped-call]
    offices: dict[str, list[dict[str, Any]]] = {}
    for entry in entries:
        offices.setdefault(entry["city"], []).append(entry)
    found: dict[str, tuple[Place, ...]] = {}
    for city, of_city in offices.items():
        place = _place(city, of_city)
        if place is not None:
            found.setdefault(key(words_of(city)), (place,))
    for also in ("acceptable_cities", "unacceptable_cities"):
        for name_key, places in _also_named(offices, also).items():
            found.setdefault(name_key, places)
    return found


def _also_named(
    offices: dict[str, list[dict[str, Any]]], also: str
) -> dict[str, tuple[Place, ...]]:
    """The places behind the other names, by the names' keys. `also`: which other names."""
    named: dict[str, dict[str, tuple[str, list[dict[str, Any]]]]] = {}
    for city, entries in offices.items():
        for entry in entries:
            for name in entry[also]:
                of_city = named.setdefault(key(words_of(name)), {})
                of_city.setdefault(city, (name, []))[1].append(entry)
    found = {}
    for name_key, by_city in named.items():
        is_one = len(by_city) == 1
        places = (
            _place(name if is_one else city, entries) for city, (name, entries) in by_city.items()
        )
        known = tuple(place for place in places if place is not None)
        if known:
            found[name_key] = known
    return found


def _place(name: str, entries: list[dict[str, Any]]) -> Place | None:
    """One place for all the ZIP codes of a town: amid the ordinary ones."""
    placed = [entry for entry in entries if _zone_of(entry) is not None and _point(entry) != (0, 0)]
    ordinary = [entry for entry in placed if entry["zip_code_type"] == _ORDINARY] or placed
    if not ordinary:
        return None
    zones = Counter(entry["timezone"] for entry in ordinary)
    (zone, _), *_ = zones.most_common(1)
    latitude, longitude = _middle(_point(entry) for entry in ordinary)
    return Place(name, ordinary[0]["state"], "US", zone, latitude, longitude)


def _point(entry: dict[str, Any]) -> tuple[float, float]:
    return float(entry["lat"]), float(entry["long"])


def _middle(points: Iterable[tuple[float, float]]) -> tuple[float, float]:
    latitudes, longitudes = zip(*points, strict=True)
    return (
        round(sum(latitudes) / len(latitudes), 4),
        round(sum(longitudes) / len(longitudes), 4),
    )


def _zone_of(entry: dict[str, Any]) -> str | None:
    """The entry's time zone; None where it has none, or one that does not exist."""
    zone: str = entry["timezone"]
    return zone if zone and _exists(zone) else None


@lru_cache(maxsize=128)
def _exists(zone: str) -> bool:
    try:
        ZoneInfo(zone)
    except (ZoneInfoNotFoundError, ValueError):
        return False
    return True


def _spellings(words: list[str]) -> set[str]:
    """How the data may spell a name: it capitalises each word, and shortens some saints."""
    full = key(words).title()
    return {full, " ".join(words).title(), full.replace("Saint ", "St ")}
