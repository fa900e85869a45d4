"""The one next step after a record: what matters most, at most once a day, else nothing."""

from __future__ import annotations

from tests.conversation.stage import BEN, Stage


def _bush() -> Stage:
    stage = Stage()
    stage.settled()
    return stage


def test_sap_that_is_due_goes_before_everything() -> None:
    stage = _bush()
    stage.text("20 gal at 2", "2027-03-01T18:00")
    stage.text("drew off 1 qt", "2027-03-01T19:00")
    reply = stage.text("drew off 1 pint", "2027-03-04T10:00")
    assert "due: boil it today" in reply
    assert "Filter" not in reply


def test_the_same_step_is_said_once_a_day() -> None:
    stage = _bush()
    assert "Keep it under" in stage.text("20 gal at 2", "2027-03-01T18:00")
    assert "Keep it under" not in stage.text("5 gal at 2", "2027-03-01T19:00")
    assert "Keep it under" in stage.text("5 gal at 2", "2027-03-02T18:00")


def test_each_person_hears_it_for_themselves() -> None:
    stage = _bush()
    stage.text("add +1 555 010 0012", "2027-03-01T12:00")
    stage.text("join", "2027-03-01T12:01", BEN)
    assert "Keep it under" in stage.text("20 gal at 2", "2027-03-01T18:00")
    assert "Keep it under" in stage.text("5 gal at 2", "2027-03-01T18:30", BEN)


def test_nothing_is_said_when_nothing_matters() -> None:
    stage = _bush()
    assert stage.text("$12 for lids", "2027-03-01T18:00") == "$12 for lids, Mon."
    assert stage.text("tree 4 red maple", "2027-03-01T18:01") == "Tree 4: red maple."


def test_pails_that_were_full_are_emptied_sooner() -> None:
    stage = _bush()
    stage.text("12 taps", "2027-03-01T08:00")
    stage.text("my pails hold 2 gal", "2027-03-01T08:01")
    stage.text("3 gal at 2", "2027-03-01T09:00")
    reply = stage.text("21 gal at 2", "2027-03-01T12:00")
    assert "about all your pails hold" in reply
    assert "again today" in reply


def test_a_fire_just_lit_asks_where_water_boils_then_minds_the_pan() -> None:
    stage = _bush()
    assert "plain water" in stage.text("lit the fire", "2027-03-01T09:00")
    stage.text("fires out", "2027-03-01T12:00")
    stage.text("water boils at 210.4", "2027-03-01T12:30")
    assert "never leave it" in stage.text("lit the fire", "2027-03-01T13:00")


def test_the_filter_follows_the_draw() -> None:
    assert "Filter it hot" in _bush().text("drew off 2 qt", "2027-03-01T18:00")


def test_syrup_that_is_bottled_already_is_not_filtered() -> None:
    reply = _bush().text("drew off 2 qt and bottled 4 pints", "2027-03-01T18:00")
    assert "Filter" not in reply


def test_a_short_yield_is_noticed_once_all_is_boiled() -> None:
    stage = _bush()
    stage.text("60 gal at 2.2", "2027-03-01T08:00")
    stage.text("drew off 3 qt", "2027-03-01T18:00")
    reply = stage.text("boiled 60 gal in 9 hours", "2027-03-01T18:10")
    assert "short of what the sap should give" in reply


def test_taps_are_pulled_when_buds_are_out() -> None:
    stage = _bush()
    stage.text("12 taps", "2027-03-01T08:00")
    stage.text("red maple buds are out", "2027-03-28T10:00")
    assert "pull all 12 spiles" in stage.text("no sap today", "2027-03-29T10:00")


def test_no_taps_are_pulled_that_do_not_hang() -> None:
    stage = _bush()
    stage.text("12 taps", "2027-03-01T08:00")
    stage.text("buds are out", "2027-03-28T10:00")
    stage.text("pulled all the taps", "2027-03-28T11:00")
    assert "spiles" not in stage.text("no sap today", "2027-03-29T10:00")


def test_an_undo_is_not_coached() -> None:
    stage = _bush()
    stage.text("20 gal at 2", "2027-03-01T18:00")
    stage.text("30 gal at 2", "2027-03-01T18:05")
    assert "boil" not in stage.text("undo", "2027-03-04T18:06")


def test_a_reply_to_a_record_stays_within_one_text() -> None:
    from bot.wording.gsm import segments

    stage = _bush()
    stage.text("12 taps", "2027-03-01T08:00")
    assert segments(stage.text("57.5 gal at 2.15 from the north lot", "2027-03-01T18:00")) == 1
