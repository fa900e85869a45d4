"""Every how-to answers in plain trade words, fits its segments, and carries its caution."""

from __future__ import annotations

import re
from functools import cache
from itertools import product
from pathlib import Path
from typing import Final

import pytest

from bot.answers import howto
from bot.answers.howto import HOWTO, SOURCES, Known, Told
from bot.answers.howto.told import HINT
from bot.reckoning.finish import finish_f
from bot.wording.gsm import is_gsm, segments
from bot.wording.style import Units

# The how-to topics that the reading may give.
TOPICS: Final = (
    "identify_tree",
    "when_to_tap",
    "where_to_drill",
    "how_deep",
    "which_bit",
    "setting_spile",
    "containers",
    "cleaning",
    "storing",
    "boiling",
    "finishing",
    "filtering",
    "bottling",
    "grading",
    "season_end",
    "pulling_spiles",
    "safety",
    "other_species",
)

MONTHS: Final = range(1, 13)
REGIONS: Final = (None, "VT", "NH", "OH", "KY", "ME", "ON", "QC", "NL", "VI")
UNITS: Final[tuple[Units, ...]] = ("us", "metric")
BITS: Final = (None, 19 / 64, 5 / 16, 3 / 8, 7 / 16)
# (water boils, elevation, taps, pail, kinds of tree): nothing known, all known, half known.
Gear = tuple[float | None, float | None, int | None, float | None, tuple[str, ...]]
GEAR: Final[tuple[Gear, ...]] = (
    (None, None, None, None, ()),
    (210.4, 1500.0, 1200, 3.25, ("red maple", "silver maple")),
    (None, -280.0, 1, 2.0, ("black walnut",)),
    (214.0, None, 14, 1.5, ("birch", "sugar maple")),
)


@cache
def everybody(units: str = "") -> list[Known]:
    """People of every kind: one per mix of month, region, units, bit and gear."""
    return [
        Known(
            month=month,
            region=region,
            units=spoken,
            bit_in=bit_in,
            water_boils_f=water_boils_f,
            elevation_ft=elevation_ft,
            taps=taps,
            bucket_gallons=bucket_gallons,
            species=species,
        )
        for month, region, spoken, bit_in, (
            water_boils_f,
            elevation_ft,
            taps,
            bucket_gallons,
            species,
        ) in product(MONTHS, REGIONS, UNITS, BITS, GEAR)
        if units in ("", spoken)
    ]


@cache
def everything_said(topic: str, units: str = "") -> set[Told]:
    """The different answers that anybody gets."""
    return {HOWTO[topic](known) for known in everybody(units)}


def texts(told: Told) -> tuple[str, ...]:
    return (told.opening, *told.more)


@cache
def every_text(topic: str, units: str = "") -> set[str]:
    return {text for told in everything_said(topic, units) for text in texts(told)}


def in_march(region: str | None = None, **known: float | str | int | tuple[str, ...]) -> Known:
    return Known(month=3, region=region, **known)  # type: ignore[arg-type]  # tests' own words


def test_there_is_an_answer_for_every_howto_and_for_nothing_else() -> None:
    assert tuple(HOWTO) == TOPICS


def test_every_howto_has_ways_of_asking_it() -> None:
    taught = Path(howto.__file__).parents[2] / "reading" / "topics"
    assert {path.stem for path in taught.glob("howto_*.txt")} == {f"howto_{t}" for t in TOPICS}


@pytest.mark.parametrize("topic", TOPICS)
def test_every_text_is_in_the_cheap_alphabet(topic: str) -> None:
    assert [text for text in every_text(topic) if not is_gsm(text)] == []


@pytest.mark.parametrize("topic", TOPICS)
def test_no_text_is_longer_than_two_segments(topic: str) -> None:
    assert [text for text in every_text(topic) if segments(text) > 2] == []


# What a caution or a table makes longer than one segment.
LONGER: Final = {"boiling", "finishing", "grading", "safety"}


@pytest.mark.parametrize("topic", [topic for topic in TOPICS if topic not in LONGER])
def test_the_first_text_fits_one_segment_for_most_people(topic: str) -> None:
    everyone = everybody()
    in_one = sum(segments(HOWTO[topic](known).opening) == 1 for known in everyone)
    assert in_one / len(everyone) >= 0.9


@pytest.mark.parametrize("topic", TOPICS)
def test_the_first_text_says_how_to_get_the_rest(topic: str) -> None:
    told = HOWTO[topic](in_march())
    assert told.more
    assert told.opening == told.first + HINT


def test_without_a_rest_nothing_more_is_offered() -> None:
    assert Told("Cold and covered.").opening == "Cold and covered."


@pytest.mark.parametrize("topic", TOPICS)
def test_no_two_texts_of_an_answer_are_the_same(topic: str) -> None:
    for told in everything_said(topic):
        assert len(set(texts(told))) == len(texts(told))


@pytest.mark.parametrize("topic", TOPICS)
def test_texts_end_as_sentences_and_do_not_cheer(topic: str) -> None:
    for text in every_text(topic):
        assert text.endswith((".", HINT))
        assert "!" not in text
        assert "  " not in text
        assert not re.search(r"\b(None|nan|inf)\b|\{|\}", text)


@pytest.mark.parametrize("topic", TOPICS)
def test_no_word_of_the_phone_network_is_asked_for(topic: str) -> None:
    taken = "stop|stopall|unsubscribe|cancel|end|quit|revoke|optout|start|unstop|help|info|yes"
    asked = re.compile(rf'(?i)\b(text|reply|send|answer|say)( with)? "?({taken})\b')
    shouted = re.compile(rf"\b({taken.upper()})\b")
    for text in every_text(topic):
        assert not asked.search(text)
        assert not shouted.search(text)


# American measures: a number with F, an inch that no bracket explains, gallons and the like.
AMERICAN: Final = re.compile(
    r"\d ?F\b|\bF is\b|\d in\b(?!\)| one day| 20\d\d)"
    r"|\b(gal|gallons?|qt|quarts?|pints?|ft|lb|fl oz|square foot)\b|\d (feet|foot)\b"
)


@pytest.mark.parametrize("topic", TOPICS)
def test_metric_people_are_spoken_to_in_metric(topic: str) -> None:
    assert [text for text in every_text(topic, "metric") if AMERICAN.search(text)] == []


@pytest.mark.parametrize("topic", TOPICS)
def test_american_people_are_spoken_to_in_their_measures(topic: str) -> None:
    metric = re.compile(r"\d ?C\b|\d (cm|mm|L|mL|kg)\b|\blitres?\b")
    assert [text for text in every_text(topic, "us") if metric.search(text)] == []


@pytest.mark.parametrize("topic", TOPICS)
def test_every_answer_names_its_sources(topic: str) -> None:
    named = re.compile(
        r"Extension|University|UVM|Vermont|Ontario|OMAFRA|CFIA|USDA|EPA|Cornell|Northern Woodlands"
        r"|mapleresearch|Maple Syrup Institute|Perkins|Peters|Mathews|Farrell|Rechlin|Catskill"
        r"|Compendium|Pennsylvania|legal density|extension pages"
    )
    unsourced = ("common practice, no source", "from memory", "computed", "our own")
    sources = SOURCES[topic]
    assert any(named.search(source) for source in sources)
    for source in sources:
        assert named.search(source) or source.startswith(unsourced), source


# What must be said at once, whoever asks, because the work can hurt.
AT_ONCE: Final = {
    "boiling": ("Outdoors or well vented", "Never leave it", "burns", "children"),
    "finishing": ("hydrometer", "burns", "gloves", "children"),
    "filtering": ("burns", "loves"),
    "bottling": ("never under", "burns", "loves"),
    "cleaning": ("bleach", "Never mix bleach", "rinse"),
    "containers": ("lead", "test it first", "Food grade"),
    "where_to_drill": ("Two hands", "feet firm"),
    "safety": ("fumes kill", "house, tent", "Never leave the fire", "burns", "911"),
    "grading": ("I can't grade by text",),
    "other_species": ("tree",),
}


@pytest.mark.parametrize("topic", AT_ONCE)
def test_the_caution_is_in_the_first_text(topic: str) -> None:
    for told in everything_said(topic):
        assert [words for words in AT_ONCE[topic] if words not in told.first] == []


# What must be said somewhere in the answer.
SOMEWHERE: Final = {
    "identify_tree": ("Don't boil the sap of a tree you are not sure of",),
    "when_to_tap": ("Two hands on the drill",),
    "where_to_drill": ("never drill overhead", "sick"),
    "how_deep": ("Two hands", "Never overhead", "brown"),
    "which_bit": ("Hold it firm",),
    "setting_spile": ("Don't pound",),
    "containers": ("children", "galvanized"),
    "cleaning": ("Gloves", "galvanized", "clean water"),
    "storing": ("pour it out",),
    "boiling": ("fumes kill", "are milk", "local codes", "burn permits"),
    "bottling": ("throw it out", "can't tell a safe jar"),
    "grading": ("promise no grade", "rules change"),
    "season_end": ("pour it out",),
    "safety": ("lead", "local codes", "burn permit", "not pasteurized", "nut allergy", "owner"),
    "other_species": ("nut allergy",),
}


@pytest.mark.parametrize("topic", SOMEWHERE)
def test_the_other_cautions_are_in_the_answer(topic: str) -> None:
    for told in everything_said(topic):
        said = " ".join(texts(told)).replace("Galvanized", "galvanized")
        assert [words for words in SOMEWHERE[topic] if words not in said] == []


@pytest.mark.parametrize("topic", ["containers", "bottling", "identify_tree", "safety"])
def test_what_a_text_cannot_tell_is_left_to_those_who_can(topic: str) -> None:
    assert "your extension office" in " ".join(HOWTO[topic](in_march("OH")).more)
    assert "your maple association" in " ".join(HOWTO[topic](in_march("ON")).more)


def test_the_rules_for_selling_are_left_to_the_department_of_the_place() -> None:
    asked = {
        region: " ".join(HOWTO["grading"](in_march(region)).more) for region in (None, "NY", "QC")
    }
    assert "your state agriculture department" in asked["NY"]
    assert "your provincial agriculture ministry" in asked["QC"]
    assert "your state or provincial agriculture department" in asked[None]


def test_no_answer_vouches_for_a_jar_a_grade_or_the_law() -> None:
    vouching = re.compile(
        r"(?i)\b(guarantee|certainly|perfectly safe|is safe to eat|it is safe|is legal"
        r"|your syrup is (golden|amber|dark|grade)|successfully|definitely)"
    )
    for topic in TOPICS:
        assert [text for text in every_text(topic) if vouching.search(text)] == []


def test_the_legal_density_is_that_of_the_place() -> None:
    assert "66.9 Brix" in HOWTO["finishing"](in_march("VT")).first
    assert "66 Brix" in HOWTO["finishing"](in_march("OH")).first
    assert "Vermont asks 66.9 to 68.9 Brix" in " ".join(HOWTO["grading"](in_march("VT")).more)
    assert "Ontario asks 66 Brix" in " ".join(HOWTO["grading"](in_march("ON")).more)


def test_the_finish_is_reckoned_from_the_persons_own_water() -> None:
    """210.4 F in Vermont: 217.9 F, for 66.9 Brix."""
    first = HOWTO["finishing"](in_march("VT", water_boils_f=210.4)).first
    assert "By your water at 210.4F it is syrup at 217.9F (66.9 Brix)" in first
    assert f"{finish_f(210.4, 66.9):.1f}" == "217.9"
    assert "217.9F" in " ".join(HOWTO["boiling"](in_march("VT", water_boils_f=210.4)).more)


def test_the_finish_in_celsius_is_the_same_heat() -> None:
    """210.4 F is 99.1 C; 217.9 F is 103.3 C."""
    known = in_march("VT", water_boils_f=210.4, units="metric")
    assert "at 99.1C it is syrup at 103.3C" in HOWTO["finishing"](known).first


def test_height_gives_a_first_guess_where_no_water_was_boiled() -> None:
    """Water boils at 209.2 F at 1500 ft on a standard day; 7.5 F over it is 216.7."""
    first = HOWTO["finishing"](in_march("VT", elevation_ft=1500.0)).first
    assert "7.5F above boiling water" in first
    assert "about 216.7F" in first


def test_a_measured_boil_beats_the_height() -> None:
    first = HOWTO["finishing"](in_march("VT", water_boils_f=210.4, elevation_ft=1500.0)).first
    assert "217.9F" in first
    assert "At your height" not in first


def test_the_least_bottling_heat_is_never_rounded_down() -> None:
    """180 F is 82.2 C: a Canadian is told 83."""
    assert "never under 180F" in HOWTO["bottling"](in_march()).first
    assert "never under 83C" in HOWTO["bottling"](in_march(units="metric")).first


def test_storing_heat_is_never_rounded_up() -> None:
    """38 F is 3.3 C and 35 F is 1.7 C: a Canadian is told 3 and 1."""
    told = HOWTO["storing"](in_march(units="metric"))
    assert "at 3C or under" in told.first
    assert "up to 1C 7 days" in told.more[0]


def test_the_persons_own_bit_is_named() -> None:
    assert "your 5/16 in bit" in HOWTO["how_deep"](in_march(bit_in=5 / 16)).first
    assert (
        "your 11 mm (7/16 in) bit"
        in HOWTO["how_deep"](in_march(bit_in=7 / 16, units="metric")).first
    )
    assert "Mark the bit" in HOWTO["how_deep"](in_march()).first


def test_an_older_bit_is_fine_for_older_spiles_and_heals_slower() -> None:
    older, today = in_march(bit_in=7 / 16), in_march(bit_in=5 / 16)
    assert "7/16 in bit suits older bucket spiles" in HOWTO["which_bit"](older).first
    assert "5/16 in bit is right for today's spiles" in HOWTO["which_bit"](today).first
    assert "take longer to close" in " ".join(HOWTO["pulling_spiles"](older).more)
    assert "take longer to close" not in " ".join(HOWTO["pulling_spiles"](today).more)


def test_a_bit_that_fits_no_spile_is_called_so() -> None:
    assert "3/8 in bit fits no common spile" in HOWTO["which_bit"](in_march(bit_in=0.375)).first


def test_a_small_health_spout_bit_is_known() -> None:
    first = HOWTO["which_bit"](in_march(bit_in=19 / 64)).first
    assert "19/64 in bit is right only for spiles made for it" in first


def test_august_is_no_time_to_tap_and_february_is() -> None:
    august = HOWTO["when_to_tap"](Known(month=8, region="VT")).first
    february = HOWTO["when_to_tap"](Known(month=2, region="VT")).first
    assert august.startswith("Not in August")
    assert "several nights in the 20s" in february
    assert "tap." in february


def test_december_is_early_in_vermont_and_the_season_in_kentucky() -> None:
    assert "December is early" in HOWTO["when_to_tap"](Known(month=12, region="VT")).first
    assert "tap." in HOWTO["when_to_tap"](Known(month=12, region="KY")).first
    assert "Kentucky" in HOWTO["when_to_tap"](Known(month=12, region="KY")).more[0]


def test_april_is_late_to_tap() -> None:
    assert HOWTO["when_to_tap"](Known(month=4, region="VT")).first.startswith("Late")


def test_the_states_dates_are_those_of_the_survey() -> None:
    """USDA NASS, Quick Stats: Ohio from 11 and 14 February to 16 and 27 March."""
    assert "In Ohio sap began Feb 11 to 14" in HOWTO["when_to_tap"](in_march("OH")).more[0]
    assert "In Ohio the last sap came Mar 16 to 27" in HOWTO["season_end"](in_march("OH")).more[-1]
    assert "Vermont sap began Feb 23 in" in HOWTO["when_to_tap"](in_march("VT")).more[0]
    assert "Wisconsin sap began Mar 4 to 16" in HOWTO["when_to_tap"](in_march("WI")).more[0]
    assert "Maine sap began Feb 26 to Mar 2" in HOWTO["when_to_tap"](in_march("ME")).more[0]


def test_where_there_is_no_survey_no_date_is_made_up() -> None:
    told = HOWTO["when_to_tap"](in_march("ON"))
    assert not any("survey" in text for text in told.more)


def test_the_end_is_near_in_april_far_in_january_and_past_in_june() -> None:
    first = {month: HOWTO["season_end"](Known(month=month)).first for month in (1, 4, 6)}
    assert first[1].startswith("Not yet, in January")
    assert first[4].startswith("Pull when buds swell")
    assert "over nearly everywhere" in first[6]


def test_the_persons_own_early_maples_are_named_at_the_end() -> None:
    told = HOWTO["season_end"](in_march(species=("silver maple", "sugar maple")))
    assert "Watch your silver maples" in told.more[0]
    assert "Watch red and silver maples" in HOWTO["season_end"](in_march()).more[0]


def test_all_the_persons_taps_are_to_be_pulled() -> None:
    assert "Pull all 14 in one day" in HOWTO["pulling_spiles"](in_march(taps=14)).first
    assert HOWTO["pulling_spiles"](in_march(taps=1)).first.startswith("Pull it in one day")
    assert "Pull all of them" in HOWTO["pulling_spiles"](in_march()).first


def test_in_mid_season_pulling_is_questioned_and_later_it_is_urged() -> None:
    assert "be sure it is over" in HOWTO["pulling_spiles"](Known(month=2)).more[0]
    assert "The sooner the better" in HOWTO["pulling_spiles"](Known(month=5)).more[0]


def test_trees_are_told_by_leaf_in_summer_and_by_twig_in_winter() -> None:
    assert HOWTO["identify_tree"](Known(month=7)).first.startswith("Sugar maple: leaves")
    assert HOWTO["identify_tree"](Known(month=2)).first.startswith("Look at the twigs")


def test_the_persons_own_trees_are_answered_for() -> None:
    """Red maple at 1.5 Brix takes 59 gal for one of 66.9 (mass balance), said as 60."""
    first = HOWTO["other_species"](in_march("VT", species=("sugar maple", "red maple"))).first
    assert "red maple tests about 1.5 Brix, so 60 of sap to 1" in first
    walnut = HOWTO["other_species"](in_march(species=("black walnut",))).first
    assert "nut allergy" in walnut


def test_a_tree_is_known_by_its_other_names() -> None:
    assert (
        "box elder tests about 1 to 2 Brix"
        in HOWTO["other_species"](in_march(species=("Manitoba maple",))).first
    )
    assert (
        "Watch your red maples" in HOWTO["season_end"](in_march(species=("swamp maple",))).more[0]
    )


def test_a_tree_that_nothing_is_known_of_gets_the_answer_for_all() -> None:
    assert HOWTO["other_species"](in_march(species=("oak", "sugar maple"))).first.startswith(
        "Any maple may be tapped"
    )


def test_the_pail_is_weighed_full() -> None:
    """2 gal of 2 Brix sap at 8.40 lb is 17 lb; 8 kg."""
    us = " ".join(HOWTO["setting_spile"](in_march(bucket_gallons=2.0)).more)
    metric = " ".join(HOWTO["setting_spile"](in_march(bucket_gallons=2.0, units="metric")).more)
    assert "Your 2 gal pail holds 17 lb of sap" in us
    assert "Your 7.6 L pail holds 8 kg of sap" in metric


def test_maine_keeps_farther_from_old_holes() -> None:
    assert (
        "6 in to the side of any old hole and 24 in"
        in HOWTO["where_to_drill"](in_march("ME")).first
    )
    assert (
        "4 in to the side of any old hole and 12 in"
        in HOWTO["where_to_drill"](in_march("VT")).first
    )


def test_thick_syrup_takes_a_cup_to_the_gallon() -> None:
    """1 gal at 70 Brix to 66.9: 8.0 fl oz of water, by mass balance."""
    assert "a gallon at 70 takes some 8 fl oz" in " ".join(HOWTO["finishing"](in_march("VT")).more)


def test_a_month_that_is_none_is_refused() -> None:
    with pytest.raises(ValueError, match="Month is 13, but should be 1 to 12"):
        Known(month=13)
