"""From a text to a place."""

from __future__ import annotations

import re
from functools import lru_cache

from bot.places import canada, us
from bot.places.place import Place
from bot.places.regions import Region, split_region
from bot.places.spelling import words_of

_ZIP = re.compile(r"(?<![\w.])(\d{5})(?:-\d{4})?(?![\w.]*\d)")
# Canada Post leaves out D, F, I, O, Q and U, and does not begin with W or Z.
_POSTAL_CODE = re.compile(
    r"\b([ABCEGHJ-NPRSTVXY]\d[ABCEGHJ-NPRSTV-Z])(?:[ -]?\d[ABCEGHJ-NPRSTV-Z]\d)?\b", re.IGNORECASE
)
# Words that may stand before a town's name and are no part of it, unless the name has them.
_BEFORE = frozenset(
    "im i am were we are is its it the my our trees place here near nearby close in at on outside "
    "around about just by to of from town village city township up over down out live located "
    "sugaring sugarbush".split()
)
# Words that may stand beside a ZIP or postal code.
_BESIDE_A_CODE = _BEFORE | frozenset("zip zipcode code postal postcode usa us canada".split())
_MOST_WORDS = 9
_MOST_WORDS_OF_A_TOWN = 4
_MOST_CHARACTERS = 120


def find(text: str) -> Place | None:
    """The one place that a text names for certain, None if there is none.

    In this order: a US ZIP code; a Canadian postal code, whole or its first half; a town with
    its state or province; a Canadian province, with a town that is not known or with none (the
    place is then partial).

    The text has to be about the place and nothing else: "gathered 12345" names none. A town
    alone is never certain, however rare its name ("Big Run" is in Pennsylvania): see
    `candidates`.
    """
    found = _found(text)
    return found[0] if len(found) == 1 else None


def candidates(text: str) -> tuple[Place, ...]:
    """All places that a text may mean, to be asked about; those in the states and provinces
    with the most taps first.

    "Hardwick" gives those in Vermont, Massachusetts and Minnesota, "Hardwik VT" the one that is
    spelt nearly so. What `find` is certain of is the only candidate.
    """
    return _found(text) or _similar(text) or _anywhere(text)


@lru_cache(maxsize=256)
def _found(text: str) -> tuple[Place, ...]:
    text = text.strip()
    if len(text) > _MOST_CHARACTERS:
        return ()
    coded = _by_code(text)
    if coded is not None:
        return (coded,)
    words = _words(text)
    before, region = split_region(words, text)
    return () if region is None else _in_region(before, region)


def _by_code(text: str) -> Place | None:
    found = _ZIP.search(text)
    place = None if found is None else us.by_zip(found[1])
    if found is None or place is None:
        found = _POSTAL_CODE.search(text)
        place = None if found is None else canada.by_postal_code(found[1])
    if found is None or place is None:
        return None
    beside = text[: found.start()] + " " + text[found.end() :]
    words, region = split_region(words_of(beside), beside)
    is_about_it = region is not None and region.code == place.region
    return place if is_about_it or _BESIDE_A_CODE.issuperset(words) else None


def _similar(text: str) -> tuple[Place, ...]:
    before, region = split_region(_words(text), text)
    if region is None or region.country != "US" or not before:
        return ()
    return us.similar_towns(_possible_names(before)[-1], region.code)


@lru_cache(maxsize=256)
def _anywhere(text: str) -> tuple[Place, ...]:
    for name in _possible_names(_words(text)):
        if 0 < len(name) <= _MOST_WORDS_OF_A_TOWN:
            found = us.towns_anywhere(name) + canada.towns_anywhere(name)
            if found:
                return found
    return ()


def _in_region(words: list[str], region: Region) -> tuple[Place, ...]:
    is_canada = region.country == "CA"
    names = _possible_names(words) if words else []
    for name in names:
        found = canada.towns(name, region.code) if is_canada else us.towns(name, region.code)
        if found:
            return found
    is_town = not names or len(names[-1]) <= _MOST_WORDS_OF_A_TOWN
    if is_canada and region.is_surely_meant and is_town:
        return (canada.province_alone(region.code),)
    return ()


def _words(text: str) -> list[str]:
    """The words of a text that may be a place's name; none where it cannot be one."""
    if len(text) > _MOST_CHARACTERS or any(c.isdigit() for c in text):
        return []
    words = words_of(text)
    return words if len(words) <= _MOST_WORDS else []


def _possible_names(words: list[str]) -> list[list[str]]:
    """The words as a name, then with one leading word after the other left out: at least one."""
    names = [words]
    while len(names[-1]) > 1 and names[-1][0] in _BEFORE:
        names.append(names[-1][1:])
    return names


def warm() -> None:
    """Load what takes long to load."""
    us.warm()
