"""From what somebody texts about where they are to a point on the map.

Expected coordinates are from memory, to a tenth of a degree (about 11 km); zones are those of the
IANA time zone database.
"""

from __future__ import annotations

from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot import places
from bot.places.regions import PROVINCE_NAMES
from bot.places.us import by_zip

NEW_YORK, TORONTO = "America/New_York", "America/Toronto"


@pytest.mark.parametrize(
    ("text", "name", "region", "zone"),
    [
        ("05843", "Hardwick", "VT", NEW_YORK),
        ("05843-1234", "Hardwick", "VT", NEW_YORK),
        ("I'm in 05602", "Montpelier", "VT", NEW_YORK),
        ("zip 05602.", "Montpelier", "VT", NEW_YORK),
        ("Orwell VT 05760", "Orwell", "VT", NEW_YORK),
        ("Orwell VT", "Orwell", "VT", NEW_YORK),
        ("orwell vt", "Orwell", "VT", NEW_YORK),
        ("ORWELL, VT.", "Orwell", "VT", NEW_YORK),
        ("near Hardwick, Vermont", "Hardwick", "VT", NEW_YORK),
        ("just outside of Craftsbury Common, VT, USA", "Craftsbury Common", "VT", NEW_YORK),
        ("town of Pawlet, Vermont", "Pawlet", "VT", NEW_YORK),
        ("st albans vt", "Saint Albans", "VT", NEW_YORK),
        ("Mt. Holly, Vt", "Mount Holly", "VT", NEW_YORK),
        ("Orwell N.Y.", "Orwell", "NY", NEW_YORK),
        ("Hardwick Mass", "Hardwick", "MA", NEW_YORK),
        ("Escanaba, Michigan", "Escanaba", "MI", "America/Detroit"),
        ("Iron Mountain MI", "Iron Mountain", "MI", "America/Menominee"),
        ("Medford, Wis.", "Medford", "WI", "America/Chicago"),
        ("K0G 1J0", "Kemptville", "ON", TORONTO),
        ("k0g1j0", "Kemptville", "ON", TORONTO),
        ("K0G", "Kemptville", "ON", TORONTO),
        ("our postal code is N0B 1S0", "Elora", "ON", TORONTO),
        ("Perth Ontario", "Perth", "ON", TORONTO),
        ("perth, ont., canada", "Perth", "ON", TORONTO),
        ("Thunder Bay ON", "Thunder Bay", "ON", TORONTO),
        ("Kenora ON", "Kenora", "ON", "America/Winnipeg"),
        ("Montréal QC", "Montreal", "QC", TORONTO),
        ("Cap-aux-Meules, Quebec", "Cap-aux-Meules", "QC", "America/Halifax"),
        ("Moncton N.B.", "Moncton", "NB", "America/Moncton"),
        ("A2V 1A1", "Labrador City", "NL", "America/Goose_Bay"),
        ("St. John's, Newfoundland", "St. John's", "NL", "America/St_Johns"),
    ],
)
def test_a_place_is_found(text: str, name: str, region: str, zone: str) -> None:
    found = places.find(text)
    assert found is not None
    assert (found.name, found.region, found.zone) == (name, region, zone)
    assert found.country == ("CA" if region in PROVINCE_NAMES else "US")
    assert not found.is_partial


@pytest.mark.parametrize(
    ("text", "latitude", "longitude"),
    [
        ("Hardwick VT", 44.5, -72.4),
        ("Marquette MI", 46.5, -87.4),
        ("Chardon OH", 41.6, -81.2),
        ("Perth Ontario", 44.9, -76.2),
        ("Moncton NB", 46.1, -64.8),
    ],
)
def test_a_found_town_lies_where_the_map_has_it(
    text: str, latitude: float, longitude: float
) -> None:
    found = places.find(text)
    assert found is not None
    assert found.latitude == pytest.approx(latitude, abs=0.11)
    assert found.longitude == pytest.approx(longitude, abs=0.11)


@pytest.mark.parametrize("text", ["Lanark Ontario", "lanark ON", "in Ontario", "Ontario, Canada"])
def test_a_canadian_town_that_is_not_known_gives_its_province(text: str) -> None:
    found = places.find(text)
    assert found == places.Place("Ontario", "ON", "CA", TORONTO)
    assert found is not None
    assert found.is_partial


@pytest.mark.parametrize(
    "text",
    [
        "",
        "   ",
        "hello",
        "Vermont",
        "ok",
        "hi",
        "come on",
        "HOLD ON",
        "12 gal at 2.2",
        "gathered 12345 gal",
        "12345 gal",
        "tree K0G 2 gal",
        "00000",
        "1234567",
        "09001",  # a ZIP of the armed forces lies nowhere
        "H0H 0H0",
        "Nowhereville VT",
        "\x00\ufffd",
        "\U0001f641",
        "Orwell VT " * 40,
    ],
)
def test_what_names_no_place_finds_none(text: str) -> None:
    assert places.find(text) is None


@pytest.mark.parametrize("text", ["Big Run", "Friendly", "home", "White River Junction", "Minden"])
def test_a_town_alone_is_never_certain(text: str) -> None:
    assert places.find(text) is None


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Hardwick", ["Hardwick VT", "Hardwick MA", "Hardwick MN"]),
        ("near orwell", ["Orwell VT", "Orwell NY", "Orwell OH"]),
        ("White River Junction", ["White River Junction VT"]),
        ("St. Johnsbury", ["Saint Johnsbury VT"]),
        ("Hardwik VT", ["Hardwick VT"]),
        ("saint jonsbury vermont", ["Saint Johnsbury VT"]),
        # The post tolerates this name in two towns of one state.
        ("Mill Village VT", ["Rutland VT", "Craftsbury Common VT"]),
        ("Hardwick VT", ["Hardwick VT"]),
        ("why", []),  # a town in Arizona, where nobody taps
        ("12 gal", []),
    ],
)
def test_candidates_are_what_may_be_meant(text: str, expected: list[str]) -> None:
    assert [f"{place.name} {place.region}" for place in places.candidates(text)] == expected


def test_a_zone_that_does_not_exist_is_passed_over() -> None:
    """The data names the town itself as the zone of 99634 (Napakiak, Alaska)."""
    assert by_zip("99634") is None


@pytest.mark.parametrize("code", PROVINCE_NAMES)
def test_every_province_has_a_clock(code: str) -> None:
    found = places.find(PROVINCE_NAMES[code])
    assert found is not None
    assert found.region == code
    ZoneInfo(found.zone)


@given(st.text(max_size=200))
def test_any_text_gives_a_place_or_none(text: str) -> None:
    found = places.find(text)
    assert found is None or places.candidates(text) == (found,)
