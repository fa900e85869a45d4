"""The legal density, by where the syrup is made."""

from __future__ import annotations

import pytest

from bot.reckoning.law import legal_density


@pytest.mark.parametrize(
    ("region", "least", "most"),
    [
        ("VT", 66.9, 68.9),
        ("NH", 66.9, 68.9),
        ("NY", 66.0, 68.9),
        ("ME", 66.0, 68.9),
        ("OH", 66.0, 68.9),
        ("ON", 66.0, None),
        ("QC", 66.0, 68.9),
        ("NB", 66.0, 68.9),
    ],
)
def test_each_place_has_its_own_line(region: str, least: float, most: float | None) -> None:
    found = legal_density(region)
    assert (found.min_brix, found.max_brix) == (least, most)


def test_a_place_not_yet_known_has_the_federal_line_and_no_code() -> None:
    found = legal_density(None)
    assert (found.region, found.min_brix, found.max_brix) == (None, 66.0, 68.9)


def test_a_state_without_its_own_law_names_the_federal_source() -> None:
    assert "21 CFR 168.140" in legal_density("OH").source


def test_a_province_without_its_own_law_names_canadas_source() -> None:
    assert "Canadian Grade Compendium" in legal_density("NB").source


@pytest.mark.parametrize("region", ["", "vt", "Vermont", "XX"])
def test_what_is_no_state_or_province_is_refused(region: str) -> None:
    with pytest.raises(ValueError, match=f"Region is {region!r}"):
        legal_density(region)


def test_thick_syrup_is_over_the_line_in_vermont_but_ontario_has_none() -> None:
    assert legal_density("VT").judge(69.5) == "too thick"
    assert legal_density("ON").judge(69.5) == "within"


@pytest.mark.parametrize("brix", [66.9, 68.9, 60.4 + 66.9 - 60.4, 66.9 - 1e-9])
def test_syrup_on_the_line_is_within_it(brix: float) -> None:
    """Binary fractions must not make a law-breaker of anyone."""
    assert legal_density("VT").judge(brix) == "within"
