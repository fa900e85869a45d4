"""What was understood is said back, for every kind, in a segment and within the alphabet."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime

import pytest

from bot.entry import Entry
from bot.reading.kinds import KINDS
from bot.standing import SEASON_OVER
from bot.standing.gear import KINDS as GEAR
from bot.wording.gsm import is_gsm, segments
from bot.wording.receipts import RECEIPTS, line, lines
from bot.wording.style import Style

TODAY = date(2027, 3, 9)
US, METRIC = Style("us", TODAY), Style("metric", TODAY)
AT = datetime.combine(TODAY, datetime.min.time().replace(hour=14))


def told(kind: str, **more: object) -> Entry:
    """An entry of today at 2 pm."""
    return replace(Entry(kind=kind, on=TODAY, at_local=AT), **more)  # type: ignore[arg-type]


MORE = {"manner": "add", "more": True}
JARS = {"jars": [{"count": 6, "gallons_each": 0.125}, {"count": 1, "gallons_each": 0.0625}]}
SAID = [
    (told("sap", gallons=12.0, brix=2.2), "12 gal at 2.2, Tue", "45.4 L at 2.2, Tue"),
    (told("sap", gallons=0.0), "no sap, Tue", "no sap, Tue"),
    (told("sap", gallons=2.75, tree="14"), "tree 14: 2.75 gal, Tue", None),
    (told("sap", gallons=0.0, lot="ridge"), "no sap from ridge, Tue", None),
    (told("sugar", brix=1.85), "sap at 1.85 Brix, Tue", None),
    (told("sugar", brix=2.9, tree="Big Ann"), "Big Ann at 2.9 Brix, Tue", None),
    (told("poured_out", gallons=5.0), "5 gal poured out, Tue", None),
    (told("poured_out"), "sap poured out, Tue", None),
    (told("boil", detail={"state": "start"}), "fire lit 2 pm, Tue", None),
    (told("boil", detail={"state": "end"}), "boil over, Tue", None),
    (told("boil", gallons=40.0, hours=7.0), "boiled 40 gal in 7 h, Tue", None),
    (told("boil", hours=6.0), "boiled 6 h, Tue", None),
    (told("syrup", gallons=0.5, brix=66.9), "2 qt of syrup at 66.9 Brix, Tue", None),
    (
        told("jars", gallons=0.8125, detail=JARS),
        "6 pints, 1 half pint bottled (6 1/2 pints), Tue",
        None,
    ),
    (told("taps_set", count=1, detail={"manner": "add"}), "1 tap in, Tue", None),
    (told("taps_set", count=6, detail=MORE), "6 more taps in, Tue", None),
    (told("taps_set", count=6, lot="ridge"), "6 taps in (ridge), Tue", None),
    (told("taps_pulled", detail={"all": True}), "all taps out, Tue", None),
    (told("taps_pulled", count=5), "5 taps out, Tue", None),
    (
        told("tree", tree="7", detail={"species": "sugar maple", "diameter_in": 16.0, "taps": 1}),
        "tree 7: sugar maple, 16 in across, 1 tap",
        "tree 7: sugar maple, 40.6 cm across, 1 tap",
    ),
    (told("tree", tree="7"), "tree 7 noted", None),
    (told("store_temp", fahrenheit=41.0), "stored sap at 41F, Tue", "stored sap at 5C, Tue"),
    (told("water_boils", fahrenheit=210.4), "water boils at 210.4F, Tue", None),
    (told("pan_temp", fahrenheit=216.0), "pan at 216F, Tue", None),
    (told("cost", dollars=12.0, detail={"item": "lids"}), "$12 for lids, Tue", None),
    (told("cost", dollars=7.49), "$7.49, Tue", None),
    (told("fuel", cords=0.25), "1/4 cord burned, Tue", None),
    (told("fuel", propane_lb=20.0), "20 lb propane burned, Tue", "9.1 kg propane burned, Tue"),
    (told("sign", detail={"sign": "buds"}), "buds noted, Tue", None),
    (told("bucket_size", gallons=2.0), "buckets hold 2 gal", None),
    (
        told("place", detail={"name": "Orwell", "region": "VT", "latitude": 43.8}),
        "Orwell VT",
        None,
    ),
    (told("place", detail={"name": "Ontario", "region": "ON", "latitude": None}), "Ontario", None),
    (told("helper", detail={"address": "+15550100012"}), "+15550100012 invited", None),
    (told("pan", detail={"value": 6.0, "said": "2 x 3 ft"}), "pan 2 x 3 ft", None),
    (told("elevation", detail={"value": 1200.0}), "trees at 1200 ft", "trees at 366 m"),
    (told("bit", detail={"value": 0.4375}), "7/16 in bit", "11.1 mm bit"),
    (told("stem", detail={"value": 38.0}), "sap hydrometer made for 38F", None),
    (told("fire", detail={"value": "wood"}), "you boil on wood", None),
    (told("barometer", detail={"value": 30.1}), "barometer 30.1 in, Tue", None),
    (told("price", detail={"value": 60.0}), "price $60 a gal", "price $15.85 a L"),
    (told("barrel_wash", count=3, gallons=2.0), "barrel wash 2 gal 3, Tue", None),
]  # fmt: skip


@pytest.mark.parametrize(("entry", "us", "metric"), SAID, ids=[one[1] for one in SAID])
def test_a_receipt(entry: Entry, us: str, metric: str | None) -> None:
    assert line(entry, US) == us
    if metric is not None:
        assert line(entry, METRIC) == metric
    for style in (US, METRIC):
        said = line(entry, style)
        assert is_gsm(said)
        assert segments(said) == 1


NOT_KEPT = {"undo", "amend", "question", "stop", "start", "help", "chat", "join"}


def test_every_kind_that_is_kept_has_its_own_receipt() -> None:
    # Gear, wishes and a season's end are told as chat or questions, and kept under their own names.
    told_otherwise = {*GEAR, "wish", SEASON_OVER}
    assert {kind.kind for kind in KINDS} - NOT_KEPT | told_otherwise == set(RECEIPTS)


def test_the_day_is_said_once_while_it_stays_the_same() -> None:
    entries = [told("sap", gallons=12.0), told("fuel", cords=0.5)]
    assert lines(entries, US) == ["12 gal, Tue.", "1/2 cord burned."]
    moved = replace(entries[1], on=date(2027, 3, 8))
    assert lines([entries[0], moved], US) == ["12 gal, Tue.", "1/2 cord burned, Mon."]


def test_sap_told_in_parts_is_named_and_summed() -> None:
    trees = [told("sap", gallons=float(at), tree=str(at)) for at in range(1, 4)]
    assert lines(trees, US) == ["6 gal in all (tree 1: 1 gal, tree 2: 2 gal, tree 3: 3 gal), Tue."]


def test_many_parts_are_counted_and_not_named() -> None:
    trees = [told("sap", gallons=1.0, tree=str(at)) for at in range(40)]
    assert lines(trees, US) == ["40 gal in all (40 trees), Tue."]


def test_names_that_people_give_are_kept_within_the_alphabet() -> None:
    assert is_gsm(line(told("sap", gallons=1.0, lot="\u00e9rabli\u00e8re \u2019n\u00eame"), US))
