"""States and provinces: their codes, and how people write them.

Codes: US Postal Service Publication 28, appendix B, and Canada Post's Addressing Guidelines.
The older short forms ("Mass", "Ont") are common practice.
"""

from __future__ import annotations

from dataclasses import dataclass

from bot.reckoning.law import PROVINCES

_US = {
    "AL": "alabama; ala",
    "AK": "alaska",
    "AZ": "arizona; ariz",
    "AR": "arkansas; ark",
    "CA": "california; calif; cal",
    "CO": "colorado; colo",
    "CT": "connecticut; conn",
    "DE": "delaware; del",
    "DC": "district of columbia",
    "FL": "florida; fla",
    "GA": "georgia",
    "HI": "hawaii",
    "ID": "idaho",
    "IL": "illinois; ill",
    "IN": "indiana; ind",
    "IA": "iowa",
    "KS": "kansas; kan; kans",
    "KY": "kentucky",
    "LA": "louisiana",
    "ME": "maine",
    "MD": "maryland",
    "MA": "massachusetts; mass",
    "MI": "michigan; mich",
    "MN": "minnesota; minn",
    "MS": "mississippi; miss",
    "MO": "missouri",
    "MT": "montana; mont",
    "NE": "nebraska; neb; nebr",
    "NV": "nevada; nev",
    "NH": "new hampshire",
    "NJ": "new jersey",
    "NM": "new mexico",
    "NY": "new york; new york state; upstate new york; upstate ny",
    "NC": "north carolina",
    "ND": "north dakota",
    "OH": "ohio",
    "OK": "oklahoma; okla",
    "OR": "oregon; ore",
    "PA": "pennsylvania; penn; penna",
    "PR": "puerto rico",
    "RI": "rhode island",
    "SC": "south carolina",
    "SD": "south dakota",
    "TN": "tennessee; tenn",
    "TX": "texas; tex",
    "UT": "utah",
    "VT": "vermont",
    "VA": "virginia",
    "WA": "washington; wash; washington state",
    "WV": "west virginia",
    "WI": "wisconsin; wis; wisc",
    "WY": "wyoming; wyo",
}
_CANADA = {
    "AB": "alberta; alta",
    "BC": "british columbia",
    "MB": "manitoba",
    "NB": "new brunswick",
    "NL": "newfoundland and labrador; newfoundland & labrador; newfoundland; nfld",
    "NS": "nova scotia",
    "NT": "northwest territories; northwest territory; nwt",
    "NU": "nunavut; nunavut territory",
    "ON": "ontario; ont",
    "PE": "prince edward island; pei",
    "QC": "quebec; que; pq",
    "SK": "saskatchewan; sask",
    "YT": "yukon; yukon territory; yk",
}
_COUNTRIES = ("usa", "us", "united states", "canada")
_MOST_WORDS = 3

# In a list, where the law says "the Northwest Territories" in a sentence.
PROVINCE_NAMES = {code: name.removeprefix("the ") for code, name in PROVINCES.items()}

# The states of the survey "Maple Syrup" (USDA National Agricultural Statistics Service, 2019 and
# before), most taps first, and the provinces of "Maple products" (Statistics Canada). A bare town
# is looked for here: "Why" is a town in Arizona, but nobody taps there.
SUGARING = (
    "VT", "NY", "ME", "WI", "PA", "NH", "MI", "OH", "MA", "CT", "WV", "MN", "IN",
    "QC", "ON", "NB", "NS",
)  # fmt: skip


# Codes that are everyday words or short forms in small letters ("come on", "bc it froze").
_EVERYDAY = frozenset({"on", "bc"})


@dataclass(frozen=True, slots=True)
class Region:
    """A state or province. `is_surely_meant` is False where it may be an everyday word."""

    code: str
    country: str
    is_surely_meant: bool


_BY_NAME = {
    name: (code, country)
    for country, table in (("US", _US), ("CA", _CANADA))
    for code, names in table.items()
    for name in (code.casefold(), *names.split("; "))
}


def spoken(country: str, code: str) -> tuple[str, ...]:
    """How people write a state or province, in small letters: vt, vermont."""
    names = (_US if country == "US" else _CANADA).get(code, "")
    return (code.casefold(), *(name for name in names.split("; ") if name))


def split_region(words: list[str], text: str) -> tuple[list[str], Region | None]:
    """Take the state or province off the end of a text.

    words: the text's words (`spelling.words_of`). text: as it was written, for its capitals.
    Gives the words before it, and the region, None if the text does not end in one.
    """
    words = _without_country(words)
    for count in range(min(_MOST_WORDS, len(words)), 0, -1):
        found = _BY_NAME.get(" ".join(words[-count:]))
        if found is not None:
            code, country = found
            in_capitals = code in text and not text.isupper()
            surely = in_capitals or words[-1] not in _EVERYDAY
            return words[:-count], Region(code, country, surely)
    return words, None


def _without_country(words: list[str]) -> list[str]:
    for country in _COUNTRIES:
        parts = country.split()
        if len(words) > len(parts) and words[-len(parts) :] == parts:
            return words[: -len(parts)]
    return words
