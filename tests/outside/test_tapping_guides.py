"""Sources: North American Maple Syrup Producers Manual (traditional and conservative guidelines);
van den Berg and others, UVM 2012; University of Maine Bulletin 7036; Leuty, Ontario 2014; Perkins,
UVM Proctor, 2024; UVM Extension (G. Cook); Ohio State University Extension, 2025."""

from __future__ import annotations

import pytest

from bot.reckoning.taps import Hole, drilling, next_hole, taps_by_guideline, taps_for


@pytest.mark.parametrize(
    ("across", "count"), [(11.9, 0), (12, 1), (17.9, 1), (18, 2), (25, 2), (40, 2)]
)
def test_the_manuals_conservative_guideline(across: float, count: int) -> None:
    assert taps_for(across) == count


@pytest.mark.parametrize(
    ("across", "count"),
    [(9.9, 0), (10, 1), (14.9, 1), (15, 2), (19.9, 2), (20, 3), (24.9, 3), (25, 4), (40, 4)],
)
def test_the_manuals_traditional_guideline(across: float, count: int) -> None:
    assert taps_for(across, "traditional") == count


@pytest.mark.parametrize(("across", "count"), [(9.9, 0), (10, 1), (19.9, 1), (20, 2), (26, 3)])
def test_maines_guideline(across: float, count: int) -> None:
    assert taps_for(across, "Maine") == count


@pytest.mark.parametrize(("centimetres", "count"), [(29, 0), (30, 1), (59, 1), (60, 2), (90, 2)])
def test_ontarios_guideline_is_in_centimetres(centimetres: float, count: int) -> None:
    assert taps_for(centimetres / 2.54, "Ontario") == count


def test_the_guidelines_disagree_on_a_20_inch_tree() -> None:
    """From one tap to three: we answer with the conservative, and can name the others."""
    assert set(taps_by_guideline(20).values()) == {1, 2, 3}


def test_depth_is_an_inch_and_a_half_and_never_over_two() -> None:
    """OSU Extension 2025, 1 1/2 in and no more than 2; UVM Extension, 1 1/2 to 2."""
    found = drilling()
    assert found.depth_in == 1.5
    assert found.depth_most_in == 2.0


LAST = Hole(around_in=10, height_in=36)
GIRTH_IN = 45.0


def _distances() -> tuple[float, float]:
    found = next_hole([LAST], GIRTH_IN)
    assert found is not None
    return abs(found.around_in - LAST.around_in), abs(found.height_in - LAST.height_in)


@pytest.mark.parametrize(
    ("sideways_in", "upward_in"),
    [
        (4, 12),  # the far end of Perkins, UVM Proctor, 2024: 2 to 4 and 6 to 12
        (4, 6),  # the far end of OSU Extension, 2025: 2 to 4 and about 6
        (1, 12),  # Ontario, 2014
    ],
)
def test_the_hole_we_suggest_keeps_most_guides_distances(
    sideways_in: float, upward_in: float
) -> None:
    sideways, upward = _distances()
    assert sideways >= sideways_in
    assert upward >= upward_in


def test_maine_asks_for_more_distance_than_we_do() -> None:
    """University of Maine: 6 in and 24 in, which leaves no height between 2 and 4 ft to go to
    from a hole at 3 ft. The guides disagree; ours is Vermont's."""
    sideways, upward = _distances()
    assert sideways < 6
    assert upward < 24
