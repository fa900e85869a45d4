"""How many taps, where, how deep, and what for."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot import figures
from bot.reckoning import taps
from bot.reckoning.species import SPECIES, species_named
from bot.reckoning.taps import Hole, PlannedTree

ACROSS = st.floats(1, 100)
GUIDELINES = st.sampled_from(sorted(figures.TAP_GUIDELINES_IN))


@given(ACROSS, ACROSS, GUIDELINES)
def test_a_thicker_tree_never_bears_fewer_taps(one: float, other: float, guideline: str) -> None:
    thin, thick = sorted((one, other))
    assert taps.taps_for(thin, guideline) <= taps.taps_for(thick, guideline)


@given(ACROSS)
def test_the_conservative_guideline_never_taps_more_than_the_traditional(across: float) -> None:
    assert taps.taps_for(across) <= taps.taps_for(across, "traditional")


@given(ACROSS)
def test_round_and_across_are_the_same_tree(across: float) -> None:
    assert taps.diameter_in(across * math.pi) == pytest.approx(across)


# Inches around as a tape says them, and taps by the conservative and traditional guidelines.
@pytest.mark.parametrize(
    ("around", "conservative", "traditional"),
    [(31.4, 0, 1), (37.7, 1, 1), (47.1, 1, 2), (56.5, 2, 2), (62.8, 2, 3), (56.0, 1, 2)],
)
def test_a_girth_read_off_a_tape_reaches_its_guideline(
    around: float, conservative: int, traditional: int
) -> None:
    """56.5 round is 17.98 across, and no reason to lose a tap; 56 is a tape's half inch less."""
    across = taps.diameter_in(around)
    assert taps.taps_for(across) == conservative
    assert taps.taps_for(across, "traditional") == traditional


def test_all_guidelines_are_told_the_conservative_one_first() -> None:
    found = taps.taps_by_guideline(26)
    assert next(iter(found)) == "conservative"
    assert found == {
        "conservative": 2,
        "traditional": 4,
        "Maine": 3,
        "Ontario": 2,
        "cautious": 1,
    }


@pytest.mark.parametrize(("inches", "asked"), [(16, False), (30, False), (31, True), (57, True)])
def test_over_thirty_inches_it_is_asked_round_or_across(inches: float, asked: bool) -> None:
    assert taps.round_or_across(inches) is asked


@pytest.mark.parametrize("across", [0, -3, 101, float("nan")])
def test_an_impossible_tree_is_refused(across: float) -> None:
    with pytest.raises(ValueError, match="The tree is"):
        taps.taps_for(across)


def test_an_unknown_guideline_is_refused_with_those_that_are_known() -> None:
    with pytest.raises(ValueError, match="should be one of: conservative, traditional"):
        taps.taps_for(16, "greedy")


def test_the_bit_is_the_spiles_own_size() -> None:
    assert taps.drilling(7 / 16).bit_in == 7 / 16


def test_a_spile_of_no_known_size_gets_todays_bit() -> None:
    found = taps.drilling()
    assert (found.bit_in, found.depth_in, found.depth_most_in) == (5 / 16, 1.5, 2.0)


@pytest.mark.parametrize("spile_in", [0.2, 1.0, 5.0])
def test_a_spile_of_impossible_size_is_refused(spile_in: float) -> None:
    with pytest.raises(ValueError, match="The spile is"):
        taps.drilling(spile_in)


OLD = Hole(around_in=0, height_in=36)


@pytest.mark.parametrize(
    ("hole", "clear"),
    [
        (Hole(0, 36), False),  # the same hole
        (Hole(0, 60), False),  # straight above, in the same column
        (Hole(4, 36), False),  # beside it, too near for its height
        (Hole(4, 48), True),  # over and up
        (Hole(4, 24), True),  # over and down
        (Hole(3, 48), False),
        (Hole(6, 36), True),  # well to the side
        (Hole(46, 36), False),  # 4 in the other way around
        (Hole(46, 48), True),
        (Hole(25, 36), True),  # the far side
    ],
)
def test_a_hole_is_clear_over_and_up_or_well_to_the_side(hole: Hole, clear: bool) -> None:
    assert taps.is_clear(hole, [OLD], girth_in=50) is clear


def test_the_first_hole_of_a_tree_is_clear_anywhere() -> None:
    assert taps.is_clear(OLD, [], girth_in=40)


@given(st.floats(0, 50), st.floats(24, 48), st.floats(38, 120))
def test_the_next_hole_is_clear_of_last_years(
    around: float, height: float, girth_in: float
) -> None:
    last = Hole(around % girth_in, height)
    found = taps.next_hole([last], girth_in)
    assert found is not None
    assert taps.is_clear(found, [last], girth_in)
    assert 24 <= found.height_in <= 48


@pytest.mark.parametrize(("last", "next_in"), [(48, 36), (24, 36), (30, 42)])
def test_the_next_hole_goes_a_foot_up_or_down_to_stay_within_reach(
    last: float, next_in: float
) -> None:
    found = taps.next_hole([Hole(0, last)], girth_in=50)
    assert found is not None
    assert found.height_in == next_in


def test_years_of_holes_go_around_the_trunk_and_each_is_clear_of_all_before() -> None:
    holes = [Hole(0, 30)]
    while (found := taps.next_hole(holes, girth_in=50)) is not None:
        assert taps.is_clear(found, holes, girth_in=50)
        holes.append(found)
    # At least as many as 6 in to the side alone would give, once around.
    assert len(holes) >= 50 // 6


def test_without_last_years_hole_there_is_nothing_to_keep_clear_of() -> None:
    with pytest.raises(ValueError, match="Old holes are missing"):
        taps.next_hole([], girth_in=50)


def test_a_plan_counts_a_spile_and_a_pail_for_each_tap() -> None:
    plan = taps.plan(
        [PlannedTree("1", 16, "sugar maple"), PlannedTree("2", 20), PlannedTree("3", 9)], 66.9
    )
    assert plan.taps == {"1": 1, "2": 2, "3": 0}
    assert (plan.total_taps, plan.spiles, plan.pails) == (3, 3, 3)


def test_a_plan_stores_two_big_days_and_gives_sap_and_syrup_as_ranges() -> None:
    """5 to 15 gal a tap (University of Maine), 2 on a big day (Penn State Extension)."""
    plan = taps.plan([PlannedTree("1", 20, "sugar maple")], 66.9)
    assert (plan.storage_gallons, plan.sap_low, plan.sap_high) == (8.0, 10.0, 30.0)
    assert plan.syrup_low == pytest.approx(10 / 44.16, rel=1e-3)
    assert plan.syrup_high == pytest.approx(30 / 35.26, rel=1e-3)


def test_a_red_maple_promises_less_syrup_than_a_sugar_maple() -> None:
    sugar = taps.plan([PlannedTree("1", 14, "sugar maple")], 66.9)
    red = taps.plan([PlannedTree("1", 14, "red maple")], 66.9)
    assert red.syrup_low < sugar.syrup_low


def test_a_tree_of_unknown_kind_is_reckoned_as_a_sugar_maple() -> None:
    assert taps.plan([PlannedTree("1", 14, "elm")], 66.9) == taps.plan(
        [PlannedTree("1", 14, "sugar maple")], 66.9
    )


def test_a_plan_for_no_trees_is_empty_and_not_an_error() -> None:
    plan = taps.plan([], 66.9)
    assert (plan.total_taps, plan.storage_gallons, plan.syrup_high) == (0, 0, 0)


def test_a_label_that_comes_twice_is_refused() -> None:
    with pytest.raises(ValueError, match="Tree '1' is there twice"):
        taps.plan([PlannedTree("1", 14), PlannedTree("1", 16)], 66.9)


@pytest.mark.parametrize(
    ("gallons", "count", "days", "doubtful"),
    [
        (40, 10, 1, False),
        (41, 10, 1, True),
        (900, 10, 1, True),
        (41, 10, 2, False),
        (0, 1, 1, False),
    ],
)
def test_over_four_gallons_a_tap_a_day_is_doubtful(
    gallons: float, count: int, days: int, doubtful: bool
) -> None:
    assert taps.doubtful_day(gallons, count, days) is doubtful


def test_more_than_the_pails_hold_is_doubtful() -> None:
    assert taps.doubtful_pails(25, 12, 2.0)
    assert not taps.doubtful_pails(24, 12, 2.0)


def test_no_taps_are_nothing_to_doubt_by() -> None:
    with pytest.raises(ValueError, match="Taps is 0 in number"):
        taps.doubtful_day(10, 0)


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("Sugar  Maple", "sugar maple"),
        ("rock maple", "sugar maple"),
        ("Manitoba maple", "box elder"),
        ("boxelder", "box elder"),
        ("yellow birch", "birch"),
    ],
)
def test_a_tree_goes_by_several_names(said: str, name: str) -> None:
    found = species_named(said)
    assert found is not None
    assert found.name == name


@pytest.mark.parametrize("said", ["soft maple", "elm", ""])
def test_a_name_that_is_two_trees_or_none_is_not_guessed(said: str) -> None:
    assert species_named(said) is None


def test_every_kind_of_tree_says_where_its_sugar_is_from() -> None:
    for kind in SPECIES.values():
        assert kind.source
        assert 0 < kind.brix_low <= kind.brix_high < 5
