"""How dense syrup must be by law, where it is made.

The figures are for telling a finish point; none of this is legal advice, and rules change: the
state's or province's agriculture department has the last word.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final, Literal

from bot.figures import LEGAL_BRIX_MOST, LEGAL_BRIX_USUAL, LEGAL_BRIX_VERMONT

Verdict = Literal["too thin", "within", "too thick"]


@dataclass(frozen=True, slots=True)
class LegalDensity:
    """The density that syrup for sale must have, in Brix; `max_brix` is None where no upper
    limit was found. `region` is the two-letter code, None while it is not known."""

    region: str | None
    name: str
    min_brix: float
    max_brix: float | None
    source: str

    def judge(self, brix: float) -> Verdict:
        """Whether syrup of `brix` lies within the limits, to the hundredth of a Brix."""
        # Sums of tenths come out a hair off in binary; no instrument shows a hundredth.
        shown = round(brix, 2)
        if shown < self.min_brix:
            return "too thin"
        if self.max_brix is not None and shown > self.max_brix:
            return "too thick"
        return "within"


_FEDERAL_SOURCE: Final = (
    "FDA 21 CFR 168.140; USDA AMS, US Standards for Grades of Maple Syrup, 2015"
)
_CANADA_SOURCE: Final = "Canadian Grade Compendium, volume 7, at 20 C"

# Region code: name, least and most Brix, source. Those not here have their country's line.
_OWN_LINE: Final[dict[str, tuple[float, float | None, str]]] = {
    "VT": (
        LEGAL_BRIX_VERMONT,
        LEGAL_BRIX_MOST,
        "UVM Extension, Maple Minute videos, 2022: 36 to 37 Baume; 6 V.S.A. chapter 32",
    ),
    "NH": (
        LEGAL_BRIX_VERMONT,
        LEGAL_BRIX_MOST,
        "RSA 429:13-28 and Agr 904, the figures as quoted by others, the upper from memory",
    ),
    "NY": (LEGAL_BRIX_USUAL, LEGAL_BRIX_MOST, "1 NYCRR 270.1"),
    "ME": (LEGAL_BRIX_USUAL, LEGAL_BRIX_MOST, "7 MRSA 892-A"),
    "ON": (
        LEGAL_BRIX_USUAL,
        None,
        "O. Reg. 119/11, by refractometer at 20 C; no upper limit was found",
    ),
    "QC": (
        LEGAL_BRIX_USUAL,
        LEGAL_BRIX_MOST,
        "retail, as quoted by others, the upper limit from memory; bulk has its own (M-35.1)",
    ),
}

_STATES: Final = {
    "AL": "Alabama",
    "AK": "Alaska",
    "AZ": "Arizona",
    "AR": "Arkansas",
    "CA": "California",
    "CO": "Colorado",
    "CT": "Connecticut",
    "DE": "Delaware",
    "DC": "the District of Columbia",
    "FL": "Florida",
    "GA": "Georgia",
    "HI": "Hawaii",
    "ID": "Idaho",
    "IL": "Illinois",
    "IN": "Indiana",
    "IA": "Iowa",
    "KS": "Kansas",
    "KY": "Kentucky",
    "LA": "Louisiana",
    "ME": "Maine",
    "MD": "Maryland",
    "MA": "Massachusetts",
    "MI": "Michigan",
    "MN": "Minnesota",
    "MS": "Mississippi",
    "MO": "Missouri",
    "MT": "Montana",
    "NE": "Nebraska",
    "NV": "Nevada",
    "NH": "New Hampshire",
    "NJ": "New Jersey",
    "NM": "New Mexico",
    "NY": "New York",
    "NC": "North Carolina",
    "ND": "North Dakota",
    "OH": "Ohio",
    "OK": "Oklahoma",
    "OR": "Oregon",
    "PA": "Pennsylvania",
    "RI": "Rhode Island",
    "SC": "South Carolina",
    "SD": "South Dakota",
    "TN": "Tennessee",
    "TX": "Texas",
    "UT": "Utah",
    "VT": "Vermont",
    "VA": "Virginia",
    "WA": "Washington",
    "WV": "West Virginia",
    "WI": "Wisconsin",
    "WY": "Wyoming",
    "AS": "American Samoa",
    "GU": "Guam",
    "MP": "the Northern Mariana Islands",
    "PR": "Puerto Rico",
    "VI": "the US Virgin Islands",
}

PROVINCES: Final = {
    "AB": "Alberta",
    "BC": "British Columbia",
    "MB": "Manitoba",
    "NB": "New Brunswick",
    "NL": "Newfoundland and Labrador",
    "NS": "Nova Scotia",
    "NT": "the Northwest Territories",
    "NU": "Nunavut",
    "ON": "Ontario",
    "PE": "Prince Edward Island",
    "QC": "Quebec",
    "SK": "Saskatchewan",
    "YT": "Yukon",
}


def legal_density(region: str | None) -> LegalDensity:
    """The legal density of syrup in a US state or Canadian province ("VT", "ON").

    None (not known yet) gives the US federal line, and so does a state without one of its own;
    a province without one has Canada's. Raises ValueError for a code that is neither.
    """
    if region is None:
        return LegalDensity(
            None, "the United States", LEGAL_BRIX_USUAL, LEGAL_BRIX_MOST, _FEDERAL_SOURCE
        )
    name = _STATES.get(region) or PROVINCES.get(region)
    if name is None:
        raise ValueError(
            f"Region is {region!r}, but should be the two-letter code of a US state"
            ' or a Canadian province, like "VT" or "ON"'
        )
    if region in _OWN_LINE:
        least, most, source = _OWN_LINE[region]
        return LegalDensity(region, name, least, most, source)
    source = _FEDERAL_SOURCE if region in _STATES else _CANADA_SOURCE
    return LegalDensity(region, name, LEGAL_BRIX_USUAL, LEGAL_BRIX_MOST, source)


def region_named(text: str) -> str | None:
    """The code of the state or province that a text names in full ("vermont", "nova scotia"),
    None where it names none."""
    said = f" {' '.join(_LETTERS.findall(text.casefold()))} "
    found = [
        (len(name), code)
        for code, name in (*_STATES.items(), *PROVINCES.items())
        if f" {name.casefold().removeprefix('the ')} " in said
    ]
    # "West Virginia" names Virginia too: the longest name is meant.
    return max(found)[1] if found else None


_LETTERS: Final = re.compile(r"[a-z]+")
